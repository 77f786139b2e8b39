#include <ostream>

#include "catalogue/reader.h"
#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/selection.h"
#include "cli/terminal_picture.h"
#include "cli/texture_answer.h"
#include "core/text.h"
#include "tasks/keep_estimates.h"
#include "tasks/library_place.h"
#include "tasks/text_picture.h"
#include "tasks/texture_json.h"

namespace pantile::cli {

using core::Result;

namespace {

void printField(std::ostream& out, std::string_view name, std::string_view text) {
    constexpr std::size_t kNameColumn = 10;
    if (text.empty()) return;
    out << name << std::string(kNameColumn - name.size(), ' ')
        << core::visibleText(text, core::LineBreaks::Allowed) << '\n';
}

std::string joined(const std::vector<std::string>& words, std::string_view between) {
    std::string text;
    for (const std::string& word : words) text += (text.empty() ? "" : std::string(between)) + word;
    return text;
}

std::string paletteText(const core::Palette& palette) {
    std::string text;
    for (int i = 0; i < palette.size(); ++i) {
        const auto index = static_cast<core::PaletteIndex>(i);
        text += (i == 0 ? "" : " ") + core::toHex(palette[index]);
        if (palette.transparent() == index) text += " (left unpainted)";
    }
    return text;
}

void printRecord(Session& session, const catalogue::TextureRecord& record) {
    const catalogue::TextureRow& row = record.row;
    std::ostream& out = session.out;
    out << row.id.value << "  " << (row.title.empty() ? "(no title)" : core::visibleText(row.title))
        << (row.removed ? "  (removed)" : "") << '\n';
    printField(out, "cells",
               std::to_string(row.size.width) + "x" + std::to_string(row.size.height));
    printField(out, "colours", std::to_string(row.colours));
    printField(out, "palette", paletteText(record.texture.palette()));
    if (row.stars > 0) printField(out, "stars", std::to_string(row.stars));
    printField(out, "tags", joined(row.tags, " "));
    printField(out, "shelves", joined(row.shelves, ", "));
    printField(out, "author", row.author);
    printField(out, "licence", row.licence);
    printField(out, "source", row.source);
    printField(out, "note", row.note);
    printField(out, "added", tasks::utcTime(row.addedAt));
    if (row.revision > 1) {
        printField(out, "changed",
                   tasks::utcTime(row.changedAt) + ", revision " + std::to_string(row.revision));
    }
    if (row.estimate) {
        printField(out, "drawing",
                   spokenTime(row.estimate->drawMs) + ", " +
                       std::to_string(row.estimate->loadBytes) + " bytes in a load");
    }
    out << '\n';
    const core::Grid& grid = record.texture.grid();
    const core::Palette& palette = record.texture.palette();
    out << (session.terminal.colour ? terminalPicture(grid, palette)
                                    : tasks::textPicture(grid, palette));
}

Result<Outcome> runShow(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 1, 1, "show ID"));
    PANTILE_ASSIGN_OR_RETURN(const auto id, parseTextureId(arguments.positional().front()));
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(auto record, catalogue::readTexture(library, id));
    record.row.estimate = tasks::knownEstimate(library, record);
    if (session.json) {
        printJson(session.out, tasks::textureJson(record));
    } else {
        printRecord(session, record);
    }
    return Outcome::Done;
}

}  // namespace

Command showCommand() {
    return {
        "show",
        "Shows everything about one texture, with its picture.",
        {"ID"},
        {},
        "Without colour (in a pipe, or with NO_COLOR set) the picture is drawn with a letter or\n"
        "digit for each palette index, and '.' for what is left unpainted.",
        runShow};
}

}  // namespace pantile::cli
