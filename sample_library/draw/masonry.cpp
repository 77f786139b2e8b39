#include "draw/masonry.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace pantile::sample_art {

namespace {

/// Widths within the limits that add up to `side`, which must be possible.
std::vector<int> courseWidths(int side, BlockWidths widths, Chance& chance) {
    const int fewest = (side + widths.most - 1) / widths.most;
    const int mostBlocks = side / widths.least;
    assert(fewest <= mostBlocks);
    std::vector<int> chosen;
    int rest = side;
    for (int left = fewest + chance.below(mostBlocks - fewest + 1) - 1; left >= 0; --left) {
        // What stays must still be enough, and not too much, for the blocks that are left.
        const int least = std::max(widths.least, rest - left * widths.most);
        const int most = std::min(widths.most, rest - left * widths.least);
        chosen.push_back(least + chance.below(most - least + 1));
        rest -= chosen.back();
    }
    return chosen;
}

std::vector<int> jointsOf(const std::vector<int>& widths, int start, int side) {
    std::vector<int> joints;
    int x = start;
    for (const int width : widths) {
        x += width;
        joints.push_back(wrapped(x, side));
    }
    return joints;
}

/// How close two courses' joints come to one another.
int leastJointGap(const std::vector<int>& above, const std::vector<int>& below, int side) {
    int least = side;
    for (const int a : above) {
        for (const int b : below) {
            const int apart = wrapped(a - b, side);
            least = std::min({least, apart, side - apart});
        }
    }
    return least;
}

}  // namespace

std::vector<Block> layCourses(int side, const std::vector<int>& heights, BlockWidths widths,
                              std::uint64_t seed) {
    Chance chance(seed);
    std::vector<Block> blocks;
    std::vector<int> above;
    int y = 0;
    int course = 0;
    for (const int height : heights) {
        std::vector<int> bestWidths;
        int bestStart = 0;
        int bestGap = -1;
        constexpr int kTries = 24;
        for (int i = 0; i < kTries; ++i) {
            const std::vector<int> tried = courseWidths(side, widths, chance);
            const int start = chance.below(side);
            const int gap = leastJointGap(above, jointsOf(tried, start, side), side);
            if (gap > bestGap) {
                bestGap = gap;
                bestWidths = tried;
                bestStart = start;
            }
        }
        int x = bestStart;
        for (const int width : bestWidths) {
            blocks.push_back({x, y, width, height, course});
            x += width;
        }
        above = jointsOf(bestWidths, bestStart, side);
        y += height;
        ++course;
    }
    return blocks;
}

void layBlock(Sheet& sheet, const Block& block, const BlockInks& inks) {
    const int right = block.x + block.width - 2;
    const int bottom = block.y + block.height - 2;
    fillRectangle(sheet, {block.x, block.y}, {block.width - 1, block.height - 1}, inks.face);
    line(sheet, {block.x, bottom}, {right, bottom}, inks.shadow);
    line(sheet, {right, block.y}, {right, bottom}, inks.shadow);
    line(sheet, {block.x, block.y}, {right - 1, block.y}, inks.light);
    line(sheet, {block.x, block.y}, {block.x, bottom - 1}, inks.light);
}

void pebble(Sheet& sheet, const Pebble& shape, std::span<const Ink> ramp, Ink rim) {
    const double c = wave(shape.turn + 0.25);
    const double s = wave(shape.turn);
    const double reach = std::max(shape.radii.x, shape.radii.y) + 1.5;
    for (int y = floorToInt(shape.centre.y - reach); y <= shape.centre.y + reach; ++y) {
        for (int x = floorToInt(shape.centre.x - reach); x <= shape.centre.x + reach; ++x) {
            const double dx = x - shape.centre.x;
            const double dy = y - shape.centre.y;
            const double u = (dx * c + dy * s) / shape.radii.x;
            const double v = (dy * c - dx * s) / shape.radii.y;
            const double radius = std::sqrt(u * u + v * v);
            const double rimWidth = 1.0 / std::min(shape.radii.x, shape.radii.y);
            if (radius > 1.0 + rimWidth) continue;
            if (radius > 1.0) {
                sheet.set(x, y, rim);
                continue;
            }
            // The normal in the sheet's own axes, flattened: pebbles are no balls.
            const double nx = (u * c / shape.radii.x - v * s / shape.radii.y) * shape.radii.y;
            const double ny = (u * s / shape.radii.x + v * c / shape.radii.y) * shape.radii.y;
            const double lit = 0.55 - 0.38 * (nx + ny) - 0.25 * (radius * radius - 0.4);
            sheet.set(x, y, shade(ramp, lit, {x, y}, 0.0));
        }
    }
}

}  // namespace pantile::sample_art
