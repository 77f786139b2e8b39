#pragma once

// From a picture to a texture's grid and palette: the front door of this folder. The same picture
// and options give the same cells on every machine. See docs/conversion.md.

#include <cstdint>
#include <optional>
#include <vector>

#include "core/geometry.h"
#include "core/palette.h"
#include "core/pixels.h"
#include "core/progress.h"
#include "core/result.h"
#include "picture/adjust.h"
#include "picture/dither.h"
#include "picture/exact_indexed.h"
#include "picture/framing.h"
#include "picture/linear_picture.h"
#include "picture/resample.h"

namespace pantile::picture {

struct ConvertOptions {
    core::Size target;  ///< In cells. Under Fit::Exact a limit; {0, 0} is none but the grid's own.
    Fit fit = Fit::Cover;
    Anchor anchor = Anchor::Centre;
    Scale scale = Scale::Area;
    Adjustments adjustments;
    Dither dither = Dither::None;
    double strength = 1;                   ///< 0..1: how much of the error dithering makes up for.
    std::optional<core::Palette> palette;  ///< Fixed colours, if there are such.
    int colours = 16;                      ///< Otherwise at most so many, 2..256; 0 means 256.
    std::vector<core::Rgb8> pinned;        ///< Of these, the first, as they are.
    int mergeWithin = 0;                   ///< Colours closer than this become one: mergedAlike.
    std::uint8_t alphaThreshold = 128;     ///< Cells with less alpha are left unpainted.
    std::optional<core::Rgb8> background;  ///< Lays the picture on this instead: no cell is left.
};

struct ConvertedPicture {
    core::Grid grid;
    core::Palette palette;
    /// The colours that the cells were to have; nothing if the picture's own indices were kept.
    std::optional<CellColours> wanted;
};

/// Shape: the grid has the target's size; under Fit::Exact the picture's.
/// Free palettes: the transparent entry, made only if a cell is left unpainted, comes last and
/// counts among `colours`. An indexed picture under Fit::Exact without a fixed palette keeps its
/// table and indices to the bit, however many colours it has, unless colours are pinned or merged,
/// light is adjusted or the picture laid on a colour; hand it over without `indexed` to reduce
/// them. A fixed palette without a transparent entry: the picture is laid on the palette's first
/// colour. Errors: InvalidInput naming the option; DoesNotFit under Fit::Exact if a side is above
/// the target or 256; Cancelled.
core::Result<ConvertedPicture> convertPicture(const core::Picture& picture,
                                              const ConvertOptions& options,
                                              const core::Progress& progress = {});

}  // namespace pantile::picture
