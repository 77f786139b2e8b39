#pragma once

// In which order found textures come.

#include <string_view>

#include "core/result.h"

namespace pantile::catalogue {

enum class SortField {
    Relevance,
    Title,
    Added,
    Changed,
    Size,
    Stars,
    Draw,
    Bytes,
    Colours,
    Colour,  ///< By the most painted one: greys, then by hue.
    Id,
};

enum class SortDirection {
    Usual,  ///< Best or newest first for relevance, stars, added, changed; smallest for the rest.
    Reversed,
};

/// Textures without an estimate come last by draw and bytes, whichever the direction.
struct SortKey {
    SortField field = SortField::Relevance;
    SortDirection direction = SortDirection::Usual;

    bool operator==(const SortKey&) const = default;
};

/// "relevance", "title", "added", "changed", "size", "stars", "draw", "bytes", "colours", "colour"
/// or "id", with a '-' before it for the reverse. Errors: InvalidInput with the nearest of them.
core::Result<SortKey> parseSortKey(std::string_view text);

}  // namespace pantile::catalogue
