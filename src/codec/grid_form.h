#pragma once

// The cells of a grid as bytes, by the shortest of the methods that there are. Libraries and codes
// store this form. Authority: docs/code-format.md.

#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

#include "core/grid.h"
#include "core/result.h"

namespace pantile::codec {

/// Stored in libraries and codes: never renumber.
enum class Method : std::uint8_t {
    PlainRuns = 0,     ///< A colour and a length for each run.
    DeflatedRuns = 1,  ///< The same bytes, deflated (RFC 1951).
    ModelledRuns = 2,  ///< Of whole codes only: packModelled. No grid by itself is packed so.
};

enum class MethodChoice {
    Shortest,       ///< Of two of equal length, the simpler.
    PlainRunsOnly,  ///< For readers that know no other.
};

struct GridForm {
    Method method = Method::PlainRuns;
    std::vector<std::uint8_t> bytes;
};

/// `paletteSize` (2..256) must be above every index of `grid`. Deflated bytes may differ from one
/// zlib to another; every one of them unpacks to the same grid.
GridForm packGrid(const core::Grid& grid, int paletteSize,
                  MethodChoice choice = MethodChoice::Shortest);

/// The grid of `size` that packGrid wrote with the same `paletteSize`. For bytes from anywhere: no
/// more memory than `size` needs is taken, and every cell is below `paletteSize`.
/// Errors: Unsupported for a method of no known number; InvalidInput for a size or a number of
/// colours out of range; Corrupt, with the place, for anything too short, too long or malformed.
core::Result<core::Grid> unpackGrid(Method method, std::span<const std::uint8_t> bytes,
                                    core::Size size, int paletteSize);

/// "plain runs", "deflated runs"; "unknown" for a number without a method.
std::string_view methodName(Method method);

}  // namespace pantile::codec
