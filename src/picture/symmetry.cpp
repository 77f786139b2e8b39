#include "picture/symmetry.h"

#include <string>

namespace pantile::picture {
namespace {

using core::Error;
using core::ErrorKind;
using core::Point;

// `cells` and, for each, its image.
template <typename Image>
CellSet withImages(const CellSet& cells, Image image) {
    CellSet both = cells;
    for (const Point cell : cells.cells()) both.add(image(cell));
    return both;
}

}  // namespace

core::Result<CellSet> repeated(const CellSet& cells, Symmetry symmetry) {
    const auto [width, height] = cells.size();
    const bool eight = symmetry == Symmetry::Eight;
    if (eight && width != height) {
        return Error{ErrorKind::InvalidInput,
                     "8-fold symmetry needs a square texture; this one has " +
                         std::to_string(width) + "x" + std::to_string(height) + " cells",
                     "choose 4-fold symmetry, or crop or extend the texture first"};
    }
    const Point last{width - 1, height - 1};
    CellSet all = cells;
    if (symmetry == Symmetry::LeftRight || symmetry == Symmetry::Four || eight)
        all = withImages(all, [last](Point cell) { return Point{last.x - cell.x, cell.y}; });
    if (symmetry == Symmetry::TopBottom || symmetry == Symmetry::Four || eight)
        all = withImages(all, [last](Point cell) { return Point{cell.x, last.y - cell.y}; });
    if (eight) all = withImages(all, [](Point cell) { return Point{cell.y, cell.x}; });
    return all;
}

}  // namespace pantile::picture
