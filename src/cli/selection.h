#pragma once

// A SELECTION: ids and at most one search, or 'all'.

#include <string>
#include <vector>

#include "catalogue/library.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::cli {

struct Selection {
    std::vector<core::TextureId>
        ids;  ///< In the order given, then those found as findInOrder has them; each once.
    bool fromSearch = false;  ///< A search was part of it.
};

/// Errors: Usage for no word at all, two searches, a number that is no id or a search with a
/// mistake; NotFound if only a search was given and it finds nothing; errors of the library.
core::Result<Selection> selectTextures(catalogue::Library& library,
                                       const std::vector<std::string>& words);

/// One id. Errors: Usage.
core::Result<core::TextureId> parseTextureId(std::string_view word);

}  // namespace pantile::cli
