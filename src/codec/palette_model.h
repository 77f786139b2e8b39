#pragma once

// A palette in few bits: each colour as its difference from the one before, with starting
// probabilities learned from open art. Authority: docs/code-format.md, section 14.

#include <optional>

#include "codec/bit_coder.h"
#include "core/palette.h"

namespace pantile::codec {

/// Puts down `palette`, or reads one (nothing if what is read is no palette).
std::optional<core::Palette> codePalette(BitCoder& coder, const core::Palette* palette);

}  // namespace pantile::codec
