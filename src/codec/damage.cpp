#include "codec/damage.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "codec/armour.h"
#include "codec/number_list.h"

namespace pantile::codec {
namespace {

constexpr std::size_t kFullLine = kFurtherLineData + 1;
// A line that lost or gained a few symbols still looks like one.
constexpr std::size_t kFewestLooksFull = kFullLine - 4;
constexpr std::size_t kMostLooksFull = kFullLine + 4;
constexpr std::size_t kFewestInFirstLine = 16;  // So that a chance '0I2' does not look like a code.
constexpr std::size_t kNear = 200;              // Glyphs in which a second line is to be expected.
constexpr std::size_t kMostReasons = 5;

std::string symbolsInstead(std::size_t line, std::size_t has, std::size_t wants) {
    return "line " + std::to_string(line) + " of the code has " + std::to_string(has) +
           " letters between its marks instead of " + std::to_string(wants);
}

struct Lines {
    std::size_t first = 1;
    std::size_t last = 0;
};

/// Compares the pieces of a text with the lines that a code should have.
class LineComparison {
public:
    explicit LineComparison(const PieceList& list) : m_list(list) {
        compareFirst();
        compareFurther();
        if (m_shape && m_line <= m_shape->lines) noteCut();
    }

    /// Lines that are as they should be.
    std::size_t goodLines() const { return m_good; }

    /// Where the first good one behind the first line stands; nothing if none is good.
    std::optional<std::size_t> firstGoodFurtherLine() const { return m_firstGood; }

    bool firstLineChecks() const { return m_shape.has_value(); }

    Damage damage() && {
        if (m_reasons.empty()) {
            note(m_list.pieces.front().glyph, {},
                 "every line of the code checks, but the whole does not: two slips in one line");
        }
        if (m_shape) m_damage.part = readPartHead(m_list.symbolsOf(m_list.pieces.front()));
        for (std::size_t i = 0; i < m_reasons.size(); ++i) {
            m_damage.reason += (i == 0 ? "" : "; ") + m_reasons[i];
        }
        if (m_unnamed > 0) m_damage.reason += "; and " + std::to_string(m_unnamed) + " more";
        m_damage.reason += "; " + request();
        return std::move(m_damage);
    }

private:
    /// What to ask the friend for who sent the code.
    std::string request() const {
        const std::string of = m_damage.part ? " of " + m_damage.part->name() : std::string();
        if (m_asked.count() == 0) {
            return m_damage.part ? "ask for " + m_damage.part->name() + " again"
                                 : "ask for the code again";
        }
        return (m_asked.count() == 1 ? "ask for line " : "ask for lines ") + m_asked.told() + of +
               " again";
    }

    void compareFirst() {
        const Piece& first = m_list.pieces.front();
        if (first.count >= kHeadSymbols) {
            const CodeShape shape = CodeShape::of(toldBytes(m_list.symbolsOf(first)));
            if (m_list.checksAs(first, shape.lineSymbols(1), 1)) {
                m_shape = shape;
                ++m_good;
                return;
            }
        }
        const std::size_t wants = kFirstLineData + 1;
        const bool alone = first.ended || m_list.pieces.size() == 1;
        if (alone && first.count < wants && !first.ended) {
            note(first.glyph, {}, "the code is cut short in its first line");
        } else if (alone || first.count == wants) {
            note(first.glyph, {1, 1}, "line 1 of the code does not check");
        } else {
            note(first.glyph, {1, 1}, symbolsInstead(1, first.count, wants));
        }
    }

    void compareFurther() {
        std::vector<const Piece*> lines;
        for (const Piece& piece : std::span(m_list.pieces).subspan(1)) {
            if (looksLikeLine(piece)) lines.push_back(&piece);
        }
        for (std::size_t i = 0; i < lines.size() && !atEnd(); ++i) {
            compare(*lines[i], i + 1 < lines.size() ? lines[i + 1] : nullptr);
        }
    }

    bool looksLikeLine(const Piece& piece) const {
        const bool full = piece.count >= kFewestLooksFull && piece.count <= kMostLooksFull;
        return full || (piece.ended && piece.count >= 2 && piece.count <= kMostLooksFull) ||
               &piece == &m_list.pieces.back();
    }

    bool atEnd() const { return m_shape ? m_line > m_shape->lines : m_endSeen; }

    /// Whether `piece` is just as line `line` should be.
    bool fits(const Piece& piece, std::size_t line) const {
        if (m_shape && line > m_shape->lines) return false;
        const std::size_t wants = m_shape       ? m_shape->lineSymbols(line)
                                  : piece.ended ? piece.count
                                                : kFullLine;
        return piece.count == wants && m_list.checksAs(piece, piece.count, line);
    }

    void compare(const Piece& piece, const Piece* next) {
        if (fits(piece, m_line)) {
            take(piece, m_line);
            return;
        }
        const std::size_t told = toldLine(piece);
        const bool isLater = fits(piece, told) && told > m_line && isTelling(piece, told);
        const bool nextConfirms = next != nullptr && fits(*next, told + 1);
        const bool nextDenies = next != nullptr && fits(*next, m_line + 1);
        if (isLater && !nextDenies && (nextConfirms || next == nullptr)) {
            noteMissing(piece, told);
            take(piece, told);
            return;
        }
        noteDamaged(piece, next == nullptr);
    }

    /// Without a first line that checks, short pieces and far numbers fit by chance too often.
    bool isTelling(const Piece& piece, std::size_t line) const {
        constexpr std::size_t kMostLost = 8;
        return m_shape || (piece.count == kFullLine && line <= m_line + kMostLost);
    }

    void take(const Piece& piece, std::size_t line) {
        ++m_good;
        if (!m_firstGood && isTelling(piece, line)) m_firstGood = piece.glyph;
        m_line = line + 1;
        m_endSeen = piece.ended;
    }

    /// The line that a piece says it is, from the expected one on; 0 if it says none.
    std::size_t toldLine(const Piece& piece) const {
        if (piece.count < 2) return 0;
        const std::size_t told = toldLineNumber(m_list.symbolsOf(piece));
        return m_line + (kBase + told - m_line % kBase) % kBase;
    }

    void noteMissing(const Piece& piece, std::size_t told) {
        const std::string last = std::to_string(told - 1);
        const bool one = told - 1 == m_line;
        note(piece.glyph, {m_line, told - 1},
             one ? "line " + last + " of the code is missing"
                 : "lines " + std::to_string(m_line) + " to " + last + " of the code are missing");
    }

    void noteDamaged(const Piece& piece, bool isLastPiece) {
        const std::size_t wants = m_shape ? m_shape->lineSymbols(m_line) : kFullLine;
        const bool cut = isLastPiece && !piece.ended && piece.count < wants;
        if (cut && m_shape) return;  // noteCut tells it.
        if (piece.count == wants || (!m_shape && piece.ended)) {
            note(piece.glyph, {m_line, m_line},
                 "line " + std::to_string(m_line) + " of the code does not check");
        } else {
            note(piece.glyph, {m_line, m_line}, symbolsInstead(m_line, piece.count, wants));
        }
        ++m_line;
        m_endSeen = piece.ended;
    }

    void noteCut() {
        const std::size_t lines = m_shape->lines;
        note(m_list.pieces.front().glyph, {m_line, lines},
             "the code is cut short: it has " + std::to_string(m_line - 1) + " of " +
                 std::to_string(lines) + " lines");
    }

    /// `lines`: those to be asked for; none if that would not do.
    void note(std::size_t glyph, Lines lines, std::string reason) {
        if (m_reasons.empty()) m_damage = {glyph, lines.first, {}, {}};
        m_asked.add(lines.first, lines.last);
        if (m_reasons.size() < kMostReasons) {
            m_reasons.push_back(std::move(reason));
        } else {
            ++m_unnamed;
        }
    }

    const PieceList& m_list;
    NumberList m_asked;
    std::optional<CodeShape> m_shape;  ///< Known if the first line checks.
    std::size_t m_line = 2;            ///< The line that should come next.
    std::size_t m_good = 0;
    std::optional<std::size_t> m_firstGood;
    bool m_endSeen = false;
    Damage m_damage;
    std::vector<std::string> m_reasons;
    std::size_t m_unnamed = 0;
};

/// Whether so much is there that it is a code. In long texts of random letters, such as pictures
/// written into pages, a few of these signs come together by chance.
bool looksLikeCode(const Start& start, const LineComparison& comparison) {
    const auto further = comparison.firstGoodFurtherLine();
    const bool nearLine = further && *further - start.glyph <= kNear;
    if (nearLine && (start.wellFormed || comparison.goodLines() >= 2)) return true;
    if (!start.wellFormed) return false;
    const bool firstLineLong = start.letters >= kFewestLooksFull && start.letters <= kMostLooksFull;
    const bool firstLineCut =
        start.letters >= kFewestInFirstLine && start.letters <= kMostLooksFull && start.endsLine;
    return comparison.firstLineChecks() || firstLineLong || firstLineCut;
}

}  // namespace

std::optional<Damage> diagnose(std::span<const Glyph> glyphs, Region region, const Start& start) {
    if (start.kind == StartKind::Newer) {
        const int form = glyphs[start.glyph + 2];
        return Damage{start.glyph, 1,
                      "made by a newer Pantile: the code is of form " + std::to_string(form) +
                          ", which is not known here; keep its text, and get a newer Pantile "
                          "to read it",
                      std::nullopt};
    }
    if (region.end - region.begin < kFewestInFirstLine) return std::nullopt;
    const LetterCase letterCase = caseBehind(glyphs, start.glyph);
    if (letterCase != LetterCase::Mixed) {
        const std::string which = letterCase == LetterCase::Small ? "small" : "capital";
        return Damage{start.glyph, 1,
                      "all letters of the code have become " + which +
                          " ones, and which is which cannot be told; ask for the code again",
                      std::nullopt};
    }
    const PieceList asWritten = piecesOf(glyphs, region, Cut::AtGaps);
    const PieceList joined = piecesOf(glyphs, region, Cut::AtMarks);
    LineComparison best(asWritten);
    LineComparison bold(joined);
    LineComparison& chosen = bold.goodLines() > best.goodLines() ? bold : best;
    if (!looksLikeCode(start, chosen)) return std::nullopt;
    return std::move(chosen).damage();
}

std::optional<Damage> findLinesWithoutStart(std::span<const Glyph> glyphs, Region region) {
    const PieceList list = piecesOf(glyphs, region, Cut::AtGaps);
    const Piece* previous = nullptr;
    for (const Piece& piece : list.pieces) {
        const bool beginsWord = piece.glyph == 0 || isGap(glyphs[piece.glyph - 1]);
        const bool last = piece.ended && piece.count >= 2 && piece.count <= kFullLine;
        const bool looksLikeLine =
            glyphs[piece.glyph] == kZero && beginsWord && (last || piece.count == kFullLine);
        if (!looksLikeLine) continue;
        if (previous != nullptr) {
            const std::size_t line = toldLineNumber(list.symbolsOf(*previous));
            if (line > 1 && list.checksAs(piece, piece.count, line + 1)) {
                const std::string before =
                    line == 2 ? std::string("line 1") : "lines 1 to " + std::to_string(line - 1);
                return Damage{previous->glyph, line,
                              "lines of a code stand here, from line " + std::to_string(line) +
                                  " on, without its first line; ask for " + before,
                              std::nullopt};
            }
        }
        previous = piece.ended ? nullptr : &piece;
    }
    return std::nullopt;
}

}  // namespace pantile::codec
