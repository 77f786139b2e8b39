#include "desktop/views/board_form.h"

#include <QLineEdit>

#include "desktop/texts.h"
#include "desktop/views/choice_box.h"
#include "desktop/views/tick_box.h"

namespace pantile::desktop {

using core::Board;
using core::PointerTiming;
using core::Result;

namespace {

constexpr int kCareful = 0;
constexpr int kQuick = 1;
constexpr int kOtherTiming = 2;
constexpr int kUsualDisplayWidth = 64;
constexpr int kUsualDisplayHeight = 48;

int choiceOf(const PointerTiming& timing) {
    if (timing == PointerTiming::careful()) return kCareful;
    return timing == PointerTiming::quick() ? kQuick : kOtherTiming;
}

}  // namespace

BoardForm::BoardForm(const Theme& theme, QWidget* parent) : CheckedForm(theme, parent) {
    setObjectName(QStringLiteral("boardForm"));
    m_name = addLine("boardName", tr("Name"));
    m_description = addLine("boardDescription", tr("Description"));
    m_description->setPlaceholderText(tr("its class, and where its figures come from"));
    addHeading(tr("Room"));
    m_memory = addChoice("boardMemory", tr("Memory"));
    m_memory->addItems({tr("flash, in the program"), tr("card, as files")});
    m_slots = addNumber("boardSlots", tr("Slots"), {1, core::kMaxBoardSlots, {}});
    m_bytes = addNumber("boardBytes", tr("Bytes"), {64, int{core::kMaxBoardBytes}, {}});
    m_display = addTick("boardDisplay", tr("It shows small pictures"));
    std::tie(m_displayWidth, m_displayHeight) =
        addPair("boardDisplayCells", tr("Of cells"), {1, core::kMaxDisplaySide, {}},
                QString(QChar(0x00D7)));
    makeTimingPart();
    connect(this, &CheckedForm::changed, this, &BoardForm::check);
    // It follows the numbers, and must not be set back before it has changed them.
    disconnect(m_timing, &QComboBox::currentIndexChanged, this, nullptr);
    connect(m_timing, &QComboBox::activated, this, [this](int choice) {
        if (choice == kCareful) setTiming(PointerTiming::careful());
        if (choice == kQuick) setTiming(PointerTiming::quick());
        tellChanged();
    });
}

void BoardForm::makeTimingPart() {
    addHeading(tr("Timing"));
    m_timing = addChoice("boardTiming", tr("Start from"));
    m_timing->addItems({tr("careful"), tr("quick"), tr("its own")});
    const QString ms = tr(" ms");
    const QString counts = tr(" counts");
    m_report = addNumber("boardReport", tr("Between reports"), {1, 1000, ms});
    m_stepUp = addNumber("boardStepUp", tr("Largest move, pen up"), {1, 127, counts});
    m_stepDown = addNumber("boardStepDown", tr("Largest move, pen down"), {1, 127, counts});
    m_press = addNumber("boardPress", tr("Hold after pressing"), {1, 1000, ms});
    m_release = addNumber("boardRelease", tr("Hold after releasing"), {1, 1000, ms});
    m_settle = addNumber("boardSettle", tr("Wait after a colour"), {0, 5000, ms});
}

void BoardForm::setTiming(const PointerTiming& timing) {
    const Silence silence(*this);
    m_report->setValue(timing.reportIntervalMs);
    m_stepUp->setValue(timing.maxStepUp);
    m_stepDown->setValue(timing.maxStepDown);
    m_press->setValue(timing.pressMs);
    m_release->setValue(timing.releaseMs);
    m_settle->setValue(timing.settleMs);
}

void BoardForm::showBoard(const Board& board, const ProfileKey& own, const Profiles& known) {
    {
        const Silence silence(*this);
        m_own = own;
        m_known = known;
        m_name->setText(fromUtf8(board.name));
        m_description->setText(fromUtf8(board.description));
        m_description->setCursorPosition(0);
        m_memory->setCurrentIndex(static_cast<int>(board.memory));
        m_slots->setValue(board.slots);
        m_bytes->setValue(static_cast<int>(board.bytes));
        const bool hasDisplay = board.display != core::Size{};
        m_display->setChecked(hasDisplay);
        m_displayWidth->setValue(hasDisplay ? board.display.width : kUsualDisplayWidth);
        m_displayHeight->setValue(hasDisplay ? board.display.height : kUsualDisplayHeight);
        setTiming(board.timing);
    }
    check();
}

Board BoardForm::board() const {
    Board board;
    board.name = m_name->text().toStdString();
    board.description = m_description->text().toStdString();
    board.memory = static_cast<core::BoardMemory>(m_memory->currentIndex());
    board.slots = m_slots->value();
    board.bytes = m_bytes->value();
    if (m_display->isChecked()) board.display = {m_displayWidth->value(), m_displayHeight->value()};
    board.timing = {m_report->value(), m_stepUp->value(),  m_stepDown->value(),
                    m_press->value(),  m_release->value(), m_settle->value()};
    return board;
}

void BoardForm::setKnown(const ProfileKey& own, const Profiles& known) {
    m_own = own;
    m_known = known;
    check();
}

void BoardForm::check() {
    const Board now = board();
    const bool hasDisplay = m_display->isChecked();
    m_displayWidth->parentWidget()->setEnabled(hasDisplay);
    Board onlyName;
    onlyName.name = now.name;
    setError(m_name, checkProfile(onlyName, m_own, m_known));
    Board onlyDescription;
    onlyDescription.name = "board";
    onlyDescription.description = now.description;
    setError(m_description, core::checkBoard(onlyDescription));
    setError(m_slots, m_slots->check("the number of slots"));
    setError(m_bytes, m_bytes->check("the number of bytes"));
    const Result<void> width =
        hasDisplay ? m_displayWidth->check("the display's width") : Result<void>();
    const Result<void> height =
        hasDisplay ? m_displayHeight->check("the display's height") : Result<void>();
    setError(m_displayWidth->parentWidget(), width ? height : width);
    setError(m_report, m_report->check("the time between reports"));
    setError(m_stepUp, m_stepUp->check("the largest move with the pen up"));
    setError(m_stepDown, m_stepDown->check("the largest move with the pen down"));
    setError(m_press, m_press->check("the hold after pressing"));
    setError(m_release, m_release->check("the hold after releasing"));
    setError(m_settle, m_settle->check("the wait after a colour"));
    const Silence silence(*this);
    m_timing->setCurrentIndex(choiceOf(now.timing));
}

}  // namespace pantile::desktop
