#include "codec/starts.h"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <optional>
#include <utility>

#include "codec/armour.h"

namespace pantile::codec {
namespace {

constexpr std::size_t kFullFirstLine = kFirstLineData + 1;
// A line that lost or gained a few symbols still looks like one.
constexpr std::size_t kFewestLooksFirst = kFullFirstLine - 3;
constexpr std::size_t kMostLooksFirst = kFullFirstLine + 3;
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
    const bool looksFull = start.symbols >= kFewestLooksFirst && start.symbols <= kMostLooksFirst;
    const bool looksOnly =
        start.ended && start.symbols >= kFewestInOnlyLine && start.symbols <= kMostLooksFirst;
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
    const bool known = formAt < glyphs.size() && isKnownForm(glyphs[formAt]);
    Start start{at};
    if (small) {
        start.kind = StartKind::CaseChanged;
        const bool changed = known && caseBehind(glyphs, at) == LetterCase::Small;
        return changed ? std::optional(start) : std::nullopt;
    }
    const bool unfolded = glyphs[at] == kZero && glyphs[at + 1] == kEye;
    start.wellFormed = unfolded && (at == 0 || isGap(glyphs[at - 1]));
    measure(glyphs, start);
    if (known) return start;
    const std::optional<StartKind> kind = kindOfOtherForm(glyphs, start);
    if (!kind) return std::nullopt;
    start.kind = *kind;
    return start;
}

/// Whether a first line that begins with `front`, its other symbols at `at` and behind, checks and
/// ends where its length says. Gaps are left out, line breaks are not.
bool isFirstLine(std::span<const Glyph> glyphs, SymbolSpan front, std::size_t at) {
    std::array<std::uint8_t, kFullFirstLine> symbols{};
    std::copy(front.begin(), front.end(), symbols.begin());
    std::size_t count = front.size();
    std::size_t wanted = kFullFirstLine;
    for (; count < wanted && at < glyphs.size() && glyphs[at] != kBreak; ++at) {
        if (isGap(glyphs[at])) continue;
        if (!isSymbol(glyphs[at])) return false;
        symbols[count++] = glyphs[at];
        if (count == kHeadSymbols) wanted = CodeShape::of(toldBytes(symbols)).lineSymbols(1);
    }
    const bool goesOn = at < glyphs.size() && isSymbol(glyphs[at]);
    return count == wanted && !goesOn && toldLineNumber(SymbolSpan(symbols).first(count)) == 1;
}

/// Tries what one slip may have made of a start mark and a form symbol at one place.
class NearStartSearch {
public:
    NearStartSearch(std::span<const Glyph> glyphs, std::size_t at) : m_glyphs(glyphs), m_at(at) {}

    std::optional<NearStart> run() {
        if (isEye(glyph(0))) {  // Nothing, or something else, for the 0.
            tryFront({glyph(1)}, 2);
        } else if (isEye(glyph(1))) {
            tryForms();
        } else {  // The I lost, or behind the form symbol, or something else for it.
            tryFront({glyph(1)}, isEye(glyph(2)) ? 3 : 2);
            tryFront({glyph(2)}, 3);
        }
        return std::move(m_found);
    }

private:
    /// The form symbol lost, behind the next symbol, or something else for it.
    void tryForms() {
        for (const ArmourForm known : {ArmourForm::Whole, ArmourForm::Part}) {
            const auto form = static_cast<std::uint8_t>(known);
            tryFront({form}, 3);
            if (isSymbol(glyph(2))) tryFront({form}, 2);
        }
        if (isSymbol(glyph(2)) && isSymbol(glyph(3))) tryFront({glyph(3), glyph(2)}, 4);
    }

    void tryFront(std::initializer_list<Glyph> front, std::size_t ahead) {
        const SymbolSpan symbols(front.begin(), front.size());
        if (m_found || !isKnownForm(symbols.front())) return;
        if (!isFirstLine(m_glyphs, symbols, m_at + ahead)) return;
        m_found = NearStart{m_at, m_at + ahead, Symbols(front)};
    }

    Glyph glyph(std::size_t ahead) const {
        return m_at + ahead < m_glyphs.size() ? m_glyphs[m_at + ahead] : kBreak;
    }

    std::span<const Glyph> m_glyphs;
    std::size_t m_at;
    std::optional<NearStart> m_found;
};

}  // namespace

std::vector<NearStart> findNearStarts(std::span<const Glyph> glyphs, Region region) {
    std::vector<NearStart> starts;
    const std::span<const Glyph> inside = glyphs.first(region.end);
    for (std::size_t at = region.begin; at < region.end; ++at) {
        if (isSymbol(inside[at]) || isGap(inside[at])) continue;
        if (auto start = NearStartSearch(inside, at).run()) starts.push_back(std::move(*start));
    }
    return starts;
}

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
