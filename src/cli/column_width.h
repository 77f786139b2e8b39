#pragma once

#include <cstddef>
#include <string_view>

namespace pantile::cli {

/// How many columns of a terminal `validUtf8` takes: letters that are twice as wide count two,
/// marks that stand on another none. As POSIX wcwidth says in the program's locale; where that
/// knows a character not, one.
std::size_t columnWidth(std::string_view validUtf8);

}  // namespace pantile::cli
