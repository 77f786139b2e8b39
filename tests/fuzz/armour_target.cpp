// Symbols from anywhere as openArmour takes them. The first byte of the input says whether the
// right check value is put behind the rest, since no mutation finds one.

#include <algorithm>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "codec/armour.h"
#include "codec/checksum.h"
#include "codec/parts.h"
#include "fuzz/targets.h"

namespace pantile::fuzz {
namespace {

using codec::Symbols;

// The symbols as letters, and the bytes; the rest is for messages.
constexpr std::size_t kArmourMostMemoryPerSymbol = 2;
constexpr std::size_t kArmourMostMemoryBeside = 1024;

Symbols symbolsOf(Bytes letters) {
    Symbols symbols;
    for (const std::uint8_t letter : letters) {
        const std::size_t digit = codec::kBase58Digits.find(static_cast<char>(letter));
        symbols.push_back(static_cast<std::uint8_t>(
            digit == std::string_view::npos ? letter % codec::kBase : digit));
    }
    return symbols;
}

/// The lines of a code as openArmour takes them: without marks and line checks.
Symbols stripped(const std::string& code) {
    Symbols symbols;
    for (std::size_t begin = 0; begin < code.size();) {
        const std::size_t end = std::min(code.find('\n', begin), code.size());
        std::string_view line = std::string_view(code).substr(begin, end - begin);
        line.remove_prefix(begin == 0 ? 2 : 1);
        line.remove_suffix(end == code.size() ? 2 : 1);
        for (const char letter : line) {
            symbols.push_back(static_cast<std::uint8_t>(codec::kBase58Digits.find(letter)));
        }
        begin = end + 1;
    }
    return symbols;
}

void tryPart(const std::vector<std::uint8_t>& bytes) {
    const auto part = codec::readPart(bytes);
    if (!part) {
        requireDecodeError(part.error());
        return;
    }
    const codec::PartHead& head = part->head;
    require(head.number >= 1 && head.number <= head.parts && head.parts <= codec::kMaxParts,
            "the number of a part is one of its code");
    const auto joined = codec::joinParts(head, {{head.number, part->slice}});
    require(!joined, "one part alone is no code");
    requireDecodeError(joined.error());
}

}  // namespace

void tryArmour(Bytes input) {
    if (input.empty()) return;
    const bool addsCheck = input.front() % 2 == 1;
    Symbols symbols = symbolsOf(input.subspan(1));
    if (addsCheck) {
        codec::appendNumber(symbols, codec::crc32Of(codec::toText(symbols)), codec::kCheckSymbols);
    }
    const MemoryWatch watch;
    const auto opened = codec::openArmour(symbols);
    require(
        watch.most() <= kArmourMostMemoryPerSymbol * symbols.size() + kArmourMostMemoryBeside,
        "opening takes memory for the symbols that are there, not for the length that they tell");
    if (!opened) {
        requireDecodeError(opened.error());
        return;
    }
    const auto again = codec::armoured(opened->bytes, opened->form);
    require(again.has_value(), "what was opened can be armoured");
    require(stripped(*again) == symbols, "bytes have one armour");
    if (opened->form == codec::ArmourForm::Part) tryPart(opened->bytes);
}

}  // namespace pantile::fuzz
