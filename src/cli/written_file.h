#pragma once

#include <filesystem>
#include <iosfwd>

namespace pantile::cli {

/// "Wrote FILE", whatever its path holds made visible.
void printWrote(std::ostream& out, const std::filesystem::path& file);

}  // namespace pantile::cli
