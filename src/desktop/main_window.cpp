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
#include "desktop/dialogs/profiles_dialog.h"
#include "desktop/load_work.h"
#include "desktop/models/texture_mime.h"
#include "desktop/profile_work.h"
#include "desktop/texts.h"
#include "desktop/views/boards_page.h"
#include "desktop/views/codes_page.h"
#include "desktop/views/drop_hint.h"
#include "desktop/views/edit_page.h"
#include "desktop/views/library_page.h"
#include "desktop/views/load_tray.h"
#include "desktop/views/notice_bar.h"
#include "desktop/views/rail.h"

namespace pantile::desktop {

namespace {

constexpr QSize kUsualSize{1240, 776};
constexpr QSize kLeastSize{560, 360};

// In the order in which they lie in the stack.
constexpr std::array kPlaces = {ActionId::LibraryPlace, ActionId::EditPlace, ActionId::CodesPlace,
                                ActionId::BoardsPlace};

// With less height the library needs all of it.
constexpr int kRoomForTray = 560;

}  // namespace

MainWindow::MainWindow(AppContext& context)
    : m_actions(this),
      m_notices(new NoticeBar(context.theme, this)),
      m_loads(new LoadWork(context, *m_notices, this)),
      m_profiles(new ProfileWork(context, *m_notices, this)),
      m_library(new LibraryPage(context, m_actions, m_chosen, *m_notices, this)),
      m_edit(new EditPage(context, m_actions, m_chosen, *m_notices, this)),
      m_codes(new CodesPage(context, m_actions, m_chosen, *m_notices, this)),
      m_boards(new BoardsPage(context, m_actions, m_chosen, *m_loads, *m_notices, this)),
      m_tray(new LoadTray(context, m_actions, m_chosen, *m_loads, this)),
      m_places(new QStackedWidget(this)),
      m_dropHint(new DropHint(context.theme, m_places)) {
    setObjectName(QStringLiteral("mainWindow"));
    setWindowTitle(tr("%1 - Pantile").arg(shownText(context.libraryPath.filename().string())));
    makeLayout();
    setAcceptDrops(true);
    setMinimumSize(kLeastSize);
    resize(kUsualSize.boundedTo(screen()->availableSize()));
    makeMenus();
    connectPlaces();
    connectLoads();
    connectProfiles(context);
    connect(&m_actions[ActionId::Quit], &QAction::triggered, this, &QWidget::close);
    connect(&m_actions[ActionId::Keys], &QAction::triggered, this,
            [this] { (new KeysDialog(this))->open(); });
    m_actions[ActionId::Tray].setChecked(true);
    goTo(ActionId::LibraryPlace);
}

void MainWindow::connectPlaces() {
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
    connect(m_edit, &EditPage::recovered, m_library, &LibraryPage::renew);
    connect(m_library, &LibraryPage::libraryChanged, m_codes, &CodesPage::renew);
}

void MainWindow::connectLoads() {
    connect(m_loads, &LoadWork::libraryChanged, m_library, &LibraryPage::renew);
    connect(m_boards, &BoardsPage::changed, m_library, &LibraryPage::renew);
    connect(m_library, &LibraryPage::libraryChanged, m_loads, &LoadWork::renew);
    connect(m_library, &LibraryPage::libraryChanged, m_boards, &BoardsPage::renew);
    connect(m_library, &LibraryPage::shelvesRead, m_boards, &BoardsPage::setShelves);
    connect(m_tray, &LoadTray::slotChosen, m_boards, &BoardsPage::showSlot);
    connect(m_library, &LibraryPage::found, this, &MainWindow::showTray);
    connect(&m_actions[ActionId::Tray], &QAction::toggled, this, &MainWindow::showTray);
    // What was done to loads is taken back where they are.
    for (QWidget* const place : {static_cast<QWidget*>(m_boards), static_cast<QWidget*>(m_tray)}) {
        place->addAction(&m_actions[ActionId::UndoInLibrary]);
        place->addAction(&m_actions[ActionId::RedoInLibrary]);
    }
}

void MainWindow::connectProfiles(AppContext& context) {
    connect(m_profiles, &ProfileWork::libraryChanged, m_library, &LibraryPage::renew);
    connect(m_library, &LibraryPage::libraryChanged, m_profiles, &ProfileWork::renew);
    connect(&m_actions[ActionId::Profiles], &QAction::triggered, this, [this, &context] {
        (new ProfilesDialog(context, m_actions, m_chosen, *m_profiles, this))->open();
    });
}

void MainWindow::makeLayout() {
    auto* const rail = new Rail(this);
    rail->addPlace(m_actions[ActionId::LibraryPlace], tr("Library"));
    rail->addPlace(m_actions[ActionId::EditPlace], tr("Edit"));
    rail->addPlace(m_actions[ActionId::CodesPlace], tr("Codes"));
    rail->addPlace(m_actions[ActionId::BoardsPlace], tr("Boards"));
    m_places->addWidget(m_library);
    m_places->addWidget(m_edit);
    m_places->addWidget(m_codes);
    m_places->addWidget(m_boards);
    auto* const work = new QVBoxLayout;
    work->setSpacing(0);
    work->addWidget(m_places, 1);
    work->addWidget(m_tray);
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
    showTray();
}

void MainWindow::makeMenus() {
    for (const Menu menu : {Menu::Library, Menu::Texture, Menu::Edit, Menu::Codes, Menu::Boards,
                            Menu::View, Menu::Help}) {
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
    m_boards->finishAll();
    m_loads->finishAll();
    m_profiles->finishAll();
    event->accept();
}

void MainWindow::resizeEvent(QResizeEvent* event) {
    QMainWindow::resizeEvent(event);
    showTray();
}

// The tray lies along the edge of the two places between which textures go.
void MainWindow::showTray() {
    const QWidget* const place = m_places->currentWidget();
    const bool isInLibrary =
        place == m_library && !m_library->isEmpty() && height() >= kRoomForTray;
    m_tray->setVisible(m_actions[ActionId::Tray].isChecked() && (place == m_boards || isInLibrary));
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    // Let go of anywhere else, a texture is out of the load.
    if (!loadIn(*event->mimeData()).empty()) return event->acceptProposedAction();
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
    if (const std::string load = loadIn(*event->mimeData()); !load.empty()) {
        event->setDropAction(Qt::CopyAction);
        event->accept();
        return m_loads->takeOut(textureIdsIn(*event->mimeData()), load);
    }
    auto request = gatherRequest(*event->mimeData());
    if (!request) return;
    event->setDropAction(Qt::CopyAction);
    event->accept();
    m_library->gather(*std::move(request));
}

}  // namespace pantile::desktop
