#pragma once

// Makes threshold masks whose places fill up as evenly as can be: blue noise.
// Source: R. Ulichney, 'The void-and-cluster method for dither array generation', Proc. SPIE 1913,
// 1993, with its Gaussian of sigma 1.5. On a torus the sum of the Gaussian over set and unset
// places is the same everywhere, so the tightest cluster of unset places is the largest void
// between set ones, and the method's last phase is its second one carried on. Energies are whole
// numbers and of equal places the first is taken, so a seed gives one mask on every machine.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "support/random.h"

namespace pantile::tests {

class VoidAndCluster {
public:
    VoidAndCluster(int side, std::uint64_t seed)
        : m_side(side), m_energy(static_cast<std::size_t>(side * side)), m_random(seed) {
        makeShares();
    }

    /// Shape: side x side ranks, row by row.
    std::vector<std::uint16_t> ranks() {
        const int first = makeFirstPattern();
        const std::vector<std::int64_t> pattern = m_energy;
        std::vector<std::uint16_t> ranks(pattern.size());
        for (int rank = first - 1; rank >= 0; --rank) {
            const std::size_t place = tightestCluster();
            ranks[place] = static_cast<std::uint16_t>(rank);
            change(place, false);
        }
        m_energy = pattern;
        for (int rank = first; rank < m_side * m_side; ++rank) {
            const std::size_t place = largestVoid();
            ranks[place] = static_cast<std::uint16_t>(rank);
            change(place, true);
        }
        return ranks;
    }

private:
    struct Share {
        int dx = 0;
        int dy = 0;
        std::int64_t energy = 0;
    };

    // The Gaussian as whole parts of 2^40, by products alone: exp(-1 / (2 * 1.5²)) to the power of
    // the squared distance.
    void makeShares() {
        constexpr double kFactor = 0.800737402916808;
        constexpr int kReach = 11;
        std::vector<double> powers{1};
        while (powers.size() <= 2U * kReach * kReach) powers.push_back(powers.back() * kFactor);
        for (int dy = -kReach; dy <= kReach; ++dy) {
            for (int dx = -kReach; dx <= kReach; ++dx) {
                const double part = powers[static_cast<std::size_t>(dx * dx + dy * dy)];
                m_shares.push_back({dx, dy, static_cast<std::int64_t>(part * 1099511627776.0)});
            }
        }
    }

    void change(std::size_t place, bool set) {
        m_energy[place] += set ? kSet : -kSet;
        const int x = static_cast<int>(place) % m_side;
        const int y = static_cast<int>(place) / m_side;
        for (const Share& share : m_shares) {
            const int toX = (x + share.dx + m_side) % m_side;
            const int toY = (y + share.dy + m_side) % m_side;
            m_energy[static_cast<std::size_t>(toY * m_side + toX)] +=
                set ? share.energy : -share.energy;
        }
    }

    // A tenth of the places at random, then moved from the tightest cluster to the largest void
    // until that changes nothing. Returns how many are set.
    int makeFirstPattern() {
        const int count = m_side * m_side / 10;
        for (int set = 0; set < count;) {
            const auto place = static_cast<std::size_t>(m_random.between(0, m_side * m_side - 1));
            if (m_energy[place] >= kSet) continue;
            change(place, true);
            ++set;
        }
        for (;;) {
            const std::size_t cluster = tightestCluster();
            change(cluster, false);
            const std::size_t hole = largestVoid();
            change(hole, true);
            if (hole == cluster) return count;
        }
    }

    // The first of the largest; plain pointers, for this takes nearly all of the time.
    std::size_t tightestCluster() const {
        const std::int64_t* most = m_energy.data();
        for (const std::int64_t *at = most, *end = most + m_energy.size(); at != end; ++at) {
            if (*at > *most) most = at;
        }
        return static_cast<std::size_t>(most - m_energy.data());
    }

    std::size_t largestVoid() const {
        const std::int64_t* least = m_energy.data();
        for (const std::int64_t *at = least, *end = least + m_energy.size(); at != end; ++at) {
            if (*at < *least) least = at;
        }
        return static_cast<std::size_t>(least - m_energy.data());
    }

    // Added to the energy of set places; all shares together are less.
    static constexpr std::int64_t kSet = std::int64_t{1} << 50;

    int m_side;
    std::vector<std::int64_t> m_energy;
    std::vector<Share> m_shares;
    Random m_random;
};

inline constexpr int kBlueNoiseSide = 64;
inline constexpr std::uint64_t kBlueNoiseSeed = 1;

}  // namespace pantile::tests
