// The drawing player, by itself and in the place Boards.

#include "desktop/views/drawing_bench.h"

#include <map>

#include <QAbstractButton>
#include <QComboBox>
#include <QSlider>

#include <gtest/gtest.h>

#include "catalogue/boards.h"
#include "catalogue/edit.h"
#include "catalogue/loads.h"
#include "desktop/views/boards_page.h"
#include "desktop/views/drawing_screen.h"
#include "library_fixture.h"
#include "open_window.h"
#include "tasks/drawing_film.h"

namespace pantile::desktop {
namespace {

using core::TextureId;
using tests::comes;
using tests::LibraryFolder;
using tests::OpenWindow;
using tests::smallTexture;

tasks::FilmedDrawing filmOf(LibraryFolder& folder, TextureId id) {
    auto filmed = tasks::filmStored(folder.library(), id, {});
    EXPECT_TRUE(filmed.has_value());
    return *std::move(filmed);
}

TEST(FilmStateTest, ShowsTheSameWhicheverWayOneComes) {
    LibraryFolder folder;
    const auto filmed = filmOf(folder, folder.add(smallTexture("rope", 0x5a3c, 16)));
    FilmState straight(filmed.film);
    FilmState wandering(filmed.film);
    std::size_t changes = 0;
    const auto count = [&](std::size_t) { ++changes; };
    const std::int64_t all = filmed.film.end.milliseconds;
    std::uint64_t seed = 20261126;
    for (int round = 0; round < 200; ++round) {
        seed = seed * 6364136223846793005ULL + 1442695040888963407ULL;
        const auto time = static_cast<std::int64_t>(seed >> 33U) % (all + 2) - 1;
        wandering.seek(time, count);
        straight.seek(-1, count);
        straight.seek(time, count);
        ASSERT_EQ(wandering.cells(), straight.cells()) << time;
        ASSERT_EQ(wandering.landed(), straight.landed());
    }
    wandering.seek(all, count);
    EXPECT_EQ(wandering.cells(), filmed.film.end.cells);
    EXPECT_GT(changes, 0U);
}

TEST(FilmStateTest, GoesByReportsAndByStrokes) {
    LibraryFolder folder;
    const auto filmed = filmOf(folder, folder.add(smallTexture("rope", 0x5a3c)));
    FilmState state(filmed.film);
    const auto nothing = [](std::size_t) {};
    EXPECT_EQ(state.now(), nullptr);
    std::size_t reports = 0;
    while (state.landed() < filmed.film.instants.size()) {
        state.seek(state.nextReport(), nothing);
        ++reports;
        ASSERT_EQ(state.landed(), reports);
    }
    state.seek(state.reportBefore(), nothing);
    EXPECT_EQ(state.landed(), reports - 1);
    // The pen goes down once for each pick and each stroke.
    state.seek(-1, nothing);
    int downs = 0;
    while (state.nextStroke() < state.milliseconds()) {
        state.seek(state.nextStroke(), nothing);
        EXPECT_TRUE(state.now()->pressed);
        ++downs;
    }
    EXPECT_EQ(downs, filmed.planned.plan.picks + filmed.planned.plan.lifts);
    state.seek(state.strokeBefore(), nothing);
    EXPECT_TRUE(state.now()->pressed);
    state.seek(-1, nothing);
    EXPECT_EQ(state.strokeBefore(), -1);
    EXPECT_EQ(state.reportBefore(), -1);
}

/// Pixels by colour.
std::map<QRgb, double> coloursOf(QWidget& widget) {
    const QImage seen = widget.grab().toImage().convertToFormat(QImage::Format_RGB32);
    std::map<QRgb, double> counts;
    for (int y = 0; y < seen.height(); ++y) {
        for (int x = 0; x < seen.width(); ++x) ++counts[seen.pixel(x, y)];
    }
    return counts;
}

struct Playing {
    Playing() {
        rope = folder.add(smallTexture("rope", 0x5a3c));
        foam = folder.add(smallTexture("foam", 0x1234));
        catalogue::StoredLoad load;
        load.name = "evening";
        load.board = catalogue::listBoards(folder.library())->front().name;
        load.slots = {rope, foam};
        EXPECT_TRUE(catalogue::addLoad(folder.library(), load).has_value());
        open = std::make_unique<OpenWindow>(folder);
        open->act("boardsPlace");
        EXPECT_TRUE(comes([&] { return planned().state() != nullptr; }));
    }

    DrawingBench& bench() { return open->part<DrawingBench>("drawingBench"); }

    DrawingScreen& planned() { return open->part<DrawingScreen>("plannedScreen"); }

    DrawingScreen& byRow() { return open->part<DrawingScreen>("byRowScreen"); }

    QSlider& time() { return open->part<QSlider>("drawingTime"); }

    void click(const char* name) { open->part<QAbstractButton>(name).click(); }

    LibraryFolder folder;
    TextureId rope;
    TextureId foam;
    std::unique_ptr<OpenWindow> open;
};

TEST(DrawingBenchTest, ShowsTheFirstSlotThenTheOneChosen) {
    Playing playing;
    EXPECT_EQ(playing.open->words("drawingTitle"), QStringLiteral("rope"));
    EXPECT_TRUE(playing.open->words("drawingFacts").contains(u"row by row"));
    EXPECT_TRUE(playing.open->words("plannedWords").startsWith(u"Planned: 0.0 s of "));
    EXPECT_LT(playing.planned().state()->milliseconds(), playing.byRow().state()->milliseconds());
    auto& slots = playing.open->part<QAbstractItemView>("traySlots");
    QTest::mouseClick(slots.viewport(), Qt::LeftButton, {},
                      slots.visualRect(slots.model()->index(1, 0)).center());
    EXPECT_TRUE(comes([&] { return playing.open->words("drawingTitle") == u"foam"; }));
}

TEST(DrawingBenchTest, PlaysToTheEndAndThenShowsTheTexture) {
    Playing playing;
    playing.open->part<QComboBox>("drawingSpeed").setCurrentIndex(3);
    const auto before = coloursOf(playing.planned());
    QTest::keyClick(&playing.bench(), Qt::Key_Space);
    EXPECT_EQ(playing.open->part<QAbstractButton>("playDrawing").text(), QStringLiteral("Pause"));
    ASSERT_TRUE(comes([&] { return playing.time().value() == playing.time().maximum(); }));
    EXPECT_TRUE(comes(
        [&] { return playing.open->part<QAbstractButton>("playDrawing").text() == u"Play"; }));
    const auto filmed = filmOf(playing.folder, playing.rope);
    EXPECT_EQ(playing.planned().state()->cells(), filmed.film.end.cells);
    EXPECT_EQ(playing.byRow().state()->cells(), filmed.film.end.cells);
    // What is seen is the texture: each colour in as many squares as it has cells, but for what
    // the pen and its way cover.
    auto after = coloursOf(playing.planned());
    std::map<QRgb, double> cells;
    const core::Texture rope = smallTexture("rope", 0x5a3c);
    for (const core::PaletteIndex index : rope.grid().cells()) {
        const core::Rgb8 colour = rope.palette()[index];
        ++cells[qRgb(colour.r, colour.g, colour.b)];
    }
    ASSERT_GT(cells.size(), 1U);
    double square = 0;
    for (const auto& [colour, count] : cells) {
        const auto swatch = before.find(colour);
        after[colour] -= swatch == before.end() ? 0 : swatch->second;
        square = std::max(square, after[colour] / count);
    }
    EXPECT_GT(square, 16);
    for (const auto& [colour, count] : cells) EXPECT_GT(after[colour], 0.5 * square * count);
    // Once more from the start.
    QTest::keyClick(&playing.bench(), Qt::Key_Space);
    EXPECT_TRUE(comes([&] { return playing.time().value() < playing.time().maximum(); }));
}

TEST(DrawingBenchTest, StepsBackAndForthByKeysAndButtons) {
    Playing playing;
    const FilmState& state = *playing.planned().state();
    QTest::keyClick(&playing.bench(), Qt::Key_Right);
    EXPECT_EQ(state.landed(), 1U);
    QTest::keyClick(&playing.bench(), Qt::Key_Right);
    EXPECT_EQ(state.landed(), 2U);
    QTest::keyClick(&playing.bench(), Qt::Key_Left);
    EXPECT_EQ(state.landed(), 1U);
    playing.click("strokeOn");
    EXPECT_TRUE(state.now()->pressed);
    const std::size_t first = state.landed();
    QTest::keyClick(&playing.bench(), Qt::Key_Right, Qt::ControlModifier);
    EXPECT_GT(state.landed(), first);
    playing.click("strokeBack");
    EXPECT_EQ(state.landed(), first);
    QTest::keyClick(&playing.bench(), Qt::Key_End);
    EXPECT_EQ(playing.time().value(), playing.time().maximum());
    playing.click("drawingStart");
    EXPECT_EQ(state.landed(), 0U);
    playing.time().setValue(playing.time().maximum() / 2);
    EXPECT_GT(state.landed(), 0U);
}

TEST(DrawingBenchTest, GoesStrokeByStrokeWhereNothingIsToMove) {
    Playing playing;
    playing.click("drawingInSteps");
    playing.click("playDrawing");
    EXPECT_TRUE(comes([&] { return playing.planned().state()->landed() > 0; }));
    EXPECT_TRUE(playing.planned().state()->now()->pressed);
    EXPECT_TRUE(playing.planned().accessibleDescription().endsWith(u"cells are painted"));
}

TEST(DrawingBenchTest, RestsWhileItIsNotSeenAndStaysWhereItIs) {
    Playing playing;
    playing.click("playDrawing");
    ASSERT_TRUE(comes([&] { return playing.time().value() > 0; }));
    playing.open->act("libraryPlace");
    const int value = playing.time().value();
    EXPECT_FALSE(QTest::qWaitFor([&] { return playing.time().value() != value; }, 200));
    // Other words are no other drawing.
    ASSERT_TRUE(
        catalogue::changeTags(playing.folder.library(), std::span(&playing.rope, 1), {{"wet"}}, {})
            .has_value());
    playing.open->act("boardsPlace");
    EXPECT_FALSE(QTest::qWaitFor([&] { return playing.time().value() != value; }, 1500));
}

TEST(DrawingBenchTest, SaysWhyThereIsNoDrawing) {
    LibraryFolder folder;
    catalogue::StoredLoad load;
    load.name = "large";
    load.board = catalogue::listBoards(folder.library())->front().name;
    load.slots = {folder.add(smallTexture("quay", 3, 200))};
    ASSERT_TRUE(catalogue::addLoad(folder.library(), load).has_value());
    OpenWindow open(folder);
    open.act("boardsPlace");
    EXPECT_TRUE(comes([&] { return open.words("drawingFacts").contains(u"fits no canvas"); }));
    EXPECT_EQ(open.words("drawingTitle"), QStringLiteral("quay"));
    EXPECT_FALSE(open.part<QWidget>("plannedScreen").isVisible());
    QTest::keyClick(&open.part<DrawingBench>("drawingBench"), Qt::Key_Space);
}

TEST(DrawingBenchTest, ClosingWhileItPlansWaitsForNothing) {
    LibraryFolder folder;
    catalogue::StoredLoad load;
    load.name = "evening";
    load.board = catalogue::listBoards(folder.library())->front().name;
    load.slots = {folder.add(smallTexture("rope", 0x5a3c, 64))};
    ASSERT_TRUE(catalogue::addLoad(folder.library(), load).has_value());
    OpenWindow open(folder);
    open.act("boardsPlace");
    ASSERT_TRUE(comes([&] { return open.words("drawingTitle") == u"rope"; }));
    EXPECT_TRUE(open.window.close());
}

}  // namespace
}  // namespace pantile::desktop
