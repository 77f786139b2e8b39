#include <filesystem>
#include <ostream>

#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/standard_input.h"
#include "cli/texture_answer.h"
#include "cli/written_file.h"
#include "core/text.h"
#include "tasks/files.h"
#include "tasks/library_place.h"
#include "tasks/read_codes.h"
#include "tasks/texture_json.h"

namespace pantile::cli {

using core::Result;

namespace {

constexpr std::uint64_t kMaxTextBytes = std::uint64_t{64} << 20U;

// Palettes of the library help with codes that name theirs only; without a library it works as
// well.
Result<codec::Harvest> harvest(const Session& session, const std::string& text) {
    if (!std::filesystem::exists(session.libraryPath))
        return codec::harvestCodes(text, {}, session.progress());
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    return codec::harvestCodes(text, tasks::paletteLookup(library), session.progress());
}

QJsonObject foundJson(const codec::FoundCode& found) {
    const core::TextureText& text = found.texture.text();
    const core::Grid& grid = found.texture.grid();
    QJsonObject object{{"title", jsonText(text.title)},
                       {"author", jsonText(text.author)},
                       {"licence", jsonText(text.licence)},
                       {"tags", jsonTexts(text.tags)},
                       {"width", grid.width()},
                       {"height", grid.height()},
                       {"text_line", jsonNumber(static_cast<std::int64_t>(found.textLine))},
                       {"cells", tasks::cellsJson(grid)},
                       {"repaired", found.repaired},
                       {"repairs", jsonTexts(found.repairs)}};
    tasks::addPaletteJson(object, found.texture.palette());
    return object;
}

QJsonObject damagedJson(const codec::DamagedCode& damaged) {
    QJsonObject object{{"where", jsonText(damaged.where)}, {"reason", jsonText(damaged.reason)}};
    if (!damaged.text.empty()) object.insert("text", jsonText(damaged.text));
    return object;
}

void printHarvest(Session& session, const codec::Harvest& found) {
    for (const codec::FoundCode& code : found.found) {
        const core::TextureText& text = code.texture.text();
        session.out << "Line " << code.textLine << ": "
                    << (text.title.empty() ? "(no title)" : core::visibleText(text.title));
        if (!text.author.empty()) session.out << ", by " << core::visibleText(text.author);
        if (!text.licence.empty()) session.out << ", " << core::visibleText(text.licence);
        session.out << ", " << code.texture.grid().width() << "x" << code.texture.grid().height()
                    << ", " << counted(code.texture.coloursUsed(), "colour", "colours") << '\n';
        printRepairs(session.out, code.repairs);
    }
    for (const codec::DamagedCode& damaged : found.damaged) {
        session.out << (damaged.text.empty() ? "Damaged, " : "Newer, ")
                    << core::visibleText(damaged.where) << ": " << core::visibleText(damaged.reason)
                    << '\n';
        if (!damaged.text.empty()) session.out << damaged.text << '\n';
    }
    const auto textures = static_cast<std::int64_t>(found.found.size());
    session.out << counted(textures, "texture", "textures") << " read, " << found.damaged.size()
                << " damaged.\n";
    if (found.found.empty() && found.damaged.empty())
        session.say("No code stands in it; 'pantile add' takes pictures and grids.");
}

Result<Outcome> runRead(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(
        checkPositional(arguments, 0, 1, "read FILE, or read - for standard input"));
    const auto& words = arguments.positional();
    const bool fromInput = words.empty() || words.front() == "-";
    PANTILE_ASSIGN_OR_RETURN(
        const std::string text,
        fromInput ? readStandardInput(session.in) : tasks::readFile(words.front(), kMaxTextBytes));
    PANTILE_ASSIGN_OR_RETURN(const codec::Harvest found, harvest(session, text));
    std::vector<std::filesystem::path> files;
    if (const auto folder = arguments.value("--png-into")) {
        const auto ifExists =
            arguments.has("--replace") ? tasks::IfExists::Replace : tasks::IfExists::Refuse;
        PANTILE_ASSIGN_OR_RETURN(files, tasks::writePictures(found.found, *folder, ifExists));
    }
    if (session.json) {
        printJson(session.out, {{"textures", jsonArray(found.found, foundJson)},
                                {"damaged", jsonArray(found.damaged, damagedJson)},
                                {"files", jsonPaths(files)}});
    } else {
        printHarvest(session, found);
        for (const auto& file : files) printWrote(session.out, file);
    }
    return found.damaged.empty() ? Outcome::Done : Outcome::SomeRefused;
}

}  // namespace

Command readCommand() {
    return {"read",
            "Decodes every code in a text without storing any.",
            {"[FILE|-] [--png-into DIR]"},
            {
                {"--png-into", OptionKind::Value, "DIR", "write each texture there as a PNG"},
                {"--replace", OptionKind::Flag, "", "files of the same name may be replaced"},
            },
            "",
            runRead};
}

}  // namespace pantile::cli
