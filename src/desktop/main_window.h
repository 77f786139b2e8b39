#pragma once

#include <QMainWindow>

#include "desktop/action_table.h"
#include "desktop/app_context.h"

namespace pantile::desktop {

class DropHint;
class LibraryPage;

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
    void makeMenus();

    Actions m_actions;
    LibraryPage* m_page;
    DropHint* m_dropHint;
};

}  // namespace pantile::desktop
