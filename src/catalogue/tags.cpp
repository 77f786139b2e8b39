#include "catalogue/tags.h"

#include <algorithm>
#include <functional>
#include <optional>

#include "catalogue/actions.h"
#include "catalogue/index_changes.h"
#include "catalogue/names.h"
#include "catalogue/query_matcher.h"
#include "catalogue/revisions.h"
#include "catalogue/sql_functions.h"
#include "catalogue/statement.h"
#include "catalogue/tag_list.h"
#include "core/nearest_word.h"
#include "core/text.h"
#include "core/texture.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

/// What becomes of a tag: another, or nothing.
using TagChange = std::function<std::optional<std::string>(const std::string&)>;

Result<std::vector<TagCount>> readCounts(Statement row) {
    std::vector<TagCount> counts;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        if (!more) return counts;
        counts.push_back({row.text(0), row.integer(1)});
    }
}

/// The name as it stands in the library.
Result<std::string> storedName(Connection& connection, std::string_view name) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto names,
        allTexts(connection,
                 "SELECT name FROM tags WHERE name = ?1 OR folded = fold(?1) ORDER BY name <> ?1, "
                 "name LIMIT 1",
                 {name}));
    if (!names.empty()) return names.front();
    PANTILE_RETURN_IF_ERROR(idOfName(connection, kTags, name));
    return std::string(name);
}

bool isBelow(std::string_view tag, std::string_view name) {
    return tag.size() > name.size() && tag.starts_with(name) && tag[name.size()] == '/';
}

bool isAtOrBelow(std::string_view tag, std::string_view name) {
    return tag == name || isBelow(tag, name);
}

Result<void> checkUnused(Connection& connection, std::string_view word,
                         std::optional<std::string_view> except = std::nullopt) {
    PANTILE_RETURN_IF_ERROR(checkNewTag(word));
    PANTILE_ASSIGN_OR_RETURN(
        const auto tags,
        allTexts(connection, "SELECT name FROM tags WHERE folded = fold(?1) AND name IS NOT ?2",
                 {word, orNull(except)}));
    if (!tags.empty()) {
        return Error{ErrorKind::AlreadyExists,
                     "there is a tag '" + core::excerpt(tags.front()) + "' already",
                     "choose another word, or merge the two"};
    }
    PANTILE_ASSIGN_OR_RETURN(
        const auto meant,
        allTexts(connection, "SELECT tag FROM tag_aliases WHERE alias = fold(?1)", {word}));
    if (meant.empty()) return {};
    return Error{
        ErrorKind::AlreadyExists,
        "'" + core::excerpt(word) + "' stands for the tag '" + core::excerpt(meant.front()) +
            "' already",
        "choose another word, or let go of that with: tags unalias " + core::excerpt(word)};
}

/// Every texture that has the tag or one below it.
Result<std::vector<std::int64_t>> texturesWith(Connection& connection, std::string_view name) {
    return allNumbers(connection,
                      "SELECT DISTINCT texture_id FROM tags JOIN texture_tags ON tag_id = tags.id "
                      "WHERE name = ?1 OR (name > ?1 || '/' AND name < ?1 || '0') "
                      "ORDER BY texture_id",
                      {name});
}

Result<std::int64_t> changeEverywhere(Library& library, std::string_view name,
                                      const TagChange& change) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const auto ids, texturesWith(connection, name));
    const auto changeTags = [&](TextureState& state) {
        std::vector<std::string> tags;
        for (const std::string& tag : state.text.tags) {
            if (auto changed = change(tag)) tags.push_back(*std::move(changed));
        }
        state.text.tags = std::move(tags);
        return Result<void>();
    };
    std::int64_t count = 0;
    for (const std::int64_t id : ids) {
        const auto changed = changeTexture(connection, core::TextureId{id}, RevisionKind::Tags,
                                           library.now(), changeTags);
        if (!changed) return changed.error().at("texture " + std::to_string(id));
        count += *changed;
    }
    PANTILE_RETURN_IF_ERROR(dropUnusedTags(connection));
    return count;
}

/// The tag and those below it become the other and those below that, aliases too.
Result<std::int64_t> moveTag(Library& library, std::string_view name, std::string_view newName) {
    PANTILE_RETURN_IF_ERROR(
        run(library.connection(),
            "UPDATE tag_aliases SET tag = ?2 || substr(tag, length(?1) + 1) WHERE tag = ?1 OR "
            "(tag > ?1 || '/' AND tag < ?1 || '0')",
            {name, newName}));
    return changeEverywhere(library, name,
                            [&](const std::string& tag) -> std::optional<std::string> {
                                if (!isAtOrBelow(tag, name)) return tag;
                                return std::string(newName) + tag.substr(name.size());
                            });
}

/// A tag or another word for one.
struct KnownWord {
    std::string folded;
    std::string written;
};

Result<std::vector<KnownWord>> allWords(Connection& connection) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection,
                           "SELECT folded, name FROM tags UNION ALL SELECT alias, alias FROM "
                           "tag_aliases ORDER BY 1, 2"));
    std::vector<KnownWord> words;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        if (!more) return words;
        words.push_back({row.text(0), row.text(1)});
    }
}

/// As it is written, or nothing.
std::string nearestOf(std::string_view folded, const std::vector<KnownWord>& known) {
    std::vector<std::string_view> words;
    words.reserve(known.size());
    for (const KnownWord& each : known) words.emplace_back(each.folded);
    const auto nearest = core::nearestWord(folded, words);
    if (!nearest) return {};
    const auto place = std::find(words.begin(), words.end(), *nearest) - words.begin();
    return known[static_cast<std::size_t>(place)].written;
}

}  // namespace

Result<void> checkNewTag(std::string_view tag) {
    PANTILE_RETURN_IF_ERROR(core::checkTag(tag));
    const bool wholeLevels =
        !tag.starts_with('/') && !tag.ends_with('/') && tag.find("//") == std::string_view::npos;
    if (wholeLevels) return {};
    return Error{ErrorKind::InvalidInput,
                 "'" + core::excerpt(tag) + "' cannot be a tag: one of its levels is empty",
                 "write a word on either side of each '/', such as stone/slate"};
}

Result<std::vector<UnknownTag>> unknownTags(const Library& library,
                                            std::span<const std::string> words) {
    Connection& connection = library.connection();
    std::vector<UnknownTag> unknown;
    for (const std::string& word : words) {
        const std::string folded = library.folding().fold(word);
        PANTILE_ASSIGN_OR_RETURN(
            const auto known,
            findNumber(connection,
                       "SELECT 1 FROM tags WHERE folded = ?1 OR (folded > ?1 || '/' AND folded < "
                       "?1 || '0') UNION ALL SELECT 1 FROM tag_aliases WHERE alias = ?1 LIMIT 1",
                       {folded}));
        if (known) continue;
        PANTILE_ASSIGN_OR_RETURN(const auto all, allWords(connection));
        unknown.push_back({word, nearestOf(folded, all)});
    }
    return unknown;
}

Result<std::vector<TagCount>> listTags(const Library& library) {
    Connection& connection = library.connection();
    PANTILE_RETURN_IF_ERROR(connection.indexChanges().write(connection));
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(IdSet present,
                             QueryMatcher(connection, library.folding()).matches(Query{}));
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection,
                           "SELECT g.name, count(*) FILTER (WHERE is_one_of(?1, x.texture_id)) "
                           "FROM tags g LEFT JOIN texture_tags x ON x.tag_id = g.id "
                           "GROUP BY g.id ORDER BY g.folded, g.name",
                           {bound(present)}));
    return readCounts(std::move(row));
}

Result<std::vector<TagCount>> suggestTags(const Library& library, std::string_view begun,
                                          int most) {
    const std::string folded = library.folding().fold(begun);
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(
            library.connection(),
            "SELECT name, (SELECT count(*) FROM texture_tags WHERE tag_id = tags.id) AS textures "
            "FROM tags WHERE substr(folded, 1, length(?1)) = ?1 OR instr(folded, '/' || ?1) OR "
            "name IN (SELECT tag FROM tag_aliases WHERE substr(alias, 1, length(?1)) = ?1) "
            "ORDER BY textures DESC, name LIMIT ?2",
            {std::string_view(folded), most}));
    return readCounts(std::move(row));
}

Result<std::int64_t> renameTag(Library& library, std::string_view name, std::string_view newName) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Rename tag " + nameInWords(name) + " to " + nameInWords(newName));
    PANTILE_ASSIGN_OR_RETURN(const std::string from, storedName(library.connection(), name));
    PANTILE_RETURN_IF_ERROR(checkUnused(library.connection(), newName, from));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t changed, moveTag(library, from, newName));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return changed;
}

Result<std::int64_t> mergeTag(Library& library, std::string_view name, std::string_view into) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Merge tag " + nameInWords(name) + " into " + nameInWords(into));
    PANTILE_ASSIGN_OR_RETURN(const std::string from, storedName(library.connection(), name));
    PANTILE_ASSIGN_OR_RETURN(const std::string target, storedName(library.connection(), into));
    if (from == target) {
        return Error{ErrorKind::InvalidInput,
                     "'" + core::excerpt(from) + "' cannot be merged into itself",
                     "name the tag that its textures are to have"};
    }
    if (isBelow(from, target) || isBelow(target, from)) {
        return Error{ErrorKind::InvalidInput,
                     "'" + core::excerpt(from) + "' and '" + core::excerpt(target) +
                         "' lie below one another",
                     "rename the lower one"};
    }
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t changed, moveTag(library, from, target));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return changed;
}

Result<std::int64_t> deleteTag(Library& library, std::string_view name) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Remove tag " + nameInWords(name));
    PANTILE_ASSIGN_OR_RETURN(const std::string stored, storedName(library.connection(), name));
    PANTILE_RETURN_IF_ERROR(
        run(library.connection(), "DELETE FROM tag_aliases WHERE tag = ?1", {stored}));
    PANTILE_ASSIGN_OR_RETURN(
        const std::int64_t changed,
        changeEverywhere(library, stored,
                         [&](const std::string& tag) -> std::optional<std::string> {
                             if (tag == stored) return std::nullopt;
                             return tag;
                         }));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return changed;
}

Result<std::vector<TagAlias>> listTagAliases(const Library& library) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row, Statement::prepare(library.connection(),
                                          "SELECT alias, tag FROM tag_aliases ORDER BY alias"));
    std::vector<TagAlias> aliases;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        if (!more) return aliases;
        aliases.push_back({row.text(0), row.text(1)});
    }
}

Result<void> addTagAlias(Library& library, std::string_view alias, std::string_view tag) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Let " + nameInWords(alias) + " stand for tag " + nameInWords(tag));
    PANTILE_RETURN_IF_ERROR(checkUnused(connection, alias));
    PANTILE_ASSIGN_OR_RETURN(const std::string stored, storedName(connection, tag));
    PANTILE_RETURN_IF_ERROR(run(
        connection, "INSERT INTO tag_aliases (alias, tag) VALUES (fold(?1), ?2)", {alias, stored}));
    return transaction.commit();
}

Result<void> removeTagAlias(Library& library, std::string_view alias) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Let " + nameInWords(alias) + " stand for no tag");
    PANTILE_ASSIGN_OR_RETURN(
        const std::int64_t gone,
        run(library.connection(), "DELETE FROM tag_aliases WHERE alias = fold(?1)", {alias}));
    if (gone == 0) {
        return Error{ErrorKind::NotFound,
                     "'" + core::excerpt(alias) + "' is no other word for a tag",
                     "'pantile tags list' shows those there are"};
    }
    return transaction.commit();
}

}  // namespace pantile::catalogue
