#include "drawing/film.h"

#include <algorithm>
#include <vector>

#include <gtest/gtest.h>

#include "drawing/planner.h"
#include "drawing/timing.h"
#include "requests.h"

namespace pantile::drawing {
namespace {

using tests::randomRequest;
using Cells = std::vector<std::optional<core::PaletteIndex>>;

Film filmOf(const Plan& plan, const DrawingRequest& request) {
    auto film =
        filmReplay(reportsOf(plan, request.canvas, request.timing), request.canvas, request.timing);
    EXPECT_TRUE(film.has_value()) << film.error().message;
    return film ? *std::move(film) : Film{};
}

void expectRunsBothWays(const Film& film, const std::string& what) {
    Cells cells(film.end.cells.size());
    for (const CellChange& change : film.changes) {
        ASSERT_EQ(cells.at(change.cell), change.before) << what;
        cells[change.cell] = change.after;
    }
    EXPECT_EQ(cells, film.end.cells) << what;
    for (auto change = film.changes.rbegin(); change != film.changes.rend(); ++change)
        cells[change->cell] = change->before;
    EXPECT_EQ(cells, Cells(film.end.cells.size())) << what;
}

void expectInOrder(const Film& film, const std::string& what) {
    std::int64_t now = 0;
    std::size_t changes = 0;
    for (const Instant& instant : film.instants) {
        ASSERT_GE(instant.milliseconds, now) << what;
        ASSERT_GE(instant.changes, changes) << what;
        now = instant.milliseconds;
        changes = instant.changes;
    }
    EXPECT_LE(now, film.end.milliseconds) << what;
    EXPECT_EQ(changes, film.changes.size()) << what;
}

TEST(Film, EndsAsTheReplayDoesAndRunsBothWays) {
    constexpr std::uint64_t kSeeds = 60;
    for (std::uint64_t seed = 0; seed < kSeeds; ++seed) {
        const DrawingRequest request = randomRequest(seed);
        const std::string what = tests::described(seed, request);
        for (const Plan& plan : {planDrawing(request).value(), planRowByRow(request)}) {
            const auto reports = reportsOf(plan, request.canvas, request.timing);
            const Film film = filmOf(plan, request);
            EXPECT_EQ(film.end, replay(reports, request.canvas, request.timing).value()) << what;
            EXPECT_EQ(film.end.milliseconds, plan.milliseconds) << what;
            EXPECT_EQ(film.instants.size(), reports.size()) << what;
            expectRunsBothWays(film, what);
            expectInOrder(film, what);
        }
    }
}

TEST(Film, SaysWhereThePenIsAndWhatItHolds) {
    const DrawingRequest request = tests::requestFor({"00", ".1"});
    const TimeModel model(request.canvas, request.timing);
    const Film film = filmOf(planRowByRow(request), request);
    const auto press = std::find_if(film.instants.begin(), film.instants.end(),
                                    [](const Instant& each) { return each.pressed; });
    ASSERT_NE(press, film.instants.end());
    EXPECT_EQ(press->pen, model.swatch(0));
    EXPECT_EQ(press->colour, core::PaletteIndex{0});
    EXPECT_EQ(press->changes, 0U);
    EXPECT_FALSE(film.instants.front().colour);
    EXPECT_EQ(film.instants.back().pen, model.cellCentre({1, 1}));
    EXPECT_FALSE(film.instants.back().pressed);
    EXPECT_EQ(film.instants.back().colour, core::PaletteIndex{1});
}

TEST(Film, ShowsAStrokeThatTheToolkitTakesBack) {
    DrawingRequest request = tests::requestFor({"00"});
    request.canvas.rules.leaving = core::PenLeaving::Undone;
    auto reports = reportsOf(planRowByRow(request), request.canvas, request.timing);
    // From the last cell over the right edge of the grid, before the button goes up.
    const auto interval = static_cast<std::uint16_t>(request.timing.reportIntervalMs);
    const auto release = std::find_if(reports.rbegin(), reports.rend(),
                                      [](const Report& each) { return each.pressed; });
    reports.insert(release.base(), {8, 0, true, interval});
    const auto film = filmReplay(reports, request.canvas, request.timing);
    ASSERT_TRUE(film.has_value()) << film.error().message;
    expectRunsBothWays(*film, "a stroke over the edge");
    EXPECT_EQ(film->changes.size(), 4U);
    EXPECT_EQ(film->end.cells, Cells(2));
}

TEST(Film, RefusesWhatTheReplayRefuses) {
    const DrawingRequest request = tests::requestFor({"00"});
    const std::vector<Report> reports = {{0, 0, true, 33}};
    const auto film = filmReplay(reports, request.canvas, request.timing);
    ASSERT_FALSE(film.has_value());
    EXPECT_EQ(film.error().message,
              replay(reports, request.canvas, request.timing).error().message);
}

}  // namespace
}  // namespace pantile::drawing
