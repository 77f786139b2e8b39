#pragma once

// LayeredPlan: colour after colour, strokes that turn and pass under what is painted later.
// Authority: docs/drawing.md section 5.

#include <cstdint>
#include <vector>

#include "core/progress.h"
#include "core/result.h"
#include "drawing/effort.h"
#include "drawing/pen_ways.h"
#include "drawing/request.h"
#include "drawing/stroke.h"
#include "drawing/timing.h"
#include "drawing/tour_search.h"

namespace pantile::drawing {

class LayeredPlan {
public:
    /// Shape: `order` holds each painted colour once; `request` must pass checkRequest.
    /// Errors: Cancelled.
    static core::Result<LayeredPlan> create(const DrawingRequest& request, const TimeModel& model,
                                            std::vector<core::PaletteIndex> order,
                                            const core::Progress& progress);

    /// Tries changes to strokes and to the order of colours. Never makes the plan slower.
    /// Errors: Cancelled.
    core::Result<void> improve(const Effort& effort, const core::Progress& progress);

    /// Without the picks, whose time does not depend on the plan. Not less than what the strokes
    /// take: straight pieces may be quicker than step by step.
    std::int64_t milliseconds() const;

    std::vector<Stroke> strokes() const;

private:
    LayeredPlan(const DrawingRequest& request, const TimeModel& model,
                std::vector<core::PaletteIndex> order);

    void addTour(std::size_t place, const std::vector<Runs>& choices);
    PenTour tourOf(std::size_t place, const Runs& runs) const;
    Layer layerOf(std::size_t place, const Runs& runs) const;
    std::vector<std::int64_t> toNext(std::size_t place, const Links& links) const;
    std::vector<std::uint8_t> passableAt(std::size_t place) const;
    std::int64_t firstWayMs() const;
    void listLots();
    void kickSome(core::SplitMix64& numbers);
    std::int64_t tryMove(core::SplitMix64& numbers);
    void moveColour(std::size_t from, std::size_t to);
    std::int64_t relink(std::size_t first, std::size_t last, core::SplitMix64& numbers);

    const DrawingRequest* m_request;
    const TimeModel* m_model;
    PenWays m_ways;
    std::vector<core::PaletteIndex> m_order;
    std::vector<Runs> m_runs;         ///< By place in the order: what the tour goes through.
    std::vector<PenTour> m_tours;     ///< By place in the order.
    std::vector<std::size_t> m_lots;  ///< Places, each as often as its size says: what is tried.
};

}  // namespace pantile::drawing
