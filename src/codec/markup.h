#pragma once

// What stands in a saved page, a mail or a chat export instead of a plain character: tags,
// entities, backslash and percent escapes. Enough to read a code through them, not to read HTML.

#include <cstddef>
#include <optional>
#include <string_view>

namespace pantile::codec {

struct Markup {
    std::size_t length = 0;  ///< Bytes it takes in the text.
    char32_t meaning = 0;    ///< The character it stands for; 0 for none at all.
};

/// The tag, entity or escape that begins at byte `at`; nothing if none does. A tag that ends a line
/// on a page means '\n', any other none. Cost: bounded, whatever follows.
std::optional<Markup> markupAt(std::string_view text, std::size_t at);

}  // namespace pantile::codec
