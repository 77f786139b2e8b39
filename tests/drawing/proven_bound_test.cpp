// The strong bound and the planner against every order of colours and cells on tiny grids, and the
// bound against plans that the planner does not make.

#include "drawing/proven_bound.h"

#include <algorithm>
#include <array>
#include <limits>
#include <numeric>
#include <set>

#include <gtest/gtest.h>

#include "drawing/links.h"
#include "drawing/pen_path.h"
#include "drawing/planner.h"
#include "drawing/replay.h"
#include "drawing/requests.h"
#include "support/matchers.h"

namespace pantile::drawing {
namespace {

using core::PenModel;
using tests::failsWith;
using tests::isOk;

/// The quickest of all plans that draw each colour once, by trying every order of the colours and
/// of the cells in them.
class AllPlans {
public:
    explicit AllPlans(const DrawingRequest& request)
        : m_request(request), m_model(request.canvas, request.timing), m_ways(request, m_model) {
        for (const core::PaletteIndex colour : request.grid.cells()) {
            if (colour != request.leaveUnpainted) m_colours.push_back(colour);
        }
        std::sort(m_colours.begin(), m_colours.end());
        m_colours.erase(std::unique(m_colours.begin(), m_colours.end()), m_colours.end());
    }

    std::int64_t quickest() {
        std::int64_t best = std::numeric_limits<std::int64_t>::max();
        do {
            std::vector<Stroke> strokes;
            for (std::size_t place = 0; place < m_colours.size(); ++place) {
                const auto layer = quickestLayer(place);
                strokes.insert(strokes.end(), layer.begin(), layer.end());
            }
            const Plan plan = timedPlan(std::move(strokes), m_model);
            EXPECT_THAT(provePlan(plan, m_request), isOk());
            best = std::min(best, plan.milliseconds);
        } while (std::next_permutation(m_colours.begin(), m_colours.end()));
        return best;
    }

private:
    std::vector<Stroke> quickestLayer(std::size_t place) const {
        Layer layer{m_colours[place], {}, {}};
        for (int y = 0; y < m_request.grid.height(); ++y) {
            for (int x = 0; x < m_request.grid.width(); ++x) {
                const core::PaletteIndex there = m_request.grid.at(x, y);
                const auto found = std::find(m_colours.begin() + static_cast<std::ptrdiff_t>(place),
                                             m_colours.end(), there);
                layer.passable.push_back(found != m_colours.end() ? 1 : 0);
                if (there == layer.colour) layer.runs.push_back({{x, y}, {x, y}});
            }
        }
        const Links links(layer, m_ways, m_model);
        std::vector<Node> order(links.count());
        std::iota(order.begin(), order.end(), Node{0});
        std::vector<Node> best = order;
        while (std::next_permutation(order.begin(), order.end())) {
            if (length(order, links, place) < length(best, links, place)) best = order;
        }
        return strokesAlong(best, links, layer.colour, layer.passable, m_ways);
    }

    std::int64_t length(const std::vector<Node>& order, const Links& links,
                        std::size_t place) const {
        const auto cell = [&](Node node) { return m_model.cellCentre(links.cell(node)); };
        std::int64_t total = m_model.travelMs(m_model.swatch(m_colours[place]), cell(order[0]));
        for (std::size_t i = 1; i < order.size(); ++i) {
            total += links.between(order[i - 1], order[i]);
        }
        if (place + 1 == m_colours.size()) return total;
        return total + m_model.travelMs(cell(order.back()), m_model.swatch(m_colours[place + 1]));
    }

    const DrawingRequest& m_request;
    TimeModel m_model;
    PenWays m_ways;
    std::vector<core::PaletteIndex> m_colours;
};

DrawingRequest tinyRequest(std::uint64_t seed) {
    tests::Random random(seed);
    std::vector<std::string> rows(static_cast<std::size_t>(random.between(2, 3)));
    const int width = random.between(2, 4);
    for (std::string& row : rows) {
        for (int x = 0; x < width; ++x) row += "0011223."[random.between(0, 7)];
    }
    const PenModel pen = random.between(0, 1) == 0 ? PenModel::WholeCells : PenModel::Diagonals;
    auto timing = core::PointerTiming::quick();
    timing.maxStepUp = random.between(0, 1) == 0 ? 127 : 12;
    return tests::requestFor(rows, pen, timing);
}

/// The gap is the one that docs/drawing.md section 8 states.
TEST(PlanDrawing, IsTheQuickestOfAllPlansOfTinyTextures) {
    constexpr std::int64_t kPerMilleAtMost = 20;
    int tried = 0;
    int quickest = 0;
    for (std::uint64_t seed = 0; seed < 100; ++seed) {
        const DrawingRequest request = tinyRequest(seed);
        std::array<int, 256> cells{};
        for (const core::PaletteIndex colour : request.grid.cells()) ++cells.at(colour);
        if (*std::max_element(cells.begin(), cells.begin() + 16) > 5) continue;
        const Plan plan = planDrawing(request).value();
        if (plan.strokes.empty()) continue;
        const std::int64_t best = AllPlans(request).quickest();
        ASSERT_LE(plan.milliseconds, best + best * kPerMilleAtMost / 1000)
            << tests::described(seed, request);
        ASSERT_LE(provenBounds(request).value().everyPlan, best) << tests::described(seed, request);
        ASSERT_LE(provenBounds(request).value().everyPlan, plan.milliseconds);
        ++tried;
        quickest += plan.milliseconds <= best ? 1 : 0;
    }
    EXPECT_GT(tried, 40);
    EXPECT_GT(quickest, tried * 95 / 100);
}

std::size_t coloursIn(const core::Grid& grid) {
    return std::set<core::PaletteIndex>(grid.cells().begin(), grid.cells().end()).size();
}

TEST(ProvenBound, HoldsOnSeededRandomTextures) {
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
        const DrawingRequest request = tests::randomRequest(seed, 8);
        if (coloursIn(request.grid) > 7) continue;
        const auto bound = provenBounds(request);
        ASSERT_THAT(bound, isOk());
        ASSERT_GE(bound->everyPlan, lowerBoundMs(request));
        ASSERT_LE(bound->everyPlan, planDrawing(request).value().milliseconds)
            << tests::described(seed, request);
    }
}

/// Colours drawn in two visits each, with all cells of the first visit covered or not: plans that
/// the planner does not make.
Plan twiceVisited(tests::Random& random, const DrawingRequest& request) {
    std::vector<Stroke> first;
    std::vector<Stroke> second;
    for (int y = 0; y < request.grid.height(); ++y) {
        for (int x = 0; x < request.grid.width(); ++x) {
            if (!request.isPainted({x, y})) continue;
            const Stroke stroke{request.grid.at(x, y), {{x, y}}};
            (random.between(0, 1) == 0 ? first : second).push_back(stroke);
        }
    }
    const auto byColour = [](const Stroke& a, const Stroke& b) { return a.colour < b.colour; };
    std::stable_sort(first.begin(), first.end(), byColour);
    std::stable_sort(second.rbegin(), second.rend(), byColour);
    first.insert(first.end(), second.begin(), second.end());
    return timedPlan(std::move(first), TimeModel(request.canvas, request.timing));
}

TEST(ProvenBound, HoldsForPlansThatComeBackToColours) {
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        tests::Random random(seed);
        core::PointerTiming timing = core::PointerTiming::quick();
        timing.pressMs = timing.releaseMs = 1;
        timing.settleMs = random.between(30, 60);
        const auto request =
            tests::requestFor({"0101", "1010", "0101"}, PenModel::WholeCells, timing);
        const Plan plan = twiceVisited(random, request);
        ASSERT_THAT(provePlan(plan, request), isOk());
        ASSERT_LE(provenBounds(request).value().everyPlan, plan.milliseconds) << "seed " << seed;
    }
}

TEST(ProvenBound, KnowsThatGapsCostLifts) {
    const DrawingRequest request = tests::requestFor({"0.0.1"});
    EXPECT_LE(lowerBoundMs(request) + 33, provenBounds(request).value().everyPlan);
}

TEST(ProvenBound, IsReachedByAFrameAndWhatLiesInIt) {
    const DrawingRequest request = tests::requestFor({"0000", "0110", "0000"});
    EXPECT_EQ(provenBounds(request).value().everyPlan, planDrawing(request).value().milliseconds);
}

TEST(ProvenBound, IsTheCheapOneWhereItsProofDoesNotHold) {
    const auto lines = tests::requestFor({"0101"}, PenModel::Lines);
    EXPECT_EQ(provenBounds(lines).value().everyPlan, lowerBoundMs(lines));
    core::PointerTiming timing;
    timing.maxStepDown = 7;
    const auto shortSteps = tests::requestFor({"0101"}, PenModel::WholeCells, timing);
    EXPECT_EQ(provenBounds(shortSteps).value().everyPlan, lowerBoundMs(shortSteps));
}

TEST(ProvenBound, StopsWhenAsked) {
    std::stop_source source;
    source.request_stop();
    const core::Progress progress{source.get_token(), {}};
    EXPECT_THAT(provenBounds(tests::requestFor({"0101"}), progress),
                failsWith(core::ErrorKind::Cancelled, "stopped"));
}

}  // namespace
}  // namespace pantile::drawing
