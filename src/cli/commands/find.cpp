#include <algorithm>
#include <limits>
#include <ostream>

#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "catalogue/searches.h"
#include "catalogue/sort_key.h"
#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/texture_answer.h"
#include "tasks/find_textures.h"
#include "tasks/library_place.h"
#include "tasks/query_remarks.h"
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

constexpr std::string_view kByShelf = "shelf";

struct Asked {
    catalogue::Query query;
    catalogue::FindOptions options;
    std::string text;
    bool byShelf = false;
};

// The query and its order: those of a saved search, or as written.
Result<catalogue::SavedSearch> searchOf(const catalogue::Library& library,
                                        const Arguments& arguments) {
    catalogue::SavedSearch search;
    const auto& words = arguments.positional();
    const auto saved = arguments.value("--saved");
    if (saved && !words.empty()) {
        return Error{ErrorKind::Usage, "a query and a saved search were given",
                     "give one of them; a saved search stands for its query"};
    }
    if (saved) {
        PANTILE_ASSIGN_OR_RETURN(search, catalogue::readSearch(library, *saved));
    }
    if (!words.empty()) search.query = words.front();
    search.sort = arguments.value("--sort").value_or(search.sort);
    return search;
}

Result<Asked> askedFor(const catalogue::Library& library, const Arguments& arguments) {
    constexpr auto kMost = std::numeric_limits<long long>::max();
    PANTILE_ASSIGN_OR_RETURN(const auto search, searchOf(library, arguments));
    const auto query = catalogue::parseQuery(search.query);
    if (!query) return asUsage(query.error());
    const bool byShelf = search.sort == kByShelf;
    if (byShelf && !tasks::shelfAsked(*query)) {
        return Error{ErrorKind::Usage, "the search names no shelf to sort by, or several",
                     "write it as in: find shelf:pier --sort shelf"};
    }
    const auto sort = byShelf ? Result<catalogue::SortKey>(catalogue::SortKey{})
                              : catalogue::parseSortKey(search.sort);
    if (!sort) return asUsage(sort.error());
    PANTILE_ASSIGN_OR_RETURN(const auto limit, arguments.number("--limit", 0, kMost));
    PANTILE_ASSIGN_OR_RETURN(const auto offset, arguments.number("--offset", 0, kMost));
    return Asked{*query, {*sort, limit.value_or(-1), offset.value_or(0)}, search.query, byShelf};
}

// In the order of the shelf: the part of it that is to be shown.
Result<catalogue::FoundTextures> foundOnShelf(const Session& session, catalogue::Library& library,
                                              const Asked& asked) {
    PANTILE_ASSIGN_OR_RETURN(std::vector<core::TextureId> ids,
                             tasks::findInOrder(library, asked.query, session.progress()));
    catalogue::FoundTextures found;
    found.total = std::ssize(ids);
    const auto& [sort, limit, offset] = asked.options;
    ids.erase(ids.begin(), ids.begin() + std::min<std::int64_t>(offset, found.total));
    if (limit >= 0 && limit < std::ssize(ids)) ids.resize(static_cast<std::size_t>(limit));
    PANTILE_ASSIGN_OR_RETURN(found.rows, catalogue::readRows(library, ids));
    return found;
}

Result<catalogue::FoundTextures> foundFor(const Session& session, catalogue::Library& library,
                                          const Asked& asked) {
    if (asked.byShelf) return foundOnShelf(session, library, asked);
    return tasks::findTextures(library, asked.query, asked.options, session.progress());
}

void printFound(Session& session, const catalogue::FoundTextures& found) {
    textureTable(found.rows).print(session.out);
    const auto shown = static_cast<std::int64_t>(found.rows.size());
    session.out << counted(found.total, "texture", "textures");
    if (shown != found.total) session.out << ", " << shown << " shown";
    session.out << ".\n";
}

Result<Outcome> runFind(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 0, 1, "find [QUERY], the query in quotes"));
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const Asked asked, askedFor(library, arguments));
    PANTILE_ASSIGN_OR_RETURN(const auto found, foundFor(session, library, asked));
    if (session.json) {
        printJson(session.out, {{"total", jsonNumber(found.total)},
                                {"textures", jsonArray(found.rows, [](const auto& row) {
                                     return tasks::textureJson(row);
                                 })}});
    } else {
        printFound(session, found);
    }
    if (found.total > 0) return Outcome::Done;
    for (const std::string& remark : tasks::queryRemarks(library, asked.text)) session.say(remark);
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
             "relevance, title, added, changed, size, stars, draw, bytes, colours, colour or id; "
             "-KEY turns it round; shelf for the order of the one shelf: in the query"},
            {"--saved", OptionKind::Value, "NAME", "ask a saved search instead of a query"},
            {"--limit", OptionKind::Value, "N", "show at most so many"},
            {"--offset", OptionKind::Value, "N", "pass over the first so many"},
        },
        "A query such as \"kelp\", \"tag:sand -tag:night\", \"size:32x32 draw<2m\", \"like:17\" "
        "or\n"
        "\"(tag:rope | tag:net) author:mara\". Without one, everything is listed. All of the "
        "query\n"
        "language is in docs/query-language.md.",
        runFind,
        true,
    };
}

}  // namespace pantile::cli
