#pragma once

// What the fuzzer begins with for loads.

#include <filesystem>

namespace pantile::fuzz {

/// The folder 'load' in `into`.
void writeLoadSeeds(const std::filesystem::path& into);

}  // namespace pantile::fuzz
