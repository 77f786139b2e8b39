#include <array>
#include <ostream>

#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/selection.h"
#include "tasks/library_place.h"
#include "tasks/share_codes.h"

namespace pantile::cli {

using core::Result;

namespace {

constexpr std::array<Choice<tasks::PostSyntax>, 4> kSyntaxes = {{
    {"chat", tasks::PostSyntax::Chat},
    {"markdown", tasks::PostSyntax::Markdown},
    {"bbcode", tasks::PostSyntax::Bbcode},
    {"plain", tasks::PostSyntax::Plain},
}};

QJsonObject codeJson(const tasks::SharedCode& shared) {
    const bool isSet = shared.ids.size() > 1;
    return {{"id", isSet ? QJsonValue() : QJsonValue(jsonNumber(shared.ids.front().value))},
            {"ids", jsonArray(shared.ids, [](core::TextureId id) { return jsonNumber(id.value); })},
            {"title", jsonText(shared.credit.title)},
            {"code", jsonText(shared.code.text)},
            {"parts", jsonTexts(shared.posts)},
            {"characters", jsonNumber(static_cast<std::int64_t>(shared.code.text.size()))},
            {"bytes", jsonNumber(static_cast<std::int64_t>(shared.code.bytes))},
            {"method", jsonText(codec::methodName(shared.code.method))}};
}

// Without --for the words are for whoever reads the terminal; the posts are the codes below them.
void printPosts(std::ostream& out, const tasks::SharedCode& shared, bool framed) {
    const std::size_t parts = shared.posts.size();
    for (std::size_t i = 0; i < parts; ++i) {
        if (i > 0) out << '\n';
        if (!framed) {
            out << tasks::creditWords(shared.credit);
            if (parts > 1) out << ", part " << i + 1 << " of " << parts;
            out << ":\n";
        }
        out << shared.posts[i] << '\n';
    }
}

Result<tasks::ShareOptions> shareOptions(const Arguments& arguments) {
    constexpr long long kMostCharacters = 1000000;  // More than any place takes.
    tasks::ShareOptions options;
    if (arguments.has("--plain-runs")) options.code.method = codec::MethodChoice::PlainRunsOnly;
    if (arguments.has("--without-palette")) {
        options.code.palette = codec::PaletteForm::ByFingerprint;
    }
    PANTILE_ASSIGN_OR_RETURN(const auto limit,
                             arguments.number("--limit", tasks::kLeastPostLimit, kMostCharacters));
    if (limit) options.posts.limit = static_cast<std::size_t>(*limit);
    if (const auto word = arguments.value("--for")) {
        PANTILE_ASSIGN_OR_RETURN(options.posts.syntax, parseChoice("--for", *word, kSyntaxes));
    }
    return options;
}

Result<std::vector<tasks::SharedCode>> codesFor(const catalogue::Library& library,
                                                const std::vector<core::TextureId>& ids,
                                                const tasks::ShareOptions& options, bool asSet,
                                                const core::Progress& progress) {
    if (!asSet || ids.empty()) return tasks::makeCodes(library, ids, options, progress);
    PANTILE_ASSIGN_OR_RETURN(tasks::SharedCode shared, tasks::makeSetCode(library, ids, options));
    return std::vector<tasks::SharedCode>{std::move(shared)};
}

Result<Outcome> runCode(Session& session, const Arguments& arguments) {
    PANTILE_ASSIGN_OR_RETURN(const tasks::ShareOptions options, shareOptions(arguments));
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const Selection selection,
                             selectTextures(library, arguments.positional()));
    PANTILE_ASSIGN_OR_RETURN(
        const auto codes,
        codesFor(library, selection.ids, options, arguments.has("--set"), session.progress()));
    if (session.json) {
        printJson(session.out, {{"codes", jsonArray(codes, codeJson)}});
        return Outcome::Done;
    }
    for (std::size_t i = 0; i < codes.size(); ++i) {
        if (i > 0) session.out << '\n';
        printPosts(session.out, codes[i], options.posts.syntax.has_value());
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
            {"--set", OptionKind::Flag, "", "one code for all of them, shorter than one for each"},
            {"--plain-runs", OptionKind::Flag, "", "the simple method, which anyone can decode"},
            {"--without-palette", OptionKind::Flag, "",
             "name the palette only; readers must have it already"},
            {"--limit", OptionKind::Value, "CHARACTERS",
             "cut into parts, so that no post is longer; 160 or more"},
            {"--for", OptionKind::Value, "chat|markdown|bbcode|plain",
             "posts with title, author and licence, escaped for that place"},
        },
        "A code carries title, author, licence and tags, and checks itself when it is read. Parts "
        "may\n"
        "arrive in any order; read and add join them. --limit counts all of a post.",
        runCode};
}

}  // namespace pantile::cli
