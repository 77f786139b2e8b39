#pragma once

#include <QMainWindow>

#include "desktop/action_table.h"
#include "desktop/app_context.h"
#include "desktop/chosen_textures.h"

class QStackedWidget;

namespace pantile::desktop {

class CodesPage;
class DropHint;
class EditPage;
class LibraryPage;
class NoticeBar;

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

private:
    void makeLayout();
    void makeMenus();
    void goTo(ActionId place);

    Actions m_actions;
    ChosenTextures m_chosen;
    NoticeBar* m_notices;
    LibraryPage* m_library;
    EditPage* m_edit;
    CodesPage* m_codes;
    QStackedWidget* m_places;
    DropHint* m_dropHint;
};

}  // namespace pantile::desktop
