#include "drawing/colour_order.h"

#include <algorithm>
#include <numeric>

namespace pantile::drawing {
namespace {

/// Rounds end by themselves when nothing improves; this bounds the work for 256 colours.
constexpr int kMostRounds = 20;

class Ways {
public:
    Ways(const std::vector<ColourTours>& colours, const TimeModel& model)
        : m_colours(colours), m_model(model), m_count(colours.size()) {
        m_ms.reserve(m_count * (m_count + 1));
        for (std::size_t from = 0; from < m_count; ++from) {
            for (std::size_t to = 0; to < m_count; ++to) {
                m_ms.push_back(timeOf(from, bestTour(from, to), to));
            }
            m_lastMs.push_back(timeOf(from, bestTour(from, kEnd), kEnd));
            m_firstMs.push_back(model.travelMs(model.start(), model.swatch(colours[from].colour)));
        }
    }

    static constexpr std::size_t kEnd = static_cast<std::size_t>(-1);

    /// The tour of `from` after which the swatch of `to` is reached soonest.
    std::size_t bestTour(std::size_t from, std::size_t to) const {
        std::size_t best = 0;
        for (std::size_t t = 1; t < m_colours[from].tours.size(); ++t) {
            if (timeOf(from, t, to) < timeOf(from, best, to)) best = t;
        }
        return best;
    }

    /// Between places of an order, kEnd standing before the first and behind the last.
    std::int64_t between(std::size_t from, std::size_t to) const {
        if (from == kEnd) return to == kEnd ? 0 : m_firstMs[to];
        return to == kEnd ? m_lastMs[from] : m_ms[from * m_count + to];
    }

private:
    std::int64_t timeOf(std::size_t from, std::size_t tour, std::size_t to) const {
        const Tour& drawn = m_colours[from].tours[tour];
        if (to == kEnd) return drawn.milliseconds;
        return drawn.milliseconds + m_model.travelMs(m_model.cellCentre(drawn.runs.back().to),
                                                     m_model.swatch(m_colours[to].colour));
    }

    const std::vector<ColourTours>& m_colours;
    const TimeModel& m_model;
    std::size_t m_count;
    std::vector<std::int64_t> m_ms;
    std::vector<std::int64_t> m_lastMs;
    std::vector<std::int64_t> m_firstMs;
};

using Order = std::vector<std::size_t>;

std::size_t placeOrEnd(const Order& order, std::size_t place) {
    return place < order.size() ? order[place] : Ways::kEnd;
}

/// Puts the colour at `place` where it costs least; whether that is better than where it was.
bool moveToBestPlace(Order& order, std::size_t place, const Ways& ways) {
    const std::size_t colour = order[place];
    Order others = order;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(place));
    const auto costAt = [&](std::size_t p) {
        const std::size_t before = p == 0 ? Ways::kEnd : others[p - 1];
        const std::size_t after = placeOrEnd(others, p);
        return ways.between(before, colour) + ways.between(colour, after) -
               ways.between(before, after);
    };
    std::size_t best = place;
    for (std::size_t p = 0; p <= others.size(); ++p) {
        if (costAt(p) < costAt(best)) best = p;
    }
    if (best == place) return false;
    others.insert(others.begin() + static_cast<std::ptrdiff_t>(best), colour);
    order = std::move(others);
    return true;
}

bool improveRound(Order& order, const Ways& ways) {
    bool better = false;
    for (std::size_t place = 0; place < order.size(); ++place) {
        better = moveToBestPlace(order, place, ways) || better;
    }
    return better;
}

}  // namespace

std::vector<Leg> orderColours(const std::vector<ColourTours>& colours, const TimeModel& model) {
    const Ways ways(colours, model);
    Order order(colours.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    for (int round = 0; round < kMostRounds; ++round) {
        if (!improveRound(order, ways)) break;
    }
    std::vector<Leg> legs;
    for (std::size_t place = 0; place < order.size(); ++place) {
        legs.push_back({order[place], ways.bestTour(order[place], placeOrEnd(order, place + 1))});
    }
    return legs;
}

}  // namespace pantile::drawing
