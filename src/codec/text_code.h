#pragma once

// The facade: a texture as a short text to paste, and back from any text that holds it.
// Authority: docs/code-format.md.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "codec/contents.h"
#include "codec/harvest.h"
#include "core/result.h"
#include "core/texture.h"

namespace pantile::codec {

struct TextCode {
    std::string text;       ///< Lines joined by '\n', none behind the last.
    std::size_t bytes = 0;  ///< Before the armour.
    Method method = Method::PlainRuns;
    std::vector<std::uint8_t> container;  ///< Those bytes, for cutting them into parts.
};

/// Errors: TooLarge if the bytes are more than the armour can count, which no texture reaches.
core::Result<TextCode> encodeTextCode(const core::Texture& texture,
                                      const EncodeOptions& options = {});

/// All `textures` in one code. Errors: as packSet; TooLarge as above.
core::Result<TextCode> encodeSetCode(std::span<const core::Texture> textures,
                                     const EncodeOptions& options = {});

}  // namespace pantile::codec
