#pragma once

// Requests for the tests of drawing: hand-made ones, seeded random ones and seeded pictures.

#include <algorithm>
#include <cstdlib>
#include <string>
#include <utility>
#include <vector>

#include "drawing/request.h"
#include "support/random.h"

namespace pantile::tests {

inline core::Canvas canvasFor(core::Size size, int colours,
                              core::PenModel pen = core::PenModel::WholeCells) {
    core::Canvas canvas;
    canvas.name = "Tidewrack canvas";
    canvas.size = size;
    canvas.freeColours = colours;
    canvas.penModel = pen;
    canvas.geometry = core::CanvasGeometry::beside(size);
    return canvas;
}

/// A grid from rows of '0'..'9', 'a'..'z' for the indices 0..35 and '.' for index 255.
inline core::Grid gridFrom(const std::vector<std::string>& rows) {
    std::vector<core::PaletteIndex> cells;
    for (const std::string& row : rows) {
        for (const char c : row) {
            const int index = c == '.' ? 255 : c >= 'a' ? c - 'a' + 10 : c - '0';
            cells.push_back(static_cast<core::PaletteIndex>(index));
        }
    }
    return core::Grid::create(static_cast<int>(rows[0].size()), static_cast<int>(rows.size()),
                              std::move(cells))
        .value();
}

/// The grid of gridFrom on a canvas of its size with 16 colours; '.' stays unpainted.
inline drawing::DrawingRequest requestFor(const std::vector<std::string>& rows,
                                          core::PenModel pen = core::PenModel::WholeCells,
                                          core::PointerTiming timing = {}) {
    core::Grid grid = gridFrom(rows);
    core::Canvas canvas = canvasFor(grid.size(), 16, pen);
    return {std::move(grid), core::PaletteIndex{255}, std::move(canvas), timing};
}

/// Every cell of a random colour, or like its left or upper neighbour, so that runs occur.
inline core::Grid randomGrid(Random& random, core::Size size, int colours) {
    std::vector<core::PaletteIndex> cells;
    const auto width = static_cast<std::size_t>(size.width);
    const int sameness = random.between(0, 90);
    for (int y = 0; y < size.height; ++y) {
        for (int x = 0; x < size.width; ++x) {
            const bool alike = random.between(0, 99) < sameness;
            if (alike && x > 0 && (y == 0 || random.between(0, 1) == 0)) {
                cells.push_back(cells.back());
            } else if (alike && y > 0) {
                cells.push_back(cells[cells.size() - width]);
            } else {
                cells.push_back(static_cast<core::PaletteIndex>(random.between(0, colours - 1)));
            }
        }
    }
    return core::Grid::create(size.width, size.height, std::move(cells)).value();
}

inline core::PointerTiming randomTiming(Random& random) {
    switch (random.between(0, 3)) {
        case 0:
            return core::PointerTiming::careful();
        case 1:
            return core::PointerTiming::quick();
        default:
            return {random.between(1, 20),  random.between(1, 127), random.between(1, 127),
                    random.between(1, 100), random.between(1, 100), random.between(0, 200)};
    }
}

/// The palette bar right of the grid, left of it, below it or above it, with random pitches.
inline core::CanvasGeometry randomGeometry(Random& random, core::Size size, int colours) {
    core::CanvasGeometry g;
    g.cellPitch = random.between(1, 24);
    g.swatchPitch = random.between(1, 40);
    g.swatchesPerColumn = random.between(1, 20);
    const core::Size grid{size.width * g.cellPitch, size.height * g.cellPitch};
    const int columns = (colours + g.swatchesPerColumn - 1) / g.swatchesPerColumn;
    const core::Size bar{columns * g.swatchPitch, g.swatchesPerColumn * g.swatchPitch};
    const int gap = random.between(0, 60);
    core::Point gridCorner;
    core::Point barCorner;
    switch (random.between(0, 3)) {
        case 0:
            barCorner.x = grid.width + gap;
            break;
        case 1:
            gridCorner.x = bar.width + gap;
            break;
        case 2:
            barCorner.y = grid.height + gap;
            break;
        default:
            gridCorner.y = bar.height + gap;
            break;
    }
    g.gridCentre = {gridCorner.x + g.cellPitch / 2, gridCorner.y + g.cellPitch / 2};
    g.swatchCentre = {barCorner.x + g.swatchPitch / 2, barCorner.y + g.swatchPitch / 2};
    return g;
}

inline drawing::DrawingRequest randomRequest(std::uint64_t seed, int largestSide = 20) {
    Random random(seed);
    const core::Size size{random.between(1, largestSide), random.between(1, largestSide)};
    const int colours = random.between(2, random.between(0, 4) == 0 ? 200 : 16);
    core::Grid grid = randomGrid(random, size, colours);
    const auto pen = static_cast<core::PenModel>(random.between(0, 3));
    const core::Size side{size.width + random.between(0, 3), size.height + random.between(0, 3)};
    core::Canvas canvas = canvasFor(side, colours, pen);
    if (random.between(0, 1) == 1) {
        canvas.geometry = randomGeometry(random, canvas.size, colours);
    }
    std::optional<core::PaletteIndex> unpainted;
    if (random.between(0, 2) == 0) {
        unpainted = static_cast<core::PaletteIndex>(random.between(0, colours - 1));
    }
    return {std::move(grid), unpainted, std::move(canvas), randomTiming(random)};
}

/// What a failing property test prints.
inline std::string described(std::uint64_t seed, const drawing::DrawingRequest& request) {
    std::string text = "seed " + std::to_string(seed) + ", pen model " +
                       std::to_string(static_cast<int>(request.canvas.penModel)) + "\n";
    for (int y = 0; y < request.grid.height(); ++y) {
        for (int x = 0; x < request.grid.width(); ++x) {
            text += request.isPainted({x, y}) ? std::to_string(request.grid.at(x, y)) : ".";
            text += ' ';
        }
        text += '\n';
    }
    return text;
}

/// Hills of two sizes with grain on them in 16 colours: art with much detail, as weathered rock.
inline core::Grid detailedField(std::uint64_t seed, int side) {
    constexpr int kLevels = 16;
    constexpr int kCoarse = 16;
    constexpr int kFine = 4;
    Random random(seed);
    const auto lattice = [&](int spacing) {
        const int count = side / spacing + 2;
        std::vector<std::vector<int>> heights(static_cast<std::size_t>(count));
        for (auto& row : heights) {
            for (int i = 0; i < count; ++i) row.push_back(random.between(0, 1023));
        }
        return heights;
    };
    const auto between = [](const std::vector<std::vector<int>>& heights, int spacing, int x,
                            int y) {
        const auto i = static_cast<std::size_t>(x / spacing);
        const auto j = static_cast<std::size_t>(y / spacing);
        const int u = x % spacing;
        const int v = y % spacing;
        const int top = heights[j][i] * (spacing - u) + heights[j][i + 1] * u;
        const int bottom = heights[j + 1][i] * (spacing - u) + heights[j + 1][i + 1] * u;
        return (top * (spacing - v) + bottom * v) / (spacing * spacing);
    };
    const auto coarse = lattice(kCoarse);
    const auto fine = lattice(kFine);
    std::vector<core::PaletteIndex> cells;
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            const int height = 2 * between(coarse, kCoarse, x, y) + between(fine, kFine, x, y) +
                               random.between(0, 127);
            cells.push_back(static_cast<core::PaletteIndex>(height * kLevels / (3 * 1024 + 128)));
        }
    }
    return core::Grid::create(side, side, std::move(cells)).value();
}

/// A slanting gradient over 16 levels, its error spread to the neighbours (Floyd and Steinberg's
/// weights, in whole numbers).
inline core::Grid ditheredGradient(int side) {
    constexpr int kLevels = 16;
    constexpr int kUnit = 1024;
    const auto n = static_cast<std::size_t>(side);
    std::vector<int> wanted(n * n);
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        const int x = static_cast<int>(i % n);
        const int y = static_cast<int>(i / n);
        wanted[i] = (2 * x + y) * (kLevels - 1) * kUnit / (3 * side);
    }
    std::vector<core::PaletteIndex> cells(n * n);
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const int level = std::clamp((wanted[i] + kUnit / 2) / kUnit, 0, kLevels - 1);
        cells[i] = static_cast<core::PaletteIndex>(level);
        const int error = wanted[i] - level * kUnit;
        const bool hasRight = i % n + 1 < n;
        const bool hasBelow = i + n < cells.size();
        if (hasRight) wanted[i + 1] += error * 7 / 16;
        if (hasBelow && i % n > 0) wanted[i + n - 1] += error * 3 / 16;
        if (hasBelow) wanted[i + n] += error * 5 / 16;
        if (hasBelow && hasRight) wanted[i + n + 1] += error / 16;
    }
    return core::Grid::create(side, side, std::move(cells)).value();
}

/// `grid` with all of its 16 colours painted.
inline drawing::DrawingRequest pictureRequest(core::Grid grid, core::PointerTiming timing,
                                              core::PenModel pen = core::PenModel::WholeCells) {
    core::Canvas canvas = canvasFor(grid.size(), 16, pen);
    return {std::move(grid), std::nullopt, std::move(canvas), timing};
}

}  // namespace pantile::tests
