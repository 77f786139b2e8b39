#include "picture/bounded_cells.h"

#include <algorithm>
#include <utility>

namespace pantile::picture {
namespace {

// Fitted to open art (docs/measurements.md).
constexpr double kMostExcessOfJoining = 0.5;
constexpr double kMostCostOfJoining = 150;  // in squares of expected errors
constexpr double kLeastGainOfAColour = 3;

constexpr double kMostExcess = 500;  // art of 16x16 cells begins with less than 100

constexpr int kBoundedRounds = 6;
constexpr int kMostAdded = 4;            // in a round
constexpr std::size_t kMostPairs = 100;  // tried in a round
constexpr double kLeastDrop = 1e-6;      // less is rounding

}  // namespace

BoundedCells::BoundedCells(const std::array<CellEquations, 3>& equations, CellGroups groups)
    : m_equations(equations),
      m_channels{BoundedChannel(equations[0]), BoundedChannel(equations[1]),
                 BoundedChannel(equations[2])},
      m_groups(std::move(groups)) {
    fit();
    m_isOfCells = m_excess <= kMostExcess;
    for (int round = 0; m_isOfCells && round < kBoundedRounds; ++round) {
        const bool changed = changeCells();
        const bool joined = joinGroups();
        const bool added = addGroups();
        if (!changed && !joined && !added) break;
    }
}

void BoundedCells::fit() {
    m_count = renumber(m_groups);
    m_excess = 0;
    for (BoundedChannel& channel : m_channels) m_excess += channel.fit(m_groups, m_count);
}

double BoundedCells::growth(std::size_t cell, std::size_t group) const {
    double sum = 0;
    for (const BoundedChannel& channel : m_channels)
        sum += channel.growth(cell, channel.values()[group] - channel.values()[m_groups[cell]]);
    return sum;
}

void BoundedCells::changeTo(std::size_t cell, std::size_t group) {
    for (BoundedChannel& channel : m_channels)
        channel.change(cell, channel.values()[group] - channel.values()[m_groups[cell]]);
    m_groups[cell] = group;
}

bool BoundedCells::changeCells() {
    bool changed = false;
    for (std::size_t cell = 0; cell < m_groups.size(); ++cell) {
        std::size_t best = m_groups[cell];
        double least = -kLeastDrop;
        for (std::size_t group = 0; group < m_count; ++group) {
            if (group == m_groups[cell]) continue;
            const double more = growth(cell, group);
            if (more >= least) continue;
            least = more;
            best = group;
        }
        if (best == m_groups[cell]) continue;
        changeTo(cell, best);
        changed = true;
    }
    if (changed) fit();
    return changed;
}

std::vector<BoundedCells::Pair> BoundedCells::nearPairs() const {
    std::vector<GroupValues> channels;
    for (const CellEquations& equations : m_equations)
        channels.emplace_back(equations, m_groups, m_count);
    std::vector<Pair> pairs;
    for (std::size_t p = 0; p < m_count; ++p) {
        for (std::size_t q = p + 1; q < m_count; ++q) {
            double cost = 0;
            for (const GroupValues& channel : channels) cost += channel.costOfJoining(p, q);
            if (cost < kMostCostOfJoining) pairs.push_back({p, q, cost});
        }
    }
    std::stable_sort(pairs.begin(), pairs.end(),
                     [](const Pair& one, const Pair& other) { return one.cost < other.cost; });
    pairs.resize(std::min(pairs.size(), kMostPairs));
    return pairs;
}

// Pairs are of the groups as they were before the first join, whose later numbers are looked up.
bool BoundedCells::joinGroups() {
    const std::vector<Pair> pairs = nearPairs();
    std::vector<std::size_t> cellOf(m_count);
    for (std::size_t cell = 0; cell < m_groups.size(); ++cell) cellOf[m_groups[cell]] = cell;
    bool joined = false;
    for (const Pair& pair : pairs) {
        const std::size_t kept = m_groups[cellOf[pair.p]];
        const std::size_t gone = m_groups[cellOf[pair.q]];
        if (kept == gone || m_count <= 2) continue;
        const CellGroups apart = m_groups;
        const double before = m_excess;
        std::replace(m_groups.begin(), m_groups.end(), gone, kept);
        fit();
        if (m_excess < before + kMostExcessOfJoining) {
            joined = true;
            continue;
        }
        m_groups = apart;
        fit();
    }
    return joined;
}

double BoundedCells::gainAlone(std::size_t cell) const {
    double gain = 0;
    for (const BoundedChannel& channel : m_channels)
        gain -= channel.growth(cell, channel.bestChange(cell));
    return gain;
}

bool BoundedCells::addGroups() {
    for (int added = 0; added < kMostAdded; ++added) {
        std::size_t best = m_groups.size();
        double most = kLeastGainOfAColour;
        for (std::size_t cell = 0; cell < m_groups.size() && m_excess > most; ++cell) {
            const double gain = gainAlone(cell);
            if (gain <= most) continue;
            most = gain;
            best = cell;
        }
        if (best == m_groups.size()) return added > 0;
        for (BoundedChannel& channel : m_channels)
            channel.addGroup(channel.values()[m_groups[best]] + channel.bestChange(best));
        changeTo(best, m_count++);
        if (!changeCells()) fit();
    }
    return true;
}

}  // namespace pantile::picture
