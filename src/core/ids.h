#pragma once

// Names of things in a library. Small types of their own, so that a slot never passes for a
// texture.

#include <compare>
#include <cstdint>

namespace pantile::core {

/// A texture's number in its library; given once, never used again. Always above 0.
struct TextureId {
    std::int64_t value = 0;
    // NOLINTNEXTLINE(modernize-use-nullptr): version 14 takes the 0 inside for a null pointer.
    auto operator<=>(const TextureId&) const = default;
};

}  // namespace pantile::core
