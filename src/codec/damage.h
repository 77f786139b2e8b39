#pragma once

// Says where a code that cannot be read is damaged, and how.

#include <cstddef>
#include <optional>
#include <string>

#include "codec/glyphs.h"
#include "codec/parts.h"
#include "codec/pieces.h"
#include "codec/starts.h"

namespace pantile::codec {

struct Damage {
    std::size_t glyph = 0;         ///< Where to look in the text.
    std::size_t codeLine = 1;      ///< The line of the code that stands there, or should.
    std::string reason;            ///< What is wrong, and what to ask for.
    std::optional<PartHead> part;  ///< The part that the code is, if it is one and says so.
};

/// For a start in whose `region` (up to the next start) no code could be read. Nothing if it is no
/// code at all but a text that looks like the start of one. Cost: linear in the region.
std::optional<Damage> diagnose(std::span<const Glyph> glyphs, Region region, const Start& start);

/// Lines of a code that stand in `region` without their first one: two or more in a row with rising
/// numbers.
std::optional<Damage> findLinesWithoutStart(std::span<const Glyph> glyphs, Region region);

}  // namespace pantile::codec
