#include "desktop/main_window.h"

#include <array>

#include <QAction>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QMenu>
#include <QMenuBar>
#include <QMimeData>
#include <QScreen>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "desktop/dialogs/keys_dialog.h"
#include "desktop/texts.h"
#include "desktop/views/codes_page.h"
#include "desktop/views/drop_hint.h"
#include "desktop/views/edit_page.h"
#include "desktop/views/library_page.h"
#include "desktop/views/notice_bar.h"
#include "desktop/views/rail.h"

namespace pantile::desktop {

namespace {

constexpr QSize kUsualSize{1240, 776};
constexpr QSize kLeastSize{560, 360};

// In the order in which they lie in the stack.
constexpr std::array kPlaces = {ActionId::LibraryPlace, ActionId::EditPlace, ActionId::CodesPlace};

}  // namespace

MainWindow::MainWindow(AppContext& context)
    : m_actions(this),
      m_notices(new NoticeBar(context.theme, this)),
      m_library(new LibraryPage(context, m_actions, m_chosen, *m_notices, this)),
      m_edit(new EditPage(context, m_actions, m_chosen, *m_notices, this)),
      m_codes(new CodesPage(context, m_actions, m_chosen, *m_notices, this)),
      m_places(new QStackedWidget(this)),
      m_dropHint(new DropHint(context.theme, m_places)) {
    setObjectName(QStringLiteral("mainWindow"));
    setWindowTitle(tr("%1 - Pantile").arg(shownText(context.libraryPath.filename().string())));
    makeLayout();
    setAcceptDrops(true);
    setMinimumSize(kLeastSize);
    resize(kUsualSize.boundedTo(screen()->availableSize()));
    makeMenus();
    for (const ActionId place : kPlaces)
        connect(&m_actions[place], &QAction::triggered, this, [this, place] { goTo(place); });
    connect(&m_actions[ActionId::TouchUp], &QAction::triggered, this,
            [this] { goTo(ActionId::EditPlace); });
    // What looks through the library goes there first.
    for (const ActionId id : {ActionId::Find, ActionId::ShowAll})
        connect(&m_actions[id], &QAction::triggered, this,
                [this] { goTo(ActionId::LibraryPlace); });
    connect(m_codes, &CodesPage::addAsked, this,
            [this](const QString& text) { m_library->gather(gatherText(text)); });
    connect(m_library, &LibraryPage::libraryChanged, m_edit, &EditPage::renew);
    connect(m_library, &LibraryPage::libraryChanged, m_codes, &CodesPage::renew);
    connect(&m_actions[ActionId::Quit], &QAction::triggered, this, &QWidget::close);
    connect(&m_actions[ActionId::Keys], &QAction::triggered, this,
            [this] { (new KeysDialog(this))->open(); });
    goTo(ActionId::LibraryPlace);
}

void MainWindow::makeLayout() {
    auto* const rail = new Rail(this);
    rail->addPlace(m_actions[ActionId::LibraryPlace], tr("Library"));
    rail->addPlace(m_actions[ActionId::EditPlace], tr("Edit"));
    rail->addPlace(m_actions[ActionId::CodesPlace], tr("Codes"));
    m_places->addWidget(m_library);
    m_places->addWidget(m_edit);
    m_places->addWidget(m_codes);
    auto* const work = new QVBoxLayout;
    work->setSpacing(0);
    work->addWidget(m_places, 1);
    work->addWidget(m_notices);
    auto* const all = new QWidget(this);
    auto* const layout = new QHBoxLayout(all);
    layout->setContentsMargins({});
    layout->setSpacing(0);
    layout->addWidget(rail);
    layout->addLayout(work, 1);
    setCentralWidget(all);
}

void MainWindow::goTo(ActionId place) {
    for (std::size_t i = 0; i < kPlaces.size(); ++i) {
        m_actions[kPlaces[i]].setChecked(kPlaces[i] == place);
        if (kPlaces[i] == place) m_places->setCurrentIndex(static_cast<int>(i));
    }
}

void MainWindow::makeMenus() {
    for (const Menu menu :
         {Menu::Library, Menu::Texture, Menu::Edit, Menu::Codes, Menu::View, Menu::Help}) {
        QMenu* const shown = menuBar()->addMenu(menuTitle(menu));
        for (const ActionRow& row : actionTable()) {
            if (row.menu == menu) shown->addAction(&m_actions[row.id]);
        }
    }
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (!m_edit->keepAndStop()) {
        goTo(ActionId::EditPlace);
        return event->ignore();
    }
    m_library->stopAndWait();
    m_codes->stopAndWait();
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
    m_library->gather(*std::move(request));
}

}  // namespace pantile::desktop
