#include <filesystem>
#include <ostream>

#include "catalogue/palettes.h"
#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/picture_options.h"
#include "cli/texture_answer.h"
#include "core/text.h"
#include "picture/merge_alike.h"
#include "tasks/library_place.h"
#include "tasks/palette_file.h"
#include "tasks/texture_json.h"

namespace pantile::cli {

using catalogue::NamedPalette;
using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

QJsonObject paletteJson(const NamedPalette& named) {
    QJsonObject object{{"name", jsonText(named.name)}};
    tasks::addPaletteJson(object, named.palette);
    object["colours"] = object.take("palette");
    return object;
}

Outcome answerPalettes(Session& session, const std::vector<NamedPalette>& palettes) {
    if (session.json) {
        printJsonList(session.out, jsonArray(palettes, paletteJson));
        return Outcome::Done;
    }
    for (const NamedPalette& named : palettes) {
        session.out << core::visibleText(named.name) << ", "
                    << counted(named.palette.size(), "colour", "colours") << ':';
        for (int i = 0; i < named.palette.size(); ++i) {
            const auto index = static_cast<core::PaletteIndex>(i);
            session.out << ' ' << core::toHex(named.palette[index]);
            if (named.palette.transparent() == index) session.out << " (left unpainted)";
        }
        session.out << '\n';
    }
    return Outcome::Done;
}

std::string nameFor(const Arguments& arguments, const std::filesystem::path& file) {
    return arguments.value("--name").value_or(
        core::cleanedText(file.stem().string(), {"palette name", 60}));
}

Result<Outcome> store(Session& session, const std::string& name, const core::Palette& palette) {
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    PANTILE_RETURN_IF_ERROR(catalogue::addPalette(library, name, palette));
    return answerPalettes(session, {{name, palette}});
}

Result<Outcome> fromPicture(Session& session, const Arguments& arguments, const std::string& file) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto colours,
        arguments.number("--colours", core::kMinPaletteColours, core::kMaxPaletteColours));
    if (!colours) {
        return Error{ErrorKind::Usage, "the number of colours is missing",
                     "write palette from-picture FILE --colours N"};
    }
    picture::FreePaletteOptions options;
    options.most = static_cast<int>(*colours);
    PANTILE_ASSIGN_OR_RETURN(options.pinned, pinnedColours(arguments));
    PANTILE_RETURN_IF_ERROR(
        arguments.readNumber("--merge", 0, picture::kMergeUnits, options.mergeWithin));
    PANTILE_ASSIGN_OR_RETURN(const core::Palette palette, tasks::paletteFromPicture(file, options));
    if (arguments.has("--name")) return store(session, nameFor(arguments, file), palette);
    return answerPalettes(session, {{nameFor(arguments, file), palette}});
}

Result<Outcome> runPalette(Session& session, const Arguments& arguments) {
    const auto& words = arguments.positional();
    const std::string action = words.empty() ? "" : words[0];
    const bool named = words.size() == 2;
    if (action == "add" && named) {
        PANTILE_ASSIGN_OR_RETURN(const core::Palette palette, tasks::readPaletteFile(words[1]));
        return store(session, nameFor(arguments, words[1]), palette);
    }
    if (action == "from-picture" && named) return fromPicture(session, arguments, words[1]);
    if (action == "remove" && named) {
        PANTILE_ASSIGN_OR_RETURN(auto library,
                                 tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
        PANTILE_RETURN_IF_ERROR(catalogue::removePalette(library, words[1]));
        session.say("Palette " + words[1] + " removed; textures keep their colours.");
        return answerPalettes(session, {});
    }
    const bool lists = action == "list" && words.size() == 1;
    if (!lists && !(action == "show" && named)) return wrongUse("palette", words);
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    if (lists) {
        PANTILE_ASSIGN_OR_RETURN(const auto palettes, catalogue::listPalettes(library));
        answerPalettes(session, palettes);
        if (!session.json)
            session.out << counted(std::ssize(palettes), "palette", "palettes") << ".\n";
        if (palettes.empty()) session.say("'pantile palette add FILE' keeps one.");
        return Outcome::Done;
    }
    PANTILE_ASSIGN_OR_RETURN(const NamedPalette palette, catalogue::readPalette(library, words[1]));
    return answerPalettes(session, {palette});
}

}  // namespace

Command paletteCommand() {
    return {
        "palette",
        "Keeps palettes by name.",
        {"list", "show NAME", "add FILE [--name NAME]", "remove NAME",
         "from-picture FILE --colours N [--pin '#RRGGBB']... [--merge N] [--name NAME]"},
        {
            {"--name", OptionKind::Value, "NAME", "the name, else the file's without its ending"},
            {"--colours", OptionKind::Value, "N", "how many colours to choose, 2 to 256"},
            {"--pin", OptionKind::Repeated, "'#RRGGBB'", "one of the colours, as it is"},
            {"--merge", OptionKind::Value, "N", "join colours closer than N; 200 is just visible"},
        },
        "FILE is a text with one #RRGGBB a line (\"transparent\" behind one marks the colour to "
        "leave\n"
        "unpainted), or an indexed PNG. from-picture stores the palette if a name is given.",
        runPalette};
}

}  // namespace pantile::cli
