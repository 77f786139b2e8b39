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

unsigned inverseWeightAt(std::size_t symbols, std::size_t at) {
    const unsigned weight = weightAt(symbols, at);
    unsigned inverse = 1;
    while (weight * inverse % kBase != 1) ++inverse;
    return inverse;
}

/// The value at `at` with which the line checks, all others being right.
std::uint8_t solvedSymbol(const Symbols& symbols, std::size_t at, std::size_t line) {
    const std::size_t tooHigh = kBase + toldLineNumber(symbols) - line % kBase;
    // A data symbol lowers the told number by its weight, and the check symbol raises it by 1.
    const std::size_t step = tooHigh * inverseWeightAt(symbols.size(), at);
    return static_cast<std::uint8_t>((symbols[at] + step) % kBase);
}

/// Collects readings of one line, each once.
class ReadingList {
public:
    explicit ReadingList(const LineForm& form) : m_form(form) {}

    const LineForm& form() const { return m_form; }

    /// Takes `letters`, just as many as the form wants, if they are a line that checks. One of
    /// them, at `open`, may be anything; it is filled in.
    void offer(std::vector<Glyph>& letters, std::optional<std::size_t> open, const Slip& slip) {
        for (std::size_t at = 0; at < letters.size(); ++at) {
            if (at != open && !fitsAt(letters[at], m_form, at)) return;
        }
        if (open && isMarkAt(m_form, *open)) letters[*open] = markAt(*open);
        const std::size_t front = m_form.frontMarks();
        const auto begin = letters.begin() + static_cast<std::ptrdiff_t>(front);
        Symbols symbols(begin, begin + static_cast<std::ptrdiff_t>(m_form.symbols));
        if (open && !isMarkAt(m_form, *open)) {
            symbols[*open - front] = 0;
            symbols[*open - front] = solvedSymbol(symbols, *open - front, m_form.line);
            letters[*open] = symbols[*open - front];
        }
        if (toldLineNumber(symbols) != m_form.line % kBase) return;
        Slip complete = slip;
        if (open) complete.is = letterOf(letters[*open]);
        add({std::move(symbols), {std::move(complete)}});
    }

    void add(LineReading reading) {
        const bool known =
            std::any_of(m_readings.begin(), m_readings.end(),
                        [&](const LineReading& other) { return other.symbols == reading.symbols; });
        if (!known) m_readings.push_back(std::move(reading));
    }

    std::vector<LineReading> take() && { return std::move(m_readings); }

private:
    LineForm m_form;
    std::vector<LineReading> m_readings;
};

std::string text(std::span<const Glyph> letters) {
    std::string text;
    for (const Glyph letter : letters) text += letterOf(letter);
    return text;
}

/// The symbols of `letters` as they stand, if they are a line that checks.
std::optional<Symbols> intact(std::span<const Glyph> letters, const LineForm& form) {
    for (std::size_t at = 0; at < letters.size(); ++at) {
        if (!fitsAt(letters[at], form, at)) return std::nullopt;
    }
    const auto body = letters.subspan(form.frontMarks(), form.symbols);
    if (toldLineNumber(body) != form.line % kBase) return std::nullopt;
    return Symbols(body.begin(), body.end());
}

void offerWrong(std::span<const Glyph> letters, ReadingList& list) {
    for (std::size_t at = 0; at < letters.size(); ++at) {
        std::vector<Glyph> line(letters.begin(), letters.end());
        list.offer(line, at,
                   {SlipKind::Wrong, list.form().line, at + 1, {letterOf(letters[at])}, {}});
    }
}

void offerSwapped(std::span<const Glyph> letters, ReadingList& list) {
    for (std::size_t at = 0; at + 1 < letters.size(); ++at) {
        std::vector<Glyph> line(letters.begin(), letters.end());
        std::swap(line[at], line[at + 1]);
        list.offer(line, std::nullopt,
                   {SlipKind::Swapped, list.form().line, at + 1, text(letters.subspan(at, 2)),
                    text(std::span(line).subspan(at, 2))});
    }
}

void offerMissing(std::span<const Glyph> letters, ReadingList& list) {
    for (std::size_t at = 0; at <= letters.size(); ++at) {
        std::vector<Glyph> line(letters.begin(), letters.end());
        line.insert(line.begin() + static_cast<std::ptrdiff_t>(at), Glyph{0});
        list.offer(line, at, {SlipKind::Missing, list.form().line, at + 1, {}, {}});
    }
}

void offerExtra(std::span<const Glyph> letters, ReadingList& list) {
    for (std::size_t at = 0; at < letters.size(); ++at) {
        std::vector<Glyph> line(letters.begin(), letters.end());
        line.erase(line.begin() + static_cast<std::ptrdiff_t>(at));
        list.offer(line, std::nullopt,
                   {SlipKind::Extra, list.form().line, at + 1, {letterOf(letters[at])}, {}});
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
    if (letters.size() == form.size()) {
        if (auto symbols = intact(letters, form)) return {{std::move(*symbols), {}}};
    }
    ReadingList list(form);
    if (letters.size() == form.size()) {
        offerWrong(letters, list);
        offerSwapped(letters, list);
    } else if (letters.size() + 1 == form.size()) {
        offerMissing(letters, list);
    } else if (letters.size() == form.size() + 1) {
        offerExtra(letters, list);
    }
    return std::move(list).take();
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
    ReadingList list(form);
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
            list.add(std::move(reading));
        }
    }
    return std::move(list).take();
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
