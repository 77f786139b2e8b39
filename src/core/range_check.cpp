#include "core/range_check.h"

#include <string>

namespace pantile::core {

Result<void> checkRange(std::string_view what, std::int64_t value, std::int64_t least,
                        std::int64_t most) {
    if (value >= least && value <= most) return {};
    return Error{ErrorKind::InvalidInput,
                 std::string(what) + " is " + std::to_string(value) + ", outside " +
                     std::to_string(least) + " to " + std::to_string(most),
                 "choose a value in that range"};
}

}  // namespace pantile::core
