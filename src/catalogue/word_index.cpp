#include "catalogue/word_index.h"

#include <optional>
#include <span>
#include <string>

#include "catalogue/contents.h"
#include "catalogue/fact_index.h"
#include "catalogue/id_pages.h"
#include "catalogue/index_changes.h"
#include "catalogue/statement.h"
#include "catalogue/transaction.h"

namespace pantile::catalogue {
namespace {

using core::Result;

constexpr std::string_view kAllTexts =
    "SELECT id, fold(title), fold(author), fold(licence), fold(source), fold(note) FROM textures";

using WordPages = IdPages<6>;
static_assert(WordPages::kTextures == WordPage::kTextures);

/// Of a row of kAllTexts.
WordTexts textsIn(Statement& row) {
    WordTexts texts;
    for (std::size_t field = 0; field < texts.size(); ++field)
        texts[field] = row.text(static_cast<int>(field) + 1);
    return texts;
}

Result<WordTexts> textsOf(Connection& connection, std::int64_t id) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection, std::string(kAllTexts) + " WHERE id = ?1", {id}));
    PANTILE_ASSIGN_OR_RETURN(const bool found, row.step());
    if (!found) return WordTexts{};
    WordTexts texts = textsIn(row);
    PANTILE_RETURN_IF_ERROR(row.columnCheck());
    return texts;
}

Result<std::string> storedPage(Connection& connection, std::int64_t page) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection, "SELECT words FROM word_pages WHERE page = ?1", {page}));
    PANTILE_ASSIGN_OR_RETURN(const bool found, row.step());
    if (!found) return std::string();
    std::string words(row.bytesView(0));
    PANTILE_RETURN_IF_ERROR(row.columnCheck());
    return words;
}

Result<void> storePage(Connection& connection, std::int64_t page, const std::string& words) {
    if (words.empty()) {
        PANTILE_RETURN_IF_ERROR(run(connection, "DELETE FROM word_pages WHERE page = ?1", {page}));
        return {};
    }
    const std::vector<std::uint8_t> bytes(words.begin(), words.end());
    PANTILE_RETURN_IF_ERROR(run(connection,
                                "INSERT OR REPLACE INTO word_pages (page, words) VALUES (?1, ?2)",
                                {page, std::span<const std::uint8_t>(bytes)}));
    return {};
}

/// Calls `take` with the number and the bytes of each page as the textures make it, by rising
/// numbers.
template <typename Take>
Result<void> forEachPage(Connection& connection, Take take) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row, Statement::prepare(connection, std::string(kAllTexts) + " ORDER BY id"));
    std::optional<std::int64_t> number;
    WordPage page;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        const auto next = more ? std::optional(WordPages::pageOf(row.integer(0))) : std::nullopt;
        if (number && next != number) {
            PANTILE_RETURN_IF_ERROR(take(*number, page.bytes()));
            page = WordPage();
        }
        if (!more) return {};
        number = next;
        page.set(WordPages::placeOf(row.integer(0)), textsIn(row));
    }
}

Result<void> fillWords(Connection& connection) {
    PANTILE_RETURN_IF_ERROR(run(connection, "DELETE FROM word_pages"));
    PANTILE_RETURN_IF_ERROR(
        forEachPage(connection, [&](std::int64_t number, const std::string& words) {
            return storePage(connection, number, words);
        }));
    PANTILE_RETURN_IF_ERROR(run(connection, "UPDATE tags SET folded = fold(name)"));
    PANTILE_RETURN_IF_ERROR(
        run(connection, "UPDATE OR REPLACE tag_aliases SET alias = fold(alias)"));
    return {};
}

Result<void> describeContents(Connection& connection) {
    PANTILE_ASSIGN_OR_RETURN(const auto ids,
                             allNumbers(connection, "SELECT id FROM contents WHERE used IS NULL"));
    for (const std::int64_t id : ids) PANTILE_RETURN_IF_ERROR(describeContent(connection, id));
    return {};
}

}  // namespace

Result<void> writeWords(Connection& connection, std::span<const std::int64_t> ids) {
    while (!ids.empty()) {
        const std::int64_t number = WordPages::pageOf(ids.front());
        PANTILE_ASSIGN_OR_RETURN(const std::string before, storedPage(connection, number));
        WordPage page(before);
        for (; !ids.empty() && WordPages::pageOf(ids.front()) == number; ids = ids.subspan(1)) {
            PANTILE_ASSIGN_OR_RETURN(const WordTexts texts, textsOf(connection, ids.front()));
            page.set(WordPages::placeOf(ids.front()), texts);
        }
        const std::string after = page.bytes();
        if (after != before) PANTILE_RETURN_IF_ERROR(storePage(connection, number, after));
    }
    return {};
}

Result<WordSets> searchWords(Connection& connection, std::string_view folded) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection, "SELECT page, words FROM word_pages ORDER BY page"));
    WordSets found;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        if (!more) return found;
        const std::int64_t first = WordPages::idAt(row.integer(0), 0);
        const WordHits hits = hitsIn(row.bytesView(1), folded);
        for (std::size_t field = 0; field < hits.size(); ++field) {
            found[field].addRun(first, hits[field]);
        }
    }
}

Result<bool> isFoldedBy(Connection& connection, const TextFolding& folding) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto known, findNumber(connection, "SELECT count(*) FROM folding WHERE version = ?1",
                                     {folding.version}));
    return known.value_or(0) > 0;
}

Result<void> foldLibrary(Connection& connection, const TextFolding& folding) {
    PANTILE_ASSIGN_OR_RETURN(const bool isCurrent, isFoldedBy(connection, folding));
    if (isCurrent) return {};
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, Transaction::begin(connection));
    // Another program may have done it in the meantime.
    PANTILE_ASSIGN_OR_RETURN(const bool isDone, isFoldedBy(connection, folding));
    if (isDone) return {};
    PANTILE_RETURN_IF_ERROR(describeContents(connection));
    PANTILE_RETURN_IF_ERROR(fillWords(connection));
    PANTILE_RETURN_IF_ERROR(fillFacts(connection));
    connection.indexChanges().clear();
    PANTILE_RETURN_IF_ERROR(run(connection, "DELETE FROM folding"));
    PANTILE_RETURN_IF_ERROR(
        run(connection, "INSERT INTO folding (version) VALUES (?1)", {folding.version}));
    return transaction.commit();
}

Result<bool> indexIsSound(Connection& connection) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto wrongTags,
        connection.number("SELECT count(*) FROM tags WHERE folded IS NOT fold(name)"));
    if (wrongTags > 0) return false;
    bool isSound = true;
    std::int64_t pages = 0;
    PANTILE_RETURN_IF_ERROR(
        forEachPage(connection, [&](std::int64_t number, const std::string& words) -> Result<void> {
            PANTILE_ASSIGN_OR_RETURN(const std::string stored, storedPage(connection, number));
            isSound = isSound && stored == words;
            pages += words.empty() ? 0 : 1;
            return {};
        }));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t stored,
                             connection.number("SELECT count(*) FROM word_pages"));
    return isSound && stored == pages;
}

}  // namespace pantile::catalogue
