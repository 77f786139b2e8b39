#include "catalogue/word_index.h"

#include <map>
#include <optional>

#include "catalogue/contents.h"
#include "catalogue/id_list.h"
#include "catalogue/statement.h"
#include "catalogue/transaction.h"
#include "core/fingerprint.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

using core::Result;
using core::TextureId;

constexpr std::string_view kIndex = "INSERT INTO words (rowid, text) VALUES (?1, ?2)";
constexpr std::string_view kForget =
    "INSERT INTO words (words, rowid, text) VALUES ('delete', ?1, ?2)";

/// Calls `take` with each of the texture's rows as the index holds them.
template <typename Take>
Result<void> forEachText(Connection& connection, TextureId id, Take take) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement texts,
        Statement::prepare(connection,
                           "SELECT fold(title), fold(author), fold(licence), fold(source), "
                           "fold(note) FROM textures WHERE id = ?1",
                           {id.value}));
    PANTILE_ASSIGN_OR_RETURN(const bool found, texts.step());
    if (!found) return noSuchTexture(id);
    for (int field = 0; field < static_cast<int>(kWordFields.size()); ++field) {
        std::string text = texts.text(field);
        if (!text.empty()) take(id.value * 8 + field, std::move(text) + "\n\n");
    }
    return texts.columnCheck();
}

/// The rows of one field as the index holds them.
std::string indexedRows(std::size_t field) {
    const std::string name(kWordFields[field]);
    return "id * 8 + " + std::to_string(field) + ", fold(" + name +
           ") || char(10, 10) FROM textures WHERE " + name + " <> ''";
}

Result<void> fillIndex(Connection& connection) {
    PANTILE_RETURN_IF_ERROR(run(connection, "INSERT INTO words (words) VALUES ('delete-all')"));
    for (std::size_t field = 0; field < kWordFields.size(); ++field) {
        PANTILE_RETURN_IF_ERROR(
            run(connection, "INSERT INTO words (rowid, text) SELECT " + indexedRows(field)));
    }
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

/// A sum over parts of three letters that does not hang on their order.
class PartSum {
public:
    void add(std::string_view letters, std::int64_t row, std::int64_t place) {
        core::FingerprintBuilder part;
        for (const char c : letters) part.addByte(static_cast<std::uint8_t>(c));
        part.addNumber(row);
        part.addNumber(place);
        m_sum += part.finish().value;
    }

    bool operator==(const PartSum&) const = default;

private:
    std::uint64_t m_sum = 0;
};

void addParts(PartSum& sum, std::string_view text, std::int64_t row) {
    std::size_t begin = 0;
    for (std::int64_t place = 0; begin < text.size(); ++place) {
        std::size_t end = begin;
        int letters = 0;
        for (; letters < 3 && end < text.size(); ++letters)
            end += core::codePointAt(text, end).length;
        if (letters < 3) return;
        sum.add(text.substr(begin, end - begin), row, place);
        begin += core::codePointAt(text, begin).length;
    }
}

Result<PartSum> sumOfTexts(Connection& connection) {
    PartSum sum;
    for (std::size_t field = 0; field < kWordFields.size(); ++field) {
        PANTILE_ASSIGN_OR_RETURN(Statement row,
                                 Statement::prepare(connection, "SELECT " + indexedRows(field)));
        for (;;) {
            PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
            if (!more) break;
            addParts(sum, row.text(1), row.integer(0));
        }
    }
    return sum;
}

Result<PartSum> sumOfIndex(Connection& connection) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection, "SELECT term, doc, \"offset\" FROM word_beginnings"));
    PartSum sum;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        if (!more) return sum;
        sum.add(row.text(0), row.integer(1), row.integer(2));
    }
}

}  // namespace

void WordChanges::backTo(const Mark& mark) {
    m_changes.resize(mark.noted);
    m_written = mark.written;
}

void WordChanges::clear() {
    m_changes.clear();
    m_written = 0;
}

Result<void> WordChanges::write(Connection& connection) {
    struct Row {
        std::optional<std::string> old;
        std::optional<std::string> fresh;
    };

    // What a row held first and holds last; by rising rows the index writes least.
    std::map<std::int64_t, Row> rows;
    for (; m_written < m_changes.size(); ++m_written) {
        const Change& change = m_changes[m_written];
        Row& row = rows[change.row];
        if (change.kind == Kind::Index) {
            row.fresh = change.text;
        } else if (row.fresh) {
            row.fresh.reset();
        } else {
            row.old = change.text;
        }
    }
    for (const auto& [number, row] : rows) {
        if (row.old == row.fresh) continue;
        if (row.old) PANTILE_RETURN_IF_ERROR(run(connection, kForget, {number, *row.old}));
        if (row.fresh) PANTILE_RETURN_IF_ERROR(run(connection, kIndex, {number, *row.fresh}));
    }
    return {};
}

Result<void> indexWords(Connection& connection, TextureId id) {
    return forEachText(connection, id, [&](std::int64_t row, std::string text) {
        connection.wordChanges().index(row, std::move(text));
    });
}

Result<void> forgetWords(Connection& connection, TextureId id) {
    return forEachText(connection, id, [&](std::int64_t row, std::string text) {
        connection.wordChanges().forget(row, std::move(text));
    });
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
    PANTILE_RETURN_IF_ERROR(fillIndex(connection));
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
    PANTILE_ASSIGN_OR_RETURN(const PartSum expected, sumOfTexts(connection));
    PANTILE_ASSIGN_OR_RETURN(const PartSum found, sumOfIndex(connection));
    return expected == found;
}

}  // namespace pantile::catalogue
