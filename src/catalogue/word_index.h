#pragma once

// The index of folded words: the table word_pages, and tags.folded. See schema/0004_finding.sql.

#include <cstdint>
#include <set>
#include <string_view>
#include <vector>

#include "catalogue/connection.h"
#include "catalogue/text_folding.h"
#include "catalogue/word_page.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::catalogue {

/// Textures whose texts the index does not hold as they are. A page holds many: they are written
/// when the outermost transaction commits, or something is searched.
class WordChanges {
public:
    /// The texture's texts came, changed or went in the present transaction.
    void note(core::TextureId id) { m_unwritten.insert(id.value); }

    /// A savepoint was undone, and perhaps with it what was written into the index.
    void takeBack();

    /// Brings the index up to the textures as they now are. Inside a transaction, if anything was
    /// noted.
    core::Result<void> write(Connection& connection);

    /// The outermost transaction ended.
    void clear();

private:
    std::set<std::int64_t> m_unwritten;
    std::set<std::int64_t> m_written;  ///< In the present transaction.
};

/// A texture in which text stands, and a bit for each of the kWordFields where it does.
struct TextHit {
    std::int64_t id = 0;
    unsigned fields = 0;
};

/// By rising ids. `folded` is not empty.
core::Result<std::vector<TextHit>> searchWords(Connection& connection, std::string_view folded);

/// Whether the index holds the library's words as this folding makes them.
core::Result<bool> isFoldedBy(Connection& connection, const TextFolding& folding);

/// Makes the index anew with the connection's fold() where another folding made it, and works out
/// what older versions of the library did not know of their pictures.
core::Result<void> foldLibrary(Connection& connection, const TextFolding& folding);

/// Whether the index is the one that foldLibrary would make.
core::Result<bool> indexIsSound(Connection& connection);

}  // namespace pantile::catalogue
