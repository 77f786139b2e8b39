#include "codec/line_readings.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <string_view>
#include <utility>

#include "codec/armour.h"

namespace pantile::codec {
namespace {

constexpr unsigned kHalfBase = kBase / 2;

// What one step of the line check multiplies by, again and again: powers of 3 modulo 58.
constexpr std::array<unsigned, kFurtherLineData + 1> makeWeights() {
    std::array<unsigned, kFurtherLineData + 1> weights{};
    unsigned power = 1;
    for (unsigned& weight : weights) {
        weight = power;
        power = power * kLineWeight % kBase;
    }
    return weights;
}

constexpr auto kWeights = makeWeights();

char letterOf(Glyph glyph) {
    constexpr std::string_view kMarks = "0OIl";
    return isSymbol(glyph) ? kBase58Digits[glyph] : kMarks[glyph - kZero];
}

/// Whether a letter may stand at `at` of a line of that form.
bool fitsAt(Glyph letter, const LineForm& form, std::size_t at) {
    if (at == 0) return isZero(letter);
    if (at < form.frontMarks() || at >= form.frontMarks() + form.symbols) return isEye(letter);
    return isSymbol(letter);
}

bool isMarkAt(const LineForm& form, std::size_t at) {
    return at < form.frontMarks() || at >= form.frontMarks() + form.symbols;
}

Glyph markAt(std::size_t at) {
    return at == 0 ? kZero : kEye;
}

/// What one symbol of a line weighs in the number that its check tells; the check itself -1.
unsigned weightAt(std::size_t symbols, std::size_t at) {
    return at + 1 == symbols ? kBase - 1 : kWeights[symbols - 1 - at];
}

constexpr std::array<unsigned, kBase> makeInverses() {
    std::array<unsigned, kBase> inverses{};
    for (unsigned weight = 0; weight < kBase; ++weight) {
        for (unsigned inverse = 0; inverse < kBase; ++inverse) {
            if (weight * inverse % kBase == 1) inverses[weight] = inverse;
        }
    }
    return inverses;
}

constexpr auto kInverses = makeInverses();

/// The letters of a line with sums of how much they lower the number that the line tells, at their
/// places and one place on or back, so that each reading of the line is tried in a few steps.
class LineTrial {
public:
    LineTrial(std::span<const Glyph> letters, const LineForm& form)
        : m_letters(letters), m_form(form) {
        const std::size_t size = letters.size();
        // Letters behind a slip stand one place too far; what falls off the front counts nothing.
        const std::size_t moved = form.size() - size;
        m_sums.resize(size + 1);
        m_movedSums.resize(size + 1);
        for (std::size_t at = 0; at < size; ++at) {
            m_sums[at + 1] = m_sums[at] + lowers(letters[at], at);
            m_movedSums[at + 1] = m_movedSums[at] + lowers(letters[at], at + moved);
        }
        while (m_fitting < std::min(size, form.size()) &&
               fitsAt(letters[m_fitting], form, m_fitting)) {
            ++m_fitting;
        }
        while (
            m_fittingBehind < std::min(size, form.size()) &&
            fitsAt(letters[size - 1 - m_fittingBehind], form, form.size() - 1 - m_fittingBehind)) {
            ++m_fittingBehind;
        }
    }

    std::size_t size() const { return m_letters.size(); }

    Glyph letter(std::size_t at) const { return m_letters[at]; }

    /// Whether all but `count` letters from `at` on are as the form wants them, those in front
    /// where they stand, and those behind counted from the end.
    bool fitsAround(std::size_t at, std::size_t count) const {
        return at <= m_fitting && size() - at - count <= m_fittingBehind;
    }

    /// The number that those letters lower, modulo 58.
    unsigned loweredAround(std::size_t at, std::size_t count) const {
        return (m_sums[at] + m_movedSums[size()] - m_movedSums[at + count]) % kBase;
    }

    /// By how much a letter lowers the told number at a place of the line; marks do not.
    unsigned lowers(Glyph letter, std::size_t at) const {
        const bool counts = isSymbol(letter) && at < m_form.size() && !isMarkAt(m_form, at);
        return counts ? letter * weightAt(m_form.symbols, at - m_form.frontMarks()) % kBase : 0;
    }

    /// What must stand at `at`, if the others lower the told number by `lowered`.
    Glyph solved(std::size_t at, unsigned lowered) const {
        if (isMarkAt(m_form, at)) return markAt(at);
        const unsigned missing = 2 * kBase - wanted() - lowered;
        const unsigned weight = weightAt(m_form.symbols, at - m_form.frontMarks());
        return static_cast<Glyph>(missing % kBase * kInverses[weight] % kBase);
    }

    bool checks(unsigned lowered) const { return (lowered + wanted()) % kBase == 0; }

    /// The symbols of the line: `count` letters from `at` on replaced by `inside`.
    Symbols symbols(std::size_t at, std::size_t count, std::span<const Glyph> inside) const {
        Symbols line(m_letters.begin(), m_letters.begin() + static_cast<std::ptrdiff_t>(at));
        line.insert(line.end(), inside.begin(), inside.end());
        line.insert(line.end(), m_letters.begin() + static_cast<std::ptrdiff_t>(at + count),
                    m_letters.end());
        line.resize(m_form.frontMarks() + m_form.symbols);
        line.erase(line.begin(), line.begin() + static_cast<std::ptrdiff_t>(m_form.frontMarks()));
        return line;
    }

private:
    /// All letters together lower the number that is told from 0 to the line's own, modulo 58.
    unsigned wanted() const { return static_cast<unsigned>(m_form.line % kBase); }

    std::span<const Glyph> m_letters;
    const LineForm& m_form;
    std::vector<unsigned> m_sums;
    std::vector<unsigned> m_movedSums;  ///< The same if the letters move to where the form ends.
    std::size_t m_fitting = 0;          ///< Letters from the front that are as they should be.
    std::size_t m_fittingBehind = 0;    ///< The same from the end.
};

/// Appends a reading, unless it is the one before: dropping either of two equal letters is the
/// same, and so is doubling them.
void append(std::vector<LineReading>& list, Symbols symbols, Slip slip) {
    if (!list.empty() && list.back().symbols == symbols) return;
    list.push_back({std::move(symbols), {std::move(slip)}});
}

std::string text(std::span<const Glyph> letters) {
    std::string text;
    for (const Glyph letter : letters) text += letterOf(letter);
    return text;
}

void listWrong(const LineTrial& trial, std::size_t line, std::vector<LineReading>& list) {
    for (std::size_t at = 0; at < trial.size(); ++at) {
        if (!trial.fitsAround(at, 1)) continue;
        const Glyph right = trial.solved(at, trial.loweredAround(at, 1));
        if (!trial.checks(trial.loweredAround(at, 1) + trial.lowers(right, at))) continue;
        append(list, trial.symbols(at, 1, std::span(&right, 1)),
               {SlipKind::Wrong, line, at + 1, {letterOf(trial.letter(at))}, {letterOf(right)}});
    }
}

void listSwapped(const LineTrial& trial, std::size_t line, const LineForm& form,
                 std::vector<LineReading>& list) {
    for (std::size_t at = 0; at + 1 < trial.size(); ++at) {
        const std::array<Glyph, 2> stand = {trial.letter(at), trial.letter(at + 1)};
        const std::array<Glyph, 2> swapped = {stand[1], stand[0]};
        const bool fits = trial.fitsAround(at, 2) && fitsAt(swapped[0], form, at) &&
                          fitsAt(swapped[1], form, at + 1);
        const unsigned lowered = trial.lowers(swapped[0], at) + trial.lowers(swapped[1], at + 1);
        if (!fits || !trial.checks(trial.loweredAround(at, 2) + lowered)) continue;
        append(list, trial.symbols(at, 2, swapped),
               {SlipKind::Swapped, line, at + 1, text(stand), text(swapped)});
    }
}

void listMissing(const LineTrial& trial, std::size_t line, std::vector<LineReading>& list) {
    for (std::size_t at = 0; at <= trial.size(); ++at) {
        if (!trial.fitsAround(at, 0)) continue;
        const Glyph right = trial.solved(at, trial.loweredAround(at, 0));
        if (!trial.checks(trial.loweredAround(at, 0) + trial.lowers(right, at))) continue;
        append(list, trial.symbols(at, 0, std::span(&right, 1)),
               {SlipKind::Missing, line, at + 1, {}, {letterOf(right)}});
    }
}

void listExtra(const LineTrial& trial, std::size_t line, std::vector<LineReading>& list) {
    for (std::size_t at = 0; at < trial.size(); ++at) {
        if (!trial.fitsAround(at, 1) || !trial.checks(trial.loweredAround(at, 1))) continue;
        append(list, trial.symbols(at, 1, {}),
               {SlipKind::Extra, line, at + 1, {letterOf(trial.letter(at))}, {}});
    }
}

// Letters that are taken for one another in handwriting, small print or haste. Common experience,
// no source.
constexpr std::array<std::string_view, 36> kLookAlikes = {
    "cC", "kK", "pP", "sS", "uU", "vV", "wW", "xX", "yY", "zZ", "5S", "5s",
    "8B", "2Z", "2z", "6b", "6G", "9g", "9q", "gq", "17", "1i", "ij", "1J",
    "uv", "vy", "hb", "hn", "ft", "ce", "EF", "PR", "VY", "38", "3B", "4A"};
constexpr std::string_view kLikeZero = "oDQ";
constexpr std::string_view kLikeEye = "1ijt7J";

/// What may have been meant where a symbol should stand and `letter` stands.
std::string lookAlikesOf(Glyph letter) {
    if (isZero(letter)) return std::string(kLikeZero);
    if (isEye(letter)) return std::string(kLikeEye);
    std::string likes;
    for (const std::string_view pair : kLookAlikes) {
        if (pair[0] == letterOf(letter)) likes += pair[1];
        if (pair[1] == letterOf(letter)) likes += pair[0];
    }
    return likes;
}

/// Another symbol for one place, and by how much it lowers the number that the line tells.
struct Alternative {
    std::size_t at = 0;
    std::uint8_t symbol = 0;
    unsigned lowers = 0;
};

std::vector<Alternative> alternativesFor(std::span<const Glyph> body, const Symbols& symbols) {
    std::vector<Alternative> list;
    for (std::size_t at = 0; at < body.size(); ++at) {
        for (const char like : lookAlikesOf(body[at])) {
            const auto symbol = static_cast<std::uint8_t>(kBase58Digits.find(like));
            const unsigned change = kBase + symbol - symbols[at];
            list.push_back({at, symbol, change * weightAt(symbols.size(), at) % kBase});
        }
    }
    return list;
}

}  // namespace

std::string Slip::told() const {
    const std::string place = "line " + std::to_string(line) + ", letter";
    const std::string at = std::to_string(letter);
    switch (kind) {
        case SlipKind::Wrong:
            return place + " " + at + ": " + was + " read as " + is;
        case SlipKind::Missing:
            return place + " " + at + ": " + is + " put in";
        case SlipKind::Extra:
            return place + " " + at + ": " + was + " left out";
        case SlipKind::Swapped:
            return place + "s " + at + " and " + std::to_string(letter + 1) + ": " + was +
                   " read as " + is;
    }
    return place;
}

std::vector<LineReading> readingsOf(std::span<const Glyph> letters, const LineForm& form) {
    const bool inReach = letters.size() + 1 >= form.size() && letters.size() <= form.size() + 1;
    if (!inReach) return {};
    const LineTrial trial(letters, form);
    std::vector<LineReading> list;
    if (letters.size() == form.size()) {
        if (trial.fitsAround(0, 0) && trial.checks(trial.loweredAround(0, 0))) {
            return {{trial.symbols(0, 0, {}), {}}};
        }
        listWrong(trial, form.line, list);
        listSwapped(trial, form.line, form, list);
    } else if (letters.size() < form.size()) {
        listMissing(trial, form.line, list);
    } else {
        listExtra(trial, form.line, list);
    }
    return list;
}

std::vector<LineReading> lookAlikeReadingsOf(std::span<const Glyph> letters, const LineForm& form) {
    if (letters.size() != form.size()) return {};
    const auto body = letters.subspan(form.frontMarks(), form.symbols);
    Symbols symbols(body.begin(), body.end());
    std::size_t forced = 0;
    for (std::size_t at = 0; at < letters.size(); ++at) {
        if (fitsAt(letters[at], form, at)) continue;
        if (isMarkAt(form, at)) return {};
        symbols[at - form.frontMarks()] = 0;
        ++forced;
    }
    if (forced > 2) return {};
    const std::vector<Alternative> alternatives = alternativesFor(body, symbols);
    const std::size_t tooHigh = (kBase + toldLineNumber(symbols) - form.line % kBase) % kBase;
    const auto isForced = [&](const Alternative& one) { return !isSymbol(body[one.at]); };
    std::vector<LineReading> list;
    for (auto one = alternatives.begin(); one != alternatives.end(); ++one) {
        for (auto two = one + 1; two != alternatives.end(); ++two) {
            const std::size_t meets = (isForced(*one) ? 1U : 0U) + (isForced(*two) ? 1U : 0U);
            const bool checks = (one->lowers + two->lowers) % kBase == tooHigh;
            if (one->at == two->at || meets != forced || !checks) continue;
            LineReading reading{symbols, {}};
            for (const Alternative* part : {&*one, &*two}) {
                reading.symbols[part->at] = part->symbol;
                reading.slips.push_back({SlipKind::Wrong,
                                         form.line,
                                         form.frontMarks() + part->at + 1,
                                         {letterOf(body[part->at])},
                                         {kBase58Digits[part->symbol]}});
            }
            list.push_back(std::move(reading));
        }
    }
    return list;
}

std::vector<LineReading> unnoticedSwapsOf(SymbolSpan symbols, const LineForm& form) {
    std::vector<LineReading> readings;
    for (std::size_t at = 0; at + 1 < symbols.size(); ++at) {
        const auto [low, high] = std::minmax(symbols[at], symbols[at + 1]);
        if (high - low != static_cast<int>(kHalfBase)) continue;
        LineReading reading{Symbols(symbols.begin(), symbols.end()), {}};
        std::swap(reading.symbols[at], reading.symbols[at + 1]);
        reading.slips.push_back({SlipKind::Swapped, form.line, form.frontMarks() + at + 1,
                                 toText(symbols.subspan(at, 2)),
                                 toText(SymbolSpan(reading.symbols).subspan(at, 2))});
        readings.push_back(std::move(reading));
    }
    return readings;
}

}  // namespace pantile::codec
