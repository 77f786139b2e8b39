#include "codec/starts.h"

#include <algorithm>
#include <optional>

#include "codec/armour.h"

namespace pantile::codec {
namespace {

constexpr std::size_t kStartMarks = 2;
constexpr std::size_t kFullFirstLine = kFirstLineData + 1;
// A line that lost or gained a few symbols still looks like one.
constexpr std::size_t kFewestLooksFull = kFullFirstLine - 3;
constexpr std::size_t kMostLooksFull = kFullFirstLine + 3;
constexpr std::size_t kFewestInOnlyLine = 16;
constexpr std::size_t kMostCounted = 40;
// 24 letters and digits are all of one case by chance once in 700 000.
constexpr std::size_t kFewestForCase = 24;
constexpr Glyph kSmallEye = static_cast<Glyph>(kBase58Digits.find('i'));
constexpr Glyph kFirstCapital = static_cast<Glyph>(kBase58Digits.find('A'));
constexpr Glyph kFirstSmall = static_cast<Glyph>(kBase58Digits.find('a'));

bool isCapital(Glyph glyph) {
    return glyph == kZeroLike || glyph == kEye || (glyph >= kFirstCapital && glyph < kFirstSmall);
}

bool isSmall(Glyph glyph) {
    return glyph == kEyeLike || (isSymbol(glyph) && glyph >= kFirstSmall);
}

void measure(std::span<const Glyph> glyphs, Start& start) {
    const std::span<const Glyph> behind = glyphs.subspan(start.glyph + kStartMarks);
    const auto word = behind.first(std::min(behind.size(), kMostCounted));
    const auto symbolsEnd = std::find_if_not(word.begin(), word.end(), isSymbol);
    start.symbols = static_cast<std::size_t>(symbolsEnd - word.begin());
    start.ended = symbolsEnd != word.end() && isEye(*symbolsEnd);
    const auto lettersEnd = std::find_if(symbolsEnd, word.end(), isGap);
    start.letters = static_cast<std::size_t>(lettersEnd - word.begin());
    start.endsLine = start.letters == behind.size() || behind[start.letters] == kBreak;
}

/// Which kind a well-formed start with another form number is; nothing if it is no start.
std::optional<StartKind> kindOfOtherForm(std::span<const Glyph> glyphs, const Start& start) {
    const bool looksFull = start.symbols >= kFewestLooksFull && start.symbols <= kMostLooksFull;
    const bool looksOnly =
        start.ended && start.symbols >= kFewestInOnlyLine && start.symbols <= kMostLooksFull;
    if (!start.wellFormed || !(looksFull || looksOnly)) return std::nullopt;
    const bool whole = start.symbols == kFullFirstLine || start.ended;
    const bool checks =
        whole && toldLineNumber(glyphs.subspan(start.glyph + kStartMarks, start.symbols)) == 1;
    return checks ? StartKind::Newer : StartKind::Doubtful;
}

/// The start at `at`, which holds a line mark; nothing if none is there.
std::optional<Start> startAt(std::span<const Glyph> glyphs, std::size_t at) {
    if (at + kStartMarks >= glyphs.size()) return std::nullopt;
    const bool small = glyphs[at + 1] == kSmallEye;
    if (!small && !isEye(glyphs[at + 1])) return std::nullopt;
    // Markup may part the mark from what follows.
    const std::size_t formAt = at + kStartMarks + (isGap(glyphs[at + kStartMarks]) ? 1 : 0);
    const bool whole = formAt < glyphs.size() && glyphs[formAt] == kWholeCode;
    Start start{at};
    if (small) {
        start.kind = StartKind::CaseChanged;
        const bool changed = whole && caseBehind(glyphs, at) == LetterCase::Small;
        return changed ? std::optional(start) : std::nullopt;
    }
    const bool unfolded = glyphs[at] == kZero && glyphs[at + 1] == kEye;
    start.wellFormed = unfolded && (at == 0 || isGap(glyphs[at - 1]));
    measure(glyphs, start);
    if (whole) return start;
    const std::optional<StartKind> kind = kindOfOtherForm(glyphs, start);
    if (!kind) return std::nullopt;
    start.kind = *kind;
    return start;
}

}  // namespace

std::vector<Start> findStarts(std::span<const Glyph> glyphs) {
    std::vector<Start> starts;
    for (std::size_t at = 0; at < glyphs.size(); ++at) {
        if (!isZero(glyphs[at])) continue;
        if (const std::optional<Start> start = startAt(glyphs, at)) starts.push_back(*start);
    }
    return starts;
}

LetterCase caseBehind(std::span<const Glyph> glyphs, std::size_t start) {
    const std::size_t begin = std::min(start + kStartMarks, glyphs.size());
    std::span<const Glyph> word = glyphs.subspan(begin);
    word = word.first(std::min(word.size(), kFullFirstLine));
    const auto end = std::find_if(word.begin(), word.end(), isGap);
    if (end - word.begin() < static_cast<std::ptrdiff_t>(kFewestForCase)) return LetterCase::Mixed;
    if (std::none_of(word.begin(), end, isCapital)) return LetterCase::Small;
    if (std::none_of(word.begin(), end, isSmall)) return LetterCase::Capital;
    return LetterCase::Mixed;
}

}  // namespace pantile::codec
