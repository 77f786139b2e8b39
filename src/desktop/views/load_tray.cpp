#include "desktop/views/load_tray.h"

#include <algorithm>

#include <QAction>
#include <QDropEvent>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "desktop/models/texture_mime.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/action_button.h"
#include "desktop/views/choice_box.h"
#include "desktop/views/cost_bar.h"
#include "desktop/views/mark.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/tray_view.h"
#include "desktop/views/wrapped_row.h"

namespace pantile::desktop {

namespace {

// Fills a box with names and chooses one, without telling anybody.
template <typename Named>
void showNames(QComboBox& box, const std::vector<Named>& all, const std::string& chosen) {
    const QSignalBlocker quiet(box);
    box.clear();
    for (const Named& each : all)
        box.addItem(shownText(each.name), QString::fromStdString(each.name));
    box.setCurrentIndex(box.findData(QString::fromStdString(chosen)));
}

}  // namespace

LoadTray::LoadTray(AppContext& context, Actions& actions, const ChosenTextures& chosen,
                   LoadWork& work, QWidget* parent)
    : QWidget(parent),
      m_actions(actions),
      m_chosen(chosen),
      m_work(work),
      m_loads(new ChoiceBox(context.theme, this)),
      m_boards(new ChoiceBox(context.theme, this)),
      m_slots(new TrayView(work.tray(), context.theme,
                           TilePictures(context.library, hatchOf(context.theme)), this)),
      m_slotWords(new QLabel(this)),
      m_byteWords(new QLabel(this)),
      m_timeWords(new QLabel(this)),
      m_caution(new Mark(MarkKind::Caution, context.theme, this)),
      m_problem(new PlainLabel(this)),
      m_bytes(new CostBar(context.theme, this)),
      m_seconds(new CostBar(context.theme, this)) {
    setObjectName(QStringLiteral("loadTray"));
    setAcceptDrops(true);
    setAttribute(Qt::WA_StyledBackground);  // A subclass takes its colour from the sheet only so.
    m_loads->setObjectName(QStringLiteral("trayLoads"));
    m_loads->setAccessibleName(tr("Load in the tray"));
    m_loads->setPlaceholderText(tr("No load yet"));
    m_boards->setObjectName(QStringLiteral("trayBoards"));
    m_boards->setAccessibleName(tr("Board of the load"));
    m_slotWords->setObjectName(QStringLiteral("traySlotWords"));
    m_byteWords->setObjectName(QStringLiteral("trayByteWords"));
    m_timeWords->setObjectName(QStringLiteral("trayTimeWords"));
    for (QLabel* const words : {m_slotWords, m_byteWords, m_timeWords})
        words->setFont(figureFont());
    m_problem->setObjectName(QStringLiteral("trayProblem"));
    m_bytes->setObjectName(QStringLiteral("bytesBar"));
    m_seconds->setObjectName(QStringLiteral("secondsBar"));

    auto* const costs = new QGridLayout;
    costs->setHorizontalSpacing(kGap);
    costs->setVerticalSpacing(0);
    costs->addWidget(m_byteWords, 0, 0);
    costs->addWidget(m_bytes, 0, 1, Qt::AlignVCenter);
    costs->addWidget(m_timeWords, 1, 0);
    costs->addWidget(m_seconds, 1, 1, Qt::AlignVCenter);
    costs->setColumnStretch(1, 1);
    auto* const problem = new QHBoxLayout;
    problem->setSpacing(kGap);
    problem->addWidget(m_caution);
    problem->addWidget(m_problem, 1);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(2 * kGap, kGap, 2 * kGap, kGap);
    layout->setSpacing(kGap / 2);
    layout->addWidget(makeHead());
    layout->addWidget(m_slots);
    layout->addLayout(costs);
    layout->addLayout(problem);
    connectParts();
    connectActions();
    showContents();
}

// Beside the compartments is still in the tray, and not out of the load.
void LoadTray::dragEnterEvent(QDragEnterEvent* event) {
    acceptTextures(*event);
}

void LoadTray::dropEvent(QDropEvent* event) {
    m_slots->take(*event, static_cast<int>(m_work.tray().slots().size()));
}

WrappedRow* LoadTray::makeHead() {
    auto* const head = new WrappedRow(this);
    head->add(m_loads);
    head->add(m_boards);
    head->add(makeActionButton(m_actions[ActionId::PutInLoad], tr("Put in the load"), head));
    head->add(makeActionButton(m_actions[ActionId::TakeOut], tr("Take out"), head));
    head->add(makeActionButton(m_actions[ActionId::NewLoad], tr("New load"), head));
    head->add(m_slotWords);
    return head;
}

void LoadTray::connectParts() {
    connect(&m_work, &LoadWork::contentsChanged, this, &LoadTray::showContents);
    connect(&m_work, &LoadWork::costsChanged, this, &LoadTray::showCosts);
    connect(m_slots, &TrayView::dropped, &m_work, &LoadWork::put);
    connect(m_slots, &TrayView::chosenChanged, this, [this] {
        enableActions();
        tellCurrent();
    });
    connect(m_loads, &QComboBox::activated, this,
            [this] { m_work.show(m_loads->currentData().toString().toStdString()); });
    connect(m_boards, &QComboBox::activated, this,
            [this] { m_work.setBoard(m_boards->currentData().toString().toStdString()); });
}

void LoadTray::connectActions() {
    connect(&m_actions[ActionId::PutInLoad], &QAction::triggered, this, [this] {
        m_work.put(m_chosen.ids(), {}, static_cast<int>(m_work.tray().slots().size()));
    });
    connect(&m_actions[ActionId::TakeOut], &QAction::triggered, this,
            [this] { m_work.takeOut(m_slots->selectedIds(), m_work.tray().load()); });
    connect(&m_actions[ActionId::SlotEarlier], &QAction::triggered, this, [this] { move(-1); });
    connect(&m_actions[ActionId::SlotLater], &QAction::triggered, this, [this] { move(1); });
    connect(&m_actions[ActionId::NewLoad], &QAction::triggered, &m_work, &LoadWork::makeLoad);
    for (const ActionId id : {ActionId::TakeOut, ActionId::SlotEarlier, ActionId::SlotLater})
        m_slots->addAction(&m_actions[id]);
}

void LoadTray::showContents() {
    showNames(*m_loads, m_work.loads(), m_work.tray().load());
    showNames(*m_boards, m_work.boards(), m_work.tray().board().name);
    m_loads->setEnabled(m_loads->count() > 0);
    enableActions();
    showCosts();
    tellCurrent();
}

void LoadTray::tellCurrent() {
    Q_EMIT slotChosen(m_work.tray().textureRow(m_slots->currentSlot().value_or(0)));
}

void LoadTray::showCosts() {
    const TrayModel& tray = m_work.tray();
    m_slotWords->setText(tr("%1 of %2 slots").arg(tray.slots().size()).arg(tray.board().slots));
    m_slotWords->adjustSize();
    const QString problem = problemWords();
    m_problem->setText(problem);
    m_problem->setVisible(!problem.isEmpty());
    m_caution->setVisible(!problem.isEmpty());
    showBars();
}

QString LoadTray::problemWords() const {
    const auto& costs = m_work.tray().costs();
    if (!costs) return {};
    const std::int64_t tooMany = costs->bytes - m_work.tray().board().bytes;
    const std::int64_t tooLong =
        costs->milliseconds - m_work.timeLimit().value_or(costs->milliseconds);
    if (tooMany > 0)
        return tr("%1 more than the board holds. Take something out, or let the best be chosen.")
            .arg(shownBytes(tooMany));
    if (tooLong > 0) return tr("Drawing takes %1 longer than it may.").arg(shownDuration(tooLong));
    if (!costs->fits()) return tr("Something here cannot be drawn; its tip says why.");
    return {};
}

void LoadTray::showBars() {
    const TrayModel& tray = m_work.tray();
    std::vector<std::int64_t> bytes;
    std::vector<std::int64_t> times;
    std::int64_t all = 0;
    std::int64_t time = 0;
    if (const auto& costs = tray.costs()) {
        for (const tasks::SlotCost& slot : costs->slots) {
            bytes.push_back(slot.bytes());
            times.push_back(slot.milliseconds());
            all += slot.bytes();
        }
        if (!bytes.empty()) bytes.front() += costs->bytes - all;  // What the load itself takes.
        all = costs->bytes;
        time = costs->milliseconds;
    }
    const QString byteWords = tr("%1 of %2").arg(shownBytes(all), shownBytes(tray.board().bytes));
    const auto limit = m_work.timeLimit();
    const QString timeWords = limit ? tr("%1 of %2").arg(shownDuration(time), shownDuration(*limit))
                                    : tr("%1 of drawing").arg(shownDuration(time));
    m_byteWords->setText(byteWords);
    m_timeWords->setText(timeWords);
    m_bytes->setCosts(std::move(bytes), tray.board().bytes, byteWords);
    m_seconds->setCosts(std::move(times), limit.value_or(0), timeWords);
}

void LoadTray::enableActions() {
    const bool isChosen = !m_slots->selectedIds().empty();
    for (const ActionId id : {ActionId::TakeOut, ActionId::SlotEarlier, ActionId::SlotLater})
        m_actions[id].setEnabled(isChosen);
}

void LoadTray::move(int by) {
    const std::vector<core::TextureId> ids = m_slots->selectedIds();
    if (ids.empty()) return;
    const auto& all = m_work.tray().slots();
    const auto at = [&](core::TextureId id) {
        const auto found =
            std::find_if(all.begin(), all.end(), [id](const auto& row) { return row.id == id; });
        return static_cast<int>(found - all.begin());
    };
    // The place counts those that are moved: one step later is behind the one that comes after.
    const int place = by < 0 ? at(ids.front()) - 1 : at(ids.back()) + 2;
    if (place < 0 || place > static_cast<int>(all.size())) return;
    m_work.put(ids, m_work.tray().load(), place);
}
}  // namespace pantile::desktop
