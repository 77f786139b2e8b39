#include "picture/resize.h"

#include <array>
#include <string>

#include "core/palette.h"
#include "core/range_check.h"
#include "picture/grid_from.h"

namespace pantile::picture {
namespace {

using core::Error;
using core::ErrorKind;
using core::Grid;
using core::PaletteIndex;
using core::Result;

std::string sizeText(int width, int height) {
    return std::to_string(width) + "x" + std::to_string(height) + " cells";
}

Result<void> checkFactor(int factor) {
    return core::checkRange("the factor", factor, 1, core::kMaxGridSide);
}

PaletteIndex commonest(const Grid& grid, const CellBox& block) {
    std::array<int, core::kMaxPaletteColours> counts{};
    const auto forEachCell = [&](auto visit) {
        for (int y = block.top; y <= block.bottom; ++y) {
            for (int x = block.left; x <= block.right; ++x) visit(grid.at(x, y));
        }
    };
    forEachCell([&](PaletteIndex index) { ++counts[index]; });
    PaletteIndex most = grid.at(block.left, block.top);
    forEachCell([&](PaletteIndex index) {
        if (counts[index] > counts[most]) most = index;
    });
    return most;
}

}  // namespace

Result<Grid> cropped(const Grid& grid, const CellBox& box) {
    if (clipped(box, grid.size()) != box || box.width() < 1 || box.height() < 1) {
        return Error{ErrorKind::InvalidInput,
                     "the part of columns " + std::to_string(box.left) + " to " +
                         std::to_string(box.right) + " and rows " + std::to_string(box.top) +
                         " to " + std::to_string(box.bottom) + " is not wholly on the texture of " +
                         sizeText(grid.width(), grid.height()),
                     "columns are 0 to " + std::to_string(grid.width() - 1) + ", rows 0 to " +
                         std::to_string(grid.height() - 1)};
    }
    return gridFrom({box.width(), box.height()},
                    [&](int x, int y) { return grid.at(box.left + x, box.top + y); });
}

Result<Grid> extended(const Grid& grid, const Margins& margins, PaletteIndex index) {
    for (const int margin : {margins.left, margins.top, margins.right, margins.bottom})
        PANTILE_RETURN_IF_ERROR(core::checkRange("a margin", margin, 0, core::kMaxGridSide));
    const core::Size size{margins.left + grid.width() + margins.right,
                          margins.top + grid.height() + margins.bottom};
    PANTILE_RETURN_IF_ERROR(core::checkGridSize(size.width, size.height));
    return gridFrom(size, [&](int x, int y) {
        const core::Point from{x - margins.left, y - margins.top};
        return grid.contains(from) ? grid.at(from) : index;
    });
}

Result<Grid> scaledUp(const Grid& grid, int factor) {
    PANTILE_RETURN_IF_ERROR(checkFactor(factor));
    const core::Size size{grid.width() * factor, grid.height() * factor};
    PANTILE_RETURN_IF_ERROR(core::checkGridSize(size.width, size.height));
    return gridFrom(size, [&](int x, int y) { return grid.at(x / factor, y / factor); });
}

Result<Grid> scaledDown(const Grid& grid, int factor) {
    PANTILE_RETURN_IF_ERROR(checkFactor(factor));
    if (grid.width() % factor != 0 || grid.height() % factor != 0) {
        return Error{
            ErrorKind::InvalidInput,
            sizeText(grid.width(), grid.height()) + " are not whole blocks of " +
                std::to_string(factor) + "x" + std::to_string(factor),
            "crop or extend the texture first, or choose a factor that divides both sides"};
    }
    return gridFrom({grid.width() / factor, grid.height() / factor}, [&](int x, int y) {
        const core::Point first{x * factor, y * factor};
        return commonest(grid, {first.x, first.y, first.x + factor - 1, first.y + factor - 1});
    });
}

}  // namespace pantile::picture
