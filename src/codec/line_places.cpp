#include "codec/line_places.h"

#include <algorithm>
#include <iterator>

namespace pantile::codec {
namespace {

constexpr std::size_t kStartMarks = 2;
constexpr std::size_t kFewestDamaged = 32;  // Letters of a full line that lost one.
constexpr std::size_t kBehindTheEnd = 60;   // Letters in which the last line must begin.
constexpr std::size_t kMostWords = 48;      // In a stretch; more are no code.

/// Symbols in a row from `begin` on, counted up to `most`.
std::size_t symbolsFrom(const Letters& letters, std::size_t begin, std::size_t most) {
    std::size_t count = 0;
    while (count < most && begin + count < letters.size() &&
           isSymbol(letters.glyphs[begin + count])) {
        ++count;
    }
    return count;
}

/// Whether just so many symbols that check as that line begin at `begin`, with none glued behind.
bool lineBeginsAt(const Letters& letters, std::size_t begin, std::size_t count, std::size_t line) {
    if (symbolsFrom(letters, begin, count) < count) return false;
    const std::size_t end = begin + count;
    if (!letters.endsWord(end) && isSymbol(letters.glyphs[end])) return false;
    return toldLineNumber(letters.range(begin, end)) == line % kBase;
}

class Placing {
public:
    Placing(const Letters& letters, const CodeShape& shape, Spacing spacing)
        : m_letters(letters), m_shape(shape), m_spacing(spacing) {}

    std::optional<LinePlaces> run(bool firstLineChecks) && {
        if (firstLineChecks) place(1, kStartMarks);
        for (std::size_t at = m_end; at < m_letters.size() && m_line < m_shape.lines; ++at) {
            // Letters behind a placed line are none of a mark's.
            if (at >= m_end && isZero(m_letters.glyphs[at])) tryMark(at);
        }
        if (m_line < m_shape.lines) noteDamaged(m_shape.lines, trailingEnd(), true);
        if (m_damaged > kMostDamagedLines) return std::nullopt;
        m_places.end = m_end;
        return std::move(m_places);
    }

private:
    /// Takes the line that begins with the mark at `at`, if it is one of the next.
    void tryMark(std::size_t at) {
        for (std::size_t skipped = 0; skipped + m_damaged <= kMostDamagedLines; ++skipped) {
            const std::size_t line = m_line + 1 + skipped;
            if (line > m_shape.lines || at - m_end < skipped * kFewestDamaged) return;
            const bool far = at - m_end >= (skipped + 1) * kFewestDamaged;
            if (far && m_spacing == Spacing::Close) continue;
            if (line == 1) continue;  // Its place is at the start, and it does not check.
            if (!lineBeginsAt(m_letters, at + 1, m_shape.lineSymbols(line), line)) continue;
            if (skipped > 0) noteDamaged(line - 1, at, false);
            place(line, at + 1);
            return;
        }
    }

    void place(std::size_t line, std::size_t symbols) {
        m_places.intact.push_back({line, symbols});
        m_line = line;
        m_end = symbols + m_shape.lineSymbols(line);
    }

    void noteDamaged(std::size_t last, std::size_t end, bool trailing) {
        const std::size_t count = last - m_line;
        m_damaged += count;
        m_places.damaged.push_back({m_line + 1, count, {m_end, end}, trailing});
        if (trailing && m_damaged <= kMostDamagedLines) {
            std::size_t wanted = 0;
            for (std::size_t line = m_line + 1; line <= last; ++line) {
                wanted += m_shape.lineSymbols(line);
            }
            m_end = std::min(end, m_end + wanted);
        }
        m_line = last;
    }

    std::size_t trailingEnd() const {
        const std::size_t lines = m_shape.lines - m_line;
        const std::size_t most = lines * (kFewestDamaged + 3) + kBehindTheEnd;
        return m_end + std::min(most, m_letters.size() - m_end);
    }

    const Letters& m_letters;
    const CodeShape& m_shape;
    Spacing m_spacing;
    LinePlaces m_places;
    std::size_t m_line = 0;  ///< The last one that is placed or given up.
    std::size_t m_end = 0;   ///< Behind it.
    std::size_t m_damaged = 0;
};

/// Letters that the damaged lines in front of and behind `line` take at least.
struct Room {
    std::size_t before = 0;
    std::size_t behind = 0;
};

Room roomAround(const DamagedLines& damaged, const CodeShape& shape, std::size_t line) {
    Room room;
    for (std::size_t other = damaged.first; other < damaged.first + damaged.count; ++other) {
        const LineForm form = lineForm(shape, other);
        const std::size_t fewest = form.size() - 1 - (form.endMark ? 1 : 0);
        if (other < line) room.before += fewest;
        if (other > line) room.behind += fewest;
    }
    return room;
}

/// How many letters a line may have that suffered one slip, an end mark perhaps lost besides.
struct Lengths {
    std::size_t least;
    std::size_t most;
};

Lengths lengthsOf(const LineForm& form) {
    return {form.size() - (form.endMark ? 2 : 1), form.size() + 1};
}

std::vector<std::size_t> wordEdges(const Letters& letters, LetterRange range) {
    std::vector<std::size_t> edges;
    for (std::size_t at = range.begin; at <= range.end && edges.size() < kMostWords; ++at) {
        const bool edge = at == range.begin || at == range.end || letters.endsWord(at);
        if (edge) edges.push_back(at);
    }
    return edges;
}

}  // namespace

LineForm lineForm(const CodeShape& shape, std::size_t line) {
    return {line, shape.lineSymbols(line), line == shape.lines};
}

std::optional<CodeShape> shapeFromFirstLine(const Letters& letters) {
    if (symbolsFrom(letters, kStartMarks, kHeadSymbols) < kHeadSymbols) return std::nullopt;
    const auto head = letters.range(kStartMarks, kStartMarks + kHeadSymbols);
    if (!isKnownForm(head.front())) return std::nullopt;
    const CodeShape shape = CodeShape::of(toldBytes(head));
    if (!lineBeginsAt(letters, kStartMarks, shape.lineSymbols(1), 1)) return std::nullopt;
    return shape;
}

std::optional<LinePlaces> placeLines(const Letters& letters, const CodeShape& shape,
                                     bool firstLineChecks, Spacing spacing) {
    return Placing(letters, shape, spacing).run(firstLineChecks);
}

std::vector<LetterRange> stretchesFor(const Letters& letters, const DamagedLines& damaged,
                                      const CodeShape& shape, const LineForm& form, bool bold) {
    const Room room = roomAround(damaged, shape, form.line);
    const Lengths lengths = lengthsOf(form);
    const std::size_t from = damaged.letters.begin;
    const std::size_t to = damaged.letters.end;
    std::vector<LetterRange> stretches;
    const auto offer = [&](std::size_t begin, std::size_t end) {
        const bool fits = begin >= from + room.before && end + room.behind <= to && end > begin &&
                          end - begin >= lengths.least && end - begin <= lengths.most;
        const bool startsRight = form.line != 1 || begin == from;
        if (fits && startsRight) stretches.push_back({begin, end});
    };
    if (!bold) {
        const std::vector<std::size_t> edges = wordEdges(letters, damaged.letters);
        for (auto begin = edges.begin(); begin != edges.end(); ++begin) {
            for (auto end = std::next(begin); end != edges.end(); ++end) offer(*begin, *end);
        }
        return stretches;
    }
    for (std::size_t length = lengths.least; length <= lengths.most; ++length) {
        if (room.before == 0) {
            offer(from, from + length);
        } else {
            for (std::size_t more = 0; more <= 2; ++more) {
                offer(from + room.before + more, from + room.before + more + length);
            }
        }
        if (!damaged.trailing && room.behind == 0 && to >= from + length) offer(to - length, to);
    }
    return stretches;
}

}  // namespace pantile::codec
