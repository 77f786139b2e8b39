#include "drawing/colour_order.h"

#include <algorithm>
#include <numeric>

#include <gtest/gtest.h>

#include "drawing/requests.h"

namespace pantile::drawing {
namespace {

/// Colours whose tours are single cells, so that the ways between them are all that counts.
std::vector<ColourTours> randomColours(tests::Random& random, int count, const TimeModel& model) {
    std::vector<ColourTours> colours;
    for (int i = 0; i < count; ++i) {
        const auto colour = static_cast<core::PaletteIndex>(i);
        std::vector<Tour> tours;
        const int choices = random.between(1, 3);
        for (int t = 0; t < choices; ++t) {
            const core::Point cell{random.between(0, 63), random.between(0, 63)};
            const Runs runs{{cell, cell}};
            tours.push_back({runs, tourMs(runs, colour, model)});
        }
        colours.push_back({colour, std::move(tours)});
    }
    return colours;
}

std::int64_t timeOf(const std::vector<ColourTours>& colours, const std::vector<Leg>& legs,
                    const TimeModel& model) {
    std::vector<Stroke> strokes;
    for (const Leg& leg : legs) {
        for (const StraightRun& run : colours[leg.colour].tours[leg.tour].runs) {
            strokes.push_back({colours[leg.colour].colour, {run.from}});
        }
    }
    return timedPlan(std::move(strokes), model).milliseconds;
}

std::vector<Leg> plainOrder(std::size_t count) {
    std::vector<Leg> legs;
    for (std::size_t i = 0; i < count; ++i) legs.push_back({i, 0});
    return legs;
}

/// Every order of the colours; for each the best tours, chosen one by one as they do not hang
/// together.
std::int64_t bestByTryingAll(const std::vector<ColourTours>& colours, const TimeModel& model) {
    std::vector<Leg> legs = plainOrder(colours.size());
    std::int64_t best = timeOf(colours, legs, model);
    const auto byColour = [](const Leg& a, const Leg& b) { return a.colour < b.colour; };
    do {
        std::vector<Leg> chosen = legs;
        for (Leg& leg : chosen) {
            std::int64_t bestHere = timeOf(colours, chosen, model);
            const std::size_t tours = colours[leg.colour].tours.size();
            std::size_t bestTour = leg.tour;
            for (std::size_t t = 0; t < tours; ++t) {
                leg.tour = t;
                const std::int64_t ms = timeOf(colours, chosen, model);
                if (ms < bestHere) {
                    bestHere = ms;
                    bestTour = t;
                }
            }
            leg.tour = bestTour;
        }
        best = std::min(best, timeOf(colours, chosen, model));
    } while (std::next_permutation(legs.begin(), legs.end(), byColour));
    return best;
}

core::PointerTiming shortSteps() {
    core::PointerTiming timing = core::PointerTiming::quick();
    timing.maxStepUp = 20;
    return timing;
}

TEST(ColourOrder, IsNeverSlowerThanTheOrderGiven) {
    const TimeModel model(tests::canvasFor({64, 64}, 64), shortSteps());
    for (std::uint64_t seed = 0; seed < 100; ++seed) {
        tests::Random random(seed);
        const auto colours = randomColours(random, random.between(1, 40), model);
        ASSERT_LE(timeOf(colours, orderColours(colours, model), model),
                  timeOf(colours, plainOrder(colours.size()), model))
            << "seed " << seed;
    }
}

/// The gap is the one that docs/drawing.md section 8 states.
TEST(ColourOrder, StaysWithinTheStatedGapOfAllOrders) {
    constexpr double kStatedGap = 1.02;
    const TimeModel model(tests::canvasFor({64, 64}, 64), shortSteps());
    double worst = 1;
    for (std::uint64_t seed = 0; seed < 40; ++seed) {
        tests::Random random(seed);
        const auto colours = randomColours(random, random.between(2, 5), model);
        const auto planned = timeOf(colours, orderColours(colours, model), model);
        const auto best = bestByTryingAll(colours, model);
        ASSERT_LE(best, planned);
        worst = std::max(worst, static_cast<double>(planned) / static_cast<double>(best));
    }
    EXPECT_LE(worst, kStatedGap);
    RecordProperty("worst_gap", std::to_string(worst));
}

TEST(ColourOrder, HoldsEveryColourOnce) {
    const TimeModel model(tests::canvasFor({64, 64}, 64), {});
    tests::Random random(7);
    const auto colours = randomColours(random, 64, model);
    std::vector<std::size_t> seen;
    for (const Leg& leg : orderColours(colours, model)) seen.push_back(leg.colour);
    std::sort(seen.begin(), seen.end());
    std::vector<std::size_t> all(64);
    std::iota(all.begin(), all.end(), std::size_t{0});
    EXPECT_EQ(seen, all);
}

TEST(ColourOrder, IsEmptyForNoColours) {
    const TimeModel model(tests::canvasFor({4, 4}, 4), {});
    EXPECT_TRUE(orderColours({}, model).empty());
}

}  // namespace
}  // namespace pantile::drawing
