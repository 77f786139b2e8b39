#pragma once

#include <QMainWindow>

#include "desktop/action_table.h"
#include "desktop/app_context.h"
#include "desktop/chosen_textures.h"

class QStackedWidget;

namespace pantile::desktop {

class BoardsPage;
class CodesPage;
class DropHint;
class EditPage;
class LibraryPage;
class LoadTray;
class LoadWork;
class NoticeBar;
class ProfileWork;

class MainWindow : public QMainWindow {
    Q_OBJECT

public:
    /// The context must outlive it.
    explicit MainWindow(AppContext& context);

protected:
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dragLeaveEvent(QDragLeaveEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void makeLayout();
    void makeMenus();
    void connectPlaces();
    void connectLoads();
    void connectProfiles(AppContext& context);
    void goTo(ActionId place);
    void showTray();

    Actions m_actions;
    ChosenTextures m_chosen;
    NoticeBar* m_notices;
    LoadWork* m_loads;
    ProfileWork* m_profiles;
    LibraryPage* m_library;
    EditPage* m_edit;
    CodesPage* m_codes;
    BoardsPage* m_boards;
    LoadTray* m_tray;
    QStackedWidget* m_places;
    DropHint* m_dropHint;
};

}  // namespace pantile::desktop
