#pragma once

// Reads a query. Authority for the language: docs/query-language.md.

#include <cstddef>
#include <string_view>

#include "catalogue/query.h"
#include "core/result.h"

namespace pantile::catalogue {

inline constexpr std::size_t kMaxQueryCharacters = 4000;
inline constexpr int kMaxQueryTerms = 200;
inline constexpr int kMaxQueryDepth = 32;

/// An empty text and "all" ask for everything that is not removed.
/// Errors: InvalidInput with the column in the message, and in the hint the line, a caret below the
/// place and what to write instead; TooLarge beyond the limits above.
core::Result<Query> parseQuery(std::string_view text);

}  // namespace pantile::catalogue
