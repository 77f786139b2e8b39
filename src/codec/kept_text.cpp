#include "codec/kept_text.h"

#include "codec/armour.h"

namespace pantile::codec {

std::string keptText(std::span<const Glyph> glyphs, Region region) {
    const PieceList list = piecesOf(glyphs, region, Cut::AtGaps);
    std::string text;
    std::size_t line = 1;
    for (const Piece& piece : list.pieces) {
        if (!list.checksAs(piece, piece.count, line)) continue;
        text += line == 1 ? "0I" : "\n0";
        text += toText(list.symbolsOf(piece));
        if (piece.ended) return text + kEndMark;
        ++line;
    }
    return text;
}

}  // namespace pantile::codec
