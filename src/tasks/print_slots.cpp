#include "tasks/print_slots.h"

#include "board/cautions.h"
#include "catalogue/loads.h"
#include "core/duration.h"
#include "core/text.h"
#include "image_files/slot_sheet.h"
#include "tasks/choose_for_board.h"

namespace pantile::tasks {

using core::Result;

namespace fs = std::filesystem;

namespace {

core::Pixels pictureOf(const board::LoadSlot& slot) {
    core::Pixels picture{slot.grid.size(), {}};
    for (const core::PaletteIndex index : slot.grid.cells()) {
        const core::Rgb8 colour = slot.palette.colours()[index];
        const bool unpainted = slot.palette.transparent() == index;
        picture.pixels.push_back(
            {colour.r, colour.g, colour.b, static_cast<std::uint8_t>(unpainted ? 0 : 255)});
    }
    return picture;
}

image_files::SheetSlot sheetSlot(const ChosenSlot& chosen) {
    const board::LoadSlot& slot = chosen.slot;
    return {pictureOf(slot),
            slot.title.empty() ? "(no title)" : core::visibleText(slot.title),
            {std::to_string(slot.grid.width()) + "x" + std::to_string(slot.grid.height()) +
                 " cells, " + core::spokenTime(chosen.milliseconds) + " to draw",
             std::to_string(slot.plan.picks) + " colours picked, " + std::to_string(chosen.bytes) +
                 " bytes",
             "for the canvas " + core::visibleText(slot.canvas.name)}};
}

image_files::SlotSheet sheetOf(const std::string& name, const Choice& choice) {
    image_files::SlotSheet sheet;
    sheet.heading = "Load " + core::visibleText(name);
    sheet.below = "For the board " + core::visibleText(choice.board.name) + ": " +
                  std::to_string(choice.slots.size()) + " of " +
                  std::to_string(choice.board.slots) + " slots, " + std::to_string(choice.bytes) +
                  " of " + std::to_string(choice.board.bytes) + " bytes, " +
                  core::spokenTime(choice.milliseconds) + " of drawing";
    for (const ChosenSlot& slot : choice.slots) sheet.slots.push_back(sheetSlot(slot));
    sheet.cautionHeading = "Before you plug the board in";
    for (const std::string_view caution : board::cautions()) sheet.cautions.emplace_back(caution);
    return sheet;
}

}  // namespace

Result<fs::path> printSlots(const catalogue::Library& library, const std::string& name,
                            const fs::path& folder, IfExists ifExists,
                            const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::StoredLoad stored,
                             catalogue::readLoad(library, name));
    const fs::path file = folder / (core::safeFileName(name) + "-slots.pdf");
    PANTILE_RETURN_IF_ERROR(checkFree({file}, ifExists));
    ChooseOptions options;
    options.board = stored.board;
    PANTILE_ASSIGN_OR_RETURN(const Choice choice,
                             takeAll(library, stored.slots, options, progress));
    PANTILE_ASSIGN_OR_RETURN(const auto bytes,
                             image_files::slotSheetPdf(sheetOf(stored.name, choice)));
    PANTILE_RETURN_IF_ERROR(makeFolder(folder));
    PANTILE_RETURN_IF_ERROR(writeFile(file, bytes, ifExists));
    return file;
}

}  // namespace pantile::tasks
