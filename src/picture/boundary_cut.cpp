#include "picture/boundary_cut.h"

#include <algorithm>
#include <cassert>
#include <cstddef>
#include <cstdlib>

namespace pantile::picture {
namespace {

// Far above any sum of errors, and far enough below the end of the type to be added to.
constexpr std::int64_t kNoWay = std::int64_t{1} << 60U;

// The least sum from each place down to the last row, for paths that end beside column `start`.
class SumsBelow {
public:
    SumsBelow(std::span<const std::int64_t> errors, core::Size overlap, int start)
        : m_width(overlap.width), m_sums(errors.begin(), errors.end()) {
        for (int x = 0; x < m_width; ++x) {
            if (std::abs(x - start) > 1) m_sums[offset(x, overlap.height - 1)] = kNoWay;
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

BoundaryCut closedBoundaryCut(std::span<const std::int64_t> errors, core::Size overlap) {
    assert(overlap.width >= 1 && overlap.height >= 1);
    assert(errors.size() ==
           static_cast<std::size_t>(overlap.width) * static_cast<std::size_t>(overlap.height));
    BoundaryCut best{{}, kNoWay};
    for (int start = 0; start < overlap.width; ++start) {
        const SumsBelow sums(errors, overlap, start);
        if (sums.at(start, 0) < best.error) best = pathFrom(start, sums, overlap.height);
    }
    return best;
}

}  // namespace pantile::picture
