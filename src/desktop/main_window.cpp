#include "desktop/main_window.h"

#include <QAction>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QMenu>
#include <QMenuBar>
#include <QMimeData>
#include <QScreen>

#include "desktop/dialogs/keys_dialog.h"
#include "desktop/texts.h"
#include "desktop/views/drop_hint.h"
#include "desktop/views/library_page.h"

namespace pantile::desktop {

namespace {

constexpr QSize kUsualSize{1240, 776};
constexpr QSize kLeastSize{560, 360};

}  // namespace

MainWindow::MainWindow(AppContext& context)
    : m_actions(this),
      m_page(new LibraryPage(context, m_actions, this)),
      m_dropHint(new DropHint(context.theme, m_page)) {
    setObjectName(QStringLiteral("mainWindow"));
    setWindowTitle(tr("%1 - Pantile").arg(shownText(context.libraryPath.filename().string())));
    setCentralWidget(m_page);
    setAcceptDrops(true);
    setMinimumSize(kLeastSize);
    resize(kUsualSize.boundedTo(screen()->availableSize()));
    makeMenus();
    connect(&m_actions[ActionId::Quit], &QAction::triggered, this, &QWidget::close);
    connect(&m_actions[ActionId::Keys], &QAction::triggered, this,
            [this] { (new KeysDialog(this))->open(); });
}

void MainWindow::makeMenus() {
    for (const Menu menu : {Menu::Library, Menu::Texture, Menu::View, Menu::Help}) {
        QMenu* const shown = menuBar()->addMenu(menuTitle(menu));
        for (const ActionRow& row : actionTable()) {
            if (row.menu == menu) shown->addAction(&m_actions[row.id]);
        }
    }
}

void MainWindow::closeEvent(QCloseEvent* event) {
    m_page->stopAndWait();
    event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    if (!canGather(*event->mimeData())) return;
    event->setDropAction(Qt::CopyAction);
    event->accept();
    m_dropHint->cover();
}

void MainWindow::dragLeaveEvent(QDragLeaveEvent* /*event*/) {
    m_dropHint->hide();
}

void MainWindow::dropEvent(QDropEvent* event) {
    m_dropHint->hide();
    auto request = gatherRequest(*event->mimeData());
    if (!request) return;
    event->setDropAction(Qt::CopyAction);
    event->accept();
    m_page->gather(*std::move(request));
}

}  // namespace pantile::desktop
