#include "catalogue/fact_page.h"

#include <algorithm>
#include <bit>

namespace pantile::catalogue {
namespace {

constexpr std::size_t kBitsOfByte = 8;
constexpr std::size_t kNumberBytes = 8;
constexpr std::size_t kHeadBytes = 1 + kNumberBytes;

void appendNumber(std::vector<std::uint8_t>& bytes, std::uint64_t number, std::size_t width) {
    for (std::size_t i = 0; i < width; ++i) {
        bytes.push_back(static_cast<std::uint8_t>(number >> (kBitsOfByte * i)));
    }
}

std::uint64_t numberAt(const std::uint8_t* bytes, std::size_t width) {
    std::uint64_t number = 0;
    for (std::size_t i = 0; i < width; ++i) number |= std::uint64_t{bytes[i]} << (kBitsOfByte * i);
    return number;
}

/// A width that the compiler knows is read in a quarter of the time.
template <std::size_t Width>
void unpackAs(const std::uint8_t* bytes, std::uint64_t least, FactValues& values) {
    for (std::size_t i = 0; i < values.size(); ++i) {
        values[i] = static_cast<std::int64_t>(least + numberAt(bytes + i * Width, Width));
    }
}

using Unpack = void (*)(const std::uint8_t*, std::uint64_t, FactValues&);

constexpr std::array<Unpack, kNumberBytes + 1> kUnpack = {unpackAs<0>, unpackAs<1>, unpackAs<2>,
                                                          unpackAs<3>, unpackAs<4>, unpackAs<5>,
                                                          unpackAs<6>, unpackAs<7>, unpackAs<8>};

}  // namespace

std::vector<std::uint8_t> packFacts(const FactValues& values) {
    const auto [least, most] = std::minmax_element(values.begin(), values.end());
    const auto base = static_cast<std::uint64_t>(*least);
    const auto range = static_cast<std::uint64_t>(*most) - base;
    const std::size_t width =
        (static_cast<std::size_t>(std::bit_width(range)) + kBitsOfByte - 1) / kBitsOfByte;
    std::vector<std::uint8_t> bytes;
    bytes.reserve(kHeadBytes + width * values.size());
    bytes.push_back(static_cast<std::uint8_t>(width));
    appendNumber(bytes, base, kNumberBytes);
    for (const std::int64_t value : values) {
        appendNumber(bytes, static_cast<std::uint64_t>(value) - base, width);
    }
    return bytes;
}

bool unpackFacts(std::span<const std::uint8_t> bytes, FactValues& values) {
    if (bytes.size() < kHeadBytes) return false;
    const std::size_t width = bytes[0];
    if (width > kNumberBytes || bytes.size() != kHeadBytes + width * values.size()) return false;
    kUnpack[width](bytes.data() + kHeadBytes, numberAt(bytes.data() + 1, kNumberBytes), values);
    return true;
}

}  // namespace pantile::catalogue
