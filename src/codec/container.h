#pragma once

// One texture as bytes (container form 1): its size, palette, words and packed grid, before the
// armour makes letters of them. Authority: docs/code-format.md.

#include <cstdint>
#include <span>
#include <vector>

#include "codec/grid_form.h"
#include "codec/palette_lookup.h"
#include "core/result.h"
#include "core/texture.h"

namespace pantile::codec {

enum class PaletteForm {
    Inside,         ///< Three bytes a colour; anyone can read the code.
    ByFingerprint,  ///< Eight bytes; for readers who have the palette.
};

struct EncodeOptions {
    MethodChoice method = MethodChoice::Shortest;
    PaletteForm palette = PaletteForm::Inside;
};

struct Container {
    Method method = Method::PlainRuns;
    std::vector<std::uint8_t> bytes;
};

/// Title, author, licence and tags go along; note and source stay at home.
Container packTexture(const core::Texture& texture, const EncodeOptions& options = {});

/// For bytes from anywhere. Errors: Corrupt for anything that packTexture never writes; Unsupported
/// for what a newer version may write; NotFound, with its fingerprint, for a palette that `lookup`
/// does not give.
core::Result<core::Texture> unpackTexture(std::span<const std::uint8_t> bytes,
                                          const PaletteLookup& lookup = {});

}  // namespace pantile::codec
