#pragma once

// Taking small text files apart line by line.

#include <string_view>

namespace pantile::tasks {

/// Without blanks, tabs and carriage returns at its ends.
std::string_view trimmed(std::string_view text);

/// Takes the first line, with all but its line break, off `rest`.
std::string_view takeLine(std::string_view& rest);

}  // namespace pantile::tasks
