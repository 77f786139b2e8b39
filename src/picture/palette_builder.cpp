#include "picture/palette_builder.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <iterator>
#include <limits>
#include <set>

#include "core/colour_spaces.h"

namespace pantile::picture {
namespace {

using core::OkLab;
using core::Rgb8;

// Enough that further rounds move no centre by a visible step; a fixed number keeps the result the
// same whatever the machine's speed.
constexpr int kRefinementRounds = 10;

struct WeightedColour {
    Rgb8 colour;
    OkLab lab;
    double weight = 0;  // how many cells have it
};

double along(const OkLab& colour, int axis) {
    if (axis == 0) return colour.l;
    return axis == 1 ? colour.a : colour.b;
}

// Weight, sum and sum of squares, from which mean and spread follow.
struct Moments {
    double weight = 0;
    std::array<double, 3> sum{};
    std::array<double, 3> squares{};

    void add(const WeightedColour& colour, double sign = 1) {
        weight += sign * colour.weight;
        for (std::size_t axis = 0; axis < sum.size(); ++axis) {
            const double value = along(colour.lab, static_cast<int>(axis));
            sum[axis] += sign * colour.weight * value;
            squares[axis] += sign * colour.weight * value * value;
        }
    }

    // Weighted sum of squared distances from the mean along one axis.
    double spread(std::size_t axis) const { return squares[axis] - sum[axis] * sum[axis] / weight; }

    double spread() const { return spread(0) + spread(1) + spread(2); }

    OkLab mean() const { return {sum[0] / weight, sum[1] / weight, sum[2] / weight}; }

    int widestAxis() const {
        int widest = 0;
        for (const int axis : {1, 2}) {
            if (spread(static_cast<std::size_t>(axis)) > spread(static_cast<std::size_t>(widest)))
                widest = axis;
        }
        return widest;
    }
};

using Colours = std::span<WeightedColour>;

struct Box {
    Colours colours;
    Moments moments;
};

Box boxOf(Colours colours) {
    Box box{colours, {}};
    for (const WeightedColour& colour : colours) box.moments.add(colour);
    return box;
}

// Where to cut colours sorted along an axis so that both sides together spread least.
std::size_t bestCut(const Box& box) {
    Moments left;
    Moments right = box.moments;
    std::size_t best = 1;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t cut = 1; cut < box.colours.size(); ++cut) {
        left.add(box.colours[cut - 1]);
        right.add(box.colours[cut - 1], -1);
        const double spread = left.spread() + right.spread();
        if (spread < least) {
            least = spread;
            best = cut;
        }
    }
    return best;
}

// Splits the box that spreads most until there are `count`.
std::vector<OkLab> varianceCut(Colours colours, std::size_t count) {
    std::vector<Box> boxes{boxOf(colours)};
    while (boxes.size() < count) {
        Box* widest = nullptr;
        for (Box& box : boxes) {
            if (box.colours.size() > 1 &&
                (widest == nullptr || box.moments.spread() > widest->moments.spread()))
                widest = &box;
        }
        const int axis = widest->moments.widestAxis();
        std::sort(widest->colours.begin(), widest->colours.end(),
                  [axis](const WeightedColour& p, const WeightedColour& q) {
                      const double pAt = along(p.lab, axis);
                      const double qAt = along(q.lab, axis);
                      return pAt != qAt ? pAt < qAt : p.colour < q.colour;
                  });
        const std::size_t cut = bestCut(*widest);
        const Box right = boxOf(widest->colours.subspan(cut));
        *widest = boxOf(widest->colours.first(cut));
        boxes.push_back(right);
    }
    std::vector<OkLab> centres;
    centres.reserve(boxes.size());
    for (const Box& box : boxes) centres.push_back(box.moments.mean());
    return centres;
}

struct Nearest {
    std::size_t centre = 0;
    double squaredDistance = 0;
};

Nearest nearestCentre(const OkLab& colour, std::span<const OkLab> centres) {
    Nearest nearest{0, core::squaredDistance(colour, centres[0])};
    for (std::size_t i = 1; i < centres.size(); ++i) {
        const double distance = core::squaredDistance(colour, centres[i]);
        if (distance < nearest.squaredDistance) nearest = {i, distance};
    }
    return nearest;
}

// The colour that `centres` serve worst, by distance and number of cells.
const WeightedColour& worstServed(std::span<const WeightedColour> colours,
                                  std::span<const OkLab> centres) {
    const WeightedColour* worst = &colours[0];
    double most = -1;
    for (const WeightedColour& colour : colours) {
        const double loss = colour.weight * nearestCentre(colour.lab, centres).squaredDistance;
        if (loss > most) {
            most = loss;
            worst = &colour;
        }
    }
    return *worst;
}

// One round of k-means: each centre but the first `pinned` moves to the mean of the colours nearest
// to it.
// Source: S. Lloyd, 'Least squares quantization in PCM', IEEE Trans. Information Theory 28(2),
// 1982.
void refine(std::span<const WeightedColour> colours, std::vector<OkLab>& centres,
            std::size_t pinned) {
    std::vector<Moments> members(centres.size());
    for (const WeightedColour& colour : colours)
        members[nearestCentre(colour.lab, centres).centre].add(colour);
    for (std::size_t i = pinned; i < centres.size(); ++i) {
        // A centre that lost all its colours goes where it is needed most.
        centres[i] = members[i].weight > 0 ? members[i].mean() : worstServed(colours, centres).lab;
    }
}

std::vector<WeightedColour> countColours(std::span<const Rgb8> colours) {
    std::vector<Rgb8> sorted(colours.begin(), colours.end());
    std::sort(sorted.begin(), sorted.end());
    std::vector<WeightedColour> counted;
    for (const Rgb8 colour : sorted) {
        if (counted.empty() || counted.back().colour != colour)
            counted.push_back({colour, core::toOkLab(colour), 0});
        counted.back().weight += 1;
    }
    return counted;
}

// Centres as stored colours, each once and none of the pinned ones, which are the first centres.
// Two centres can round to the same colour; the place that becomes free goes to the colour that is
// served worst.
std::vector<Rgb8> roundedCentres(std::span<const WeightedColour> colours,
                                 std::span<const OkLab> centres, std::span<const Rgb8> pinned) {
    std::set<Rgb8> chosen(pinned.begin(), pinned.end());
    for (const OkLab& centre : centres.subspan(pinned.size()))
        chosen.insert(core::toRgb8(core::toLinear(centre)));
    while (chosen.size() < centres.size()) {
        std::vector<OkLab> labs;
        labs.reserve(chosen.size());
        for (const Rgb8 colour : chosen) labs.push_back(core::toOkLab(colour));
        chosen.insert(worstServed(colours, labs).colour);
    }
    for (const Rgb8 colour : pinned) chosen.erase(colour);
    return {chosen.begin(), chosen.end()};
}

// `count` colours, at least 1, that stand for `colours` beside the pinned ones.
std::vector<Rgb8> meansOf(std::span<const Rgb8> colours, std::size_t count,
                          std::span<const Rgb8> pinned) {
    std::vector<WeightedColour> counted = countColours(colours);
    std::vector<OkLab> centres;
    centres.reserve(pinned.size() + count);
    for (const Rgb8 colour : pinned) centres.push_back(core::toOkLab(colour));
    for (const OkLab& centre : varianceCut(counted, count)) centres.push_back(centre);
    for (int round = 0; round < kRefinementRounds; ++round) refine(counted, centres, pinned.size());
    std::vector<Rgb8> chosen = roundedCentres(counted, centres, pinned);
    sortByLightness(chosen);
    return chosen;
}

std::vector<Rgb8> without(std::span<const Rgb8> colours, std::span<const Rgb8> pinned) {
    const std::set<Rgb8> left(pinned.begin(), pinned.end());
    std::vector<Rgb8> others;
    std::copy_if(colours.begin(), colours.end(), std::back_inserter(others),
                 [&left](Rgb8 colour) { return left.count(colour) == 0; });
    return others;
}

}  // namespace

void sortByLightness(std::vector<Rgb8>& colours) {
    std::sort(colours.begin(), colours.end(), [](Rgb8 p, Rgb8 q) {
        const double pLight = core::toOkLab(p).l;
        const double qLight = core::toOkLab(q).l;
        return pLight != qLight ? pLight < qLight : p < q;
    });
}

std::vector<Rgb8> distinctColours(std::span<const Rgb8> colours, int most) {
    std::set<Rgb8> seen;
    std::vector<Rgb8> distinct;
    for (const Rgb8 colour : colours) {
        if (!seen.insert(colour).second) continue;
        distinct.push_back(colour);
        if (static_cast<int>(distinct.size()) > most) break;
    }
    return distinct;
}

std::vector<Rgb8> chooseColours(std::span<const Rgb8> colours, int count,
                                std::span<const Rgb8> pinned) {
    std::vector<Rgb8> chosen(pinned.begin(), pinned.end());
    const int room = count - static_cast<int>(pinned.size());
    if (room == 0) return chosen;
    const std::vector<Rgb8> others = without(colours, pinned);
    std::vector<Rgb8> free = distinctColours(others, room);
    if (static_cast<int>(free.size()) > room)
        free = meansOf(others, static_cast<std::size_t>(room), pinned);
    chosen.insert(chosen.end(), free.begin(), free.end());
    return chosen;
}

}  // namespace pantile::picture
