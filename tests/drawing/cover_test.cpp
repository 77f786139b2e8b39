#include "drawing/cover.h"

#include <algorithm>
#include <bit>
#include <set>

#include <gtest/gtest.h>

#include "drawing/requests.h"

namespace pantile::drawing {
namespace {

std::set<core::Point> cellsOf(const StraightRun& run) {
    std::set<core::Point> cells;
    for (int y = run.from.y; y <= run.to.y; ++y) {
        for (int x = run.from.x; x <= run.to.x; ++x) cells.insert({x, y});
    }
    return cells;
}

std::set<core::Point> cellsOf(const Runs& runs) {
    std::set<core::Point> cells;
    for (const StraightRun& run : runs) cells.merge(cellsOf(run));
    return cells;
}

Runs coverOf(const DrawingRequest& request) {
    return fewestRuns(rowRuns(request)[0], columnRuns(request)[0], request.grid.size());
}

/// Every choice among the longest row and column runs.
std::size_t fewestByTryingAll(const DrawingRequest& request) {
    Runs all = rowRuns(request)[0];
    const Runs columns = columnRuns(request)[0];
    all.insert(all.end(), columns.begin(), columns.end());
    const std::set<core::Point> wanted = cellsOf(all);
    std::size_t best = all.size();
    for (unsigned choice = 0; choice < 1U << all.size(); ++choice) {
        const auto count = static_cast<std::size_t>(std::popcount(choice));
        if (count >= best) continue;
        Runs chosen;
        for (std::size_t i = 0; i < all.size(); ++i) {
            if ((choice >> i & 1U) != 0) chosen.push_back(all[i]);
        }
        if (cellsOf(chosen) == wanted) best = count;
    }
    return best;
}

TEST(Cover, NeedsTwoRunsForACross) {
    const Runs cover = coverOf(tests::requestFor({".0.", "000", ".0."}));
    EXPECT_EQ(cover.size(), 2U);
}

TEST(Cover, TrimsEndsThatAreCoveredTwice) {
    const Runs cover = coverOf(tests::requestFor({"000", "0..", "0.."}));
    ASSERT_EQ(cover.size(), 2U);
    EXPECT_EQ(cellsOf(cover[0]).size() + cellsOf(cover[1]).size(), 5U);
}

TEST(Cover, IsTheFewestOfAllOnTinyGrids) {
    int tried = 0;
    for (std::uint64_t seed = 0; seed < 400; ++seed) {
        tests::Random random(seed);
        std::vector<std::string> rows(static_cast<std::size_t>(random.between(1, 4)));
        const int width = random.between(1, 4);
        for (std::string& row : rows) {
            for (int x = 0; x < width; ++x) row += random.between(0, 2) == 0 ? '.' : '0';
        }
        const DrawingRequest request = tests::requestFor(rows);
        if (rowRuns(request)[0].size() + columnRuns(request)[0].size() > 13) continue;
        ++tried;
        const Runs cover = coverOf(request);
        ASSERT_EQ(cover.size(), fewestByTryingAll(request)) << tests::described(seed, request);
        ASSERT_EQ(cellsOf(cover), cellsOf(rowRuns(request)[0]));
    }
    EXPECT_GT(tried, 200);
}

TEST(Cover, CoversLargerGridsWithNoMoreRunsThanRowsOrColumns) {
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
        const DrawingRequest request = tests::randomRequest(seed, 60);
        const auto rows = rowRuns(request);
        const auto columns = columnRuns(request);
        for (std::size_t colour = 0; colour < rows.size(); ++colour) {
            const Runs cover = fewestRuns(rows[colour], columns[colour], request.grid.size());
            ASSERT_EQ(cellsOf(cover), cellsOf(rows[colour])) << tests::described(seed, request);
            ASSERT_LE(cover.size(), std::min(rows[colour].size(), columns[colour].size()));
        }
    }
}

}  // namespace
}  // namespace pantile::drawing
