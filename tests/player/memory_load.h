#pragma once

// Loads in memory, as a player reads them.

#include <cstdint>
#include <cstring>
#include <vector>

#include <gtest/gtest.h>

#include "board/load_writer.h"
#include "board/random_load.h"
#include "support/matchers.h"

namespace pantile::tests {

using Bytes = std::vector<std::uint8_t>;

/// A player's read callback; `context` is a Bytes.
inline std::uint8_t readMemory(void* context, std::uint32_t offset, std::uint8_t* buffer,
                               std::uint8_t length) {
    const auto& bytes = *static_cast<const Bytes*>(context);
    if (offset > bytes.size() || length > bytes.size() - offset) return 0;
    std::memcpy(buffer, bytes.data() + offset, length);
    return 1;
}

inline Bytes written(const board::Load& load) {
    auto bytes = board::writeLoad(load, roomyBoard());
    EXPECT_THAT(bytes, isOk());
    return bytes ? *std::move(bytes) : Bytes{};
}

}  // namespace pantile::tests
