#include "codec/pieces.h"

#include "codec/armour.h"

namespace pantile::codec {
namespace {

constexpr std::size_t kFewestInLine = 2;  // One and its check; other marks stand there by chance.

class PieceBuilder {
public:
    PieceBuilder(std::span<const Glyph> glyphs, Region region)
        : m_glyphs(glyphs), m_start(region.begin) {
        m_list.symbols.reserve(region.end - region.begin);
    }

    void feed(std::size_t at) {
        const Glyph glyph = m_glyphs[at];
        if (isSymbol(glyph)) {
            if (m_open) m_list.symbols.push_back(glyph);
        } else if (isZero(glyph)) {
            close();
            m_list.pieces.push_back({at, m_list.symbols.size()});
            m_open = true;
        } else if (isEye(glyph)) {
            const bool marksStart = at == m_start + 1;
            if (marksStart || !m_open) return;
            m_list.pieces.back().ended = true;
            close();
        }
    }

    void close() {
        if (!m_open) return;
        Piece& piece = m_list.pieces.back();
        piece.count = m_list.symbols.size() - piece.first;
        m_open = false;
        const bool isFirst = m_list.pieces.size() == 1;
        if (piece.count < kFewestInLine && !isFirst) {
            m_list.symbols.resize(piece.first);
            m_list.pieces.pop_back();
        }
    }

    PieceList finish() && {
        close();
        return std::move(m_list);
    }

private:
    std::span<const Glyph> m_glyphs;
    std::size_t m_start;
    PieceList m_list;
    bool m_open = false;
};

/// Feeds one word of each line of the text: the last one, or the longest.
void feedChosenWords(std::span<const Glyph> glyphs, Region region, Cut cut, PieceBuilder& builder) {
    Region chosen{region.begin, region.begin};
    const auto feedChosen = [&](std::size_t nextLine) {
        for (std::size_t at = chosen.begin; at < chosen.end; ++at) builder.feed(at);
        chosen = {nextLine, nextLine};
    };
    std::size_t wordBegin = region.begin;
    for (std::size_t at = region.begin; at <= region.end; ++at) {
        if (at < region.end && !isGap(glyphs[at])) continue;
        const bool longer = at - wordBegin > chosen.end - chosen.begin;
        if (at > wordBegin && (cut == Cut::LastWords || longer)) chosen = {wordBegin, at};
        wordBegin = at + 1;
        if (at == region.end || glyphs[at] == kBreak) feedChosen(at + 1);
    }
}

}  // namespace

bool PieceList::checksAs(const Piece& piece, std::size_t count, std::size_t line) const {
    return count > 0 && piece.count >= count &&
           toldLineNumber(symbolsOf(piece).first(count)) == line % kBase;
}

PieceList piecesOf(std::span<const Glyph> glyphs, Region region, Cut cut) {
    PieceBuilder builder(glyphs, region);
    if (cut == Cut::LastWords || cut == Cut::LongestWords) {
        feedChosenWords(glyphs, region, cut, builder);
        return std::move(builder).finish();
    }
    for (std::size_t at = region.begin; at < region.end; ++at) {
        if (cut == Cut::AtGaps && isGap(glyphs[at])) builder.close();
        builder.feed(at);
    }
    return std::move(builder).finish();
}

}  // namespace pantile::codec
