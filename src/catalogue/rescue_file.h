#pragma once

// A copy of a damaged file, to be read instead of it.

#include <filesystem>

#include "core/result.h"

namespace pantile::catalogue {

/// Copies the file block by block, empty ones for those that cannot be read, and puts right what is
/// the same in the header of every library; and the log beside it, if there is one. Errors:
/// NotFound; Io if the copy cannot be written.
core::Result<void> copyToReadFrom(const std::filesystem::path& damaged,
                                  const std::filesystem::path& copy);

}  // namespace pantile::catalogue
