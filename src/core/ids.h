#pragma once

// Names of things in a library. Small types of their own, so that a slot never passes for a
// texture.

#include <compare>
#include <cstdint>

namespace pantile::core {

/// A texture's number in its library; given once, never used again. Always above 0.
struct TextureId {
    std::int64_t value = 0;
    auto operator<=>(const TextureId&) const = default;
};

}  // namespace pantile::core
