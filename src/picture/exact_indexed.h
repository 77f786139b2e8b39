#pragma once

// Indexed pictures taken over as they are. See docs/conversion.md section 8.

#include <optional>

#include "core/palette.h"
#include "core/pixels.h"

namespace pantile::picture {

/// A grid and the palette that its indices mean.
struct Converted {
    core::Grid grid;
    core::Palette palette;

    bool operator==(const Converted&) const = default;
};

/// The picture's own table and indices to the bit, or nothing if that cannot be: it stores no
/// indices, has sides outside 1..256, more than one fully transparent entry or a half-transparent
/// one. A table of one colour is padded to two by the same colour again.
std::optional<Converted> keptIndexed(const core::Picture& picture);

}  // namespace pantile::picture
