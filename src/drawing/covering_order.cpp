#include "drawing/covering_order.h"

#include <algorithm>
#include <functional>
#include <numeric>
#include <utility>

namespace pantile::drawing {
namespace {

using ColourOrder = std::vector<core::PaletteIndex>;

/// How much is gained by swapping the colours at `place` and `place + 1`.
using SwapGain = std::function<std::int64_t(const ColourOrder&, std::size_t place)>;

/// Moves the colour at `place` one way, a swap at a time, to where most is gained; how much.
std::int64_t shift(ColourOrder& order, std::size_t place, bool towardsEnd, const SwapGain& gain) {
    ColourOrder trial = order;
    std::int64_t sum = 0;
    std::int64_t best = 0;
    std::size_t swaps = towardsEnd ? order.size() - 1 - place : place;
    for (; swaps > 0; --swaps) {
        const std::size_t first = towardsEnd ? place : place - 1;
        sum += gain(trial, first);
        std::swap(trial[first], trial[first + 1]);
        place = towardsEnd ? place + 1 : place - 1;
        if (sum <= best) continue;
        best = sum;
        order = trial;
    }
    return best;
}

/// Until no colour can be shifted with gain, or `stop` says so.
void shiftAll(ColourOrder& order, const SwapGain& gain, const std::function<bool()>& stop) {
    bool better = true;
    while (better) {
        better = false;
        for (std::size_t place = 0; place < order.size(); ++place) {
            if (stop()) return;
            better = shift(order, place, true, gain) > 0 || better;
            better = shift(order, place, false, gain) > 0 || better;
        }
    }
}

/// What colour `a` gains if colour `b` alone may be passed.
std::vector<std::vector<std::int64_t>> pairGains(LeastTree& trees, std::int64_t mostWork) {
    std::vector<std::vector<std::int64_t>> gains(256, std::vector<std::int64_t>(256));
    for (const core::PaletteIndex a : trees.colours()) {
        const std::int64_t alone = trees.milliseconds(a, {});
        for (const core::PaletteIndex b : trees.colours()) {
            if (trees.work() >= mostWork) return gains;
            if (a != b) gains[a][b] = alone - trees.milliseconds(a, ColourSet().set(b));
        }
    }
    return gains;
}

std::int64_t trueGain(LeastTree& trees, const ColourOrder& order, std::size_t place) {
    ColourSet later;
    for (std::size_t i = place + 2; i < order.size(); ++i) later.set(order[i]);
    const core::PaletteIndex x = order[place];
    const core::PaletteIndex y = order[place + 1];
    ColourSet withX = later;
    ColourSet withY = later;
    withX.set(x);
    withY.set(y);
    return trees.milliseconds(x, withY) + trees.milliseconds(y, later) -
           trees.milliseconds(x, later) - trees.milliseconds(y, withX);
}

}  // namespace

ColourOrder coveringOrder(LeastTree& trees, std::int64_t mostWork) {
    const auto gains = pairGains(trees, mostWork / 2);
    ColourOrder order = trees.colours();
    const SwapGain byPairs = [&](const ColourOrder& trial, std::size_t place) {
        return gains[trial[place + 1]][trial[place]] - gains[trial[place]][trial[place + 1]];
    };
    shiftAll(order, byPairs, [] { return false; });
    const SwapGain byTrees = [&](const ColourOrder& trial, std::size_t place) {
        return trueGain(trees, trial, place);
    };
    shiftAll(order, byTrees, [&] { return trees.work() >= mostWork; });
    return order;
}

std::int64_t shiftToBest(LeastTree& trees, ColourOrder& order, core::PaletteIndex colour) {
    const SwapGain byTrees = [&](const ColourOrder& trial, std::size_t place) {
        return trueGain(trees, trial, place);
    };
    std::int64_t gained = 0;
    for (const bool towardsEnd : {true, false}) {
        const auto place = std::find(order.begin(), order.end(), colour) - order.begin();
        gained += shift(order, static_cast<std::size_t>(place), towardsEnd, byTrees);
    }
    return gained;
}

std::int64_t treesMs(LeastTree& trees, const ColourOrder& order) {
    ColourSet later;
    std::int64_t total = 0;
    for (std::size_t i = order.size(); i > 0; --i) {
        total += trees.milliseconds(order[i - 1], later);
        later.set(order[i - 1]);
    }
    return total;
}

}  // namespace pantile::drawing
