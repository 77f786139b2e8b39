#include "picture/ellipse.h"

#include <algorithm>
#include <cassert>
#include <cstdint>
#include <iterator>

namespace pantile::picture {
namespace {

// Half cells from the middle of the box, right or down: even for a side of an odd number of cells,
// odd for an even one. In these units everything is a whole number.
using HalfCells = std::int64_t;

// A quarter of the ellipse x² b² + y² a² = a² b², in half cells, by its two sides.
struct Quarter {
    HalfCells a = 0;
    HalfCells b = 0;

    // The midpoint decision: does the ellipse enclose the place? Coordinates are at most 8192, so
    // that no product passes 2^53.
    bool encloses(HalfCells x, HalfCells y) const {
        return x * x * b * b + y * y * a * a < a * a * b * b;
    }

    Quarter transposed() const { return {b, a}; }
};

// For every column from the middle outward, how far down its cell lies: the last one that the
// ellipse encloses at the middle between it and the one before; never short of the innermost.
std::vector<HalfCells> rowOfEachColumn(const Quarter& quarter) {
    std::vector<HalfCells> rows;
    HalfCells y = quarter.b;
    for (HalfCells x = quarter.a % 2; x <= quarter.a; x += 2) {
        while (y >= 2 && !quarter.encloses(x, y - 1)) y -= 2;
        rows.push_back(y);
    }
    return rows;
}

// One cell of a quarter as the up to four cells of the box that mirror it.
void addMirrored(std::vector<core::Point>& cells, const CellBox& box, HalfCells x, HalfCells y) {
    const auto place = [](int first, int last, HalfCells offset) {
        return static_cast<int>((first + last + offset) / 2);
    };
    for (const HalfCells column : {-x, x}) {
        for (const HalfCells row : {-y, y})
            cells.push_back({place(box.left, box.right, column), place(box.top, box.bottom, row)});
    }
}

}  // namespace

std::vector<core::Point> ellipseOutline(const CellBox& box) {
    assert(checkPlace({box.left, box.top}) && checkPlace({box.right, box.bottom}));
    if (box.width() == 1 || box.height() == 1) return rectanglePath(box);
    const Quarter quarter{box.width() - 1, box.height() - 1};
    std::vector<core::Point> cells;
    HalfCells x = quarter.a % 2;
    for (const HalfCells y : rowOfEachColumn(quarter)) {
        addMirrored(cells, box, x, y);
        x += 2;
    }
    HalfCells y = quarter.b % 2;
    for (const HalfCells column : rowOfEachColumn(quarter.transposed())) {
        addMirrored(cells, box, column, y);
        y += 2;
    }
    std::sort(cells.begin(), cells.end());
    cells.erase(std::unique(cells.begin(), cells.end()), cells.end());
    return cells;
}

CellSet filledEllipse(core::Size grid, const CellBox& box) {
    CellSet cells(grid);
    // Sorted by columns: between the first and the last cell of a column all is inside.
    const std::vector<core::Point> outline = ellipseOutline(box);
    for (auto first = outline.begin(); first != outline.end();) {
        const auto next = std::find_if(first, outline.end(),
                                       [&](core::Point cell) { return cell.x != first->x; });
        const CellBox column = clipped({first->x, first->y, first->x, std::prev(next)->y}, grid);
        for (int y = column.top; y <= column.bottom && column.left <= column.right; ++y)
            cells.add({first->x, y});
        first = next;
    }
    return cells;
}

}  // namespace pantile::picture
