#pragma once

// LeastTree: what at least it takes to hold the cells of a colour together, while cells of later
// colours may be passed. Authority: docs/drawing.md section 5.

#include <array>
#include <bitset>
#include <cstdint>
#include <unordered_map>
#include <utility>
#include <vector>

#include "drawing/parts.h"
#include "drawing/pen_ways.h"
#include "drawing/request.h"

namespace pantile::drawing {

using ColourSet = std::bitset<256>;

/// Units: milliseconds.
class LeastTree {
public:
    /// Ways of more steps are not looked at, so that a tree may come out too long; never with
    /// kAnySteps.
    static constexpr int kUsualSteps = 14;
    static constexpr int kAnySteps = 100'000;

    LeastTree(const DrawingRequest& request, const PenWays& ways, int mostSteps = kUsualSteps);

    /// Of parts instead of colours: cells of the same colour may always be passed, whatever part
    /// they are of.
    LeastTree(const Parts& parts, const PenWays& ways, int mostSteps = kUsualSteps);

    /// The painted colours, in palette order.
    const std::vector<core::PaletteIndex>& colours() const { return m_colours; }

    /// The least spanning tree of the colour's cells, with ways through cells of the colour and of
    /// `later`; what no way of fewer steps than a lift is worth joins costs a lift of one cell.
    /// Cost: about ten steps for each cell of the colour; answers are kept.
    std::int64_t milliseconds(core::PaletteIndex colour, const ColourSet& later);

    /// The same, but the answer is not kept.
    std::int64_t measured(core::PaletteIndex colour, const ColourSet& later);

    /// Cells visited so far: what work is counted in.
    std::int64_t work() const { return m_work; }

private:
    /// A cell by its place in a list of the grid's rows with a border around it, so that every cell
    /// has all neighbours.
    using Place = std::uint32_t;

    /// A way between the two pieces that it joins.
    using Edge = std::pair<Place, Place>;

    /// How a cell was reached: in how many steps, from which piece.
    struct Reached {
        std::int32_t steps;
        Place piece;
    };

    /// The cells of another colour that lie next to a colour's pieces, where searches begin.
    struct Shore {
        core::PaletteIndex colour = 0;
        std::vector<Place> cells;
        std::vector<Place> pieces;  ///< Of each cell, the first of the pieces it lies next to.
        std::vector<Edge> joined;   ///< Pieces that lie next to one cell: two steps apart.
    };

    /// A colour's cells, as far as they hang together by themselves: whatever may be passed, a step
    /// from one to the next is the shortest link there is.
    struct Pieces {
        std::vector<Place> roots;  ///< One cell of each piece, which stands for it.
        std::vector<Shore> shores;
        std::int64_t innerMs = 0;  ///< What holds the pieces themselves together.
    };

    std::array<std::vector<Place>, 256> cellsOf(const Parts& parts) const;
    void listColours(const Parts& parts);
    void listSteps(bool aslant);
    Pieces piecesOf(const std::vector<Place>& cells);
    std::vector<Shore> shoresOf(const std::vector<Place>& cells);
    void leaveShore(const Shore& shore);
    void spread(core::PaletteIndex colour, const ColourSet& later);
    void meet(Reached from, Reached to);
    std::int64_t joined(std::size_t pieces);
    Place rootOf(Place cell);

    std::int64_t m_stepMs;
    std::int64_t m_liftMs;
    std::int32_t m_mostSteps;
    Place m_rowLength;
    std::vector<Place> m_steps;  ///< What is added to a place to come to each neighbour.
    std::vector<core::PaletteIndex> m_colours;
    std::array<Pieces, 256> m_pieces;
    std::array<ColourSet, 256> m_alike;  ///< By part, the parts of the same colour.
    std::array<std::unordered_map<ColourSet, std::int64_t>, 256> m_known;
    std::vector<std::uint16_t> m_colourAt;  ///< 256 where nothing is painted.
    std::vector<Reached> m_reached;         ///< By cell.
    std::vector<Place> m_parents;           ///< By cell, of the trees of pieces joined so far.
    std::vector<Place> m_queue;
    std::vector<std::vector<Edge>> m_edges;  ///< By steps.
    std::int64_t m_work = 0;
};

}  // namespace pantile::drawing
