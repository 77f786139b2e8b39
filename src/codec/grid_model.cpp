#include "codec/grid_model.h"

#include <algorithm>
#include <array>
#include <bit>
#include <numeric>
#include <optional>

#include "codec/start_values.h"

namespace pantile::codec {

namespace {

using core::PaletteIndex;

/// A palette index, or kNone.
using Index = int;

constexpr Index kNone = -1;

constexpr int kLeastTableBits = 10;
constexpr int kMostTableBits = 16;
constexpr int kPlaceBits = 12;
/// From this place in the list on, candidates are coded as even bits.
constexpr std::size_t kMostAsked = 20;
constexpr int kClearLightness = -300;  // Far from every colour.

int tableBitsFor(std::size_t cells) {
    const auto bits = static_cast<int>(std::bit_width(2 * cells - 1));
    return std::clamp(bits, kLeastTableBits, kMostTableBits);
}

/// A colour in whole numbers: how light it is, and two differences for its hue.
struct Tone {
    int light = 0;
    int redder = 0;
    int bluer = 0;
};

std::vector<Tone> tonesOf(const core::Palette& palette) {
    std::vector<Tone> tones;
    for (const core::Rgb8 colour : palette.colours()) {
        tones.push_back({(2 * colour.r + 5 * colour.g + colour.b) >> 3, colour.r - colour.g,
                         colour.b - colour.g});
    }
    if (palette.transparent()) tones[*palette.transparent()] = {.light = kClearLightness};
    return tones;
}

constexpr int kLargestDifference = 1200;  // Of a colour to any sum of three others; clear ones too.

constexpr auto kStepClasses = [] {
    std::array<std::uint8_t, 2 * kLargestDifference + 1> classes{};
    for (int difference = -kLargestDifference; difference <= kLargestDifference; ++difference) {
        const int size = difference < 0 ? -difference : difference;
        int step = 0;
        for (const int bound : {1, 4, 10, 22, 45, 90}) step += size >= bound ? 1 : 0;
        const int place = difference + kLargestDifference;
        classes[static_cast<std::size_t>(place)] =
            static_cast<std::uint8_t>(difference < 0 ? step + 7 : step);
    }
    return classes;
}();

/// 0: none; 1 to 6: more by ever larger steps; 8 to 13: less.
std::uint64_t stepClass(int difference) {
    const int place = difference + kLargestDifference;
    return kStepClasses[static_cast<std::size_t>(place)];
}

/// 0: it differs from `index`; 1: it is the same; 2: that is not known.
std::uint64_t agreement(Index candidate, Index index) {
    if (index == kNone) return 2;
    return candidate == index ? 1 : 0;
}

/// Numbers of known width side by side, as one number.
class Packed {
public:
    Packed& add(std::uint64_t value, unsigned bits) {
        m_value = m_value << bits | value;
        return *this;
    }

    /// Each of `values` with so many bits. Not by a list: this is asked for each cell many times.
    template <unsigned kBits, typename... Values>
    Packed& each(Values... values) {
        (add(static_cast<std::uint64_t>(values), kBits), ...);
        return *this;
    }

    std::uint64_t value() const { return m_value; }

private:
    std::uint64_t m_value = 0;
};

/// What stands around a cell; beyond the edges the nearest known cell stands in.
struct Neighbours {
    Index w, n, nw, ne, ww, nn, nww, nee, nne;
};

/// Where a row of known cells like these stood before, and how long it has held.
struct Repeat {
    std::optional<std::size_t> at;
    std::size_t length = 0;
};

}  // namespace

class GridCoding {
public:
    GridCoding(GridModel& model, BitCoder& coder, core::Size size, const core::Palette& palette,
               std::size_t paletteNumber)
        : m_model(model),
          m_coder(coder),
          m_width(size.width),
          m_height(size.height),
          m_tones(tonesOf(palette)),
          m_paletteNumber(paletteNumber & 0xFFU),
          m_base(model.m_history.size()),
          m_byFrequency(m_tones.size()),
          m_counts(m_tones.size()),
          m_listedAt(m_tones.size()) {
        std::iota(m_byFrequency.begin(), m_byFrequency.end(), 0);
        const bool sameSize = model.m_previousSize == size && m_base > 0;
        if (sameSize) m_previous = model.m_previousAt;
    }

    bool run(std::vector<PaletteIndex>& cells) {
        const auto count = static_cast<std::size_t>(m_width) * static_cast<std::size_t>(m_height);
        m_model.m_history.reserve(m_base + count);
        for (m_y = 0; m_y < m_height; ++m_y) {
            for (m_x = 0; m_x < m_width; ++m_x) {
                const std::size_t at = m_model.m_history.size() - m_base;
                const std::optional<Index> index = codeCell(m_coder.isReading() ? 0 : cells[at]);
                if (!index) return false;
                m_model.m_history.push_back(static_cast<PaletteIndex>(*index));
            }
        }
        cells.assign(m_model.m_history.begin() + static_cast<std::ptrdiff_t>(m_base),
                     m_model.m_history.end());
        return true;
    }

private:
    /// The cell at column x, row y of this grid; kNone if it is outside or not known yet.
    Index at(int x, int y) const {
        if (x < 0 || x >= m_width || y < 0) return kNone;
        const auto offset = static_cast<std::size_t>(y) * static_cast<std::size_t>(m_width) +
                            static_cast<std::size_t>(x);
        const std::size_t place = m_base + offset;
        return place < m_model.m_history.size() ? Index{m_model.m_history[place]} : kNone;
    }

    Index near(int dx, int dy) const { return at(m_x + dx, m_y + dy); }

    Neighbours neighbours() const {
        const auto either = [](Index index, Index other) { return index == kNone ? other : index; };
        Neighbours around{};
        around.w = either(near(-1, 0), either(near(0, -1), 0));
        around.n = either(near(0, -1), around.w);
        around.nw = either(near(-1, -1), around.n);
        around.ne = either(near(1, -1), around.n);
        around.ww = either(near(-2, 0), around.w);
        around.nn = either(near(0, -2), around.n);
        around.nww = either(near(-2, -1), around.nw);
        around.nee = either(near(2, -1), around.ne);
        around.nne = either(near(1, -2), around.ne);
        return around;
    }

    /// Neighbours come first; the others follow by need, the most frequent first.
    void listNeighbours(const Neighbours& around) {
        m_candidates.clear();
        m_nextFrequent = 0;
        ++m_cellNumber;
        for (const Index index : {around.w, around.n, around.ne, around.nw, around.ww, around.nn,
                                  around.nee, around.nww, around.nne}) {
            list(index);
        }
    }

    void list(Index index) {
        std::size_t& listed = m_listedAt[static_cast<std::size_t>(index)];
        if (listed == m_cellNumber) return;
        listed = m_cellNumber;
        m_candidates.push_back(index);
    }

    /// The candidate at `place`, which must be below the number of colours.
    Index candidateAt(std::size_t place) {
        while (m_candidates.size() <= place) list(m_byFrequency[m_nextFrequent++]);
        return m_candidates[place];
    }

    /// Takes what all questions about this cell have in common.
    void look(const Neighbours& a) {
        const auto light = [&](Index index) { return tone(index).light; };
        m_around = a;
        m_narrow = Packed().each<1>(a.w == a.nw, a.n == a.nw, a.n == a.ne, a.w == a.n).value();
        m_pattern = Packed()
                        .each<1>(a.ne == a.nne, a.ww == a.nw, a.nww == a.nw, a.nee == a.ne,
                                 a.w == a.ne, a.nn == a.n, a.ww == a.w)
                        .add(m_narrow, 4)
                        .value();
        m_slope = light(a.w) + light(a.n) - light(a.nw);
        m_mean = (2 * light(a.w) + 2 * light(a.n) + light(a.nw) + light(a.ne) + light(a.ww) +
                  light(a.nn)) >>
                 3;
        m_halves = {(light(a.w) + light(a.n)) >> 1, (light(a.n) + light(a.ne)) >> 1,
                    (light(a.nn) + light(a.ww)) >> 1};
        const auto [least, most] = std::minmax({light(a.w), light(a.n), light(a.nw), light(a.ne)});
        m_contrast = stepClass(most - least);
        const int halfWidth = m_width / 2;
        const int halfHeight = m_height / 2;
        m_mirrored = {2 * m_x >= m_width ? at(m_width - 1 - m_x, m_y) : kNone,
                      2 * m_y >= m_height ? at(m_x, m_height - 1 - m_y) : kNone};
        m_halfway = {m_x >= halfWidth ? near(-halfWidth, 0) : kNone,
                     m_y >= halfHeight ? near(0, -halfHeight) : kNone,
                     m_y >= halfHeight ? at((m_x + halfWidth) % m_width, m_y - halfHeight) : kNone};
        m_before = m_previous
                       ? Index{m_model.m_history[*m_previous + m_model.m_history.size() - m_base]}
                       : kNone;
    }

    const Tone& tone(Index index) const { return m_tones[static_cast<std::size_t>(index)]; }

    Packed keyOf(Index candidate) const {
        return Packed().add(m_paletteNumber, 8).each<8>(candidate);
    }

    GridMixer::Question question(Index candidate, std::size_t place) const {
        const Neighbours& a = m_around;
        const Tone& own = tone(candidate);
        const std::size_t rank = std::min<std::size_t>(place, 11);
        const std::uint64_t firstRanks = std::min<std::uint64_t>(rank, 3);
        const auto lighter = [&](int light) { return stepClass(own.light - light); };
        const auto lighterThan = [&](Index index) { return lighter(tone(index).light); };
        const auto redder = [&](Index index) { return stepClass(own.redder - tone(index).redder); };
        const auto bluer = [&](Index index) { return stepClass(own.bluer - tone(index).bluer); };
        const auto agrees = [&](Index index) { return agreement(candidate, index); };
        const int slope = (m_slope >> 3) + 128;  // 21 to 229.
        GridMixer::Question asked;
        asked.contexts = {
            Packed().add(m_pattern, 11).add(rank, 4).value(),
            keyOf(candidate).each<8>(a.w, a.n).value(),
            keyOf(candidate).each<8>(a.w, a.ww, a.n, a.nn).value(),
            keyOf(candidate).each<8>(a.w).value(),
            keyOf(candidate).each<8>(a.n).value(),
            Packed().each<4>(lighterThan(a.w), lighterThan(a.n)).add(firstRanks, 2).value(),
            Packed().each<4>(lighter(m_slope), lighter(m_mean), m_contrast).value(),
            Packed()
                .each<4>(lighterThan(a.w), lighterThan(a.n), lighterThan(a.ne), lighterThan(a.nw))
                .value(),
            Packed().each<4>(redder(a.w), bluer(a.w), redder(a.n), bluer(a.n)).value(),
            Packed().each<2>(agrees(m_mirrored[0]), agrees(m_mirrored[1]), firstRanks).value(),
            Packed()
                .each<2>(agrees(m_halfway[0]), agrees(m_halfway[1]), agrees(m_halfway[2]),
                         agrees(m_before), firstRanks)
                .value(),
            Packed().each<6>(repeatState(0, candidate, 15), repeatState(1, candidate, 7)).value(),
            keyOf(candidate).each<8>(a.n, a.ne, a.nee, a.w).value(),
            keyOf(candidate).add(static_cast<std::uint64_t>(slope), 8).value(),
            Packed()
                .each<4>(lighter(m_halves[0]), lighter(m_halves[1]), lighter(m_halves[2]),
                         m_contrast)
                .value()};
        const std::uint64_t mirrored = 3 * agrees(m_mirrored[0]) + agrees(m_mirrored[1]);
        asked.choices = {rank,
                         static_cast<std::size_t>(m_narrow) + 16 * std::min<std::size_t>(rank, 2),
                         9 * repeatChoice(candidate) + static_cast<std::size_t>(mirrored)};
        return asked;
    }

    /// 0: nothing is foretold; odd: another index is; even: this one; the more, the longer it held.
    std::uint64_t repeatState(std::size_t which, Index candidate, std::size_t most) const {
        const Index foretold = m_foretold[which];
        if (foretold == kNone) return 0;
        const std::uint64_t length = std::min(m_repeats[which].length, most);
        return (candidate == foretold ? 2 : 1) + 2 * length;
    }

    std::size_t repeatChoice(Index candidate) const {
        if (m_foretold[0] == kNone) return 0;
        if (candidate != m_foretold[0]) return 9;
        return 1 + std::min<std::size_t>(m_repeats[0].length, 7);
    }

    /// Looks the neighbours up among the places where they stood before.
    void foretell() {
        const Neighbours& a = m_around;
        m_hashes = {hashed(Packed().each<8>(a.w, a.n, a.nw, a.ne, a.ww, a.nn, a.nee, a.nww)),
                    hashed(Packed().each<8>(a.w, a.n, a.nw, a.ne))};
        for (std::size_t i = 0; i < m_repeats.size(); ++i) {
            Repeat& repeat = m_repeats[i];
            const std::int32_t last = m_model.m_lastPlaces[i][m_hashes[i]];
            if (repeat.length == 0) {
                repeat.at = last < 0 ? std::nullopt : std::optional<std::size_t>(last);
            } else {
                ++*repeat.at;
            }
            m_foretold[i] = repeat.at ? Index{m_model.m_history[*repeat.at]} : kNone;
        }
    }

    static std::size_t hashed(const Packed& packed) {
        return static_cast<std::size_t>((packed.value() * kSpread) >> (64U - kPlaceBits));
    }

    std::optional<Index> codeCell(Index index) {
        look(neighbours());
        foretell();
        listNeighbours(m_around);
        const std::optional<Index> coded = chooseCandidate(index);
        if (!coded) return std::nullopt;
        for (std::size_t i = 0; i < m_repeats.size(); ++i) {
            m_repeats[i].length = m_foretold[i] == *coded ? m_repeats[i].length + 1 : 0;
            m_model.m_lastPlaces[i][m_hashes[i]] =
                static_cast<std::int32_t>(m_model.m_history.size());
        }
        count(*coded);
        return coded;
    }

    std::optional<Index> chooseCandidate(Index index) {
        const std::size_t colours = m_tones.size();
        const std::size_t asked = std::min(colours - 1, kMostAsked);
        for (std::size_t place = 0; place < asked; ++place) {
            if (m_model.m_decisionsLeft == 0) return std::nullopt;
            --m_model.m_decisionsLeft;
            const Index candidate = candidateAt(place);
            const bool yes =
                m_model.m_mixer.code(m_coder, candidate == index, question(candidate, place));
            if (yes) return candidate;
        }
        candidateAt(colours - 1);
        if (asked == colours - 1) return m_candidates.back();
        return chooseOfRest(index, asked);
    }

    std::optional<Index> chooseOfRest(Index index, std::size_t first) {
        const std::size_t count = m_candidates.size() - first;
        const auto begin = m_candidates.begin() + static_cast<std::ptrdiff_t>(first);
        const auto found = std::find(begin, m_candidates.end(), index);
        const auto bits = static_cast<int>(std::bit_width(count - 1));
        const std::uint32_t number =
            m_coder.codeNumber(static_cast<std::uint32_t>(found - begin), bits);
        if (number >= count) return std::nullopt;
        return *(begin + static_cast<std::ptrdiff_t>(number));
    }

    /// Keeps m_byFrequency in falling order; of equal ones, the one that got there first.
    void count(Index index) {
        const int own = ++m_counts[static_cast<std::size_t>(index)];
        auto place = std::find(m_byFrequency.begin(), m_byFrequency.end(), index);
        while (place != m_byFrequency.begin() &&
               m_counts[static_cast<std::size_t>(*std::prev(place))] < own) {
            std::iter_swap(place, std::prev(place));
            --place;
        }
    }

    GridModel& m_model;
    BitCoder& m_coder;
    int m_width;
    int m_height;
    std::vector<Tone> m_tones;
    std::uint64_t m_paletteNumber;
    std::size_t m_base;  ///< Where this grid begins in the history.
    std::optional<std::size_t> m_previous;
    std::vector<Index> m_byFrequency;
    std::vector<int> m_counts;
    std::vector<std::size_t> m_listedAt;  ///< The cell for which an index was listed last.
    std::vector<Index> m_candidates;
    std::size_t m_nextFrequent = 0;
    std::size_t m_cellNumber = 0;
    int m_x = 0;
    int m_y = 0;
    std::array<Repeat, 2> m_repeats;
    std::array<Index, 2> m_foretold{};
    std::array<std::size_t, 2> m_hashes{};
    Neighbours m_around{};
    std::uint64_t m_narrow = 0;
    std::uint64_t m_pattern = 0;
    int m_slope = 0;
    int m_mean = 0;
    std::array<int, 3> m_halves{};
    std::uint64_t m_contrast = 0;
    std::array<Index, 2> m_mirrored{};
    std::array<Index, 3> m_halfway{};
    Index m_before = kNone;
};

const GridMixer::StartWeights& gridStartWeights() {
    static const GridMixer::StartWeights start = [] {
        GridMixer::StartWeights weights;
        std::size_t row = 0;
        const auto nextRow = [&] {
            GridMixer::Weights values{};
            for (std::size_t i = 0; i < values.size(); ++i) {
                values[i] =
                    static_cast<Weight>(kGridStart[row * values.size() + i] * (kWeightOne / 64));
            }
            ++row;
            return values;
        };
        for (std::size_t chooser = 0; chooser + 1 < kGridChoosers; ++chooser) {
            for (std::size_t i = 0; i < kGridChoices[chooser]; ++i) {
                weights[chooser].push_back(nextRow());
            }
        }
        weights.back().assign(kGridChoices.back(), nextRow());
        return weights;
    }();
    return start;
}

GridModel::GridModel(std::size_t cells, const GridMixer::StartWeights& start)
    : m_mixer(tableBitsFor(cells), start) {
    for (auto& places : m_lastPlaces) {
        places.assign(std::size_t{1} << static_cast<unsigned>(kPlaceBits), -1);
    }
}

bool GridModel::code(BitCoder& coder, core::Size size, const core::Palette& palette,
                     std::size_t paletteNumber, std::vector<core::PaletteIndex>& cells) {
    const std::size_t base = m_history.size();
    const bool done = GridCoding(*this, coder, size, palette, paletteNumber).run(cells);
    m_previousAt = base;
    m_previousSize = size;
    return done;
}

}  // namespace pantile::codec
