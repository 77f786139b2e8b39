#pragma once

#include <cstddef>
#include <string>

namespace pantile::tests {

/// Red, green or blue (0, 1, 2) of "#rrggbb".
inline int channelOf(const std::string& colour, std::size_t channel) {
    return std::stoi(colour.substr(1 + 2 * channel, 2), nullptr, 16);
}

}  // namespace pantile::tests
