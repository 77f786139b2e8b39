#include "codec/armour.h"

#include <algorithm>

#include "codec/checksum.h"

namespace pantile::codec {
namespace {

// A unit modulo 58, so that one wrong symbol always changes the sum; of order 28, so that no two of
// 28 symbols in a row weigh the same.
constexpr unsigned kWeight = 3;
constexpr std::size_t kLengthSymbols = kHeadSymbols - 1;

core::Error corrupt(std::string message) {
    return {core::ErrorKind::Corrupt, std::move(message), "ask for the code again"};
}

unsigned weightedSum(SymbolSpan data) {
    unsigned sum = 0;
    for (const std::uint8_t symbol : data) sum = (sum + symbol) * kWeight % kBase;
    return sum;
}

/// Head, payload and check value.
Symbols framed(std::span<const std::uint8_t> bytes) {
    Symbols symbols = {kWholeCode};
    appendNumber(symbols, bytes.size(), kLengthSymbols);
    appendBlocks(symbols, bytes);
    appendNumber(symbols, crc32Of(toText(symbols)), kCheckSymbols);
    return symbols;
}

}  // namespace

CodeShape CodeShape::of(std::size_t bytes) {
    const std::size_t symbols = kHeadSymbols + blockSymbols(bytes) + kCheckSymbols;
    const std::size_t behindFirst = symbols - std::min(symbols, kFirstLineData);
    return {symbols, 1 + (behindFirst + kFurtherLineData - 1) / kFurtherLineData};
}

std::size_t CodeShape::lineSymbols(std::size_t line) const {
    const std::size_t before = line == 1 ? 0 : kFirstLineData + (line - 2) * kFurtherLineData;
    return 1 + std::min(line == 1 ? kFirstLineData : kFurtherLineData, symbols - before);
}

std::uint8_t lineCheck(SymbolSpan data, std::size_t line) {
    return static_cast<std::uint8_t>((weightedSum(data) + line) % kBase);
}

std::size_t toldLineNumber(SymbolSpan dataAndCheck) {
    const unsigned sum = weightedSum(dataAndCheck.first(dataAndCheck.size() - 1));
    return (kBase + dataAndCheck.back() - sum) % kBase;
}

std::size_t toldBytes(SymbolSpan symbols) {
    return static_cast<std::size_t>(*readNumber(symbols.subspan(1, kLengthSymbols)));
}

core::Result<std::string> armoured(std::span<const std::uint8_t> bytes) {
    if (bytes.size() > kMaxArmouredBytes) {
        return core::Error{core::ErrorKind::TooLarge,
                           "a code holds at most " + std::to_string(kMaxArmouredBytes) +
                               " bytes, not " + std::to_string(bytes.size()),
                           "share a smaller texture"};
    }
    const Symbols symbols = framed(bytes);
    const CodeShape shape = CodeShape::of(bytes.size());
    std::string text;
    SymbolSpan rest = symbols;
    for (std::size_t line = 1; line <= shape.lines; ++line) {
        const SymbolSpan data = rest.first(shape.lineSymbols(line) - 1);
        rest = rest.subspan(data.size());
        text += kLineMark;
        if (line == 1) text += kEndMark;
        text += toText(data);
        text += kBase58Digits[lineCheck(data, line)];
        text += line == shape.lines ? kEndMark : '\n';
    }
    return text;
}

core::Result<std::vector<std::uint8_t>> openArmour(SymbolSpan symbols) {
    if (symbols.size() < kHeadSymbols + kCheckSymbols) return corrupt("the code is cut short");
    const SymbolSpan checked = symbols.first(symbols.size() - kCheckSymbols);
    const std::optional<std::uint64_t> check = readNumber(symbols.last(kCheckSymbols));
    if (check != crc32Of(toText(checked))) {
        return core::Error{core::ErrorKind::ChecksumMismatch,
                           "the check value of the code does not fit", "ask for the code again"};
    }
    if (symbols.front() != kWholeCode) {
        return core::Error{core::ErrorKind::Unsupported,
                           "made by a newer Pantile: the code is of form " +
                               std::to_string(symbols.front()) + ", which is not known here",
                           "keep the text of the code, and get a newer Pantile to read it"};
    }
    const std::size_t bytes = toldBytes(symbols);
    if (CodeShape::of(bytes).symbols != symbols.size()) {
        return corrupt("the code says " + std::to_string(bytes) +
                       " bytes, and its length does not fit that");
    }
    std::optional<std::vector<std::uint8_t>> read =
        readBlocks(checked.subspan(kHeadSymbols), bytes);
    if (!read) return corrupt("a block of the code is above what its bytes can hold");
    return std::move(*read);
}

}  // namespace pantile::codec
