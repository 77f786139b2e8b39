#pragma once

#include <iosfwd>
#include <string>

#include "core/result.h"

namespace pantile::cli {

/// All of standard input. Errors: TooLarge beyond 64 MiB.
core::Result<std::string> readStandardInput(std::istream& in);

}  // namespace pantile::cli
