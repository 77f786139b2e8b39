#include "picture/gradient.h"

#include <algorithm>
#include <cstdint>

#include "core/palette.h"
#include "core/range_check.h"
#include "picture/path.h"

namespace pantile::picture {
namespace {

using core::Error;
using core::ErrorKind;
using core::Point;
using core::Result;

constexpr int kRanks = 64;

// The rank 0..63 of a place in the 8x8 matrix M(2n) = [[4M, 4M+2], [4M+3, 4M+1]], M(1) = [0]: the
// bits of x xor y and of y in turn, the lowest first.
int rankAt(int x, int y) {
    const auto column = static_cast<unsigned>(x);
    const auto row = static_cast<unsigned>(y);
    unsigned rank = 0;
    for (unsigned bit = 0; bit < 3; ++bit)
        rank = 4 * rank + 2 * (((column ^ row) >> bit) & 1U) + ((row >> bit) & 1U);
    return static_cast<int>(rank);
}

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
    const bool next = 2 * kRanks * rest > (2 * rankAt(cell.x, cell.y) + 1) * whole;
    return gradient.colours[next ? before + 1 : before];
}

}  // namespace

Result<core::Grid> withGradient(core::Grid grid, const CellSet& where, const Gradient& gradient) {
    PANTILE_RETURN_IF_ERROR(check(gradient));
    for (const Point cell : where.cells()) grid.set(cell.x, cell.y, colourAt(gradient, cell));
    return grid;
}

}  // namespace pantile::picture
