// Walls, roofs and the tower.

#include <array>
#include <cmath>

#include "draw/masonry.h"
#include "draw/sample.h"

namespace pantile::sample_art {

namespace {

void layWhiteWall(Sheet& sheet, const std::vector<int>& heights, BlockWidths widths,
                  std::uint64_t seed) {
    for (Block block : layCourses(sheet.side(), heights, widths, seed)) {
        layBlock(sheet, block, {Ink::Foam, Ink::Foam, Ink::Mist});
        // A sheet that does not wrap still needs the rest of a block that runs over its edge.
        block.x -= sheet.side();
        layBlock(sheet, block, {Ink::Foam, Ink::Foam, Ink::Mist});
    }
}

Sheet lighthouseBrick() {
    Sheet sheet(32, Tiles::Both, Ink::Mist);
    const Field grain = layeredNoise(32, 32, {8, 8}, 2, 101);
    Chance chance(102);
    int course = 0;
    for (int y = 0; y < 32; y += 8, ++course) {
        for (int x = course % 2 == 0 ? -2 : 6; x < 30; x += 16) {
            const int tone = chance.below(4);
            const BlockInks inks = tone == 0 ? BlockInks{Ink::Rust, Ink::BuoyRed, Ink::Tar}
                                             : BlockInks{Ink::BuoyRed, Ink::BuoyRed, Ink::Rust};
            layBlock(sheet, {x, y, 16, 8, course}, inks);
            for (int row = y + 1; row < y + 6; ++row)
                for (int column = x + 1; column < x + 14; ++column)
                    if (grain.at(column, row) < 0.38) sheet.set(column, row, inks.shadow);
            // The joint lies in the shade of the brick above it.
            line(sheet, {x, y + 7}, {x + 15, y + 7}, Ink::Stone);
        }
    }
    return sheet;
}

Sheet whitewash() {
    Sheet sheet(32, Tiles::Both, Ink::Mist);
    const Field flakes = layeredNoise(32, 32, {4, 4}, 3, 113);
    const Field grain = layeredNoise(32, 32, {10, 10}, 2, 112);
    layWhiteWall(sheet, {9, 7, 10, 6}, {9, 16}, 114);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        // Where the lime has flaked off, the bare stone shows, with a dark lip along its upper
        // edge.
        const double bare = flakes.at(x, y);
        if (bare > 0.645) {
            const bool underLip = flakes.at(x - 1, y - 1) <= 0.645;
            if (underLip) return Ink::Slate;
            return grain.at(x, y) > 0.5 ? Ink::WetSand : Ink::Stone;
        }
        if (sheet.at(x, y) == Ink::Foam && grain.at(x, y) > 0.70) return Ink::DrySand;
        return std::nullopt;
    });
    return sheet;
}

Sheet slateRoof() {
    constexpr int kWidth = 16;
    constexpr int kHeight = 16;
    Sheet sheet(64, Tiles::Both, Ink::Night);
    const Field grain = layeredNoise(64, 64, {24, 6}, 2, 121);
    Chance chance(122);
    for (int course = 0; course < 4; ++course) {
        for (int i = 0; i < 4; ++i) {
            const int x = i * kWidth + (course % 2 == 0 ? 4 : 12);
            const int y = course * kHeight + 5;
            const int tone = chance.below(6);
            const int drop = chance.below(2);
            for (int row = 0; row < kHeight + drop; ++row) {
                for (int column = 0; column < kWidth - 1; ++column) {
                    // Rounded lower corners.
                    const int fromBottom = kHeight + drop - 1 - row;
                    const int fromSide = column < 7 ? column : kWidth - 2 - column;
                    if (fromBottom + fromSide < 2) continue;
                    double lit = 0.25 + 0.5 * row / kHeight;
                    lit += 0.7 * (grain.at(x + column, y + row) - 0.5);
                    if (tone == 0) lit -= 0.25;
                    if (tone == 1) lit += 0.2;
                    Ink ink = shade({Ink::Slate, Ink::Slate, Ink::Stone, Ink::Stone}, lit,
                                    {x + column, y + row}, 0.5);
                    if (tone == 2 && ink == Ink::Stone) ink = Ink::DeepSea;
                    if (row < 2) ink = Ink::Night;  // the shadow of the course above
                    if (row == 2) ink = Ink::Slate;
                    if (column == 0 && row > 2) ink = Ink::Mist;
                    if (fromBottom == 0) ink = Ink::Mist;
                    sheet.set(x + column, y + row, ink);
                }
            }
        }
    }
    return sheet;
}

/// Red and white bands round a tower; the shading of the round wall repeats with each tower width.
Sheet towerBands() {
    Sheet sheet(32, Tiles::Both, Ink::Foam);
    const Field grain = layeredNoise(32, 32, {10, 10}, 2, 132);
    for (const Block& block : layCourses(32, {4, 4, 4, 4, 4, 4, 4, 4}, {7, 11}, 131)) {
        const bool red = wrapped(block.y, 32) < 16;
        layBlock(sheet, block,
                 red ? BlockInks{Ink::BuoyRed, Ink::BuoyRed, Ink::BuoyRed}
                     : BlockInks{Ink::Foam, Ink::Foam, Ink::Foam});
        const Ink joint = red ? Ink::Rust : Ink::Mist;
        line(sheet, {block.x, block.y + 3}, {block.x + block.width - 1, block.y + 3}, joint);
        line(sheet, {block.x + block.width - 1, block.y}, {block.x + block.width - 1, block.y + 3},
             joint);
    }
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        if (grain.at(x, y) > 0.36) return std::nullopt;
        if (sheet.at(x, y) == Ink::BuoyRed) return Ink::Rust;
        if (sheet.at(x, y) == Ink::Foam) return Ink::DrySand;
        return std::nullopt;
    });
    return sheet;
}

/// A round-headed door of tarred boards in a whitewashed wall.
Sheet keepersDoor() {
    Sheet sheet(64, Tiles::No, Ink::Mist);
    layWhiteWall(sheet, {8, 8, 8, 8, 8, 8, 8, 8}, {11, 19}, 141);
    constexpr double kMiddle = 31.5;
    const auto outside = [&](int x, int y) {
        const double dx = x - kMiddle;
        const double dy = y < 26 ? 26.0 - y : 0.0;
        return std::sqrt(dx * dx + dy * dy);
    };
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        const double away = outside(x, y);
        if (away > 23.5 || y > 59) return std::nullopt;
        if (away > 23.0) return Ink::Slate;
        if (away > 17.0) {
            // The arch: wedge stones above, courses below.
            const double dx = x - kMiddle;
            const double part = y < 26 ? turnsOf(dx, 26.0 - y) * 28.0 : (y - 26) / 7.0;
            const double edge = part - std::floor(part);
            if (edge < (y < 26 ? 0.22 : 0.14)) return Ink::Slate;
            return dx + (y - 26) * 0.6 < 0.0 ? Ink::Mist : Ink::Stone;
        }
        if (away > 16.0) return Ink::Night;
        const int plank = wrapped(x - 16, 8);
        if (plank == 7) return Ink::Night;
        if (plank == 0) return Ink::WetSand;
        return chanceAt(x, y / 9, 142) < 0.25 ? Ink::Tar : Ink::Bark;
    });
    for (const int y : {22, 46}) {
        fillRectangle(sheet, {16, y}, {27, 4}, Ink::Night);
        line(sheet, {16, y}, {42, y}, Ink::Stone);
        line(sheet, {16, y + 1}, {41, y + 1}, Ink::Slate);
        line(sheet, {16, y + 2}, {41, y + 2}, Ink::Slate);
        for (const int x : {19, 27, 35}) sheet.set(x, y + 1, Ink::Mist);
    }
    constexpr std::array<Ink, 4> kRing = {Ink::Tar, Ink::Bark, Ink::Brass, Ink::Foam};
    ball(sheet, {43.0, 36.0}, 3.2, kRing);
    fillRectangle(sheet, {6, 60}, {52, 4}, Ink::Stone);
    line(sheet, {6, 60}, {57, 60}, Ink::Mist);
    line(sheet, {6, 63}, {57, 63}, Ink::Slate);
    return sheet;
}

/// A small window with four panes, lit from inside.
Sheet litWindow() {
    Sheet sheet(32, Tiles::No, Ink::Mist);
    layWhiteWall(sheet, {8, 8, 8, 8}, {10, 16}, 151);
    fillRectangle(sheet, {5, 3}, {22, 25}, Ink::Slate);
    fillRectangle(sheet, {6, 4}, {20, 23}, Ink::Stone);
    fillRectangle(sheet, {7, 5}, {18, 20}, Ink::Tar);
    fillRectangle(sheet, {8, 6}, {16, 18}, Ink::Bark);
    for (const core::Point pane : {core::Point{9, 7}, {17, 7}, {9, 16}, {17, 16}}) {
        for (int y = 0; y < 7; ++y) {
            for (int x = 0; x < 6; ++x) {
                const double dx = pane.x + x - 15.5;
                const double dy = pane.y + y - 17.0;
                const double glow = 1.05 - std::sqrt(dx * dx + dy * dy) / 15.0;
                sheet.set(pane.x + x, pane.y + y,
                          shade({Ink::Bark, Ink::Brass, Ink::Brass, Ink::DrySand, Ink::Foam}, glow,
                                {x, y}, 0.5));
            }
        }
    }
    fillRectangle(sheet, {4, 26}, {24, 3}, Ink::Mist);
    line(sheet, {4, 26}, {27, 26}, Ink::Foam);
    line(sheet, {4, 29}, {27, 29}, Ink::Slate);
    return sheet;
}

}  // namespace

std::vector<Sample> buildingSamples() {
    return {
        {"Lighthouse brick", "wall brick lighthouse", lighthouseBrick()},
        {"Whitewashed wall", "wall whitewash lighthouse", whitewash()},
        {"Slate roof", "roof slate", slateRoof()},
        {"Tower bands", "wall lighthouse red white", towerBands()},
        {"Keeper's door", "door wood lighthouse", keepersDoor()},
        {"Lit window", "window glass lighthouse night", litWindow()},
    };
}

}  // namespace pantile::sample_art
