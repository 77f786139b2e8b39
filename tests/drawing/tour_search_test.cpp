// The tour part alone: against all orders on tiny layers, and against published instances whose
// shortest tours are known.

#include "drawing/tour_search.h"

#include <algorithm>
#include <numeric>

#include <gtest/gtest.h>

#include "drawing/requests.h"

namespace pantile::drawing {
namespace {

/// A layer of all cells of colour 0 that may pass cells of colour 1.
struct TinyLayer {
    DrawingRequest request;
    TimeModel model;
    PenWays ways;
    Layer layer;

    explicit TinyLayer(DrawingRequest wanted)
        : request(std::move(wanted)), model(request.canvas, request.timing), ways(request, model) {
        for (int y = 0; y < request.grid.height(); ++y) {
            for (int x = 0; x < request.grid.width(); ++x) {
                const core::Point cell{x, y};
                layer.passable.push_back(request.isPainted(cell) ? 1 : 0);
                if (request.grid.at(cell) == 0) layer.runs.push_back({cell, cell});
            }
        }
    }

    PenTour tour() const {
        Links links(layer, ways, model);
        std::vector<std::int64_t> from;
        std::vector<std::int64_t> to;
        for (Node node = 0; node < links.count(); ++node) {
            const core::Point cell = model.cellCentre(links.cell(node));
            from.push_back(model.travelMs(model.swatch(0), cell));
            to.push_back(model.travelMs(cell, model.swatch(1)));
        }
        return {std::move(links), std::move(from), std::move(to)};
    }
};

std::int64_t lengthOf(const std::vector<Node>& order, const TinyLayer& tiny, const Links& links) {
    const auto cellOf = [&](Node node) { return tiny.model.cellCentre(links.cell(node)); };
    std::int64_t total = tiny.model.travelMs(tiny.model.swatch(0), cellOf(order.front())) +
                         tiny.model.travelMs(cellOf(order.back()), tiny.model.swatch(1));
    for (std::size_t i = 1; i < order.size(); ++i) total += links.between(order[i - 1], order[i]);
    return total;
}

std::int64_t shortestOfAll(const TinyLayer& tiny, const Links& links) {
    std::vector<Node> order(links.count());
    std::iota(order.begin(), order.end(), Node{0});
    std::int64_t best = lengthOf(order, tiny, links);
    while (std::next_permutation(order.begin(), order.end())) {
        best = std::min(best, lengthOf(order, tiny, links));
    }
    return best;
}

/// Random cells of colours 0, 1 and unpainted; none if there are too many for all orders.
std::vector<std::string> tinyRows(tests::Random& random) {
    std::vector<std::string> rows(static_cast<std::size_t>(random.between(2, 5)));
    const int width = random.between(2, 5);
    for (std::string& row : rows) {
        for (int x = 0; x < width; ++x) row += "01.0"[random.between(0, 3)];
    }
    return rows;
}

TEST(PenTour, IsTheShortestOfAllOrdersOfFewCells) {
    int tried = 0;
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        tests::Random random(seed);
        core::PointerTiming timing = core::PointerTiming::quick();
        timing.maxStepUp = 8;
        const TinyLayer tiny(
            tests::requestFor(tinyRows(random), core::PenModel::WholeCells, timing));
        if (tiny.layer.runs.size() < 3 || tiny.layer.runs.size() > 7) continue;
        PenTour tour = tiny.tour();
        core::SplitMix64 numbers(seed);
        for (int i = 0; i < 50; ++i) tour.kick(numbers);
        const std::int64_t best = shortestOfAll(tiny, tour.links());
        ASSERT_EQ(lengthOf(tour.order(), tiny, tour.links()), tour.milliseconds());
        ASSERT_GE(tour.milliseconds(), best);
        ASSERT_LE(tour.milliseconds(), best + best / 20) << tests::described(seed, tiny.request);
        ++tried;
    }
    EXPECT_GT(tried, 50);
}

TEST(PenTour, GoesThroughEveryCellOnceAndForetellsItsTime) {
    const TinyLayer tiny(tests::pictureRequest(tests::ditheredGradient(20), {}));
    PenTour tour = tiny.tour();
    core::SplitMix64 numbers(4);
    std::int64_t known = tour.milliseconds();
    for (int i = 0; i < 300; ++i) {
        const bool shorter = tour.kick(numbers);
        ASSERT_EQ(shorter, tour.milliseconds() < known);
        ASSERT_LE(tour.milliseconds(), known);
        known = tour.milliseconds();
    }
    std::vector<Node> order = tour.order();
    ASSERT_EQ(lengthOf(order, tiny, tour.links()), known);
    std::sort(order.begin(), order.end());
    for (Node node = 0; node < tour.links().count(); ++node) ASSERT_EQ(order[node], node);
}

TEST(Links, AreAsLongBackAsForth) {
    for (std::uint64_t seed = 0; seed < 40; ++seed) {
        const TinyLayer tiny(tests::randomRequest(seed, 12));
        const Links links(tiny.layer, tiny.ways, tiny.model);
        for (Node a = 0; a < links.count(); ++a) {
            for (Node b = 0; b < a; ++b) ASSERT_EQ(links.between(a, b), links.between(b, a));
        }
    }
}

}  // namespace
}  // namespace pantile::drawing
