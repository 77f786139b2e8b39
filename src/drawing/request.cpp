#include "drawing/request.h"

#include <array>
#include <string>

#include "core/palette_bar.h"

namespace pantile::drawing {
namespace {

using core::Error;
using core::ErrorKind;

std::string sizeText(core::Size size) {
    return std::to_string(size.width) + "x" + std::to_string(size.height);
}

core::Result<void> checkSize(const DrawingRequest& request) {
    const core::Size grid = request.grid.size();
    const core::Size canvas = request.canvas.size;
    if (grid.width <= canvas.width && grid.height <= canvas.height) return {};
    return Error{ErrorKind::DoesNotFit,
                 "the texture of " + sizeText(grid) + " cells is larger than the canvas of " +
                     sizeText(canvas),
                 "choose a canvas of at least that size, or convert the picture smaller"};
}

core::Result<void> checkColour(core::PaletteIndex colour, const core::Canvas& canvas) {
    if (colour >= canvas.colourLimit()) {
        return Error{ErrorKind::DoesNotFit,
                     "the texture uses colour " + std::to_string(colour) +
                         ", but the canvas has only colours 0 to " +
                         std::to_string(canvas.colourLimit() - 1),
                     "convert the texture to fewer colours or to the canvas's palette"};
    }
    return core::checkSwatch(colour, canvas);
}

core::Result<void> checkColours(const DrawingRequest& request) {
    std::array<bool, 256> used{};
    for (const core::PaletteIndex index : request.grid.cells()) used[index] = true;
    if (request.leaveUnpainted) used[*request.leaveUnpainted] = false;
    for (std::size_t i = 0; i < used.size(); ++i) {
        if (!used[i]) continue;
        PANTILE_RETURN_IF_ERROR(checkColour(static_cast<core::PaletteIndex>(i), request.canvas));
    }
    return {};
}

}  // namespace

core::Result<void> checkRequest(const DrawingRequest& request) {
    PANTILE_RETURN_IF_ERROR(core::checkTiming(request.timing));
    const core::Canvas& canvas = request.canvas;
    PANTILE_RETURN_IF_ERROR(core::checkGridSize(canvas.size.width, canvas.size.height));
    PANTILE_RETURN_IF_ERROR(core::checkUnnamedCanvas(canvas));
    PANTILE_RETURN_IF_ERROR(checkSize(request));
    return checkColours(request);
}

}  // namespace pantile::drawing
