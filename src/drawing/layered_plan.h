#pragma once

// LayeredPlan: colour after colour, or part after part of colours, strokes that turn and pass under
// what is painted later. Authority: docs/drawing.md section 5.

#include <cstdint>
#include <vector>

#include "core/progress.h"
#include "core/result.h"
#include "drawing/pen_ways.h"
#include "drawing/request.h"
#include "drawing/stroke.h"
#include "drawing/timing.h"
#include "drawing/tour_search.h"
#include "drawing/visit_search.h"

namespace pantile::drawing {

class LayeredPlan {
public:
    /// Shape: the visits' order holds each part once; `request` must pass checkRequest.
    /// Errors: Cancelled.
    static core::Result<LayeredPlan> create(const DrawingRequest& request, const TimeModel& model,
                                            Visits visits, const core::Progress& progress);

    /// Tries changes to strokes and to the order of the parts. Never makes the plan slower.
    /// Errors: Cancelled.
    core::Result<void> improve(std::int64_t tries, std::uint64_t seed,
                               const core::Progress& progress);

    /// Not less than what the strokes take: straight pieces may be quicker than step by step, and
    /// parts of one colour that follow one another need no pick.
    std::int64_t milliseconds() const;

    std::vector<Stroke> strokes() const;

private:
    LayeredPlan(const DrawingRequest& request, const TimeModel& model, Visits visits);

    core::PaletteIndex colourAt(std::size_t place) const;

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
    Parts m_parts;
    std::vector<Part> m_order;
    std::vector<Runs> m_runs;         ///< By place in the order: what the tour goes through.
    std::vector<PenTour> m_tours;     ///< By place in the order.
    std::vector<std::size_t> m_lots;  ///< Places, each as often as its size says: what is tried.
};

}  // namespace pantile::drawing
