#pragma once

// How a texture meets a canvas: which canvas it is drawn on, and which swatch each of its colours
// is.

#include <optional>
#include <span>
#include <vector>

#include "core/canvas.h"
#include "core/result.h"
#include "core/texture.h"

namespace pantile::tasks {

/// A texture as the canvas will have it.
/// Shape: grid and palette have the canvas's swatches as indices; the transparent index, if there
/// is one, is that of no swatch.
struct FittedTexture {
    core::Grid grid;
    core::Palette palette;
};

/// The texture on `canvas`: with a fixed palette each colour goes to the swatch of just that
/// colour; with free colours the palette stays if it is small enough, or is cut to the colours in
/// use. Errors: DoesNotFit if the grid is larger than the canvas, a colour is not in its fixed
/// palette, or there are more colours in use than it has.
core::Result<FittedTexture> fitToCanvas(const core::Texture& texture, const core::Canvas& canvas);

/// The canvas that a texture is drawn on unless told otherwise: of those that it fits the smallest,
/// with a fixed palette before free colours, then by name. Errors: DoesNotFit if it fits none, with
/// the reason of the one that comes nearest.
core::Result<core::Canvas> chooseCanvas(const core::Texture& texture,
                                        std::span<const core::Canvas> canvases);

}  // namespace pantile::tasks
