#include <ostream>

#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/selection.h"
#include "core/text.h"
#include "tasks/library_place.h"
#include "tasks/share_codes.h"

namespace pantile::cli {

using core::Result;

namespace {

QJsonObject codeJson(const tasks::SharedCode& shared) {
    const QJsonValue text = jsonText(shared.code.text);
    return {{"id", jsonNumber(shared.id.value)},
            {"title", jsonText(shared.title)},
            {"code", text},
            {"parts", QJsonArray{text}},
            {"characters", jsonNumber(static_cast<std::int64_t>(shared.code.text.size()))},
            {"bytes", jsonNumber(static_cast<std::int64_t>(shared.code.bytes))},
            {"method", jsonText(codec::methodName(shared.code.method))}};
}

// The words around a code never begin like a code's line, so nothing they say is taken for one.
void printCode(std::ostream& out, const tasks::SharedCode& shared) {
    out << (shared.title.empty() ? "(no title)" : core::visibleText(shared.title));
    if (!shared.author.empty()) out << ", by " << core::visibleText(shared.author);
    if (!shared.licence.empty()) out << ", " << core::visibleText(shared.licence);
    out << ":\n" << shared.code.text << '\n';
}

Result<Outcome> run(Session& session, const Arguments& arguments) {
    codec::EncodeOptions options;
    if (arguments.has("--plain-runs")) options.method = codec::MethodChoice::PlainRunsOnly;
    if (arguments.has("--without-palette")) {
        options.palette = codec::PaletteForm::ByFingerprint;
    }
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const Selection selection,
                             selectTextures(library, arguments.positional()));
    PANTILE_ASSIGN_OR_RETURN(const auto codes,
                             tasks::makeCodes(library, selection.ids, options, session.progress()));
    if (session.json) {
        printJson(session.out, {{"codes", jsonArray(codes, codeJson)}});
        return Outcome::Done;
    }
    for (std::size_t i = 0; i < codes.size(); ++i) {
        if (i > 0) session.out << '\n';
        printCode(session.out, codes[i]);
    }
    return Outcome::Done;
}

}  // namespace

Command codeCommand() {
    return {
        "code",
        "Prints textures as codes to paste into chat and forums.",
        {"SELECTION [options]"},
        {
            {"--plain-runs", OptionKind::Flag, "", "the simple method, which anyone can decode"},
            {"--without-palette", OptionKind::Flag, "",
             "name the palette only; readers must have it already"},
        },
        "A code carries title, author, licence and tags, and checks itself when it is read.",
        run};
}

}  // namespace pantile::cli
