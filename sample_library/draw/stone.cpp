// Beach, path and rock.

#include <array>
#include <cmath>
#include <string>

#include "draw/masonry.h"
#include "draw/sample.h"

namespace pantile::sample_art {

namespace {

constexpr std::array<Ink, 4> kCoolStone = {Ink::Slate, Ink::Stone, Ink::Mist, Ink::Foam};
constexpr std::array<Ink, 3> kDarkStone = {Ink::Night, Ink::Slate, Ink::Stone};
constexpr std::array<Ink, 3> kSandStone = {Ink::Bark, Ink::WetSand, Ink::DrySand};
constexpr std::array<Ink, 3> kBrownStone = {Ink::Tar, Ink::Bark, Ink::WetSand};
constexpr std::array<Ink, 3> kRedStone = {Ink::Tar, Ink::Rust, Ink::WetSand};
constexpr std::array<Ink, 3> kQuartz = {Ink::Stone, Ink::Mist, Ink::Foam};

std::span<const Ink> stoneRamp(int choice) {
    switch (choice) {
        case 0:
        case 1:
        case 2:
            return kCoolStone;
        case 3:
        case 4:
            return kDarkStone;
        case 5:
        case 6:
            return kSandStone;
        case 7:
            return kBrownStone;
        case 8:
            return kQuartz;
        default:
            return kRedStone;
    }
}

struct Beach {
    int stones = 0;
    double least = 0;  ///< Half the length of the smallest and the largest stone.
    double most = 0;
    std::uint64_t seed = 0;
};

void scatterPebbles(Sheet& sheet, const Beach& beach) {
    Chance chance(beach.seed);
    for (const Place& place : spreadPlaces(sheet.side(), sheet.side(), beach.stones, beach.seed)) {
        const double length = chance.between(beach.least, beach.most);
        const Pebble shape{
            place, {length, length * chance.between(0.62, 0.85)}, chance.between(-0.09, 0.09)};
        pebble(sheet, shape, stoneRamp(chance.below(10)), Ink::Night);
    }
}

Sheet shingle() {
    Sheet sheet(64, Tiles::Both, Ink::Night);
    scatterPebbles(sheet, {90, 2.0, 3.2, 11});
    scatterPebbles(sheet, {34, 4.5, 7.0, 12});
    return sheet;
}

Sheet pebbleBeach() {
    Sheet sheet(16, Tiles::Both, Ink::Night);
    stamp(sheet, {3, 2},
          {
              "BNNYYYANNNWWMMNN",
              "ANYYYAAANWWMMMGN",
              "BNYAAAABNMMMMGGN",
              "NNAAAABBNMMGGGDN",
              "NNNBBBBNNNGGDDNN",
              "GGNNNNNMGNNNNNNN",
              "MGDNNMMGGDNYYANM",
              "GGDNMMGGGDNYAABN",
              "GDNNMGGGDDNAABBN",
              "NNNNNGDDDNNNBBNN",
              "NWWMNNNNNNNNRRrN",
              "WWMMGNNAANNRRrrT",
              "WMMMGNAAABNRrrrT",
              "MMMGGNBABBNNrrTN",
              "NGGGDNNBBNNNNNNN",
              "NNDDNNNNNNNNNNNA",
          });
    return sheet;
}

Sheet gravelPath() {
    Sheet sheet(32, Tiles::Both, Ink::Bark);
    const Field wear = layeredNoise(32, 32, {4, 4}, 2, 31);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        return shade({Ink::Tar, Ink::Bark, Ink::WetSand, Ink::WetSand}, wear.at(x, y), {x, y}, 0.7);
    });
    Chance chance(32);
    for (const Place& place : spreadPlaces(32, 32, 34, 33)) {
        const double radius = chance.between(1.0, 2.1);
        const std::span<const Ink> ramp =
            chance.below(3) == 0 ? std::span<const Ink>(kCoolStone) : kSandStone;
        pebble(sheet, {place, {radius * 1.2, radius}, 0.0}, ramp, Ink::Tar);
    }
    return sheet;
}

Sheet slateWall() {
    Sheet sheet(64, Tiles::Both, Ink::Night);
    Chance chance(41);
    const Field grain = layeredNoise(64, 64, {6, 24}, 2, 42);
    for (Block block : layCourses(64, {7, 5, 9, 6, 8, 5, 7, 9, 8}, {9, 22}, 43)) {
        block.y += 3;  // no joint on the edge of the sheet
        const int tone = chance.below(5);
        const BlockInks inks = tone == 0   ? BlockInks{Ink::Bark, Ink::WetSand, Ink::Tar}
                               : tone <= 2 ? BlockInks{Ink::Slate, Ink::Stone, Ink::Night}
                                           : BlockInks{Ink::Stone, Ink::Mist, Ink::Slate};
        layBlock(sheet, block, inks);
        // Slate splits into thin leaves: short level cracks and glints within the face.
        for (int y = block.y + 1; y < block.y + block.height - 2; ++y) {
            for (int x = block.x + 1; x < block.x + block.width - 2; ++x) {
                if (grain.at(x, y) > 0.66) sheet.set(x, y, inks.light);
                if (grain.at(x, y) < 0.34) sheet.set(x, y, inks.shadow);
            }
        }
    }
    return sheet;
}

Sheet mossStone() {
    Sheet sheet(32, Tiles::Both, Ink::Night);
    const std::vector<Place> places = spreadPlaces(32, 32, 9, 55);
    const Field moss = layeredNoise(32, 32, {4, 4}, 2, 52);
    const Field grain = layeredNoise(32, 32, {8, 8}, 2, 53);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        const StoneSpot spot = nearestStone(places, 32, 32, x, y, 1.2);
        const double reach = spot.distance + spot.toEdge;
        const double lit =
            0.60 - 0.30 * (spot.dx + spot.dy) / reach + 0.35 * (grain.at(x, y) - 0.5);
        const double cover = moss.at(x, y) - 0.30 * spot.dy / reach;
        if (cover > 0.55)
            return shade({Ink::Tar, Ink::DeepKelp, Ink::DeepKelp, Ink::Kelp, Ink::Kelp},
                         lit + 0.9 * (grain.at(x, y) - 0.5), {x, y}, 0.6);
        if (cover > 0.52) return Ink::DeepKelp;
        if (spot.toEdge < 0.8) return Ink::Night;
        return shade({Ink::Slate, Ink::Slate, Ink::Stone, Ink::Stone, Ink::Mist}, lit);
    });
    return sheet;
}

/// A barnacle: a pale cone of plates, open at the top.
void barnacle(Sheet& sheet, Place centre, double radius, double turn) {
    ellipse(sheet, {centre.x + 0.7, centre.y + 0.8}, {radius + 0.6, radius + 0.5}, Ink::Night);
    for (int y = floorToInt(centre.y - radius); y <= centre.y + radius; ++y) {
        for (int x = floorToInt(centre.x - radius); x <= centre.x + radius; ++x) {
            const double dx = x - centre.x;
            const double dy = y - centre.y;
            const double distance = std::sqrt(dx * dx + dy * dy);
            if (distance > radius) continue;
            constexpr int kPlates = 6;
            const double plate = turnsOf(dx, dy) * kPlates + turn;
            const bool onSeam = plate - std::floor(plate) < 0.22 && radius > 2.6;
            const double lit = 0.62 - 0.42 * (dx + dy) / radius;
            Ink ink = shade({Ink::Stone, Ink::WetSand, Ink::Mist, Ink::Mist, Ink::Foam}, lit);
            if (onSeam) ink = lit > 0.6 ? Ink::Mist : Ink::Stone;
            // The mouth is a slanting diamond within a pale rim.
            const double mouth = (std::abs(dx + dy) * 1.3 + std::abs(dx - dy) * 0.7) / radius;
            if (mouth < 0.75 && radius > 2.6) ink = Ink::Foam;
            if (mouth < 0.52) ink = Ink::Slate;
            if (mouth < 0.30) ink = Ink::Night;
            sheet.set(x, y, ink);
        }
    }
}

void scatterBarnacles(Sheet& sheet, std::span<const Place> places, double least, double most,
                      Chance& chance) {
    for (const Place& place : places) {
        const double turn = chance.between(0.0, 1.0);
        barnacle(sheet, place, chance.between(least, most), turn);
    }
}

Sheet barnacles() {
    Sheet sheet(64, Tiles::Both, Ink::Slate);
    const Field rock = layeredNoise(64, 64, {5, 5}, 3, 61);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        return shade({Ink::Night, Ink::Slate, Ink::Slate, Ink::Stone},
                     0.5 + 5.0 * slopeToLight(rock, x, y), {x, y}, 0.3);
    });
    Chance chance(62);
    scatterBarnacles(sheet, spreadPlaces(64, 64, 60, 63), 1.6, 2.5, chance);
    scatterBarnacles(sheet, spreadPlaces(64, 64, 17, 68), 3.6, 5.8, chance);
    return sheet;
}

Sheet quaySetts() {
    Sheet sheet(32, Tiles::Both, Ink::Night);
    Chance chance(71);
    for (Block block : layCourses(32, {8, 8, 8, 8}, {7, 10}, 72)) {
        block.y += 3;  // no joint on the edge of the sheet
        const int tone = chance.below(4);
        const BlockInks inks = tone == 0   ? BlockInks{Ink::Slate, Ink::Stone, Ink::Night}
                               : tone == 1 ? BlockInks{Ink::Bark, Ink::WetSand, Ink::Tar}
                                           : BlockInks{Ink::Stone, Ink::Mist, Ink::Slate};
        layBlock(sheet, block, inks);
        // Setts are worn round: cut corners.
        const int right = block.x + block.width - 2;
        const int bottom = block.y + block.height - 2;
        for (const core::Point corner :
             {core::Point{block.x, block.y}, {right, block.y}, {block.x, bottom}, {right, bottom}})
            sheet.set(corner.x, corner.y, Ink::Night);
    }
    return sheet;
}

}  // namespace

std::vector<Sample> stoneSamples() {
    return {
        {"Shingle", "beach stone ground", shingle()},
        {"Pebble beach", "beach stone ground", pebbleBeach()},
        {"Gravel path", "path stone ground", gravelPath()},
        {"Slate wall", "wall stone slate", slateWall()},
        {"Moss stone", "wall stone moss", mossStone()},
        {"Barnacles on rock", "rock stone barnacle shore", barnacles()},
        {"Quay setts", "harbour stone ground", quaySetts()},
    };
}

}  // namespace pantile::sample_art
