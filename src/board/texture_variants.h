#pragma once

// In which ways a texture may lie in a load: quick to draw, or in fewer bytes. Authority:
// docs/drawing.md section 5.4.

#include <cstdint>
#include <string_view>
#include <vector>

#include "board/load.h"
#include "core/result.h"
#include "core/timing.h"
#include "drawing/stroke.h"

namespace pantile::board {

enum class VariantKind : unsigned char {
    Fast,     ///< The plan as it was made.
    Compact,  ///< Some colours by runs along rows.
    Runs,     ///< All colours.
};

/// "fast", "compact" or "runs".
std::string_view variantName(VariantKind kind);

/// Shape: `plan` holds the time. It is put into a load like any other plan.
struct TextureVariant {
    VariantKind kind = VariantKind::Fast;
    std::int64_t bytes = 0;  ///< As slotBytes.
    drawing::Plan plan;
};

/// The slot's own plan and others that paint the same in fewer bytes: from the quickest to the one
/// with the fewest bytes, at most four, none slower than another without being smaller. The same
/// slot and timing give the same variants everywhere. Errors: as slotBytes.
core::Result<std::vector<TextureVariant>> variantsOf(const LoadSlot& slot,
                                                     const core::PointerTiming& timing);

}  // namespace pantile::board
