#include "codec/base58.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <limits>

#include "codec/checksum.h"

namespace pantile::codec {
namespace {

constexpr std::size_t kBlockBytes = 8;
// The fewest symbols that hold 0..8 bytes: 58^n >= 256^bytes.
constexpr std::array<std::size_t, kBlockBytes + 1> kSymbolsFor = {0, 2, 3, 5, 6, 7, 9, 10, 11};

}  // namespace

std::string toText(SymbolSpan symbols) {
    std::string text;
    text.reserve(symbols.size());
    for (const std::uint8_t symbol : symbols) text += kBase58Digits[symbol];
    return text;
}

std::uint32_t crc32OfLetters(SymbolSpan symbols) {
    std::array<char, 256> letters{};
    std::uint32_t crc = 0;
    while (!symbols.empty()) {
        const std::size_t count = std::min(symbols.size(), letters.size());
        for (std::size_t i = 0; i < count; ++i) letters[i] = kBase58Digits[symbols[i]];
        crc = crc32Of(std::string_view(letters.data(), count), crc);
        symbols = symbols.subspan(count);
    }
    return crc;
}

void appendNumber(Symbols& symbols, std::uint64_t value, std::size_t count) {
    symbols.resize(symbols.size() + count);
    for (std::size_t i = 1; i <= count; ++i, value /= kBase) {
        symbols[symbols.size() - i] = static_cast<std::uint8_t>(value % kBase);
    }
    assert(value == 0);
}

std::optional<std::uint64_t> readNumber(SymbolSpan symbols) {
    constexpr std::uint64_t kMost = std::numeric_limits<std::uint64_t>::max();
    std::uint64_t value = 0;
    for (const std::uint8_t symbol : symbols) {
        if (value > (kMost - symbol) / kBase) return std::nullopt;
        value = value * kBase + symbol;
    }
    return value;
}

std::size_t blockSymbols(std::size_t bytes) {
    return bytes / kBlockBytes * kSymbolsFor[kBlockBytes] + kSymbolsFor[bytes % kBlockBytes];
}

void appendBlocks(Symbols& symbols, std::span<const std::uint8_t> bytes) {
    for (std::size_t at = 0; at < bytes.size(); at += kBlockBytes) {
        const auto block = bytes.subspan(at, std::min(kBlockBytes, bytes.size() - at));
        std::uint64_t value = 0;
        for (const std::uint8_t byte : block) value = value << 8U | byte;
        appendNumber(symbols, value, kSymbolsFor[block.size()]);
    }
}

std::optional<std::vector<std::uint8_t>> readBlocks(SymbolSpan symbols, std::size_t bytes) {
    if (symbols.size() != blockSymbols(bytes)) return std::nullopt;
    std::vector<std::uint8_t> read;
    read.reserve(bytes);
    while (read.size() < bytes) {
        const std::size_t size = std::min(kBlockBytes, bytes - read.size());
        const std::optional<std::uint64_t> value = readNumber(symbols.first(kSymbolsFor[size]));
        const bool tooLarge = !value || (size < kBlockBytes && (*value >> (8 * size)) != 0);
        if (tooLarge) return std::nullopt;
        for (std::size_t i = size; i > 0; --i) {
            read.push_back(static_cast<std::uint8_t>(*value >> (8 * (i - 1))));
        }
        symbols = symbols.subspan(kSymbolsFor[size]);
    }
    return read;
}

}  // namespace pantile::codec
