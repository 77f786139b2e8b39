#pragma once

// What the models know before the first cell: learned from open art by
// tests/bench/learn_start_values, frozen in the format, and printed in docs/code-format.md.

#include <array>
#include <cstddef>
#include <cstdint>

namespace pantile::codec {

/// Weights of GridMixer in 1/64: those of the first chooser's choices, then of the second's, then
/// one row for all of the third's; 16 in a row.
extern const std::array<std::int8_t, std::size_t{12 + 48 + 1} * 16> kGridStart;

/// Of palettes: how likely, in 1/256, a difference has more bits: by channel, bits of the
/// difference before (at most 7), and bits so far.
extern const std::array<std::uint8_t, std::size_t{3} * 8 * 8> kLargerStart;

/// How likely a difference is negative: by channel and its bits (1, 2, 3 or more).
extern const std::array<std::uint8_t, std::size_t{3} * 3> kNegativeStart;

}  // namespace pantile::codec
