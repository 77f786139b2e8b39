#include "cli/selection.h"

#include <algorithm>
#include <limits>
#include <optional>
#include <set>

#include "catalogue/query_parser.h"
#include "cli/arguments.h"
#include "core/text.h"
#include "tasks/find_textures.h"
#include "tasks/query_remarks.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

bool isNumber(std::string_view word) {
    return !word.empty() && word.find_first_not_of("0123456789") == std::string_view::npos;
}

/// "1-5", "1..5" or "1,2".
bool looksLikeIds(std::string_view word) {
    return word.find_first_of("0123456789") == 0 &&
           word.find_first_not_of("0123456789,;-. ") == std::string_view::npos;
}

/// What may be wrong with a query that found nothing.
std::string hintFor(const catalogue::Library& library, const std::string& query) {
    const auto remarks = tasks::queryRemarks(library, query);
    return remarks.empty() ? "'pantile find' lists all that are there" : remarks.front();
}

Result<std::vector<core::TextureId>> search(catalogue::Library& library, const std::string& text) {
    const auto query = catalogue::parseQuery(text);
    if (!query) return Error{ErrorKind::Usage, query.error().message, query.error().hint};
    return tasks::findInOrder(library, *query);
}

}  // namespace

Result<core::TextureId> parseTextureId(std::string_view word) {
    const auto number = parseNumber("an id", word, 1, std::numeric_limits<long long>::max());
    if (number) return core::TextureId{*number};
    return Error{ErrorKind::Usage, number.error().message,
                 "give the number that find shows beside the texture, such as 17"};
}

Result<Selection> selectTextures(catalogue::Library& library,
                                 const std::vector<std::string>& words) {
    if (words.empty()) {
        return Error{ErrorKind::Usage, "no textures were named",
                     "give ids, a search in quotes such as \"tag:kelp\", or all"};
    }
    Selection selection;
    std::set<core::TextureId> seen;
    const auto take = [&](core::TextureId id) {
        if (seen.insert(id).second) selection.ids.push_back(id);
    };
    std::optional<std::string> query;
    for (const std::string& word : words) {
        if (isNumber(word)) {
            PANTILE_ASSIGN_OR_RETURN(const core::TextureId id, parseTextureId(word));
            take(id);
        } else if (query) {
            return Error{ErrorKind::Usage, "'" + core::excerpt(word) + "' is a second search",
                         "put all of a search into one pair of quotes"};
        } else {
            query = word;
        }
    }
    if (query) {
        selection.fromSearch = true;
        PANTILE_ASSIGN_OR_RETURN(const std::vector<core::TextureId> found, search(library, *query));
        for (const core::TextureId id : found) take(id);
    }
    if (selection.ids.empty()) {
        return Error{
            ErrorKind::NotFound, "no texture answers '" + core::excerpt(*query) + "'",
            looksLikeIds(*query)
                ? "ids stand with blanks between them: 1 2 3; a range is a search: \"id>=1 "
                  "id<=3\""
                : hintFor(library, *query)};
    }
    return selection;
}

}  // namespace pantile::cli
