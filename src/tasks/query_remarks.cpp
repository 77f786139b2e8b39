#include "tasks/query_remarks.h"

#include <algorithm>
#include <array>

#include "catalogue/query_lexer.h"
#include "core/text.h"

namespace pantile::tasks {
namespace {

using catalogue::QueryToken;

struct ForeignWord {
    std::string_view word;
    std::string_view instead;
};

constexpr std::array<ForeignWord, 4> kForeignWords = {{
    {"OR", "write | between the two"},
    {"AND", "leave it out: what stands side by side must all match"},
    {"NOT", "write - right before what is not to match"},
    {"&&", "leave it out: what stands side by side must all match"},
}};

std::string remarkOnWord(const std::string& word) {
    const auto* const foreign = std::find_if(kForeignWords.begin(), kForeignWords.end(),
                                             [&](const auto& each) { return each.word == word; });
    const std::string shown = "'" + core::excerpt(word) + "' is searched for as text; ";
    if (foreign != kForeignWords.end()) return shown + std::string(foreign->instead);
    if (word.starts_with('!')) return shown + "write - in place of the !";
    return "";
}

std::string remarkOn(const QueryToken& token) {
    if (token.quoted) return "";
    if (token.kind == QueryToken::Kind::Text) {
        const std::string remark = remarkOnWord(token.value);
        if (!remark.empty()) return remark;
    }
    const bool hasValue =
        token.kind == QueryToken::Kind::Text || token.kind == QueryToken::Kind::KeyAndValue;
    if (!hasValue || token.value.find('*') == std::string::npos) return "";
    const std::string shown = "'" + core::excerpt(token.value) + "' is searched for with its *; ";
    return shown + (token.key == "tag" ? "'pantile tags list BEGINNING' shows what tags begin so"
                                       : "leave it out: parts of words are found");
}

}  // namespace

std::string unknownTagText(const catalogue::UnknownTag& tag) {
    return "there is no tag '" + core::excerpt(tag.word) + "'; " +
           (tag.nearest.empty() ? "'pantile tags list' shows those there are"
                                : "did you mean '" + core::excerpt(tag.nearest) + "'?");
}

std::vector<std::string> queryRemarks(const catalogue::Library& library, std::string_view query) {
    std::vector<std::string> remarks;
    const auto tokens = catalogue::lexQuery(query);
    if (!tokens) return remarks;
    std::vector<std::string> tags;
    for (const QueryToken& token : *tokens) {
        const std::string remark = remarkOn(token);
        const bool isNew = std::find(remarks.begin(), remarks.end(), remark) == remarks.end();
        if (!remark.empty() && isNew) remarks.push_back(remark);
        const bool asksForTag = token.kind == QueryToken::Kind::KeyAndValue && token.key == "tag" &&
                                !token.value.empty() && remark.empty();
        if (asksForTag) tags.push_back(token.value);
    }
    const auto unknown = catalogue::unknownTags(library, tags);
    if (!unknown) return remarks;
    for (const catalogue::UnknownTag& tag : *unknown) remarks.push_back(unknownTagText(tag));
    return remarks;
}

}  // namespace pantile::tasks
