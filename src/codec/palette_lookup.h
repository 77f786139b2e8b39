#pragma once

// Palettes that a code names instead of holding them.

#include <functional>
#include <optional>
#include <string>

#include "core/fingerprint.h"
#include "core/palette.h"
#include "core/result.h"

namespace pantile::codec {

/// Finds a palette that a code names by its fingerprint. May be empty.
using PaletteLookup = std::function<std::optional<core::Palette>(core::Fingerprint)>;

/// What `lookup` gives, if it is the right one. Errors: NotFound, naming the texture of this
/// `title` and the fingerprint.
core::Result<core::Palette> paletteFor(core::Fingerprint fingerprint, const std::string& title,
                                       const PaletteLookup& lookup);

}  // namespace pantile::codec
