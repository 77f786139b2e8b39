#pragma once

// Plain runs: the cells in reading order as runs of a colour and a length. Up to 16 colours a run
// mostly takes one byte. Every grid has exactly one such form. Authority: docs/code-format.md.

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/grid.h"
#include "core/result.h"

namespace pantile::codec {

/// `paletteSize` must be above every index of `grid`.
std::vector<std::uint8_t> packPlainRuns(const core::Grid& grid, int paletteSize);

/// The most bytes that plain runs of so many cells can take.
std::size_t mostPlainRunsBytes(std::size_t cells, int paletteSize);

/// Errors: InvalidInput if `size` is no grid's size or `paletteSize` is outside 2..256; Corrupt,
/// naming the byte, if `bytes` are not exactly what packPlainRuns writes for some such grid.
core::Result<core::Grid> unpackPlainRuns(std::span<const std::uint8_t> bytes, core::Size size,
                                         int paletteSize);

}  // namespace pantile::codec
