#include "picture/gradient.h"

#include <algorithm>
#include <cstdint>

#include "core/palette.h"
#include "core/range_check.h"
#include "picture/path.h"
#include "picture/threshold_mask.h"

namespace pantile::picture {
namespace {

using core::Error;
using core::ErrorKind;
using core::Point;
using core::Result;

Result<void> check(const Gradient& gradient) {
    PANTILE_RETURN_IF_ERROR(checkPlace(gradient.from));
    PANTILE_RETURN_IF_ERROR(checkPlace(gradient.to));
    PANTILE_RETURN_IF_ERROR(core::checkRange("the number of the gradient's colours",
                                             static_cast<std::int64_t>(gradient.colours.size()), 2,
                                             core::kMaxPaletteColours));
    if (gradient.from == gradient.to) {
        return Error{ErrorKind::InvalidInput, "the gradient begins and ends at the same place",
                     "give two places; their direction is the gradient's"};
    }
    return {};
}

core::PaletteIndex colourAt(const Gradient& gradient, Point cell) {
    const auto product = [](Point p, Point q) {
        return std::int64_t{p.x} * q.x + std::int64_t{p.y} * q.y;
    };
    const Point way{gradient.to.x - gradient.from.x, gradient.to.y - gradient.from.y};
    const Point gone{cell.x - gradient.from.x, cell.y - gradient.from.y};
    const std::int64_t whole = product(way, way);
    const std::int64_t part = std::clamp<std::int64_t>(product(gone, way), 0, whole);
    const auto steps = static_cast<std::int64_t>(gradient.colours.size()) - 1;
    const auto before = static_cast<std::size_t>(part * steps / whole);
    const std::int64_t rest = part * steps % whole;
    // rest / whole > (rank + 1/2) / 64
    const std::int64_t halves = 2 * kBayer8.rankAt(cell.x, cell.y) + 1;
    const bool next = 2 * std::int64_t{kBayer8.count()} * rest > halves * whole;
    return gradient.colours[next ? before + 1 : before];
}

}  // namespace

Result<core::Grid> withGradient(core::Grid grid, const CellSet& where, const Gradient& gradient) {
    PANTILE_RETURN_IF_ERROR(check(gradient));
    for (const Point cell : where.cells()) grid.set(cell.x, cell.y, colourAt(gradient, cell));
    return grid;
}

}  // namespace pantile::picture
