#include "picture/look_alike.h"

#include <algorithm>
#include <array>
#include <map>
#include <utility>
#include <vector>

#include "picture/look.h"
#include "picture/orientation.h"
#include "picture/resize.h"
#include "picture/step_lab.h"

namespace pantile::picture {
namespace {

using core::Grid;
using core::Palette;
using core::Point;

// Cells compared before a search for the right shift is given up.
constexpr std::int64_t kMostCompared = 20'000'000;

std::string orientationText(Orientation orientation) {
    switch (orientation) {
        case Orientation::QuarterRight:
            return "turned a quarter to the right";
        case Orientation::Half:
            return "turned upside down";
        case Orientation::QuarterLeft:
            return "turned a quarter to the left";
        case Orientation::LeftRight:
            return "mirrored left to right";
        case Orientation::TopBottom:
            return "mirrored top to bottom";
        case Orientation::Diagonal:
            return "mirrored over the diagonal";
        case Orientation::OtherDiagonal:
            return "mirrored over the other diagonal";
        case Orientation::AsItIs:
            break;
    }
    return "";
}

std::string shiftText(Point shift) {
    std::string text;
    if (shift.x != 0) text = std::to_string(shift.x) + " to the right";
    if (shift.y != 0) text += (text.empty() ? "" : " and ") + std::to_string(shift.y) + " down";
    return text.empty() ? text : "shifted " + text;
}

std::string sizeText(int from, int to) {
    if (from == to) return "";
    if (to % from == 0) return "enlarged " + std::to_string(to / from) + " times";
    if (from % to == 0) return "made " + std::to_string(from / to) + " times smaller";
    return "enlarged " + std::to_string(to) + " to " + std::to_string(from);
}

std::string joined(std::initializer_list<std::string> clauses) {
    std::string text;
    for (const std::string& clause : clauses) {
        if (clause.empty()) continue;
        text += (text.empty() ? "" : ", ") + clause;
    }
    return text;
}

/// One texture as it is compared: colours, and what lies around each cell.
struct Compared {
    explicit Compared(ColourClasses base)
        : classes(std::move(base)), labels(surroundings(classes)) {}

    ColourClasses classes;
    std::vector<std::uint32_t> labels;
};

struct Match {
    Orientation orientation = Orientation::AsItIs;
    Point shift;   ///< Of the turned base, in its cells.
    Point offset;  ///< Of the turned texture from its base.
    bool recoloured = false;
};

struct Way {
    Orientation orientation;
    Point offset;
    Compared from;
};

/// Looks for the shift that takes `from`, already turned, to `to`.
class ShiftSearch {
public:
    ShiftSearch(const Compared& from, const Compared& to, std::int64_t& left)
        : m_from(from), m_to(to), m_left(&left) {
        std::map<std::uint32_t, std::size_t> uses;
        for (const std::uint32_t label : to.labels) ++uses[label];
        const auto rarest =
            std::min_element(uses.begin(), uses.end(),
                             [](const auto& a, const auto& b) { return a.second < b.second; });
        m_label = rarest->first;
        m_place = static_cast<std::size_t>(std::find(to.labels.begin(), to.labels.end(), m_label) -
                                           to.labels.begin());
    }

    /// No shift before all others.
    std::optional<Point> find(bool recoloured) const {
        if (fits({0, 0}, recoloured)) return Point{0, 0};
        const int width = m_to.classes.size.width;
        for (std::size_t i = 0; i < m_from.labels.size() && *m_left > 0; ++i) {
            if (m_from.labels[i] != m_label) continue;
            const auto place = [&](std::size_t at) {
                return Point{static_cast<int>(at) % width, static_cast<int>(at) / width};
            };
            const Point shift =
                wrapped({place(m_place).x - place(i).x, place(m_place).y - place(i).y});
            if (shift != Point{0, 0} && fits(shift, recoloured)) return shift;
        }
        return std::nullopt;
    }

private:
    Point wrapped(Point p) const {
        const int width = m_to.classes.size.width;
        const int height = m_to.classes.size.height;
        return {(p.x + width) % width, (p.y + height) % height};
    }

    bool fits(Point shift, bool recoloured) const {
        std::array<int, 256> partner{};
        std::array<int, 256> back{};
        partner.fill(-1);
        back.fill(-1);
        const auto [width, height] = m_to.classes.size;
        for (int y = 0; y < height; ++y) {
            for (int x = 0; x < width; ++x) {
                --*m_left;
                const Point source = wrapped({x - shift.x, y - shift.y});
                const std::uint8_t here = m_from.classes.at(source.x, source.y);
                const std::uint8_t there = m_to.classes.at(x, y);
                if (partner[here] < 0 && back[there] < 0 && mayPair(here, there, recoloured)) {
                    partner[here] = there;
                    back[there] = here;
                }
                if (partner[here] != there || back[there] != here) return false;
            }
        }
        return true;
    }

    bool mayPair(std::uint8_t here, std::uint8_t there, bool recoloured) const {
        const bool unpainted = m_from.classes.unpainted == here;
        if (unpainted != (m_to.classes.unpainted == there)) return false;
        return unpainted || recoloured ||
               m_from.classes.colours[here] == m_to.classes.colours[there];
    }

    const Compared& m_from;
    const Compared& m_to;
    std::int64_t* m_left;
    std::uint32_t m_label = 0;
    std::size_t m_place = 0;  ///< Of a cell of `to` with that label.
};

/// The plainest way first: without other colours before with them, and in each as it is before
/// mirrored before turned.
std::optional<Match> findMatch(const Grid& grid, const Palette& palette, const Compared& to) {
    std::vector<Way> ways;
    for (const Orientation orientation : kOrientations) {
        const auto classes = ColourClasses::of(oriented(grid, orientation), palette);
        const Enlargement enlargement = enlargementOf(classes);
        ColourClasses base = baseOf(classes, enlargement);
        if (base.size == to.classes.size)
            ways.push_back({orientation, enlargement.offset, Compared(std::move(base))});
    }
    std::int64_t left = kMostCompared;
    for (const bool recoloured : {false, true}) {
        // One colour alone is no shape that could be had in another colour.
        if (recoloured && to.classes.cells.size() == 1) break;
        for (const Way& way : ways) {
            const auto shift = ShiftSearch(way.from, to, left).find(recoloured);
            if (shift) return Match{way.orientation, *shift, way.offset, recoloured};
        }
    }
    return std::nullopt;
}

/// In cells of `other`, with wrap-around.
Point shiftOf(const Match& match, int factor, const Enlargement& other, core::Size otherSize) {
    const auto along = [&](int shift, int offset, int otherOffset, int side) {
        const int cells = shift * other.factor + otherOffset - offset * other.factor / factor;
        return (cells % side + side) % side;
    };
    return {along(match.shift.x, match.offset.x, other.offset.x, otherSize.width),
            along(match.shift.y, match.offset.y, other.offset.y, otherSize.height)};
}

std::vector<StepLab> stepsOf(const Palette& palette) {
    std::vector<StepLab> steps;
    for (const core::Rgb8 colour : palette.colours()) steps.push_back(toSteps(colour));
    return steps;
}

/// Distances between the entries of two palettes, each worked out once.
class PairDistances {
public:
    PairDistances(const Palette& palette, const Palette& other)
        : m_palette(palette),
          m_other(other),
          m_steps(stepsOf(palette)),
          m_otherSteps(stepsOf(other)),
          m_known(m_steps.size() * m_otherSteps.size(), -1) {}

    std::int64_t between(core::PaletteIndex p, core::PaletteIndex q) {
        std::int64_t& known = m_known[std::size_t{p} * m_otherSteps.size() + q];
        if (known < 0) known = distance(p, q);
        return known;
    }

private:
    std::int64_t distance(core::PaletteIndex p, core::PaletteIndex q) const {
        const bool unpainted = m_palette.transparent() == p;
        const bool otherUnpainted = m_other.transparent() == q;
        if (unpainted && otherUnpainted) return 0;
        if (unpainted || otherUnpainted) return kLabSteps;
        return std::min(wholeRoot(squaredDistance(m_steps[p], m_otherSteps[q])), kLabSteps);
    }

    const Palette& m_palette;
    const Palette& m_other;
    std::vector<StepLab> m_steps;
    std::vector<StepLab> m_otherSteps;
    std::vector<std::int64_t> m_known;
};

struct Difference {
    std::int64_t sum = 0;  ///< In steps, over all cells.
    std::int64_t cells = 0;
};

/// Given up, with a greater sum, once it is more than `most`.
Difference differenceOf(const Grid& grid, const Grid& other, PairDistances& distances,
                        std::int64_t most) {
    Difference difference;
    for (std::size_t i = 0; i < grid.cellCount() && difference.sum <= most; ++i) {
        const std::int64_t distance = distances.between(grid.cells()[i], other.cells()[i]);
        difference.sum += distance;
        difference.cells += distance > 0 ? 1 : 0;
    }
    return difference;
}

}  // namespace

std::optional<Likeness> sameShape(const Grid& grid, const Palette& palette, const Grid& other,
                                  const Palette& otherPalette) {
    const int factor = enlargementOf(ColourClasses::of(grid, palette)).factor;
    const auto otherClasses = ColourClasses::of(other, otherPalette);
    const Enlargement enlargement = enlargementOf(otherClasses);
    const auto match = findMatch(grid, palette, Compared(baseOf(otherClasses, enlargement)));
    if (!match) return std::nullopt;
    std::string how =
        joined({orientationText(match->orientation),
                shiftText(shiftOf(*match, factor, enlargement, other.size())),
                sizeText(factor, enlargement.factor), match->recoloured ? "recoloured" : ""});
    if (how.empty()) how = "the same cells, with another palette";
    return Likeness{0, std::move(how)};
}

bool sizesCompare(core::Size size, core::Size other) {
    const auto [shorter, longer] = std::minmax({size.width, size.height});
    const auto [otherShorter, otherLonger] = std::minmax({other.width, other.height});
    return (longer % otherLonger == 0 || otherLonger % longer == 0) &&
           shorter * otherLonger == otherShorter * longer;
}

std::optional<Likeness> nearlySame(const Grid& grid, const Palette& palette, const Grid& other,
                                   const Palette& otherPalette, int within) {
    if (!sizesCompare(grid.size(), other.size())) return std::nullopt;
    const int longer = std::max(grid.width(), grid.height());
    const int otherLonger = std::max(other.width(), other.height());
    const int factor = std::max(1, otherLonger / longer);
    const int otherFactor = std::max(1, longer / otherLonger);
    const Grid enlarged = *scaledUp(grid, factor);
    const Grid otherEnlarged = *scaledUp(other, otherFactor);

    const auto cells = static_cast<std::int64_t>(enlarged.cellCount());
    const std::int64_t unit = cells * kLabSteps / 100;
    std::int64_t most = unit * within;
    PairDistances distances(palette, otherPalette);
    std::optional<Likeness> best;
    for (const Orientation orientation : kOrientations) {
        const Grid turnedGrid = oriented(enlarged, orientation);
        if (turnedGrid.size() != otherEnlarged.size()) continue;
        const Difference difference = differenceOf(turnedGrid, otherEnlarged, distances, most);
        if (difference.sum > most) continue;
        most = difference.sum - 1;
        const std::string differing =
            difference.cells == cells
                ? "every cell differs a little"
                : std::to_string(difference.cells) + " of " + std::to_string(cells) +
                      (difference.cells == 1 ? " cells differs" : " cells differ");
        best = Likeness{static_cast<int>((difference.sum + unit - 1) / unit),
                        joined({orientationText(orientation), sizeText(otherFactor, factor),
                                "nearly the same: " + differing})};
        if (most < 0) break;
    }
    return best;
}

}  // namespace pantile::picture
