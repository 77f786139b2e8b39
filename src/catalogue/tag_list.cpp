#include "catalogue/tag_list.h"

#include <algorithm>
#include <map>
#include <optional>
#include <string_view>

#include "catalogue/statement.h"

namespace pantile::catalogue {

using core::Result;

namespace {

/// It is made if it is not there.
Result<std::int64_t> idOfTag(Connection& connection, const std::string& name) {
    PANTILE_ASSIGN_OR_RETURN(const auto known,
                             findNumber(connection, "SELECT id FROM tags WHERE name = ?1", {name}));
    if (known) return *known;
    PANTILE_RETURN_IF_ERROR(
        run(connection, "INSERT INTO tags (name, folded) VALUES (?1, fold(?1))", {name}));
    return connection.lastInsertedId();
}

/// The tag that the word is but for case and accents; the very word before others.
Result<std::optional<std::string>> tagLike(Connection& connection, std::string_view word) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto names,
        allTexts(connection,
                 "SELECT name FROM tags WHERE folded = fold(?1) ORDER BY name <> ?1, name LIMIT 1",
                 {word}));
    return names.empty() ? std::nullopt : std::optional(names.front());
}

/// A new tag, its upper levels in the letters of the lowest of them that the library has.
Result<std::string> belowStoredTag(Connection& connection, const std::string& word) {
    for (std::size_t slash = word.rfind('/'); slash != std::string::npos && slash > 0;
         slash = word.rfind('/', slash - 1)) {
        PANTILE_ASSIGN_OR_RETURN(const auto above,
                                 tagLike(connection, std::string_view(word).substr(0, slash)));
        if (above) return *above + word.substr(slash);
    }
    return word;
}

}  // namespace

Result<std::vector<std::string>> loadTags(Connection& connection, core::TextureId id) {
    return allTexts(connection,
                    "SELECT name FROM texture_tags JOIN tags ON tags.id = tag_id "
                    "WHERE texture_id = ?1 ORDER BY name",
                    {id.value});
}

Result<std::vector<std::string>> meantTags(Connection& connection,
                                           std::span<const std::string> words) {
    std::vector<std::string> tags;
    std::map<std::string, std::string> firstOf;  // Of new tags, by their folded words.
    for (const std::string& word : words) {
        PANTILE_ASSIGN_OR_RETURN(
            const auto meant,
            allTexts(connection, "SELECT tag FROM tag_aliases WHERE alias = fold(?1)", {word}));
        std::optional<std::string> tag;
        if (!meant.empty()) tag = meant.front();
        if (!tag) {
            PANTILE_ASSIGN_OR_RETURN(tag, tagLike(connection, word));
        }
        if (!tag) {
            PANTILE_ASSIGN_OR_RETURN(const std::string below, belowStoredTag(connection, word));
            PANTILE_ASSIGN_OR_RETURN(const auto folded,
                                     allTexts(connection, "SELECT fold(?1)", {below}));
            tag = firstOf.try_emplace(folded.front(), below).first->second;
        }
        tags.push_back(*std::move(tag));
    }
    return tags;
}

Result<void> storeTags(Connection& connection, core::TextureId id,
                       const std::vector<std::string>& tags) {
    PANTILE_RETURN_IF_ERROR(
        run(connection, "DELETE FROM texture_tags WHERE texture_id = ?1", {id.value}));
    for (const std::string& tag : tags) {
        PANTILE_ASSIGN_OR_RETURN(const std::int64_t tagId, idOfTag(connection, tag));
        PANTILE_RETURN_IF_ERROR(run(connection,
                                    "INSERT INTO texture_tags (texture_id, tag_id) VALUES (?1, ?2)",
                                    {id.value, tagId}));
    }
    return {};
}

std::vector<std::string> splitTags(const std::string& tags) {
    std::vector<std::string> list;
    for (std::size_t at = 0; at < tags.size();) {
        const std::size_t end = std::min(tags.find(' ', at), tags.size());
        list.push_back(tags.substr(at, end - at));
        at = end + 1;
    }
    return list;
}

Result<void> dropUnusedTags(Connection& connection) {
    PANTILE_RETURN_IF_ERROR(run(connection,
                                "DELETE FROM tags WHERE NOT EXISTS (SELECT 1 FROM texture_tags "
                                "WHERE tag_id = tags.id)"));
    return {};
}

}  // namespace pantile::catalogue
