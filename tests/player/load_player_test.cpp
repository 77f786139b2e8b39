// The player against loads that the writer made: its reports, replayed by the virtual toolkit, have
// to paint the texture and take the foretold time.

#include "player/load_player.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "board/load_layout.h"
#include "board/load_reader.h"
#include "board/profile.h"
#include "board/script_bits.h"
#include "drawing/planner.h"
#include "drawing/replay.h"
#include "player/memory_load.h"

namespace pantile {
namespace {

using drawing::Report;
using tests::Bytes;
using tests::isOk;
using tests::readMemory;
using tests::written;

static_assert(sizeof(load_player) <= 256, "the state has to fit a small board");
static_assert(sizeof(load_player_report) == 4);

void putLittle(Bytes& bytes, std::size_t at, std::uint32_t value) {
    for (int i = 0; i < 4; ++i) {
        bytes[at + static_cast<std::size_t>(i)] = static_cast<std::uint8_t>(value >> 8 * i);
    }
}

/// A load with one slot whose checksums are made right again.
Bytes withRightChecksums(Bytes bytes) {
    namespace layout = board::layout;
    const std::size_t data = layout::kHeaderBytes + layout::kEntryBytes;
    const auto sum = [&](std::size_t from, std::size_t count) {
        return layout::checksumOf(std::span(bytes).subspan(from, count));
    };
    putLittle(bytes, layout::kHeaderBytes + 8, sum(data, bytes.size() - data - 4));
    putLittle(bytes, layout::kHeaderBytes + 92, sum(layout::kHeaderBytes, 92));
    putLittle(bytes, bytes.size() - 4, sum(0, bytes.size() - 4));
    return bytes;
}

/// A board with a trigger and a clock of milliseconds. It notes every report and the time to the
/// next one, as the console would see them.
class Bench {
public:
    explicit Bench(Bytes bytes) : m_bytes(std::move(bytes)) {
        m_opened = load_player_open(&m_player, readMemory, &m_bytes);
    }

    load_player_status opened() const { return m_opened; }

    load_player_status choose(int slot) {
        return load_player_choose(&m_player, static_cast<std::uint8_t>(slot));
    }

    /// One millisecond; whether a report came of it.
    bool tick(bool trigger) {
        load_player_report report = {};
        const load_player_phase before = phase();
        const bool sent = load_player_tick(&m_player, trigger ? 1 : 0, 1, &report) != 0;
        const bool drawing = phase() == LOAD_PLAYER_DRAWING;
        if (sent) {
            auto& list = drawing || before == LOAD_PLAYER_DRAWING ? m_drawing : m_movingIn;
            list.push_back({report.dx, report.dy, report.pressed != 0, 0});
            m_last = report;
        }
        if (drawing && !m_drawing.empty()) ++m_drawing.back().milliseconds;
        return sent;
    }

    void hold(bool trigger, int milliseconds) {
        for (int i = 0; i < milliseconds; ++i) tick(trigger);
    }

    /// Arms, presses and lets the drawing run to its end.
    void draw() {
        hold(false, LOAD_PLAYER_ARMING_MS);
        EXPECT_EQ(phase(), LOAD_PLAYER_ARMED);
        hold(true, 100);
        for (int i = 0; i < 10'000'000 && running(); ++i) tick(false);
        EXPECT_EQ(phase(), LOAD_PLAYER_DISARMED);
    }

    bool running() const {
        return phase() == LOAD_PLAYER_MOVING_IN || phase() == LOAD_PLAYER_DRAWING;
    }

    load_player_phase phase() const { return load_player_phase_of(&m_player); }

    load_player& player() { return m_player; }

    Bytes& bytes() { return m_bytes; }

    const std::vector<Report>& movingIn() const { return m_movingIn; }

    const std::vector<Report>& drawing() const { return m_drawing; }

    std::size_t reports() const { return m_movingIn.size() + m_drawing.size(); }

    const load_player_report& last() const { return m_last; }

private:
    Bytes m_bytes;
    load_player m_player = {};
    load_player_status m_opened = LOAD_PLAYER_OK;
    std::vector<Report> m_movingIn;
    std::vector<Report> m_drawing;
    load_player_report m_last = {};
};

std::int64_t totalTime(const std::vector<Report>& reports) {
    std::int64_t total = 0;
    for (const Report& report : reports) total += report.milliseconds;
    return total;
}

void expectPaints(const Bench& bench, const board::LoadSlot& slot,
                  const core::PointerTiming& timing, const std::string& trace) {
    const auto replayed = drawing::replay(bench.drawing(), slot.canvas, timing);
    ASSERT_THAT(replayed, isOk()) << trace;
    const int width = slot.canvas.size.width;
    for (int y = 0; y < slot.canvas.size.height; ++y) {
        for (int x = 0; x < width; ++x) {
            const auto cell = replayed->cells[static_cast<std::size_t>(y * width + x)];
            std::optional<core::PaletteIndex> wanted;
            if (slot.grid.contains({x, y})) wanted = slot.grid.at(x, y);
            if (wanted == slot.palette.transparent()) wanted.reset();
            ASSERT_EQ(cell, wanted) << trace << ", cell " << x << ", " << y;
        }
    }
    EXPECT_EQ(totalTime(bench.drawing()), slot.plan.milliseconds) << trace;
}

TEST(LoadPlayer, PaintsRandomTexturesInTheForetoldTime) {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        const board::Load load = tests::randomLoad(seed, 3);
        const Bytes bytes = written(load);
        for (std::size_t slot = 0; slot < load.slots.size(); ++slot) {
            const std::string trace =
                "seed " + std::to_string(seed) + ", slot " + std::to_string(slot);
            Bench bench(bytes);
            ASSERT_EQ(bench.opened(), LOAD_PLAYER_OK) << trace;
            ASSERT_EQ(bench.choose(static_cast<int>(slot)), LOAD_PLAYER_OK) << trace;
            bench.draw();
            expectPaints(bench, load.slots[slot], load.timing, trace);
            const auto foretold =
                drawing::reportsOf(load.slots[slot].plan, load.slots[slot].canvas, load.timing);
            EXPECT_EQ(bench.drawing(), foretold) << trace;
            EXPECT_EQ(bench.last().last, 1) << trace;
        }
    }
}

TEST(LoadPlayer, PaintsAPlannedTextureOnTheShippedBoard) {
    const core::Board board = board::shippedBoards()[0];
    const core::Canvas canvas = board::shippedCanvases()[1];
    tests::Random random(21);
    core::Grid grid = *core::Grid::filled(32, 32, 2);
    for (int i = 0; i < 300; ++i) {
        grid.set(random.between(0, 31), random.between(0, 31),
                 static_cast<core::PaletteIndex>(random.between(0, 3)));
    }
    const auto plan = drawing::planDrawing({grid, std::nullopt, canvas, board.timing});
    ASSERT_THAT(plan, isOk());
    const board::LoadSlot slot = {
        "Shingle", grid, *core::Palette::create({{9, 0, 0}, {0, 9, 0}, {0, 0, 9}, {9, 9, 9}}),
        canvas, *plan};
    Bench bench(written({"Shore", board.timing, {slot}}));
    ASSERT_EQ(bench.choose(0), LOAD_PLAYER_OK);
    bench.draw();
    expectPaints(bench, slot, board.timing, "shingle");
}

TEST(LoadPlayer, FillsAndJumpsAsPlanned) {
    core::Board board = board::shippedBoards()[0];
    board.timing.maxStepDown = 127;
    core::Canvas canvas = board::shippedCanvases()[0];
    canvas.penModel = core::PenModel::Sampled;
    canvas.geometry.fillButton = core::Point{300, 400};
    core::Grid grid = *core::Grid::filled(16, 16, 2);
    tests::Random random(22);
    for (int i = 0; i < 40; ++i) grid.set(random.between(0, 15), random.between(0, 15), 1);
    const auto plan = drawing::planDrawing({grid, std::nullopt, canvas, board.timing});
    ASSERT_THAT(plan, isOk());
    ASSERT_EQ(plan->fill, core::PaletteIndex{2});
    ASSERT_EQ(plan->lifts, 1);
    const board::LoadSlot slot = {
        "Foam", grid, *core::Palette::create({{9, 0, 0}, {0, 9, 0}, {0, 0, 9}}), canvas, *plan};
    Bench bench(written({"Shore", board.timing, {slot}}));
    ASSERT_EQ(bench.choose(0), LOAD_PLAYER_OK);
    bench.draw();
    expectPaints(bench, slot, board.timing, "foam");
}

TEST(LoadPlayerDamage, RefusesAForgedFill) {
    namespace layout = board::layout;
    for (std::uint64_t seed = 1;; ++seed) {
        const board::Load load = tests::randomLoad(seed, 1);
        if (!load.slots[0].plan.fill) continue;
        const std::size_t data = layout::kHeaderBytes + layout::kEntryBytes;
        const auto palette = static_cast<std::size_t>(load.slots[0].palette.size());
        for (const auto& [at, byte] :
             {std::pair<std::size_t, int>{0, static_cast<int>(palette)},
              std::pair<std::size_t, int>{2, 0x80}, std::pair<std::size_t, int>{4, 0x80}}) {
            Bytes bad = written(load);
            bad[data + 3 * palette + at] = static_cast<std::uint8_t>(byte);
            Bench bench(withRightChecksums(std::move(bad)));
            ASSERT_EQ(bench.opened(), LOAD_PLAYER_OK);
            EXPECT_EQ(bench.choose(0), LOAD_PLAYER_DAMAGED) << "byte " << at;
        }
        return;
    }
}

TEST(LoadPlayerDamage, RefusesAPenModelThatItDoesNotKnow) {
    Bytes bad = written(tests::randomLoad(3, 1));
    bad[board::layout::kHeaderBytes + 31] = 4;
    Bench unknown(withRightChecksums(bad));
    EXPECT_EQ(unknown.choose(0), LOAD_PLAYER_DAMAGED);
}

TEST(LoadPlayer, PushesIntoTheCornerAndGoesToTheFirstCell) {
    const board::Load load = tests::randomLoad(3, 1);
    Bench bench(written(load));
    ASSERT_EQ(bench.choose(0), LOAD_PLAYER_OK);
    bench.draw();
    const int step = load.timing.maxStepUp;
    const std::size_t pushes = static_cast<std::size_t>((8192 + step - 1) / step);
    ASSERT_GT(bench.movingIn().size(), pushes);
    int x = 0;
    int y = 0;
    for (std::size_t i = 0; i < bench.movingIn().size(); ++i) {
        const Report& report = bench.movingIn()[i];
        EXPECT_FALSE(report.pressed);
        if (i < pushes) {
            EXPECT_EQ(report.dx, -step);
            EXPECT_EQ(report.dy, -step);
        } else {
            x += report.dx;
            y += report.dy;
        }
    }
    EXPECT_EQ((core::Point{x, y}), load.slots[0].canvas.geometry.gridCentre);
}

TEST(LoadPlayer, DescribesItsSlots) {
    const board::Load load = tests::randomLoad(12, 5);
    Bench bench(written(load));
    ASSERT_EQ(load_player_slots(&bench.player()), load.slots.size());
    for (std::size_t i = 0; i < load.slots.size(); ++i) {
        load_player_slot slot = {};
        ASSERT_EQ(load_player_describe(&bench.player(), static_cast<std::uint8_t>(i), &slot),
                  LOAD_PLAYER_OK);
        EXPECT_EQ(slot.title, load.slots[i].title);
        EXPECT_EQ(slot.width, load.slots[i].grid.width());
        EXPECT_EQ(slot.height, load.slots[i].grid.height());
        EXPECT_EQ(slot.colours, load.slots[i].palette.size());
        EXPECT_EQ(slot.milliseconds, load.slots[i].plan.milliseconds);
    }
    load_player_slot slot = {};
    const auto beyond = static_cast<std::uint8_t>(load.slots.size());
    EXPECT_EQ(load_player_describe(&bench.player(), beyond, &slot), LOAD_PLAYER_NO_SLOT);
    EXPECT_EQ(bench.choose(beyond), LOAD_PLAYER_NO_SLOT);
}

TEST(LoadPlayerSafety, DoesNothingBeforeASlotIsChosen) {
    Bench bench(written(tests::randomLoad(3, 1)));
    bench.hold(false, 1000);
    bench.hold(true, 1000);
    EXPECT_EQ(bench.reports(), 0U);
    EXPECT_EQ(bench.phase(), LOAD_PLAYER_IDLE);
}

TEST(LoadPlayerSafety, DoesNotStartWithATriggerHeldFromTheBeginning) {
    Bench bench(written(tests::randomLoad(3, 1)));
    ASSERT_EQ(bench.choose(0), LOAD_PLAYER_OK);
    bench.hold(true, 20000);
    EXPECT_EQ(bench.reports(), 0U);
    EXPECT_EQ(bench.phase(), LOAD_PLAYER_DISARMED);
}

TEST(LoadPlayerSafety, DoesNotArmWhenReleasedForLessThanHalfASecond) {
    Bench bench(written(tests::randomLoad(3, 1)));
    ASSERT_EQ(bench.choose(0), LOAD_PLAYER_OK);
    for (int round = 0; round < 10; ++round) {
        bench.hold(false, 499);
        bench.hold(true, 1);
    }
    EXPECT_EQ(bench.reports(), 0U);
    EXPECT_EQ(bench.phase(), LOAD_PLAYER_DISARMED);
    bench.hold(false, 500);
    EXPECT_EQ(bench.phase(), LOAD_PLAYER_ARMED);
}

TEST(LoadPlayerSafety, DoesNothingWhileArmedWithoutAPress) {
    Bench bench(written(tests::randomLoad(3, 1)));
    ASSERT_EQ(bench.choose(0), LOAD_PLAYER_OK);
    bench.hold(false, 100000);
    EXPECT_EQ(bench.reports(), 0U);
}

TEST(LoadPlayerSafety, DoesNotArmOnOneLongGap) {
    Bench bench(written(tests::randomLoad(3, 1)));
    ASSERT_EQ(bench.choose(0), LOAD_PLAYER_OK);
    load_player_report report = {};
    EXPECT_EQ(load_player_tick(&bench.player(), 0, 60000, &report), 0);
    EXPECT_EQ(bench.phase(), LOAD_PLAYER_DISARMED);
}

TEST(LoadPlayerSafety, GoesOnWhileTheFirstPressIsHeldOrBounces) {
    Bench bench(written(tests::randomLoad(3, 1)));
    ASSERT_EQ(bench.choose(0), LOAD_PLAYER_OK);
    bench.hold(false, 500);
    for (int i = 0; i < 5; ++i) {
        bench.hold(true, 2);
        bench.hold(false, 3);
    }
    bench.hold(true, 2000);
    EXPECT_TRUE(bench.running());
}

TEST(LoadPlayerSafety, StopsAtOnceWithTheButtonUpWheneverTheSecondPressComes) {
    const Bytes bytes = written(tests::randomLoad(3, 1));
    Bench whole(bytes);
    ASSERT_EQ(whole.choose(0), LOAD_PLAYER_OK);
    whole.hold(false, 500);
    int length = 0;
    for (whole.tick(true); whole.running(); ++length) whole.tick(false);
    ASSERT_GT(length, 1000);

    int whilePressed = 0;
    for (int after = LOAD_PLAYER_DEBOUNCE_MS; after < length; after += 37) {
        Bench bench(bytes);
        ASSERT_EQ(bench.choose(0), LOAD_PLAYER_OK);
        bench.hold(false, 500);
        bench.tick(true);
        bench.hold(false, after);
        ASSERT_TRUE(bench.running()) << after;
        whilePressed += bench.last().pressed;
        EXPECT_TRUE(bench.tick(true)) << after;
        EXPECT_EQ(bench.last().pressed, 0) << after;
        EXPECT_EQ(bench.last().dx, 0);
        EXPECT_EQ(bench.last().dy, 0);
        EXPECT_EQ(bench.last().last, 1);
        const std::size_t reports = bench.reports();
        bench.hold(true, 2000);
        EXPECT_EQ(bench.reports(), reports) << after;
        EXPECT_EQ(bench.phase(), LOAD_PLAYER_DISARMED);
    }
    EXPECT_GT(whilePressed, 0) << "no stop came while the button was down";
}

TEST(LoadPlayerSafety, HasToArmAgainAfterADrawing) {
    Bench bench(written(tests::randomLoad(3, 1)));
    ASSERT_EQ(bench.choose(0), LOAD_PLAYER_OK);
    bench.draw();
    const std::size_t reports = bench.reports();
    bench.hold(true, 3000);
    EXPECT_EQ(bench.reports(), reports);
    bench.hold(false, 500);
    bench.tick(true);
    EXPECT_TRUE(bench.running());
}

TEST(LoadPlayerSafety, KeepsItsSlotWhileItDraws) {
    Bench bench(written(tests::randomLoad(3, 1)));
    ASSERT_EQ(bench.choose(0), LOAD_PLAYER_OK);
    bench.hold(false, 500);
    bench.tick(true);
    EXPECT_EQ(bench.choose(0), LOAD_PLAYER_BUSY);
    EXPECT_TRUE(bench.running());
    bench.hold(false, 100);
    EXPECT_TRUE(bench.tick(true));
    EXPECT_EQ(bench.choose(0), LOAD_PLAYER_OK);
}

TEST(LoadPlayerSafety, NeverMovesOffGridAndBarWithTheButtonDown) {
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        const board::Load load = tests::randomLoad(seed, 1);
        const board::LoadSlot& slot = load.slots[0];
        Bench bench(written(load));
        ASSERT_EQ(bench.choose(0), LOAD_PLAYER_OK);
        bench.draw();
        core::Point pointer = slot.canvas.geometry.gridCentre;
        const core::Point last =
            slot.canvas.geometry.cellCentre({slot.grid.width() - 1, slot.grid.height() - 1});
        for (const Report& report : bench.drawing()) {
            pointer = {pointer.x + report.dx, pointer.y + report.dy};
            const bool moves = report.dx != 0 || report.dy != 0;
            if (!report.pressed || !moves) continue;
            ASSERT_GE(pointer.x, slot.canvas.geometry.gridCentre.x) << "seed " << seed;
            ASSERT_GE(pointer.y, slot.canvas.geometry.gridCentre.y) << "seed " << seed;
            ASSERT_LE(pointer.x, last.x) << "seed " << seed;
            ASSERT_LE(pointer.y, last.y) << "seed " << seed;
        }
    }
}

TEST(LoadPlayerSafety, StopsWithTheButtonUpIfTheLoadCannotBeReadOn) {
    Bench bench(written(tests::randomLoad(3, 1)));
    ASSERT_EQ(bench.choose(0), LOAD_PLAYER_OK);
    bench.hold(false, 500);
    bench.hold(true, 10);
    while (bench.running() && bench.last().pressed == 0) bench.tick(false);
    ASSERT_TRUE(bench.running());
    bench.bytes().clear();
    while (bench.running()) bench.tick(false);
    EXPECT_EQ(bench.last().pressed, 0);
    EXPECT_EQ(bench.last().last, 1);
    EXPECT_EQ(load_player_status_of(&bench.player()), LOAD_PLAYER_READ_FAILED);
}

TEST(LoadPlayerDamage, RefusesEveryDamagedByteOfWhatItReads) {
    const board::Load load = tests::randomLoad(3, 1);
    const Bytes good = written(load);
    // The last four bytes are the checksum of the whole, which a stream reader need not wait for.
    for (std::size_t at = 0; at + 4 < good.size(); ++at) {
        for (const unsigned flip : {0x01U, 0x80U, 0xFFU}) {
            Bytes bad = good;
            bad[at] = static_cast<std::uint8_t>(bad[at] ^ flip);
            Bench bench(std::move(bad));
            const bool refused =
                bench.opened() != LOAD_PLAYER_OK || bench.choose(0) != LOAD_PLAYER_OK;
            ASSERT_TRUE(refused) << "byte " << at;
            bench.hold(false, 600);
            bench.hold(true, 100);
            ASSERT_EQ(bench.reports(), 0U) << "byte " << at;
        }
    }
}

TEST(LoadPlayerDamage, RefusesEveryTruncation) {
    const Bytes good = written(tests::randomLoad(3, 1));
    for (std::size_t size = 0; size + 4 < good.size(); ++size) {
        Bench bench(Bytes(good.begin(), good.begin() + static_cast<std::ptrdiff_t>(size)));
        EXPECT_TRUE(bench.opened() != LOAD_PLAYER_OK || bench.choose(0) != LOAD_PLAYER_OK) << size;
    }
}

TEST(LoadPlayerDamage, TellsWhatIsNoLoadAndWhatIsNewer) {
    EXPECT_EQ(Bench(Bytes(200, 7)).opened(), LOAD_PLAYER_NO_LOAD);
    Bytes newer = written(tests::randomLoad(3, 1));
    newer[4] = 2;
    EXPECT_EQ(Bench(newer).opened(), LOAD_PLAYER_UNKNOWN);
}

/// Forged scripts with right checksums: the player keeps the rules of the format by itself.
TEST(LoadPlayerDamage, RefusesExactlyTheScriptsThatTheReaderRefuses) {
    namespace layout = board::layout;
    tests::Random random(4);
    int refused = 0;
    int taken = 0;
    int jumping = 0;
    for (int round = 0; round < 4000; ++round) {
        const board::Load load = tests::randomLoad(static_cast<std::uint64_t>(round % 16), 1);
        const board::LoadSlot& slot = load.slots[0];
        const Bytes good = written(load);
        const std::size_t data = layout::kHeaderBytes + layout::kEntryBytes;
        const std::size_t script = data + 3 * static_cast<std::size_t>(slot.palette.size()) +
                                   (slot.plan.fill ? layout::kFillBytes : 0);
        Bytes bad = good;
        const int changes = random.between(1, 3);
        for (int i = 0; i < changes; ++i) {
            const auto at = static_cast<std::size_t>(
                random.between(static_cast<int>(script), static_cast<int>(good.size()) - 5));
            const std::uint64_t mask =
                random.between(0, 1) == 0 ? 1U << random.between(0, 7) : random.next();
            bad[at] = static_cast<std::uint8_t>(bad[at] ^ mask);
        }
        bad = withRightChecksums(std::move(bad));
        const bool readerTakes = board::readLoad(bad).has_value();
        Bench bench(std::move(bad));
        ASSERT_EQ(bench.opened(), LOAD_PLAYER_OK);
        ASSERT_EQ(bench.choose(0) == LOAD_PLAYER_OK, readerTakes) << "round " << round;
        ++(readerTakes ? taken : refused);
        if (drawing::TimeModel(slot.canvas, load.timing).jumpCells() > 1) ++jumping;
    }
    EXPECT_GT(refused, 100);
    EXPECT_GT(taken, 50);
    EXPECT_GT(jumping, 100);
}

/// A load with one slot and without picture or fill, with another script in it.
Bytes withScript(const board::Load& load, const Bytes& script) {
    namespace layout = board::layout;
    Bytes bytes = written(load);
    const std::size_t data = layout::kHeaderBytes + layout::kEntryBytes;
    const auto palette = 3 * static_cast<std::size_t>(load.slots[0].palette.size());
    bytes.resize(data + palette);
    bytes.insert(bytes.end(), script.begin(), script.end());
    bytes.resize(bytes.size() + layout::kChecksumBytes);
    putLittle(bytes, 8, static_cast<std::uint32_t>(bytes.size()));
    putLittle(bytes, 60, layout::checksumOf(std::span(bytes).first(60)));
    putLittle(bytes, layout::kHeaderBytes + 4, static_cast<std::uint32_t>(palette + script.size()));
    return withRightChecksums(std::move(bytes));
}

// A length that is more than 16 bits can say, and would be 3 cells if they were all that counted.
TEST(LoadPlayerDamage, RefusesALengthThatGoesRound) {
    core::Canvas canvas = board::shippedCanvases()[0];
    const core::PointerTiming timing = core::PointerTiming::quick();
    const board::LoadSlot slot = {
        "Groyne", *core::Grid::filled(8, 8, 0), *core::Palette::create({{0, 0, 0}, {9, 9, 9}}),
        canvas, drawing::timedPlan({{0, {{0, 0}}}}, drawing::TimeModel(canvas, timing))};
    const board::Load load = {"Shore", timing, {slot}};
    const auto script = [](unsigned length) {
        board::ScriptBitWriter out;
        out.bits(0b100100, 6);    // A visit of one stroke in colour 0
        out.bits(0b10001000, 8);  // from the pen's cell
        out.bits(0b0001111, 7);   // to the east, 5 cells and
        out.number(length, 0);    // so many more.
        out.bits(0, 4);
        return out.bytes();
    };
    Bench right(withScript(load, script(2)));
    EXPECT_EQ(right.choose(0), LOAD_PLAYER_OK);
    for (const unsigned length : {3U, 251U, 256U, 65531U, 65534U}) {
        Bench wrong(withScript(load, script(length)));
        ASSERT_EQ(wrong.opened(), LOAD_PLAYER_OK);
        EXPECT_EQ(wrong.choose(0), LOAD_PLAYER_DAMAGED) << length;
    }
}

}  // namespace
}  // namespace pantile
