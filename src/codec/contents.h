#pragma once

// What a code holds: one texture or a set, in the shortest form that there is for it. Authority:
// docs/code-format.md.

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "codec/container.h"
#include "codec/palette_lookup.h"
#include "core/result.h"
#include "core/texture.h"

namespace pantile::codec {

/// The shortest container of `texture` that `options` allow; of two of equal length the simpler.
Container packContents(const core::Texture& texture, const EncodeOptions& options = {});

/// All `textures` in one container of modelled runs. Errors: InvalidInput if there are none;
/// Unsupported if `options` ask for plain runs, which hold one texture; as packModelled.
core::Result<Container> packSet(std::span<const core::Texture> textures,
                                const EncodeOptions& options = {});

/// All textures that a container holds, at least one. For bytes from anywhere. `decisions`, if
/// given, grows by those of a model that were read, two or three of which take a microsecond; also
/// when it fails. Errors: as unpackTexture.
core::Result<std::vector<core::Texture>> unpackTextures(std::span<const std::uint8_t> bytes,
                                                        const PaletteLookup& lookup = {},
                                                        std::size_t* decisions = nullptr);

}  // namespace pantile::codec
