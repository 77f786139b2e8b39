// Planks, driftwood, crates and rope.

#include <algorithm>
#include <array>
#include <cmath>

#include "draw/masonry.h"
#include "draw/sample.h"

namespace pantile::sample_art {

namespace {

constexpr std::array<Ink, 5> kTarredWood = {Ink::Night, Ink::Tar, Ink::Tar, Ink::Bark, Ink::Bark};

/// A nail head with its glint and a rust run below it.
void nail(Sheet& sheet, core::Point at) {
    fillRectangle(sheet, {at.x - 1, at.y - 1}, {3, 3}, Ink::Night);
    sheet.set(at.x, at.y, Ink::Stone);
    sheet.set(at.x - 1, at.y - 1, Ink::Mist);
    sheet.set(at.x, at.y - 1, Ink::Stone);
    sheet.set(at.x - 1, at.y, Ink::Stone);
    for (int i = 2; i < 5; ++i) sheet.set(at.x, at.y + i, Ink::Rust);
}

/// Level boards black with tar, that shines along the upper edges.
Sheet tarredPlanks() {
    Sheet sheet(64, Tiles::Both, Ink::Night);
    const Field grain = layeredNoise(64, 64, {3, 32}, 2, 401);
    const Field tar = layeredNoise(64, 64, {5, 4}, 2, 402);
    for (const Block& board : layCourses(64, {13, 12, 14, 12, 13}, {28, 36}, 403)) {
        for (int row = 0; row < board.height - 1; ++row) {
            for (int column = 0; column < board.width - 1; ++column) {
                const int x = board.x + column;
                const int y = board.y + 3 + row;
                double lit = 0.75 - 0.45 * row / board.height + 1.1 * (grain.at(x, y) - 0.5);
                if (tar.at(x, y) > 0.56) lit -= 0.35;
                Ink ink = shade(kTarredWood, lit, {x, y}, 0.25);
                if (row == 0) ink = tar.at(x, y) > 0.5 ? Ink::Stone : Ink::WetSand;
                if (row == board.height - 2) ink = Ink::Night;
                if (row == 1 && tar.at(x, y) > 0.56) ink = Ink::Slate;
                sheet.set(x, y, ink);
            }
        }
        nail(sheet, {board.x + 3, board.y + 3 + board.height / 2 - 1});
        nail(sheet, {board.x + board.width - 5, board.y + 3 + board.height / 2 - 1});
    }
    return sheet;
}

/// Silver-grey boards with open joints, seen from above; the sea is dark below.
Sheet jettyBoards() {
    Sheet sheet(32, Tiles::Both, Ink::Night);
    const Field grain = layeredNoise(32, 32, {16, 3}, 2, 411);
    constexpr int kBoard = 8;
    for (int board = 0; board < 4; ++board) {
        for (int column = 0; column < kBoard - 1; ++column) {
            for (int y = 0; y < 32; ++y) {
                const int x = board * kBoard + column + 3;
                const double lit = 0.5 + 1.3 * (grain.at(x, y) - 0.5) + (board % 2 == 0 ? 0.1 : 0);
                Ink ink = shade({Ink::Bark, Ink::Stone, Ink::Stone, Ink::Mist}, lit);
                if (column == 0) ink = Ink::Mist;
                if (column == kBoard - 2) ink = Ink::Slate;
                sheet.set(x, y, ink);
            }
        }
        for (const int y : {6, 22}) {
            fillRectangle(sheet, {board * kBoard + 5, y}, {2, 2}, Ink::Tar);
            sheet.set(board * kBoard + 5, y, Ink::WetSand);
        }
    }
    return sheet;
}

/// The bleached face of a stranded trunk: long grain that flows round two knots.
Sheet driftwood() {
    Sheet sheet(32, Tiles::Both);
    const Field flow = layeredNoise(32, 32, {2, 3}, 2, 421);
    const Field fibre = layeredNoise(32, 32, {4, 32}, 1, 422);
    const std::array<Place, 2> knots = {{{9.0, 10.0}, {24.0, 25.0}}};
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        double around = 1e9;
        double push = 0.0;
        for (const Place& knot : knots) {
            const StoneSpot spot = nearestStone({knot}, 32, 32, x, y, 1.4);
            around = std::min(around, spot.distance);
            push +=
                (spot.dy > 0.0 ? 1.0 : -1.0) * 3.0 / (1.0 + 0.10 * spot.distance * spot.distance);
        }
        if (around < 1.5) return Ink::Tar;
        if (around < 2.6) return Ink::Bark;
        if (around < 3.6) return Ink::WetSand;
        if (around < 4.4) return Ink::Bark;
        const double fall = (y - push) * 6.0 / 32.0 + 0.9 * flow.at(x, y);
        const double lit = 0.56 + 0.40 * wave(fall) + 0.25 * (fibre.at(x, y) - 0.5);
        return shade({Ink::Slate, Ink::Stone, Ink::Stone, Ink::Mist, Ink::Mist, Ink::DrySand}, lit);
    });
    return sheet;
}

Sheet crate() {
    Sheet sheet(32, Tiles::No, Ink::Bark);
    const Field grain = layeredNoise(32, 32, {3, 16}, 2, 431);
    const auto board = [&](int x, int y, bool upright) {
        const double lit = 0.5 + 1.2 * ((upright ? grain.at(y, x) : grain.at(x, y)) - 0.5);
        return shade({Ink::Bark, Ink::WetSand, Ink::WetSand, Ink::DrySand}, lit);
    };
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        const int rim = std::min({x, y, 31 - x, 31 - y});
        const int diagonal = x + y - 31;
        if (rim == 0) return Ink::Tar;
        if (rim <= 5) {
            // The frame; upright pieces at the sides, level ones above and below.
            const bool upright = (x <= 5 || x >= 26) && y > 5 && y < 26;
            if (rim == 5) return Ink::Tar;
            if (rim == 1 && (x == 1 || y == 1)) return Ink::DrySand;
            if (rim == 1 || (y == 26) || (x == 26 && upright))
                return y > 26 ? Ink::Bark : board(x, y, upright);
            return board(x, y, upright);
        }
        if (diagonal == -4 || diagonal == 4) return Ink::Tar;
        if (diagonal == -3) return Ink::DrySand;
        if (diagonal > -3 && diagonal < 4) return board(x + y, y, false);
        if (wrapped(y - 6, 5) == 4) return Ink::Tar;
        if (wrapped(y - 6, 5) == 0) return Ink::WetSand;
        return grain.at(x, y) > 0.55 ? Ink::WetSand : Ink::Bark;
    });
    for (const core::Point at : {core::Point{3, 3}, {28, 3}, {3, 28}, {28, 28}}) {
        sheet.set(at.x, at.y, Ink::Mist);
        sheet.set(at.x + 1, at.y, Ink::Slate);
        sheet.set(at.x, at.y + 1, Ink::Slate);
        sheet.set(at.x + 1, at.y + 1, Ink::Tar);
    }
    return sheet;
}

/// A tar barrel: staves, two iron hoops, and tar run over the rim.
Sheet tarBarrel() {
    Sheet sheet(32, Tiles::No, Ink::Clear);
    for (int y = 3; y < 31; ++y) {
        const double up = (y - 17.0) / 13.5;
        const double half = 11.5 - 2.4 * up * up;
        for (int x = floorToInt(16.0 - half); x < floorToInt(16.0 + half); ++x) {
            const double across = (x - 15.5) / half;
            const double lit = 0.72 - 0.55 * across - 0.35 * across * across;
            // Staves look narrower towards the sides.
            const auto stave = [&](int column) {
                const double share = (column - 15.5) / half;
                return floorToInt(3.4 * share * (0.8 + 0.2 * share * share) + 0.5);
            };
            const bool joint = stave(x) != stave(x - 1);
            Ink ink = shade({Ink::Tar, Ink::Bark, Ink::WetSand, Ink::WetSand}, lit, {x, y}, 0.3);
            if (joint) ink = lit > 0.45 ? Ink::Bark : Ink::Tar;
            if ((y >= 9 && y <= 11) || (y >= 23 && y <= 25))
                ink = shade({Ink::Night, Ink::Slate, Ink::Stone, Ink::Mist},
                            lit - (y == 11 || y == 25 ? 0.3 : 0.0));
            sheet.set(x, y, ink);
        }
    }
    ellipse(sheet, {15.5, 4.0}, {9.5, 3.2}, Ink::WetSand);
    ellipse(sheet, {15.5, 4.2}, {8.2, 2.3}, Ink::Night);
    ellipse(sheet, {14.0, 4.4}, {3.0, 0.9}, Ink::Slate);
    for (const core::Point run : {core::Point{10, 12}, {11, 16}, {12, 10}, {19, 9}, {20, 13}})
        for (int y = 6; y < run.y; ++y) sheet.set(run.x, y, Ink::Night);
    sheet.set(10, 9, Ink::Slate);
    sheet.set(11, 12, Ink::Slate);
    outline(sheet, Ink::Night);
    return sheet;
}

/// One cell of a laid rope: slanting strands, a lit and a shaded rim.
/// Units: cells from the start and from the lit rim; `width` is the whole rope's.
Ink ropeInk(int along, int across, int width) {
    if (across == width - 1) return Ink::Tar;
    const int strand = wrapped(along + across, 4);
    const bool shaded = across >= width - 2;
    if (strand == 0) return shaded ? Ink::Tar : Ink::Bark;
    if (strand == 2 && !shaded) return Ink::DrySand;
    return shaded ? Ink::Bark : Ink::WetSand;
}

/// A mat of thick ropes, each over two and under two of the others.
Sheet ropeWeave() {
    constexpr int kRope = 8;
    Sheet sheet(32, Tiles::Both, Ink::Night);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        const int turn = wrapped(x / kRope - y / kRope, 4);
        const bool level = turn < 2;
        const int across = wrapped(level ? y : x, kRope);
        const int along =
            level ? turn * kRope + wrapped(x, kRope) : (3 - turn) * kRope + wrapped(y, kRope);
        if (across == kRope - 1) return Ink::Night;
        // At both ends the rope dives under the next one.
        constexpr int kEnd = 2 * kRope - 1;
        if (along == 0 || along == kEnd) return Ink::Night;
        if (along == 1 || along == kEnd - 1) return Ink::Tar;
        return ropeInk(along, across, kRope - 1);
    });
    return sheet;
}

Sheet ropeStrand() {
    Sheet sheet(16, Tiles::Across, Ink::Clear);
    constexpr int kTop = 4;
    constexpr int kWidth = 8;
    for (int x = 0; x < 16; ++x) {
        for (int across = 0; across < kWidth; ++across)
            sheet.set(x, kTop + across, ropeInk(x, across, kWidth));
        sheet.set(x, kTop - 1, Ink::Night);
        sheet.set(x, kTop + kWidth, Ink::Night);
    }
    return sheet;
}

/// A coil seen at a slant: five turns on top of one another, and the loose end.
Sheet ropeCoil() {
    Sheet sheet(32, Tiles::No, Ink::Clear);
    const auto around = [](double y, double from, double to) {
        std::vector<Place> path;
        for (double turns = from; turns <= to; turns += 1.0 / 96.0)
            path.push_back({15.0 + 11.0 * wave(turns + 0.25), y + 4.6 * wave(turns)});
        return path;
    };
    ellipse(sheet, {15.0, 9.0}, {11.0, 5.0}, Ink::Night);
    drawRope(sheet, around(8.0, 0.5, 1.0), 1.6);
    for (const double y : {20.0, 17.0, 14.0, 11.0, 8.0}) drawRope(sheet, around(y, 0.0, 0.5), 1.6);
    drawRope(sheet,
             {{22.0, 25.5},
              {23.0, 26.3},
              {24.0, 27.0},
              {25.0, 27.5},
              {26.0, 27.8},
              {27.0, 27.8},
              {28.0, 27.6},
              {29.0, 27.2}},
             1.6);
    outline(sheet, Ink::Night);
    return sheet;
}

}  // namespace

std::vector<Sample> woodAndRopeSamples() {
    return {
        {"Tarred planks", "wood plank tar", tarredPlanks()},
        {"Jetty boards", "wood plank harbour ground", jettyBoards()},
        {"Driftwood", "wood beach", driftwood()},
        {"Fish crate", "wood crate thing", crate()},
        {"Tar barrel", "wood barrel thing sprite", tarBarrel()},
        {"Rope weave", "rope mat", ropeWeave()},
        {"Rope strand", "rope edge sprite", ropeStrand()},
        {"Coil of rope", "rope thing sprite", ropeCoil()},
    };
}

}  // namespace pantile::sample_art
