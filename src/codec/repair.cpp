#include "codec/repair.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <utility>

#include "codec/armour.h"
#include "codec/check_search.h"
#include "codec/letters.h"
#include "codec/line_places.h"

namespace pantile::codec {
namespace {

constexpr std::size_t kStepsForReadings = 2000;  // To list the readings of one stretch.
constexpr std::size_t kStepsToConfirm = 40000;
constexpr std::size_t kMostReadings = 400;  // Of one line; there are about 33 for each stretch.
constexpr std::size_t kFewestLetters = 12;
constexpr std::size_t kMostLost = 2 * kMostDamagedLines;  // Letters.

/// Appends those readings that are not there yet.
void merge(std::vector<LineReading>& list, std::vector<LineReading> more) {
    for (LineReading& reading : more) {
        const bool known = std::any_of(list.begin(), list.end(), [&](const LineReading& other) {
            return other.symbols == reading.symbols;
        });
        if (!known && list.size() < kMostReadings) list.push_back(std::move(reading));
    }
}

std::vector<LineReading> readingsWithOrWithoutEndMark(std::span<const Glyph> letters,
                                                      LineForm form) {
    std::vector<LineReading> readings = readingsOf(letters, form);
    if (!form.endMark) return readings;
    form.endMark = false;
    merge(readings, readingsOf(letters, form));
    return readings;
}

class Repairer {
public:
    Repairer(std::span<const Glyph> glyphs, Region region, const Confirmation& confirm,
             RepairBudget& budget)
        : m_region(region),
          m_letters(lettersOf(glyphs, region)),
          m_confirm(confirm),
          m_budget(budget) {}

    std::optional<RepairedCode> run() && {
        if (m_letters.size() < kFewestLetters || !m_budget.spend(m_letters.size())) return {};
        if (const std::optional<CodeShape> shape = shapeFromFirstLine(m_letters)) {
            tryShape(*shape, nullptr);
        } else {
            tryFirstLines(false);
            if (m_confirmed.empty()) tryFirstLines(true);
        }
        if (m_confirmed.size() != 1) return std::nullopt;
        return std::move(m_confirmed.front());
    }

private:
    using Readings = std::vector<LineReading>;

    /// Tries all that the first line may have been, grouped by what shape it then tells.
    void tryFirstLines(bool bold) {
        std::map<std::size_t, Readings> byBytes;
        for (LineReading& reading : firstLineReadings(bold)) {
            byBytes[toldBytes(reading.symbols)].push_back(std::move(reading));
        }
        for (const auto& [bytes, readings] : byBytes) tryShape(CodeShape::of(bytes), &readings);
    }

    /// Whether the code may have a single line: then the first two symbols of its length are 1,
    /// and one slip leaves one of them near its place.
    bool mayBeShort() const {
        constexpr LetterRange kNearTheLength{2, 7};
        const auto near =
            m_letters.range(kNearTheLength.begin, std::min(kNearTheLength.end, m_letters.size()));
        return std::find(near.begin(), near.end(), Glyph{0}) != near.end();
    }

    Readings firstLineReadings(bool bold) {
        // A full first line, and those that are the only one of their code.
        std::vector<std::pair<LineForm, CodeShape>> forms = {
            {{1, kFirstLineData + 1, false}, CodeShape{kFirstLineData + 1, 2}}};
        for (std::size_t bytes = 0; mayBeShort() && CodeShape::of(bytes).lines == 1; ++bytes) {
            const CodeShape shape = CodeShape::of(bytes);
            forms.emplace_back(lineForm(shape, 1), shape);
        }
        constexpr std::size_t kMostLetters = 80;  // With foreign words.
        const LetterRange range{0, std::min(m_letters.size(), kMostLetters)};
        Readings readings;
        for (const auto& [form, shape] : forms) {
            const DamagedLines damaged{1, 1, range, true};
            for (const LetterRange stretch : stretchesFor(m_letters, damaged, shape, form, bold)) {
                if (!m_budget.spend(kStepsForReadings)) return {};
                Readings more =
                    readingsWithOrWithoutEndMark(m_letters.range(stretch.begin, stretch.end), form);
                std::erase_if(more, [&form = form](const LineReading& reading) {
                    return !tellsItsForm(reading, form);
                });
                merge(readings, std::move(more));
            }
        }
        return readings;
    }

    /// Whether the head of a first line promises a first line of that form.
    static bool tellsItsForm(const LineReading& reading, const LineForm& form) {
        if (!isKnownForm(reading.symbols.front())) return false;
        const CodeShape told = CodeShape::of(toldBytes(reading.symbols));
        return form.endMark == (told.lines == 1) && told.lineSymbols(1) == form.symbols;
    }

    /// `first`: what the first line may be; nullptr if it checks.
    void tryShape(const CodeShape& shape, const Readings* first) {
        const bool enough = shape.symbols + 2 * shape.lines <= m_letters.size() + kMostLost;
        if (!enough || !m_budget.spend(m_letters.size() + shape.symbols)) return;
        const auto close = placeLines(m_letters, shape, first == nullptr, Spacing::Close);
        const std::size_t before = m_confirmed.size();
        if (close) tryPlaces(*close, shape, first);
        if (m_confirmed.size() > before) return;
        const auto any = placeLines(m_letters, shape, first == nullptr, Spacing::Any);
        if (any && !(close && close->intact == any->intact)) tryPlaces(*any, shape, first);
    }

    void tryPlaces(const LinePlaces& places, const CodeShape& shape, const Readings* first) {
        m_end = places.end;
        Symbols stream(shape.symbols, 0);
        for (const IntactLine& line : places.intact) {
            const std::size_t count = shape.lineSymbols(line.line) - 1;
            const auto data = m_letters.range(line.symbols, line.symbols + count);
            std::copy(
                data.begin(), data.end(),
                stream.begin() + static_cast<std::ptrdiff_t>(CodeShape::lineBegin(line.line)));
        }
        const CheckSearch search(std::move(stream));
        const std::size_t before = m_confirmed.size();
        for (const bool bold : {false, true}) {
            const std::vector<OpenLine> open = openLines(places, shape, first, bold);
            tryOpen(search, open);
            if (m_confirmed.size() > before) return;
            if (open.size() <= 1) tryUnnoticed(search, places, shape, open);
            if (m_confirmed.size() > before || places.damaged.empty()) return;
        }
        tryLookAlikes(search, places, shape);
    }

    std::vector<OpenLine> openLines(const LinePlaces& places, const CodeShape& shape,
                                    const Readings* first, bool bold) {
        std::vector<OpenLine> open;
        for (const DamagedLines& damaged : places.damaged) {
            for (std::size_t line = damaged.first; line < damaged.first + damaged.count; ++line) {
                OpenLine one{CodeShape::lineBegin(line), {}};
                if (line == 1) {
                    one.readings = *first;
                } else {
                    one.readings = readingsOfLine(damaged, shape, line, bold);
                }
                open.push_back(std::move(one));
            }
        }
        return open;
    }

    Readings readingsOfLine(const DamagedLines& damaged, const CodeShape& shape, std::size_t line,
                            bool bold) {
        const LineForm form = lineForm(shape, line);
        Readings readings;
        for (const LetterRange stretch : stretchesFor(m_letters, damaged, shape, form, bold)) {
            if (!m_budget.spend(kStepsForReadings)) return {};
            merge(readings,
                  readingsWithOrWithoutEndMark(m_letters.range(stretch.begin, stretch.end), form));
        }
        return readings;
    }

    void tryOpen(const CheckSearch& search, const std::vector<OpenLine>& open) {
        if (open.size() == 1 && m_budget.spend(open[0].readings.size())) {
            search.tryOne(open[0], confirming());
        }
        if (open.size() == 2 && m_budget.spend(open[0].readings.size() * open[1].readings.size())) {
            search.tryTwo(open[0], open[1], confirming());
        }
    }

    /// Swaps that no line check notices: alone, two of them, or one beside a damaged line.
    void tryUnnoticed(const CheckSearch& search, const LinePlaces& places, const CodeShape& shape,
                      const std::vector<OpenLine>& open) {
        std::vector<OpenLine> swaps;
        for (const IntactLine& line : places.intact) {
            const LineForm form = lineForm(shape, line.line);
            OpenLine one{
                CodeShape::lineBegin(line.line),
                unnoticedSwapsOf(m_letters.range(line.symbols, line.symbols + form.symbols), form)};
            if (!one.readings.empty()) swaps.push_back(std::move(one));
        }
        if (!m_budget.spend(shape.symbols)) return;
        for (auto one = swaps.begin(); one != swaps.end(); ++one) {
            if (!open.empty()) {
                tryOpen(search, {open[0], *one});
                continue;
            }
            tryOpen(search, {*one});
            for (auto two = std::next(one); two != swaps.end(); ++two) {
                if (m_budget.isSpent()) return;
                tryOpen(search, {*one, *two});
            }
        }
    }

    void tryLookAlikes(const CheckSearch& search, const LinePlaces& places,
                       const CodeShape& shape) {
        const bool oneLine = places.damaged.size() == 1 && places.damaged.front().count == 1;
        if (!oneLine || places.damaged.front().first == 1) return;
        const DamagedLines& damaged = places.damaged.front();
        const LineForm form = lineForm(shape, damaged.first);
        OpenLine open{CodeShape::lineBegin(damaged.first), {}};
        for (const LetterRange stretch : stretchesFor(m_letters, damaged, shape, form, false)) {
            if (!m_budget.spend(kStepsForReadings)) return;
            merge(open.readings,
                  lookAlikeReadingsOf(m_letters.range(stretch.begin, stretch.end), form));
        }
        tryOpen(search, {open});
    }

    CheckSearch::Found confirming() {
        return [this](const Symbols& stream, const std::vector<LineReading>& used) {
            const bool known =
                std::any_of(m_confirmed.begin(), m_confirmed.end(),
                            [&](const RepairedCode& other) { return other.symbols == stream; });
            if (known || !m_budget.spend(kStepsToConfirm) || !m_confirm(stream)) return;
            RepairedCode code{stream, glyphBehind(m_end), {}};
            for (const LineReading& reading : used) {
                code.slips.insert(code.slips.end(), reading.slips.begin(), reading.slips.end());
            }
            m_confirmed.push_back(std::move(code));
        };
    }

    std::size_t glyphBehind(std::size_t letter) const {
        return letter < m_letters.size() ? m_letters.places[letter] : m_region.end;
    }

    Region m_region;
    Letters m_letters;
    const Confirmation& m_confirm;
    RepairBudget& m_budget;
    std::size_t m_end = 0;  ///< Letter at which the code that is tried ends.
    std::vector<RepairedCode> m_confirmed;
};

}  // namespace

std::optional<RepairedCode> repairCode(std::span<const Glyph> glyphs, Region region,
                                       const Confirmation& confirm, RepairBudget& budget) {
    return Repairer(glyphs, region, confirm, budget).run();
}

}  // namespace pantile::codec
