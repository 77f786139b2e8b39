#include "tasks/print_slots.h"

#include <utility>

#include "board/cautions.h"
#include "catalogue/loads.h"
#include "core/counted.h"
#include "core/duration.h"
#include "core/text.h"
#include "image_files/slot_sheet.h"
#include "picture/enlarge.h"
#include "tasks/choose_for_board.h"

namespace pantile::tasks {

using core::Result;

namespace fs = std::filesystem;

namespace {

Result<image_files::SheetSlot> sheetSlot(const ChosenSlot& chosen) {
    const board::LoadSlot& slot = chosen.slot;
    PANTILE_ASSIGN_OR_RETURN(core::Pixels picture, picture::enlarged(slot.grid, slot.palette, 1));
    image_files::SheetSlot printed{
        std::move(picture),
        slot.title.empty() ? "(no title)" : core::visibleText(slot.title),
        {std::to_string(slot.grid.width()) + "x" + std::to_string(slot.grid.height()) + " cells, " +
             core::spokenTime(chosen.milliseconds) + " to draw",
         core::counted(slot.plan.picks, "colour", "colours") + " picked, " +
             std::to_string(chosen.bytes) + " bytes",
         "for the canvas " + core::visibleText(slot.canvas.name)}};
    // In lines of their own: a long author would cut the licence off.
    if (!chosen.author.empty()) printed.facts.push_back("by " + core::visibleText(chosen.author));
    if (!chosen.licence.empty())
        printed.facts.push_back("licence " + core::visibleText(chosen.licence));
    return printed;
}

Result<image_files::SlotSheet> sheetOf(const std::string& name, const Choice& choice) {
    image_files::SlotSheet sheet;
    sheet.heading = "Load " + core::visibleText(name);
    sheet.below = "For the board " + core::visibleText(choice.board.name) + ": " +
                  std::to_string(choice.slots.size()) + " of " +
                  core::counted(choice.board.slots, "slot", "slots") + ", " +
                  std::to_string(choice.bytes) + " of " + std::to_string(choice.board.bytes) +
                  " bytes, " + core::spokenTime(choice.milliseconds) + " of drawing";
    for (const ChosenSlot& chosen : choice.slots) {
        PANTILE_ASSIGN_OR_RETURN(image_files::SheetSlot slot, sheetSlot(chosen));
        sheet.slots.push_back(std::move(slot));
    }
    sheet.cautionHeading = board::kCautionsHeading;
    for (const std::string_view caution : board::cautions()) sheet.cautions.emplace_back(caution);
    return sheet;
}

}  // namespace

Result<fs::path> printSlots(const catalogue::Library& library, const std::string& name,
                            const fs::path& folder, IfExists ifExists,
                            const core::Progress& progress, const std::string& canvas) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::StoredLoad stored,
                             catalogue::readLoad(library, name));
    const fs::path file = folder / (core::safeFileName(name) + "-slots.pdf");
    PANTILE_RETURN_IF_ERROR(checkFree({file}, ifExists));
    ChooseOptions options;
    options.board = stored.board;
    options.canvas = canvas.empty() ? stored.canvas : canvas;
    PANTILE_ASSIGN_OR_RETURN(const Choice choice,
                             takeAll(library, stored.slots, options, progress));
    PANTILE_ASSIGN_OR_RETURN(const image_files::SlotSheet sheet, sheetOf(stored.name, choice));
    PANTILE_ASSIGN_OR_RETURN(const auto bytes, image_files::slotSheetPdf(sheet));
    PANTILE_RETURN_IF_ERROR(makeFolder(folder));
    PANTILE_RETURN_IF_ERROR(writeFile(file, bytes, ifExists));
    return file;
}

}  // namespace pantile::tasks
