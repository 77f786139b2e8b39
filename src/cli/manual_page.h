#pragma once

#include <iosfwd>
#include <string_view>

namespace pantile::cli {

/// Writes the manual page pantile(1), made of the words of the help, in the man macros of roff.
void writeManualPage(std::ostream& out, std::string_view version);

}  // namespace pantile::cli
