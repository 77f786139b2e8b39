#include "desktop/views/boards_page.h"

#include <QAction>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "desktop/dialogs/calibration_dialog.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/action_button.h"
#include "desktop/views/calibration_form.h"
#include "desktop/views/choose_form.h"
#include "desktop/views/drawing_bench.h"
#include "desktop/views/folding_splitter.h"
#include "desktop/views/heading.h"
#include "desktop/views/load_list.h"
#include "desktop/views/notice_bar.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/wrapped_row.h"
#include "desktop/views/write_form.h"

namespace pantile::desktop {

namespace {

constexpr int kChoosingWidth = 352;
constexpr int kRoomForDrawing = 760;  // With less width it stands below.

}  // namespace

BoardsPage::BoardsPage(AppContext& context, Actions& actions, const ChosenTextures& chosen,
                       LoadWork& work, NoticeBar& notices, QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_actions(actions),
      m_chosen(chosen),
      m_work(work),
      m_notices(notices),
      m_words(new PlainLabel(this)),
      m_noLoads(new PlainLabel(this)),
      m_loads(new LoadList(this)),
      m_choose(new ChooseForm(context.theme, actions, chosen, work, this)),
      m_write(new WriteForm(context, actions, work, notices, this)),
      m_drawing(new DrawingBench(context, this)) {
    setObjectName(QStringLiteral("boardsPage"));
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins({});
    auto* const both = new FoldingSplitter(kRoomForDrawing, this);
    both->addWidget(makeBench());
    both->addWidget(m_drawing);
    both->setStretchFactor(0, 0);
    both->setStretchFactor(1, 1);
    both->setSizes({kChoosingWidth, 2 * kChoosingWidth});
    layout->addWidget(both);
    connect(&m_chosen, &ChosenTextures::changed, this,
            [this] { m_words->setText(m_chosen.words()); });
    connect(&m_work, &LoadWork::contentsChanged, this, &BoardsPage::showContents);
    connect(m_loads, &LoadList::asked, &m_work, &LoadWork::show);
    connect(m_loads, &LoadList::dropped, &m_work, &LoadWork::putInLoad);
    connect(m_write, &WriteForm::written, this, &BoardsPage::changed);
    connectActions();
    showContents();
    m_words->setText(m_chosen.words());
}

QScrollArea* BoardsPage::makeBench() {
    auto* const scroll = new QScrollArea(this);
    scroll->setObjectName(QStringLiteral("boardsBench"));
    scroll->setAccessibleName(tr("Choose and write"));
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* const bench = new QWidget(scroll);
    m_words->setObjectName(QStringLiteral("boardsWords"));
    m_words->setForegroundRole(QPalette::PlaceholderText);
    m_noLoads->setText(tr("Drop textures on the tray below: they become a load."));
    auto* const buttons = new WrappedRow(bench);
    buttons->add(makeActionButton(m_actions[ActionId::NewLoad], tr("New load"), buttons));
    buttons->add(makeActionButton(m_actions[ActionId::RenameLoad], tr("Rename"), buttons));
    buttons->add(makeActionButton(m_actions[ActionId::RemoveLoad], tr("Remove"), buttons));
    auto* const layout = new QVBoxLayout(bench);
    layout->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, 2 * kGap);
    layout->setSpacing(kGap);
    layout->addWidget(makeHeading(tr("Boards"), bench));
    layout->addWidget(m_words);
    layout->addWidget(m_noLoads);
    layout->addWidget(m_loads);
    layout->addWidget(buttons);
    layout->addSpacing(kGap);
    layout->addWidget(makeHeading(tr("Choose"), bench));
    layout->addWidget(m_choose);
    layout->addSpacing(kGap);
    layout->addWidget(makeHeading(tr("Write"), bench));
    layout->addWidget(m_write);
    layout->addStretch();
    scroll->setWidget(bench);
    scroll->setMinimumWidth(kChoosingWidth * 3 / 4);
    return scroll;
}

void BoardsPage::connectActions() {
    connect(&m_actions[ActionId::RenameLoad], &QAction::triggered, this, [this] {
        const QString name = m_context.prompts.askName(
            window(), tr("Rename Load"), tr("New name of %1:").arg(shownText(m_work.tray().load())),
            {});
        if (!name.isEmpty()) m_work.rename(name.toStdString());
    });
    connect(&m_actions[ActionId::RemoveLoad], &QAction::triggered, &m_work, &LoadWork::remove);
    connect(&m_actions[ActionId::Calibrate], &QAction::triggered, this, [this] { calibrate(); });
}

void BoardsPage::calibrate() {
    auto* const dialog = new CalibrationDialog(m_context, window());
    dialog->form().choose({}, QString::fromStdString(m_work.tray().board().name));
    connect(&dialog->form(), &CalibrationForm::taken, this, [this](const QString& words) {
        m_notices.showNotice({MarkKind::Done, words, {}});
        Q_EMIT changed();
    });
    dialog->open();
}

void BoardsPage::showContents() {
    const bool hasLoad = !m_work.tray().load().empty();
    m_loads->showLoads(m_work.loads(), m_work.tray().load());
    m_noLoads->setVisible(!hasLoad);
    m_actions[ActionId::RenameLoad].setEnabled(hasLoad);
    m_actions[ActionId::RemoveLoad].setEnabled(hasLoad);
}

void BoardsPage::showSlot(const catalogue::TextureRow* row) {
    if (row == nullptr)
        return m_drawing->showWords(tr("Put a texture in the load: its drawing is shown here."));
    m_drawing->showTexture(row->id, shownTitle(row->title), m_work.tray().board().name,
                           m_work.canvas());
}

void BoardsPage::setShelves(const QStringList& names) {
    m_choose->setShelves(names);
}

void BoardsPage::renew() {
    m_write->renew();
    m_drawing->renew();
}

void BoardsPage::finishAll() {
    m_write->finishAll();
    m_drawing->stopAndWait();
}

}  // namespace pantile::desktop
