#pragma once

// The same texture in the colours of another palette. See docs/seams-and-colours.md section 4.

#include "core/palette.h"
#include "core/result.h"
#include "picture/exact_indexed.h"

namespace pantile::picture {

/// Every painted cell gets the entry of `wanted` that NearestColour finds for its colour, every
/// unpainted cell the transparent entry. The palette of the result is `wanted`.
/// Errors: InvalidInput if an index lies outside `palette`, or if a cell is unpainted and `wanted`
/// has no transparent entry.
core::Result<Converted> recoloured(const core::Grid& grid, const core::Palette& palette,
                                   const core::Palette& wanted);

}  // namespace pantile::picture
