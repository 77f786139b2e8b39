#pragma once

// The header form of a load: a C header with the load's bytes as a constant array, to be compiled
// into the program of a board without a card. Nothing from outside can leave its comment.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/result.h"

namespace pantile::board {

/// A C99 header that defines PANTILE_LOAD_BYTES and `pantile_load`. The compiler of a board may
/// define PANTILE_LOAD_PLACE to say where the array lies. Comments give the load's name, the slots'
/// titles and the cautions.
std::string writeHeader(std::span<const std::uint8_t> load, std::string_view name,
                        std::span<const std::string> titles);

/// The bytes of a header that writeHeader made; blanks, line ends and comments do not matter.
/// Errors: Corrupt naming the line at which the text is something else.
core::Result<std::vector<std::uint8_t>> readHeader(std::string_view text);

/// Whether `bytes` begin like a header rather than a card's load.
bool looksLikeHeader(std::span<const std::uint8_t> bytes);

}  // namespace pantile::board
