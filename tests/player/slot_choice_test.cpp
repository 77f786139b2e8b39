// Short presses choose, long ones draw, and what the trigger may never do.

#include "player/slot_choice.h"

#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include "player/bench_run.h"
#include "player/memory_load.h"

namespace pantile {
namespace {

using tests::Bytes;
using tests::readMemory;
using tests::SeenReport;
using tests::written;

struct Told {
    int slot = 0;
    load_player_status status = LOAD_PLAYER_OK;
    bool operator==(const Told&) const = default;
};

/// A board with one trigger, looked at every millisecond.
class OneTrigger {
public:
    explicit OneTrigger(Bytes bytes) : m_bytes(std::move(bytes)) {
        m_opened = slot_choice_open(&m_choice, readMemory, &m_bytes, note, this);
    }

    OneTrigger(const OneTrigger&) = delete;
    OneTrigger& operator=(const OneTrigger&) = delete;
    OneTrigger(OneTrigger&&) = delete;
    OneTrigger& operator=(OneTrigger&&) = delete;
    ~OneTrigger() = default;

    OneTrigger& up(int milliseconds) { return hold(0, milliseconds, 1); }

    OneTrigger& press(int milliseconds) { return hold(1, milliseconds, 1); }

    OneTrigger& hold(std::uint8_t trigger, int times, std::uint16_t elapsed) {
        for (int i = 0; i < times; ++i) {
            load_player_report report = {};
            m_now += elapsed;
            if (slot_choice_tick(&m_choice, trigger, elapsed, &report) == 0) continue;
            m_reports.push_back({m_now, report.pressed, report.dx, report.dy});
        }
        return *this;
    }

    bool drawing() const { return load_player_phase_of(&m_choice.player) >= LOAD_PLAYER_MOVING_IN; }

    void drawToTheEnd() {
        for (int i = 0; i < 10'000'000 && drawing(); ++i) up(1);
    }

    load_player_status opened() const { return m_opened; }

    const std::vector<Told>& told() const { return m_told; }

    std::vector<SeenReport> takeReports() { return std::exchange(m_reports, {}); }

    const std::vector<SeenReport>& reports() const { return m_reports; }

private:
    static void note(void* context, const load_player*, std::uint8_t index,
                     load_player_status status) {
        static_cast<OneTrigger*>(context)->m_told.push_back({index, status});
    }

    Bytes m_bytes;
    slot_choice m_choice = {};
    load_player_status m_opened = LOAD_PLAYER_OK;
    std::vector<Told> m_told;
    std::vector<SeenReport> m_reports;
    std::int64_t m_now = 0;
};

board::Load threeSlots() {
    tests::Random random(5);
    board::Load load{"Groyne", core::PointerTiming::quick(), {}};
    while (load.slots.size() < 3) {
        board::LoadSlot slot = tests::randomSlot(random, load.timing);
        // The virtual screen has no fill button.
        if (!slot.plan.fill) load.slots.push_back(std::move(slot));
    }
    return load;
}

TEST(SlotChoice, DrawsTheSlotThatShortPressesChose) {
    const board::Load load = threeSlots();
    for (int presses = 0; presses < 5; ++presses) {
        OneTrigger board(written(load));
        ASSERT_EQ(board.opened(), LOAD_PLAYER_OK);
        board.up(600);
        for (int i = 0; i < presses; ++i) board.press(120).up(100);
        EXPECT_TRUE(board.reports().empty()) << "short presses drew something";
        board.up(600).press(SLOT_CHOICE_LONG_MS);
        EXPECT_TRUE(board.drawing());
        board.drawToTheEnd();
        const board::LoadSlot& slot = load.slots[static_cast<std::size_t>(presses % 3)];
        tests::VirtualScreen screen(tests::screenFor(slot, load.timing), 300, 200);
        for (const SeenReport& report : board.reports()) screen.take(report);
        screen.wait(1'000'000);
        EXPECT_EQ(tests::whatIsWrong(screen, slot), "") << presses;
    }
}

TEST(SlotChoice, TellsOfEverySlotOnce) {
    OneTrigger board(written(threeSlots()));
    board.up(600);
    for (int i = 0; i < 4; ++i) board.press(120).up(100);
    EXPECT_EQ(board.told(), (std::vector<Told>{{0, LOAD_PLAYER_OK},
                                               {1, LOAD_PLAYER_OK},
                                               {2, LOAD_PLAYER_OK},
                                               {0, LOAD_PLAYER_OK},
                                               {1, LOAD_PLAYER_OK}}));
}

TEST(SlotChoice, CountsAPressThatBouncesOnce) {
    OneTrigger board(written(threeSlots()));
    board.up(600);
    for (int i = 0; i < 4; ++i) board.press(2).up(3);
    board.press(150);
    for (int i = 0; i < 4; ++i) board.up(3).press(2);
    board.up(200);
    EXPECT_EQ(board.told().size(), 2U);
}

TEST(SlotChoice, TakesNoNoticeOfASpike) {
    OneTrigger board(written(threeSlots()));
    board.up(600);
    for (int i = 0; i < 20; ++i) board.press(LOAD_PLAYER_DEBOUNCE_MS - 1).up(100);
    EXPECT_EQ(board.told().size(), 1U);
}

TEST(SlotChoice, IsNotMisledByLongPausesBetweenLooks) {
    OneTrigger board(written(threeSlots()));
    board.hold(0, 1, 10000).press(100).up(100);
    EXPECT_EQ(board.told().size(), 1U) << "one look proves no half second";
    board.up(600);
    board.hold(1, 1, 10000);
    EXPECT_FALSE(board.drawing()) << "one look proves no long press";
}

TEST(SlotChoiceSafety, DoesNothingBeforeTheTriggerWasReleasedForHalfASecond) {
    OneTrigger board(written(threeSlots()));
    board.press(5000);
    for (int i = 0; i < 10; ++i) board.up(LOAD_PLAYER_ARMING_MS - 1).press(1000);
    EXPECT_TRUE(board.reports().empty());
    EXPECT_EQ(board.told().size(), 1U);
}

TEST(SlotChoiceSafety, DrawsOnlyAfterHalfASecondWithoutAPress) {
    OneTrigger board(written(threeSlots()));
    board.up(600).press(100).up(LOAD_PLAYER_ARMING_MS - 100).press(3000);
    EXPECT_TRUE(board.reports().empty());
    board.up(LOAD_PLAYER_ARMING_MS).press(SLOT_CHOICE_LONG_MS - 1);
    EXPECT_TRUE(board.reports().empty());
    board.press(1);
    EXPECT_FALSE(board.reports().empty());
}

TEST(SlotChoiceSafety, StopsAtOnceWithTheButtonUpAtAnyPress) {
    const Bytes bytes = written(threeSlots());
    OneTrigger whole(bytes);
    whole.up(600).press(SLOT_CHOICE_LONG_MS);
    int length = 0;
    for (; whole.drawing(); ++length) whole.up(1);
    int whileDown = 0;
    for (int after = LOAD_PLAYER_DEBOUNCE_MS; after < length; after += 53) {
        OneTrigger board(bytes);
        board.up(600).press(SLOT_CHOICE_LONG_MS).up(after);
        ASSERT_TRUE(board.drawing()) << after;
        whileDown += board.reports().back().buttons;
        board.press(1);
        EXPECT_FALSE(board.drawing()) << after;
        EXPECT_EQ(board.reports().back().buttons, 0) << after;
        const std::size_t reports = board.reports().size();
        // The press that stopped it neither draws nor chooses, however long it is held.
        board.press(after % 2 == 0 ? 100 : 2000).up(200);
        EXPECT_EQ(board.reports().size(), reports) << after;
        EXPECT_EQ(board.told().size(), 1U) << after;
    }
    EXPECT_GT(whileDown, 0) << "no stop came while the button was down";
}

TEST(SlotChoiceSafety, KeepsToTheFirstButton) {
    OneTrigger board(written(threeSlots()));
    board.up(600).press(SLOT_CHOICE_LONG_MS);
    board.drawToTheEnd();
    for (const SeenReport& report : board.reports()) {
        ASSERT_TRUE(report.buttons == 0 || report.buttons == 1);
        ASSERT_GE(report.dx, -127);
        ASSERT_GE(report.dy, -127);
    }
}

TEST(SlotChoice, DrawsAgainAfterADrawing) {
    const board::Load load = threeSlots();
    OneTrigger board(written(load));
    board.up(600).press(SLOT_CHOICE_LONG_MS);
    board.drawToTheEnd();
    const std::vector<SeenReport> first = board.takeReports();
    board.up(600).press(SLOT_CHOICE_LONG_MS);
    board.drawToTheEnd();
    ASSERT_EQ(board.reports().size(), first.size());
    for (std::size_t i = 0; i < first.size(); ++i) {
        EXPECT_EQ(board.reports()[i].dx, first[i].dx);
        EXPECT_EQ(board.reports()[i].buttons, first[i].buttons);
    }
}

TEST(SlotChoice, PassesOverADamagedSlotAndSaysSo) {
    const board::Load load = threeSlots();
    Bytes bytes = written(load);
    const std::size_t data = 64 + 3 * 96;  // The first slot's, after header and directory.
    bytes[data] ^= 1U;
    OneTrigger board(bytes);
    EXPECT_EQ(board.opened(), LOAD_PLAYER_OK);
    board.up(600).press(2000).up(600);
    EXPECT_TRUE(board.reports().empty());
    board.press(100).up(600).press(SLOT_CHOICE_LONG_MS);
    EXPECT_TRUE(board.drawing());
    EXPECT_EQ(board.told(), (std::vector<Told>{{0, LOAD_PLAYER_DAMAGED}, {1, LOAD_PLAYER_OK}}));
}

TEST(SlotChoice, DoesNothingWithWhatIsNoLoad) {
    OneTrigger board(Bytes(300, 7));
    EXPECT_EQ(board.opened(), LOAD_PLAYER_NO_LOAD);
    board.up(600).press(100).up(600).press(3000);
    EXPECT_TRUE(board.reports().empty());
    EXPECT_TRUE(board.told().empty());
}

}  // namespace
}  // namespace pantile
