#include "codec/assembly.h"

#include <algorithm>
#include <vector>

#include "codec/armour.h"

namespace pantile::codec {
namespace {

constexpr std::size_t kMaxNumberedLines = kBase - 1;  // More would share their numbers.
constexpr std::size_t kStartMarks = 2;

/// The shape that the first line tells, if that line checks.
std::optional<CodeShape> toldShape(const PieceList& list) {
    if (list.pieces.empty() || list.pieces.front().count < kHeadSymbols) return std::nullopt;
    const Piece& first = list.pieces.front();
    const CodeShape shape = CodeShape::of(toldBytes(list.symbolsOf(first)));
    const bool enough =
        list.checksAs(first, shape.lineSymbols(1), 1) && list.pieces.size() >= shape.lines;
    return enough ? std::optional(shape) : std::nullopt;
}

void appendData(Assembly& assembly, const PieceList& list, const Piece& piece, std::size_t count) {
    const SymbolSpan data = list.symbolsOf(piece).first(count - 1);
    assembly.symbols.insert(assembly.symbols.end(), data.begin(), data.end());
    // Its symbols stand behind its mark, with or without gaps.
    assembly.end = std::max(assembly.end, piece.glyph + 1 + count);
}

}  // namespace

std::optional<Assembly> assembleInOrder(const PieceList& list) {
    const std::optional<CodeShape> shape = toldShape(list);
    if (!shape) return std::nullopt;
    Assembly assembly;
    auto next = list.pieces.begin();
    for (std::size_t line = 1; line <= shape->lines; ++line, ++next) {
        const std::size_t count = shape->lineSymbols(line);
        next = std::find_if(next, list.pieces.end(),
                            [&](const Piece& piece) { return list.checksAs(piece, count, line); });
        if (next == list.pieces.end()) return std::nullopt;
        appendData(assembly, list, *next, count);
    }
    return assembly;
}

std::optional<Assembly> assembleByNumber(const PieceList& list) {
    const std::optional<CodeShape> shape = toldShape(list);
    if (!shape || shape->lines > kMaxNumberedLines) return std::nullopt;
    constexpr std::size_t kFull = 1 + kFurtherLineData;
    const std::size_t last = shape->lines;
    std::vector<const Piece*> byLine(last + 1, nullptr);
    byLine[1] = &list.pieces.front();
    for (const Piece& piece : std::span(list.pieces).subspan(1)) {
        if (piece.count == kFull) {
            const std::size_t line = toldLineNumber(list.symbolsOf(piece));
            if (line > 1 && line < last && byLine[line] == nullptr) byLine[line] = &piece;
        }
        const bool fits =
            piece.count == shape->lineSymbols(last) && list.checksAs(piece, piece.count, last);
        if (fits && byLine[last] == nullptr) byLine[last] = &piece;
    }
    Assembly assembly;
    for (std::size_t line = 1; line <= last; ++line) {
        if (byLine[line] == nullptr) return std::nullopt;
        appendData(assembly, list, *byLine[line], shape->lineSymbols(line));
    }
    return assembly;
}

std::optional<Assembly> assembleWithoutMarks(std::span<const Glyph> glyphs, Region region) {
    PieceList list{{}, {Piece{}}};
    Piece& all = list.pieces.front();
    std::optional<CodeShape> shape;
    std::size_t at = region.begin + kStartMarks;
    for (; at < region.end && (!shape || all.count < shape->symbols + shape->lines); ++at) {
        if (!isSymbol(glyphs[at])) continue;
        list.symbols.push_back(glyphs[at]);
        ++all.count;
        if (all.count == kHeadSymbols) shape = CodeShape::of(toldBytes(list.symbols));
    }
    if (!shape || all.count < shape->symbols + shape->lines) return std::nullopt;
    Assembly assembly;
    Piece piece = all;
    for (std::size_t line = 1; line <= shape->lines; ++line) {
        piece.count = shape->lineSymbols(line);
        if (!list.checksAs(piece, piece.count, line)) return std::nullopt;
        appendData(assembly, list, piece, piece.count);
        piece.first += piece.count;
    }
    assembly.end = at;
    return assembly;
}

}  // namespace pantile::codec
