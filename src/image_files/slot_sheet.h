#pragma once

// A page to print and keep with a board: what lies in which slot, and what to mind before the board
// is plugged in.

#include <cstdint>
#include <string>
#include <vector>

#include "core/pixels.h"
#include "core/result.h"

namespace pantile::image_files {

/// Shape: texts are UTF-8 and shown as they are, so control characters must be visible already.
struct SheetSlot {
    core::Pixels picture;  ///< A pixel for each cell; unpainted cells are transparent.
    std::string title;
    std::vector<std::string> facts;  ///< Short lines below the title.
};

struct SlotSheet {
    std::string heading;
    std::string below;  ///< A line under the heading.
    std::vector<SheetSlot> slots;
    std::string cautionHeading;
    std::vector<std::string> cautions;  ///< Sentences at the end.
};

/// A PDF of A4 pages, twelve slots on each, numbered from 1; unpainted cells are hatched. Texts
/// that are too long are cut with an ellipsis. The file holds the day and time, so its bytes
/// differ. Errors: InvalidInput if there is no slot; Unsupported if the machine has no fonts;
/// Internal without a QGuiApplication, which has them; Io if Qt cannot write PDF.
core::Result<std::vector<std::uint8_t>> slotSheetPdf(const SlotSheet& sheet);

}  // namespace pantile::image_files
