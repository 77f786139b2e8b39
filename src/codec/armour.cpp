#include "codec/armour.h"

#include <algorithm>

#include "codec/checksum.h"
#include "codec/corrupt_code.h"

namespace pantile::codec {
namespace {

constexpr std::size_t kLengthSymbols = kHeadSymbols - 1;

unsigned weightedSum(SymbolSpan data) {
    std::size_t sum = 0;
    std::size_t place = 0;  // In front of the check.
    for (std::size_t at = data.size(); at > 0; --at) {
        if (++place == kLineWeights.size()) place = 0;
        sum += std::size_t{data[at - 1]} * kLineWeights[place];
    }
    return static_cast<unsigned>(sum % kBase);
}

/// Head, payload and check value.
Symbols framed(std::span<const std::uint8_t> bytes, ArmourForm form) {
    Symbols symbols = {static_cast<std::uint8_t>(form)};
    appendNumber(symbols, bytes.size(), kLengthSymbols);
    appendBlocks(symbols, bytes);
    appendNumber(symbols, crc32OfLetters(symbols), kCheckSymbols);
    return symbols;
}

std::size_t linesFor(std::size_t symbols) {
    const std::size_t behindFirst = symbols - std::min(symbols, kFirstLineData);
    return 1 + (behindFirst + kFurtherLineData - 1) / kFurtherLineData;
}

}  // namespace

CodeShape CodeShape::of(std::size_t bytes) {
    const std::size_t symbols = kHeadSymbols + blockSymbols(bytes) + kCheckSymbols;
    return {symbols, linesFor(symbols)};
}

std::size_t CodeShape::lineSymbols(std::size_t line) const {
    return 1 + std::min(line == 1 ? kFirstLineData : kFurtherLineData, symbols - lineBegin(line));
}

std::size_t CodeShape::lineBegin(std::size_t line) {
    return line == 1 ? 0 : kFirstLineData + (line - 2) * kFurtherLineData;
}

std::size_t CodeShape::characters() const {
    constexpr std::size_t kMoreInEachLine = 3;  // Its mark, its check and a line feed.
    constexpr std::size_t kEndMarks = 2;
    return symbols + kMoreInEachLine * lines + kEndMarks - 1;
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

core::Result<std::string> armoured(std::span<const std::uint8_t> bytes, ArmourForm form) {
    if (bytes.size() > kMaxArmouredBytes) {
        return core::Error{core::ErrorKind::TooLarge,
                           "a code holds at most " + std::to_string(kMaxArmouredBytes) +
                               " bytes, not " + std::to_string(bytes.size()),
                           "share a smaller texture"};
    }
    return writtenLines(framed(bytes, form));
}

std::string writtenLines(SymbolSpan symbols) {
    const CodeShape shape{symbols.size(), linesFor(symbols.size())};
    std::string text;
    text.reserve(shape.characters());
    for (std::size_t line = 1; line <= shape.lines; ++line) {
        const SymbolSpan data =
            symbols.subspan(CodeShape::lineBegin(line), shape.lineSymbols(line) - 1);
        text += kLineMark;
        if (line == 1) text += kEndMark;
        text += toText(data);
        text += kBase58Digits[lineCheck(data, line)];
        text += line == shape.lines ? kEndMark : '\n';
    }
    return text;
}

core::Result<OpenedArmour> openArmour(SymbolSpan symbols) {
    if (symbols.size() < kHeadSymbols + kCheckSymbols) return corruptCode("the code is cut short");
    const SymbolSpan checked = symbols.first(symbols.size() - kCheckSymbols);
    if (readNumber(symbols.last(kCheckSymbols)) != crc32OfLetters(checked)) {
        return core::Error{core::ErrorKind::ChecksumMismatch,
                           "the check value of the code does not fit", "ask for the code again"};
    }
    if (!isKnownForm(symbols.front())) {
        return core::Error{core::ErrorKind::Unsupported,
                           "made by a newer Pantile: the code is of form " +
                               std::to_string(symbols.front()) + ", which is not known here",
                           "keep the text of the code, and get a newer Pantile to read it"};
    }
    const std::size_t bytes = toldBytes(symbols);
    if (CodeShape::of(bytes).symbols != symbols.size()) {
        return corruptCode("the code says " + std::to_string(bytes) +
                           " bytes, and its length does not fit that");
    }
    std::optional<std::vector<std::uint8_t>> read =
        readBlocks(checked.subspan(kHeadSymbols), bytes);
    if (!read) return corruptCode("a block of the code is above what its bytes can hold");
    return OpenedArmour{static_cast<ArmourForm>(symbols.front()), std::move(*read)};
}

}  // namespace pantile::codec
