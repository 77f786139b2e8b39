#pragma once

// IdPages: where a texture stands in an index whose pages hold 2^Bits ids in a row. Ids may be any
// numbers: a forged library may hold any.

#include <cstddef>
#include <cstdint>

namespace pantile::catalogue {

template <unsigned Bits>
struct IdPages {
    static constexpr std::size_t kTextures = std::size_t{1} << Bits;

    static std::int64_t pageOf(std::int64_t id) { return id >> Bits; }

    static std::size_t placeOf(std::int64_t id) {
        return static_cast<std::uint64_t>(id) % kTextures;
    }

    static std::int64_t idAt(std::int64_t page, std::size_t place) {
        return static_cast<std::int64_t>((static_cast<std::uint64_t>(page) << Bits) + place);
    }
};

}  // namespace pantile::catalogue
