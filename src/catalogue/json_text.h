#pragma once

// Texts as JSON strings (RFC 8259, section 7).

#include <string>
#include <string_view>

namespace pantile::catalogue {

/// Appends `text`, which is valid UTF-8, with its quotes. Only what must be escaped is: quotes,
/// backslashes and control characters.
void appendJsonText(std::string& out, std::string_view text);

}  // namespace pantile::catalogue
