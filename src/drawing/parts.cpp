#include "drawing/parts.h"

namespace pantile::drawing {

Parts Parts::wholeColours(const DrawingRequest& request) {
    Parts parts{request.grid, request.leaveUnpainted, {}};
    for (std::size_t i = 0; i < parts.colours.size(); ++i) {
        parts.colours.at(i) = static_cast<core::PaletteIndex>(i);
    }
    return parts;
}

std::optional<Part> Parts::freeNumber() const {
    std::array<bool, 256> used{};
    for (const Part part : grid.cells()) used.at(part) = true;
    for (std::size_t i = 0; i < used.size(); ++i) {
        const auto part = static_cast<Part>(i);
        if (!used.at(i) && part != leaveUnpainted) return part;
    }
    return std::nullopt;
}

}  // namespace pantile::drawing
