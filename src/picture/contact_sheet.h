#pragma once

// Many textures in one picture, with their ids. See docs/conversion.md section 9.

#include <cstdint>
#include <span>

#include "core/palette.h"
#include "core/pixels.h"
#include "core/result.h"

namespace pantile::picture {

struct SheetItem {
    core::Grid grid;
    core::Palette palette;
    std::int64_t id = 0;
};

struct SheetOptions {
    int columns = 8;  ///< At most so many side by side, 1..64.
};

inline constexpr std::int64_t kMaxSheetPixels = std::int64_t{64} << 20U;

/// Textures in reading order, each at the largest whole multiple that stays within 128 pixels (at
/// least once), in boxes of 128 pixels or more, its id below. Unpainted cells are hatched. All
/// opaque. Errors: InvalidInput if there is nothing to show, columns are out of range or an index
/// lies outside its palette; TooLarge above 64 megapixels.
core::Result<core::Pixels> contactSheet(std::span<const SheetItem> items,
                                        const SheetOptions& options = {});

}  // namespace pantile::picture
