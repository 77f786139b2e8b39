#include "drawing/tours.h"

#include <algorithm>
#include <numeric>

#include <gmock/gmock.h>

#include "drawing/cover.h"
#include "drawing/requests.h"

namespace pantile::drawing {
namespace {

using testing::ElementsAre;

const Runs kTwoRows{{{0, 0}, {1, 0}}, {{3, 0}, {4, 0}}, {{0, 2}, {2, 2}}};

TEST(Serpentine, DrawsEveryOtherLineBackwards) {
    EXPECT_THAT(serpentine(kTwoRows, Lines::Rows, Corner::FirstForwards),
                ElementsAre(StraightRun{{0, 0}, {1, 0}}, StraightRun{{3, 0}, {4, 0}},
                            StraightRun{{2, 2}, {0, 2}}));
    EXPECT_THAT(serpentine(kTwoRows, Lines::Rows, Corner::FirstBackwards),
                ElementsAre(StraightRun{{4, 0}, {3, 0}}, StraightRun{{1, 0}, {0, 0}},
                            StraightRun{{0, 2}, {2, 2}}));
    EXPECT_THAT(serpentine(kTwoRows, Lines::Rows, Corner::LastForwards),
                ElementsAre(StraightRun{{0, 2}, {2, 2}}, StraightRun{{4, 0}, {3, 0}},
                            StraightRun{{1, 0}, {0, 0}}));
    EXPECT_THAT(serpentine(kTwoRows, Lines::Rows, Corner::LastBackwards),
                ElementsAre(StraightRun{{2, 2}, {0, 2}}, StraightRun{{0, 0}, {1, 0}},
                            StraightRun{{3, 0}, {4, 0}}));
}

TEST(Serpentine, TellsColumnsFromRows) {
    const Runs columns{{{0, 0}, {0, 1}}, {{0, 3}, {0, 4}}, {{1, 5}, {1, 5}}};
    EXPECT_THAT(serpentine(columns, Lines::Columns, Corner::FirstBackwards),
                ElementsAre(StraightRun{{0, 4}, {0, 3}}, StraightRun{{0, 1}, {0, 0}},
                            StraightRun{{1, 5}, {1, 5}}));
}

/// The distance the pen goes from its last place to the nearest end that is left.
TEST(NearestFirst, AlwaysTakesANearestEnd) {
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
        const DrawingRequest request = tests::randomRequest(seed, 70);
        const TimeModel model(request.canvas, request.timing);
        for (const Runs& runs : rowRuns(request)) {
            const Runs tour = nearestFirst(runs, request.grid.size(), model.start(), model);
            ASSERT_EQ(tour.size(), runs.size());
            for (std::size_t i = 1; i < tour.size(); ++i) {
                const core::Point pen = tour[i - 1].to;
                const int gone = longerSide(pen, tour[i].from);
                for (std::size_t j = i; j < tour.size(); ++j) {
                    ASSERT_LE(gone, longerSide(pen, tour[j].from));
                    ASSERT_LE(gone, longerSide(pen, tour[j].to));
                }
            }
        }
    }
}

/// Every order of `runs` and every direction of each.
std::int64_t bestByTryingAll(const Runs& runs, core::PaletteIndex colour, const TimeModel& model) {
    std::vector<std::size_t> order(runs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::int64_t best = tourMs(runs, colour, model);
    do {
        for (unsigned turns = 0; turns < 1U << runs.size(); ++turns) {
            Runs tour;
            for (const std::size_t i : order) {
                tour.push_back((turns >> i & 1U) != 0 ? turned(runs[i]) : runs[i]);
            }
            best = std::min(best, tourMs(tour, colour, model));
        }
    } while (std::next_permutation(order.begin(), order.end()));
    return best;
}

std::int64_t bestTourMs(const DrawingRequest& request, const TimeModel& model) {
    const auto tours =
        toursOf(0, rowRuns(request)[0], columnRuns(request)[0], request.grid.size(), model);
    const auto best = std::min_element(
        tours.begin(), tours.end(),
        [](const Tour& a, const Tour& b) { return a.milliseconds < b.milliseconds; });
    return best->milliseconds;
}

/// Short steps with the pen up make travel dear, so that the order matters on tiny grids. The gap
/// is the one that docs/drawing.md section 8 states.
TEST(Tours, StayWithinTheStatedGapOfAllOrders) {
    constexpr double kStatedWorstGap = 1.12;
    constexpr double kStatedMeanGap = 1.01;
    double sum = 0;
    double worst = 0;
    int tried = 0;
    for (std::uint64_t seed = 0; seed < 300; ++seed) {
        tests::Random random(seed);
        std::vector<std::string> rows(static_cast<std::size_t>(random.between(2, 6)));
        const int width = random.between(2, 6);
        for (std::string& row : rows) {
            for (int x = 0; x < width; ++x) row += random.between(0, 2) == 0 ? '0' : '.';
        }
        core::PointerTiming timing = core::PointerTiming::quick();
        timing.maxStepUp = 4;
        const DrawingRequest request = tests::requestFor(rows, core::PenModel::WholeCells, timing);
        const auto alongRows = rowRuns(request)[0];
        const auto alongColumns = columnRuns(request)[0];
        const auto fewest = fewestRuns(alongRows, alongColumns, request.grid.size());
        const std::size_t most = std::max(alongRows.size(), alongColumns.size());
        if (most < 3 || most > 5) continue;
        const TimeModel model(request.canvas, request.timing);
        const std::int64_t best =
            std::min({bestByTryingAll(alongRows, 0, model), bestByTryingAll(alongColumns, 0, model),
                      bestByTryingAll(fewest, 0, model)});
        ASSERT_LE(best, bestTourMs(request, model));
        const double gap =
            static_cast<double>(bestTourMs(request, model)) / static_cast<double>(best);
        ASSERT_LE(gap, kStatedWorstGap) << tests::described(seed, request);
        worst = std::max(worst, gap);
        sum += gap;
        ++tried;
    }
    ASSERT_GT(tried, 50);
    EXPECT_LE(sum / tried, kStatedMeanGap);
    RecordProperty("worst_gap", std::to_string(worst));
    RecordProperty("mean_gap", std::to_string(sum / tried));
}

TEST(Tours, HaveThePlainOneFirst) {
    const DrawingRequest request = tests::requestFor({"00.0", "0.00"});
    const TimeModel model(request.canvas, request.timing);
    const Runs rows = rowRuns(request)[0];
    const auto tours = toursOf(0, rows, columnRuns(request)[0], request.grid.size(), model);
    EXPECT_EQ(tours[0].runs, serpentine(rows, Lines::Rows, Corner::FirstForwards));
}

}  // namespace
}  // namespace pantile::drawing
