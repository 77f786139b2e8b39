#include "codec/reading.h"

#include <algorithm>
#include <utility>

#include "codec/assembly.h"

namespace pantile::codec {
namespace {

constexpr std::size_t kStartMarks = 2;

/// The assembly as a code; nothing if its check value says that it is none.
std::optional<ReadCode> confirmed(std::optional<Assembly> assembly) {
    if (!assembly) return std::nullopt;
    auto opened = openArmour(assembly->symbols);
    const bool refused = !opened && opened.error().kind == core::ErrorKind::ChecksumMismatch;
    if (refused) return std::nullopt;
    return ReadCode{std::move(assembly->symbols), std::move(opened), assembly->end};
}

bool holdsEnough(std::span<const Glyph> glyphs, Region region) {
    const std::optional<CodeShape> shape = promisedShape(glyphs, region);
    if (!shape || region.end - region.begin < shape->symbols + shape->lines) return false;
    const auto first = glyphs.begin() + static_cast<std::ptrdiff_t>(region.begin);
    const auto last = glyphs.begin() + static_cast<std::ptrdiff_t>(region.end);
    const auto symbols = static_cast<std::size_t>(std::count_if(first, last, isSymbol));
    return symbols >= shape->symbols + shape->lines;
}

}  // namespace

std::optional<CodeShape> promisedShape(std::span<const Glyph> glyphs, Region region) {
    Symbols head;
    for (std::size_t at = region.begin + kStartMarks; at < region.end; ++at) {
        if (isSymbol(glyphs[at])) head.push_back(glyphs[at]);
        if (head.size() == kHeadSymbols) return CodeShape::of(toldBytes(head));
    }
    return std::nullopt;
}

std::optional<ReadCode> readCode(std::span<const Glyph> glyphs, Region region) {
    if (!holdsEnough(glyphs, region)) return std::nullopt;
    const auto inside = glyphs.subspan(region.begin, region.end - region.begin);
    const bool hasWords = std::find(inside.begin(), inside.end(), kGap) != inside.end();
    for (const Cut cut : {Cut::AtGaps, Cut::AtMarks, Cut::LastWords, Cut::LongestWords}) {
        // Where each line of the text is one word, choosing words changes nothing.
        if (!hasWords && (cut == Cut::LastWords || cut == Cut::LongestWords)) continue;
        const PieceList list = piecesOf(glyphs, region, cut);
        if (auto code = confirmed(assembleInOrder(list))) return code;
        if (auto code = confirmed(assembleByNumber(list))) return code;
    }
    return confirmed(assembleWithoutMarks(glyphs, region));
}

}  // namespace pantile::codec
