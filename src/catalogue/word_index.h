#pragma once

// The index of folded words: the table word_pages, and tags.folded. See schema/0004_finding.sql.

#include <array>
#include <cstdint>
#include <span>
#include <string_view>

#include "catalogue/connection.h"
#include "catalogue/id_set.h"
#include "catalogue/text_folding.h"
#include "catalogue/word_page.h"
#include "core/result.h"

namespace pantile::catalogue {

/// Brings the pages up to the texts of these textures, by rising ids.
core::Result<void> writeWords(Connection& connection, std::span<const std::int64_t> ids);

/// Of each of the kWordFields, the textures in which a text stands there.
using WordSets = std::array<IdSet, kWordFields.size()>;

/// `folded` is not empty.
core::Result<WordSets> searchWords(Connection& connection, std::string_view folded);

/// Whether the index holds the library's words as this folding makes them.
core::Result<bool> isFoldedBy(Connection& connection, const TextFolding& folding);

/// Makes the indexes of words and facts anew, with the connection's fold(), where another folding
/// or an older version of the library made them, and works out what that did not know of its
/// pictures.
core::Result<void> foldLibrary(Connection& connection, const TextFolding& folding);

/// Whether the index is the one that foldLibrary would make.
core::Result<bool> indexIsSound(Connection& connection);

}  // namespace pantile::catalogue
