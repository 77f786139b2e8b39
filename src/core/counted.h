#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace pantile::core {

/// "1 texture", "3 textures".
inline std::string counted(std::int64_t number, std::string_view one, std::string_view many) {
    return std::to_string(number) + " " + std::string(number == 1 ? one : many);
}

}  // namespace pantile::core
