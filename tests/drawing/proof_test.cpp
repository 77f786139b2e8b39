// provePlan, and what it lets through when single reports are damaged.

#include <numeric>

#include <gtest/gtest.h>

#include "drawing/planner.h"
#include "drawing/replay.h"
#include "drawing/requests.h"
#include "drawing/timing.h"
#include "support/matchers.h"

namespace pantile::drawing {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

Plan planOf(const DrawingRequest& request) {
    return planDrawing(request).value();
}

TEST(ProvePlan, NamesTheFirstWrongCell) {
    const DrawingRequest request = tests::requestFor({"00.", "111"});
    Plan plan = planOf(request);
    EXPECT_THAT(provePlan(plan, request), isOk());
    plan.strokes.pop_back();
    EXPECT_THAT(provePlan(plan, request), failsWith(ErrorKind::Internal, "unpainted instead of"));
}

TEST(ProvePlan, RejectsPaintOnAnUnpaintedCell) {
    const DrawingRequest request = tests::requestFor({"00.", "111"});
    Plan plan = planOf(request);
    plan.strokes.push_back({plan.strokes.back().colour, {{2, 0}}});
    EXPECT_THAT(provePlan(plan, request), failsWith(ErrorKind::Internal, "column 2, row 0 colour"));
}

TEST(ProvePlan, RejectsPaintBesideTheTextureOnALargerCanvas) {
    DrawingRequest request = tests::requestFor({"00"});
    request.canvas = tests::canvasFor({3, 1}, 2);
    const Plan plan =
        timedPlan({Stroke{0, {{0, 0}, {2, 0}}}}, TimeModel(request.canvas, request.timing));
    EXPECT_THAT(provePlan(plan, request), failsWith(ErrorKind::Internal, "column 2, row 0"));
}

TEST(ProvePlan, RejectsForetoldFiguresThatAreWrong) {
    const DrawingRequest request = tests::requestFor({"01", "10"});
    const Plan right = planOf(request);
    Plan plan = right;
    ++plan.milliseconds;
    EXPECT_THAT(provePlan(plan, request), failsWith(ErrorKind::Internal, " ms, but"));
    plan = right;
    ++plan.picks;
    EXPECT_THAT(provePlan(plan, request), failsWith(ErrorKind::Internal, " picks, but"));
    plan = right;
    --plan.lifts;
    EXPECT_THAT(provePlan(plan, request), failsWith(ErrorKind::Internal, " lifts, but"));
}

TEST(ProvePlan, RejectsARequestThatDoesNotFit) {
    DrawingRequest request = tests::requestFor({"01", "10"});
    const Plan plan = planOf(request);
    request.canvas.size = {1, 1};
    EXPECT_THAT(provePlan(plan, request), failsWith(ErrorKind::DoesNotFit, "2x2"));
}

/// Whether `reports` still draw the request in the time foretold, that is: the damage is not seen.
bool passes(const std::vector<Report>& reports, const DrawingRequest& request,
            const Replayed& wanted) {
    const auto shown = replay(reports, request.canvas, request.timing);
    return shown && *shown == wanted;
}

/// Of straight plans: where strokes pass under later ones, a way that goes astray by a cell may be
/// covered, and then nothing is wrong.
class DamagedReports : public testing::Test {
protected:
    static constexpr std::uint64_t kSeeds = 40;

    template <typename Damage>
    void expectSeen(Damage damage) {
        int tried = 0;
        for (std::uint64_t seed = 0; seed < kSeeds; ++seed) {
            const DrawingRequest request = tests::randomRequest(seed, 8);
            const Plan plan = planStraight(request).value();
            const auto reports = reportsOf(plan, request.canvas, request.timing);
            const auto wanted = replay(reports, request.canvas, request.timing);
            ASSERT_THAT(wanted, isOk());
            for (std::size_t i = 0; i < reports.size(); ++i) {
                std::vector<Report> damaged = reports;
                if (!damage(damaged, i, request)) continue;
                ++tried;
                ASSERT_FALSE(passes(damaged, request, *wanted))
                    << "report " << i << ", " << tests::described(seed, request);
            }
        }
        EXPECT_GT(tried, 1000);
    }
};

TEST_F(DamagedReports, AreRejectedWhenOneIsDropped) {
    expectSeen([](std::vector<Report>& reports, std::size_t i, const DrawingRequest&) {
        if (reports[i].milliseconds == 0) return false;
        reports.erase(reports.begin() + static_cast<std::ptrdiff_t>(i));
        return true;
    });
}

TEST_F(DamagedReports, AreRejectedWhenTheButtonIsFlipped) {
    expectSeen([](std::vector<Report>& reports, std::size_t i, const DrawingRequest&) {
        reports[i].pressed = !reports[i].pressed;
        return true;
    });
}

/// A way to a swatch may go astray by a cell within the swatch, but then all that follows is off by
/// that cell.
TEST_F(DamagedReports, AreRejectedWhenAMoveIsOffByACell) {
    expectSeen([](std::vector<Report>& reports, std::size_t i, const DrawingRequest& request) {
        const int pitch = request.canvas.geometry.cellPitch;
        const int dx = reports[i].dx + (reports[i].dx > 0 ? -pitch : pitch);
        reports[i].dx = static_cast<std::int8_t>(dx);
        return true;
    });
}

TEST_F(DamagedReports, AreRejectedWhenAButtonChangeIsSwappedWithItsNeighbour) {
    expectSeen([](std::vector<Report>& reports, std::size_t i, const DrawingRequest&) {
        if (i == 0) return false;
        const bool edge = reports[i].pressed != reports[i - 1].pressed;
        if (!edge || reports[i] == reports[i - 1]) return false;
        std::swap(reports[i], reports[i - 1]);
        return true;
    });
}

TEST_F(DamagedReports, AreRejectedWhenOneLastsTooShort) {
    expectSeen([](std::vector<Report>& reports, std::size_t i, const DrawingRequest&) {
        if (reports[i].milliseconds == 0) return false;
        --reports[i].milliseconds;
        return true;
    });
}

}  // namespace
}  // namespace pantile::drawing
