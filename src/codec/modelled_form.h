#pragma once

// Container form 2: one texture or many in one stream of modelled decisions. They share palettes
// and all that was learned, so a set is shorter than its textures one by one. Authority:
// docs/code-format.md, section 14.

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "codec/palette_lookup.h"
#include "core/result.h"
#include "core/texture.h"

namespace pantile::codec {

inline constexpr std::uint8_t kModelledForm = 2;
inline constexpr std::size_t kMostTexturesInSet = 64;
inline constexpr std::size_t kMostModelledCells = 32768;

/// The bytes of `textures` (at least one) with their form number in front. Palettes go by their
/// fingerprints if asked for. Errors: TooLarge beyond the limits above; DoesNotFit if they need
/// more than kMostDecisions or kMostLetters.
core::Result<std::vector<std::uint8_t>> packModelled(std::span<const core::Texture> textures,
                                                     bool byFingerprint);

/// For bytes from anywhere, the form number in front. `decisions` and errors: as unpackTextures.
core::Result<std::vector<core::Texture>> unpackModelled(std::span<const std::uint8_t> bytes,
                                                        const PaletteLookup& lookup,
                                                        std::size_t* decisions = nullptr);

}  // namespace pantile::codec
