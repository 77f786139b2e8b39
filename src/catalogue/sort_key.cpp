#include "catalogue/sort_key.h"

#include <algorithm>
#include <array>
#include <string>

#include "core/nearest_word.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

// In the order of SortField.
constexpr std::array<std::string_view, 11> kNames = {"relevance", "title",  "added", "changed",
                                                     "size",      "stars",  "draw",  "bytes",
                                                     "colours",   "colour", "id"};

}  // namespace

core::Result<SortKey> parseSortKey(std::string_view text) {
    SortKey key;
    std::string_view name = text;
    if (name.starts_with('-')) {
        key.direction = SortDirection::Reversed;
        name.remove_prefix(1);
    }
    const auto* const found = std::find(kNames.begin(), kNames.end(), name);
    if (found == kNames.end()) {
        return core::Error{
            core::ErrorKind::InvalidInput, "nothing is sorted by '" + core::excerpt(text) + "'",
            core::didYouMean(name, kNames,
                             "sort by relevance, title, added, changed, size, stars, draw, "
                             "bytes, colours, colour or id")};
    }
    key.field = static_cast<SortField>(found - kNames.begin());
    return key;
}

}  // namespace pantile::catalogue
