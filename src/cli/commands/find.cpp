#include <limits>
#include <ostream>

#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "catalogue/sort_key.h"
#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/texture_answer.h"
#include "tasks/library_place.h"
#include "tasks/texture_json.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

// A mistake in the search or the sort key is one of the command line.
Error asUsage(const Error& error) {
    return {ErrorKind::Usage, error.message, error.hint};
}

Result<catalogue::FindOptions> findOptions(const Arguments& arguments) {
    constexpr auto kMost = std::numeric_limits<long long>::max();
    catalogue::FindOptions options;
    if (const auto key = arguments.value("--sort")) {
        const auto parsed = catalogue::parseSortKey(*key);
        if (!parsed) return asUsage(parsed.error());
        options.sort = *parsed;
    }
    PANTILE_ASSIGN_OR_RETURN(const auto limit, arguments.number("--limit", 0, kMost));
    PANTILE_ASSIGN_OR_RETURN(const auto offset, arguments.number("--offset", 0, kMost));
    options.limit = limit.value_or(-1);
    options.offset = offset.value_or(0);
    return options;
}

void printFound(Session& session, const catalogue::FoundTextures& found) {
    textureTable(found.rows).print(session.out);
    const auto shown = static_cast<std::int64_t>(found.rows.size());
    session.out << counted(found.total, "texture", "textures");
    if (shown != found.total) session.out << ", " << shown << " shown";
    session.out << ".\n";
}

Result<Outcome> run(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 0, 1, "find [QUERY], the query in quotes"));
    PANTILE_ASSIGN_OR_RETURN(const auto options, findOptions(arguments));
    const auto& words = arguments.positional();
    const auto query = catalogue::parseQuery(words.empty() ? "" : words.front());
    if (!query) return asUsage(query.error());
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto found, catalogue::findTextures(library, *query, options));
    if (session.json) {
        printJson(session.out, {{"total", jsonNumber(found.total)},
                                {"textures", jsonArray(found.rows, [](const auto& row) {
                                     return tasks::textureJson(row);
                                 })}});
    } else {
        printFound(session, found);
    }
    return Outcome::Done;
}

}  // namespace

Command findCommandSpec() {
    return {
        "find",
        "Searches the library.",
        {"[QUERY] [options]"},
        {
            {"--sort", OptionKind::Value, "KEY",
             "id, title, added, changed, size, draw, bytes or colours; -KEY turns it round"},
            {"--limit", OptionKind::Value, "N", "show at most so many"},
            {"--offset", OptionKind::Value, "N", "pass over the first so many"},
        },
        "A query such as \"kelp\", \"tag:sand -tag:night\", \"size:32x32 draw<2m\" or\n"
        "\"(tag:rope | tag:net) author:mara\". Without one, everything is listed. All of the "
        "query\n"
        "language is in docs/query-language.md.",
        run,
    };
}

}  // namespace pantile::cli
