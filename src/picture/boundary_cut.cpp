#include "picture/boundary_cut.h"

#include <algorithm>
#include <cassert>
#include <cstddef>
#include <cstdlib>

namespace pantile::picture {
namespace {

// Far above any sum of errors, and far enough below the end of the type to be added to.
constexpr std::int64_t kNoWay = std::int64_t{1} << 60U;

// The least sum from each place down to the last row.
class SumsBelow {
public:
    // For paths that end where `mayEnd(column)` says.
    template <typename MayEnd>
    SumsBelow(std::span<const std::int64_t> errors, core::Size overlap, MayEnd mayEnd)
        : m_width(overlap.width), m_sums(errors.begin(), errors.end()) {
        for (int x = 0; x < m_width; ++x) {
            if (!mayEnd(x)) m_sums[offset(x, overlap.height - 1)] = kNoWay;
        }
        for (int y = overlap.height - 2; y >= 0; --y) {
            for (int x = 0; x < m_width; ++x) {
                const std::int64_t below = at(nextColumn(x, y), y + 1);
                std::int64_t& sum = m_sums[offset(x, y)];
                sum = std::min(sum + below, kNoWay);
            }
        }
    }

    std::int64_t at(int x, int y) const { return m_sums[offset(x, y)]; }

    // Where the cheapest path from column x of row y goes on in the next row.
    int nextColumn(int x, int y) const {
        int best = std::max(x - 1, 0);
        for (int next = best + 1; next <= std::min(x + 1, m_width - 1); ++next) {
            if (at(next, y + 1) < at(best, y + 1)) best = next;
        }
        return best;
    }

private:
    std::size_t offset(int x, int y) const {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(m_width) +
               static_cast<std::size_t>(x);
    }

    int m_width;
    std::vector<std::int64_t> m_sums;
};

BoundaryCut pathFrom(int start, const SumsBelow& sums, int height) {
    BoundaryCut cut{{start}, sums.at(start, 0)};
    for (int y = 0; y + 1 < height; ++y)
        cut.columns.push_back(sums.nextColumn(cut.columns.back(), y));
    return cut;
}

}  // namespace

std::optional<BoundaryCut> closedBoundaryCut(std::span<const std::int64_t> errors,
                                             core::Size overlap, std::int64_t below) {
    assert(overlap.width >= 1 && overlap.height >= 1);
    assert(errors.size() ==
           static_cast<std::size_t>(overlap.width) * static_cast<std::size_t>(overlap.height));
    std::optional<BoundaryCut> best;
    std::int64_t least = std::min(below, kNoWay);
    const SumsBelow open(errors, overlap, [](int /*column*/) { return true; });
    for (int start = 0; start < overlap.width; ++start) {
        // A path that has to close costs no less than one that may end anywhere.
        if (open.at(start, 0) >= least) continue;
        const SumsBelow sums(errors, overlap,
                             [start](int column) { return std::abs(column - start) <= 1; });
        if (sums.at(start, 0) >= least) continue;
        best = pathFrom(start, sums, overlap.height);
        least = best->error;
    }
    return best;
}

}  // namespace pantile::picture
