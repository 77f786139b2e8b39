#include "picture/strays.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <functional>
#include <numeric>
#include <optional>

#include "core/range_check.h"
#include "picture/cell_difference.h"

namespace pantile::picture {
namespace {

using core::Grid;
using core::PaletteIndex;

// How many cells of each colour lie beside a component.
using ColoursBeside = std::array<int, core::kMaxPaletteColours>;

// What becomes of a component of this colour and size; nothing if it stays.
using Decision = std::function<std::optional<PaletteIndex>(PaletteIndex colour, int size,
                                                           const ColoursBeside& beside)>;

// Calls use(index, cells) for each colour that lies beside, from the lowest index.
template <typename Use>
void forColours(const ColoursBeside& beside, Use use) {
    for (std::size_t index = 0; index < beside.size(); ++index) {
        if (beside[index] > 0) use(static_cast<PaletteIndex>(index), beside[index]);
    }
}

// One round over the components of a grid, the smallest first. A component that has grown in this
// round waits for the next, since it is no longer what was counted.
class AbsorbingRound {
public:
    AbsorbingRound(Grid& grid, Neighbours neighbours)
        : m_grid(grid),
          m_neighbours(neighbours),
          m_components(grid, neighbours),
          m_grown(static_cast<std::size_t>(m_components.count()), false) {}

    // Whether anything changed.
    bool run(const Decision& decide) {
        bool changed = false;
        for (const int component : smallestFirst()) {
            if (hasGrown(component)) continue;
            const std::vector<int> border = cellsBeside(component);
            const auto colour = decide(colourAt(m_components.cellsOf(component).front()),
                                       m_components.sizeOf(component), coloursOf(border));
            if (!colour) continue;
            absorb(component, border, *colour);
            changed = true;
        }
        return changed;
    }

private:
    std::vector<int> smallestFirst() const {
        std::vector<int> order(static_cast<std::size_t>(m_components.count()));
        std::iota(order.begin(), order.end(), 0);
        std::stable_sort(order.begin(), order.end(), [this](int p, int q) {
            return m_components.sizeOf(p) < m_components.sizeOf(q);
        });
        return order;
    }

    PaletteIndex colourAt(int cell) const { return m_grid.cells()[static_cast<std::size_t>(cell)]; }

    bool hasGrown(int component) const { return m_grown[static_cast<std::size_t>(component)]; }

    // Each once.
    std::vector<int> cellsBeside(int component) const {
        std::vector<int> border;
        for (const int cell : m_components.cellsOf(component)) {
            visitCellsBeside(m_grid.size(), cell, m_neighbours, [&](int beside) {
                if (m_components.at(beside) != component) border.push_back(beside);
            });
        }
        std::sort(border.begin(), border.end());
        border.erase(std::unique(border.begin(), border.end()), border.end());
        return border;
    }

    ColoursBeside coloursOf(const std::vector<int>& cells) const {
        ColoursBeside colours{};
        for (const int cell : cells) ++colours[colourAt(cell)];
        return colours;
    }

    void absorb(int component, const std::vector<int>& border, PaletteIndex colour) {
        m_grown[static_cast<std::size_t>(component)] = true;
        for (const int cell : border) {
            if (colourAt(cell) == colour)
                m_grown[static_cast<std::size_t>(m_components.at(cell))] = true;
        }
        for (const int cell : m_components.cellsOf(component))
            m_grid.set(cell % m_grid.width(), cell / m_grid.width(), colour);
    }

    Grid& m_grid;
    Neighbours m_neighbours;
    Components m_components;
    std::vector<bool> m_grown;
};

// Ends because a component that takes a colour beside it joins another: there is one less.
Grid absorbed(Grid grid, Neighbours neighbours, const Decision& decide) {
    while (AbsorbingRound(grid, neighbours).run(decide)) {
    }
    return grid;
}

}  // namespace

core::Result<Grid> removeStrays(const Grid& grid, const StrayOptions& options) {
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the size of strays", options.largest, 1, kMaxStraySize));
    return absorbed(grid, options.neighbours,
                    [&options](PaletteIndex /*colour*/, int size,
                               const ColoursBeside& beside) -> std::optional<PaletteIndex> {
                        if (size > options.largest) return std::nullopt;
                        std::optional<PaletteIndex> most;
                        int cellsOfMost = 0;
                        forColours(beside, [&](PaletteIndex index, int cells) {
                            if (cells <= cellsOfMost) return;
                            most = index;
                            cellsOfMost = cells;
                        });
                        return most;
                    });
}

core::Result<Grid> simplify(const Grid& grid, const core::Palette& palette, int level) {
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the level of simplifying", level, 0, kMaxSimplifyLevel));
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the grid's largest index", grid.largestIndex(), 0, palette.size() - 1));
    constexpr std::int64_t kStepsInALevel = 100;  // Ten-thousandths in a hundredth.
    const CellDifference difference(palette);
    const std::int64_t bound = level * kStepsInALevel;
    return absorbed(grid, Neighbours::Four,
                    [&](PaletteIndex colour, int size,
                        const ColoursBeside& beside) -> std::optional<PaletteIndex> {
                        if (colour == palette.transparent()) return std::nullopt;
                        std::optional<PaletteIndex> nearest;
                        std::int64_t least = bound;
                        forColours(beside, [&](PaletteIndex index, int /*cells*/) {
                            if (index == palette.transparent()) return;
                            const std::int64_t cost = size * difference.distance(colour, index);
                            if (cost >= least) return;
                            nearest = index;
                            least = cost;
                        });
                        return nearest;
                    });
}

}  // namespace pantile::picture
