#pragma once

// What the fuzzer begins with for pictures.

#include <filesystem>

namespace pantile::fuzz {

/// Folders 'jpeg' and 'svg' in `into`.
void writePictureSeeds(const std::filesystem::path& into);

}  // namespace pantile::fuzz
