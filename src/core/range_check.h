#pragma once

#include <cstdint>
#include <string_view>

#include "core/result.h"

namespace pantile::core {

/// Errors: InvalidInput, naming `what`, the value and the range, if `value` is outside least..most.
Result<void> checkRange(std::string_view what, std::int64_t value, std::int64_t least,
                        std::int64_t most);

}  // namespace pantile::core
