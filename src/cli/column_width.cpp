#include "cli/column_width.h"

#include <wchar.h>

#include "core/text.h"

namespace pantile::cli {

std::size_t columnWidth(std::string_view validUtf8) {
    std::size_t width = 0;
    for (std::size_t at = 0; at < validUtf8.size();) {
        const core::CodePoint character = core::codePointAt(validUtf8, at);
        const int columns = wcwidth(static_cast<wchar_t>(character.value));
        width += columns < 0 ? 1 : static_cast<std::size_t>(columns);
        at += character.length;
    }
    return width;
}

}  // namespace pantile::cli
