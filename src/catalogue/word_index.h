#pragma once

// The index of folded words: tables words and word_beginnings, and tags.folded. See
// schema/0004_finding.sql. Everything here is called inside a transaction.

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "catalogue/connection.h"
#include "catalogue/text_folding.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::catalogue {

/// A row of the index is 8 times the texture's id, and the place of the field in this list.
/// Stored in libraries: never change the order.
inline constexpr std::array<std::string_view, 5> kWordFields = {"title", "author", "licence",
                                                                "source", "note"};

/// Changes that are not yet in the index. The index takes many at once: it writes what it was given
/// out whenever a savepoint or another statement begins, and each writing makes a part that is to
/// be searched beside the others and merged.
class WordChanges {
public:
    /// The row with this text goes, or comes.
    void forget(std::int64_t row, std::string text) { add(row, std::move(text), Kind::Forget); }

    void index(std::int64_t row, std::string text) { add(row, std::move(text), Kind::Index); }

    /// Where a savepoint began: what was noted, and what of it was written.
    struct Mark {
        std::size_t noted = 0;
        std::size_t written = 0;
    };

    Mark mark() const { return {m_changes.size(), m_written}; }

    /// The savepoint is undone, and with it what was written since.
    void backTo(const Mark& mark);

    /// Writes into the index what is not written yet.
    core::Result<void> write(Connection& connection);

    /// All is written and committed.
    void clear();

private:
    enum class Kind { Forget, Index };

    struct Change {
        std::int64_t row = 0;
        std::string text;
        Kind kind = Kind::Forget;
    };

    void add(std::int64_t row, std::string text, Kind kind) {
        m_changes.push_back({row, std::move(text), kind});
    }

    std::vector<Change> m_changes;
    std::size_t m_written = 0;
};

/// Notes the texture's present texts for the index; none of them may be in it. They are written
/// when the outermost transaction commits, or something is searched.
core::Result<void> indexWords(Connection& connection, core::TextureId id);

/// Notes that they go; to be called before they change.
core::Result<void> forgetWords(Connection& connection, core::TextureId id);

/// Whether the index holds the library's words as this folding makes them.
core::Result<bool> isFoldedBy(Connection& connection, const TextFolding& folding);

/// Makes the index anew with the connection's fold() where another folding made it, and works out
/// what older versions of the library did not know of their pictures.
core::Result<void> foldLibrary(Connection& connection, const TextFolding& folding);

/// Whether the index is the one that foldLibrary would make.
core::Result<bool> indexIsSound(Connection& connection);

}  // namespace pantile::catalogue
