#pragma once

// Which cells an eye at a distance mixes with which. See docs/conversion.md section 7.3.

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdlib>
#include <vector>

#include "core/geometry.h"
#include "picture/eye_blur.h"

namespace pantile::picture {

/// The weights of blurredByEye as far as a disc of sqrt(27) cells, which holds 99.7 % of them.
class EyeNeighbours {
public:
    /// Cells without a colour are left unpainted: they have no share in any other.
    explicit EyeNeighbours(const CellColours& picture);

    /// Calls use(other, share) for the cells in which `cell` has a share: what it shows counts
    /// there so much. The shares in one cell sum up to 1; unpainted others have share 0.
    template <typename Use>
    void forEachShare(std::size_t cell, Use use) const {
        forEachWeight(cell, [this, &use](std::size_t other, double weight) {
            use(other, weight * m_scale[other]);
        });
    }

private:
    static constexpr int kReach = 5;
    // How far the disc goes to both sides in rows 0 to 5 away.
    static constexpr std::array<int, kReach + 1> kHalfWidths{5, 5, 4, 4, 3, 1};

    template <typename Use>
    void forEachWeight(std::size_t cell, Use use) const {
        const int width = m_size.width;
        const int x = static_cast<int>(cell) % width;
        const int y = static_cast<int>(cell) / width;
        const auto weights = eyeWeights();
        for (int row = std::max(0, y - kReach); row <= std::min(m_size.height - 1, y + kReach);
             ++row) {
            const int rowTap = row - y + kEyeReach;
            const double rowWeight = weights[static_cast<std::size_t>(rowTap)];
            const int half = kHalfWidths[static_cast<std::size_t>(std::abs(row - y))];
            const int last = std::min(width - 1, x + half);
            for (int column = std::max(0, x - half); column <= last; ++column) {
                const int at = row * width + column;
                const int tap = column - x + kEyeReach;
                use(static_cast<std::size_t>(at),
                    rowWeight * weights[static_cast<std::size_t>(tap)]);
            }
        }
    }

    core::Size m_size;
    std::vector<double> m_scale;  // one over the sum of the weights around a painted cell, or 0
};

}  // namespace pantile::picture
