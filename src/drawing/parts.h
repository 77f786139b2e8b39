#pragma once

// Parts: what of a colour is drawn between two picks. Mostly all of it.

#include <array>
#include <optional>
#include <vector>

#include "drawing/request.h"

namespace pantile::drawing {

/// A number for a part; parts stand in for colours wherever only cells matter.
using Part = core::PaletteIndex;

struct Parts {
    core::Grid grid;  ///< By cell its part; where nothing is painted, the index that says so.
    std::optional<core::PaletteIndex> leaveUnpainted;
    std::array<core::PaletteIndex, 256> colours;  ///< By part; meaningless for unused numbers.

    /// Each colour a part, under its own number.
    static Parts wholeColours(const DrawingRequest& request);

    bool isPainted(core::Point cell) const { return grid.at(cell) != leaveUnpainted; }

    /// A number that no cell has and that does not mean unpainted; none if all 256 are used.
    std::optional<Part> freeNumber() const;
};

}  // namespace pantile::drawing
