#include "picture/curve.h"

#include <algorithm>
#include <cassert>
#include <cstddef>
#include <cstdint>
#include <cstdlib>

namespace pantile::picture {
namespace {

// Samples to a cell where the curve is quickest: so fine that none is jumped over, and that their
// number tells how long the curve stays in a cell.
constexpr std::int64_t kSamplesInCell = 8;

// The nearest whole number to numerator / denominator, halves upward. denominator > 0.
int rounded(std::int64_t numerator, std::int64_t denominator) {
    const std::int64_t doubled = 2 * numerator + denominator;
    const std::int64_t quotient = doubled / (2 * denominator);
    return static_cast<int>(doubled % (2 * denominator) < 0 ? quotient - 1 : quotient);
}

// The parabola that is at `from`, `through` and `to` at the times 0, 1/2 and 1.
struct Curve {
    core::Point from;
    core::Point through;
    core::Point to;

    // Cells in a unit of time, along the quicker axis; it is greatest at an end.
    int topSpeed() const {
        const auto speed = [](int near, int middle, int far) {
            return std::abs(3 * near - 4 * middle + far);
        };
        return std::max({speed(from.x, through.x, to.x), speed(from.y, through.y, to.y),
                         speed(to.x, through.x, from.x), speed(to.y, through.y, from.y)});
    }

    // At the time i / n. With n at most 2^19 and coordinates at most 2^12 nothing passes 2^53.
    core::Point cellAt(std::int64_t i, std::int64_t n) const {
        const std::int64_t first = (n - i) * (n - 2 * i);
        const std::int64_t middle = 4 * i * (n - i);
        const std::int64_t last = i * (2 * i - n);
        return {rounded(first * from.x + middle * through.x + last * to.x, n * n),
                rounded(first * from.y + middle * through.y + last * to.y, n * n)};
    }
};

struct Visit {
    core::Point cell;
    int samples = 0;
};

std::vector<Visit> visits(const Curve& curve, std::int64_t first, std::int64_t last,
                          std::int64_t n) {
    std::vector<Visit> visits;
    for (std::int64_t i = first; i <= last; ++i) {
        const core::Point cell = curve.cellAt(i, n);
        if (visits.empty() || visits.back().cell != cell) visits.push_back({cell, 0});
        ++visits.back().samples;
    }
    return visits;
}

// Neighbours by a corner alone: a third cell that is a neighbour of both makes the path thick.
bool meetAtCorner(const Visit& one, const Visit& other) {
    return std::abs(one.cell.x - other.cell.x) == 1 && std::abs(one.cell.y - other.cell.y) == 1;
}

// Without the cells that make it thick; the first and the last stay.
Path thinned(const std::vector<Visit>& visits) {
    std::vector<Visit> kept{visits.front()};
    for (std::size_t i = 1; i + 1 < visits.size(); ++i) {
        if (!meetAtCorner(kept.back(), visits[i + 1])) {
            kept.push_back(visits[i]);
            continue;
        }
        const bool nextToo = i + 2 < visits.size() && meetAtCorner(visits[i], visits[i + 2]);
        if (nextToo && visits[i + 1].samples < visits[i].samples) {
            kept.push_back(visits[i]);
            ++i;
        }
    }
    if (visits.size() > 1) kept.push_back(visits.back());
    Path path;
    for (const Visit& visit : kept) path.push_back(visit.cell);
    return path;
}

}  // namespace

Path curvePath(core::Point from, core::Point through, core::Point to) {
    assert(checkPlace(from) && checkPlace(through) && checkPlace(to));
    const Curve curve{from, through, to};
    const std::int64_t half = kSamplesInCell * std::max(curve.topSpeed(), 1);
    const std::int64_t n = 2 * half;
    // The halves by themselves, so that no bend takes the middle place away.
    Path path = thinned(visits(curve, 0, half, n));
    const Path rest = thinned(visits(curve, half, n, n));
    path.insert(path.end(), rest.begin() + 1, rest.end());
    return path;
}

}  // namespace pantile::picture
