#include "drawing/straight_runs.h"

#include <gmock/gmock.h>

#include "drawing/requests.h"

namespace pantile::drawing {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(StraightRuns, AreTheLongestAlongRows) {
    const auto runs = rowRuns(tests::requestFor({"001", "0.1", ".00"}));
    EXPECT_THAT(runs[0], ElementsAre(StraightRun{{0, 0}, {1, 0}}, StraightRun{{0, 1}, {0, 1}},
                                     StraightRun{{1, 2}, {2, 2}}));
    EXPECT_THAT(runs[1], ElementsAre(StraightRun{{2, 0}, {2, 0}}, StraightRun{{2, 1}, {2, 1}}));
    EXPECT_THAT(runs[255], IsEmpty());
}

TEST(StraightRuns, AreTheLongestAlongColumns) {
    const auto runs = columnRuns(tests::requestFor({"001", "0.1", ".00"}));
    EXPECT_THAT(runs[0], ElementsAre(StraightRun{{0, 0}, {0, 1}}, StraightRun{{1, 0}, {1, 0}},
                                     StraightRun{{1, 2}, {1, 2}}, StraightRun{{2, 2}, {2, 2}}));
    EXPECT_THAT(runs[1], ElementsAre(StraightRun{{2, 0}, {2, 1}}));
}

TEST(StraightRuns, DoNotJoinAcrossAGapOrARowsEnd) {
    const auto runs = rowRuns(tests::requestFor({"0.0", "000"}));
    EXPECT_THAT(runs[0], ElementsAre(StraightRun{{0, 0}, {0, 0}}, StraightRun{{2, 0}, {2, 0}},
                                     StraightRun{{0, 1}, {2, 1}}));
}

}  // namespace
}  // namespace pantile::drawing
