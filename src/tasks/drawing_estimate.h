#pragma once

// What a texture costs on a board: the time to draw it and the bytes of a load that it takes.

#include <optional>
#include <string>
#include <vector>

#include "catalogue/library.h"
#include "catalogue/texture_row.h"
#include "core/board.h"
#include "core/canvas.h"
#include "core/result.h"
#include "core/texture.h"

namespace pantile::tasks {

/// The canvases of a library and the board that figures are given for unless another is named.
struct DrawingDefaults {
    std::vector<core::Canvas> canvases;
    core::Board board;

    bool operator==(const DrawingDefaults&) const = default;
};

/// Errors: NotFound if the library has no board.
core::Result<DrawingDefaults> drawingDefaults(const catalogue::Library& library);

/// The profile key of estimateDrawing, without planning; nothing if no canvas takes the texture.
std::optional<std::string> estimateKey(const core::Texture& texture,
                                       const DrawingDefaults& defaults);

/// Nothing if no canvas takes the texture: it is kept all the same, without figures.
std::optional<catalogue::Estimate> estimateDrawing(const core::Texture& texture,
                                                   const DrawingDefaults& defaults);

}  // namespace pantile::tasks
