// Sand, tide pools and the sea.

#include <array>
#include <cmath>

#include "draw/masonry.h"
#include "draw/sample.h"

namespace pantile::sample_art {

namespace {

/// Ripple marks: crests that lie across the wet sand, bent and broken as the ebb left them.
Sheet wetSand() {
    Sheet sheet(64, Tiles::Both);
    const Field bend = layeredNoise(64, 64, {4, 3}, 2, 201);
    const Field wet = layeredNoise(64, 64, {4, 4}, 2, 202);
    const Field strength = layeredNoise(64, 64, {5, 5}, 2, 205);
    Field height(64, 64);
    for (int y = 0; y < 64; ++y) {
        for (int x = 0; x < 64; ++x) {
            const double phase = y / 64.0 * 9.0 + bend.at(x, y) * 2.1;
            // Steep towards the sea, gentle towards the land; here and there washed flat.
            height.at(x, y) =
                wave(phase + 0.06 * wave(phase)) * smoothStep(0.22, 0.50, strength.at(x, y));
        }
    }
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        const double slope = height.at(x, y + 1) - height.at(x, y - 1);
        const double trough = -height.at(x, y);
        if (trough > 0.75 && wet.at(x, y) > 0.50) return Ink::Mist;  // water stays in the trough
        if (trough > 0.45 && wet.at(x, y) > 0.47) return Ink::Stone;
        return shade({Ink::Bark, Ink::WetSand, Ink::WetSand, Ink::WetSand, Ink::DrySand},
                     0.52 + 0.36 * slope, {x, y}, 0.5);
    });
    return sheet;
}

/// Wind ripples, a shell chip and a few dark grains.
Sheet drySand() {
    Sheet sheet(16, Tiles::Both, Ink::DrySand);
    stamp(sheet, {0, 0},
          {
              "YYYYYYYYYYYYYYYY",
              "YYYAAAYYYYYYYYYY",
              "AAAYYYAAYYYYYAAA",
              "YYYYYYYYAAAAAYYY",
              "YYYYYYYYYYYYYYYY",
              "YWYYYYYYYYYYYBYY",
              "YYYYYYYYAAAYYYYY",
              "AYYYYAAAYYYAAYYA",
              "YAAAAYYYYYYYYAAY",
              "YYYYYYYYYYYYYYYY",
              "YYYYYYYYYYWWYYYY",
              "YYBYYYYYYYMWYYYY",
              "YYYYAAAYYYYYYYAY",
              "AAAAYYYAAYYYAAYA",
              "YYYYYYYYYAAAYYYY",
              "YYYYYYYYYYYYYYYY",
          });
    return sheet;
}

/// What lies in the pool: stones with a shadow, and one starfish.
void layPoolThings(Sheet& sheet) {
    constexpr std::array<Ink, 3> kDrowned = {Ink::Slate, Ink::Slate, Ink::Stone};
    constexpr std::array<Ink, 3> kWeedy = {Ink::Night, Ink::DeepKelp, Ink::Kelp};
    Chance chance(226);
    for (const Place& place : spreadPlaces(64, 64, 8, 227)) {
        const double length = chance.between(3.0, 6.0);
        pebble(sheet, {{place.x + 1.0, place.y + 1.5}, {length, length * 0.75}, 0.0},
               std::array{Ink::Night}, Ink::Night);
        pebble(sheet, {place, {length, length * 0.75}, 0.0},
               chance.below(3) == 0 ? std::span<const Ink>(kWeedy) : kDrowned, Ink::Night);
    }
    stamp(sheet, {35, 37},
          {
              "........NN........",
              ".......NRRN.......",
              ".......NROrN......",
              "......NRROrN......",
              "......NRORrN......",
              "NNNNNNNRORrNNNNNNN",
              "NRRRRRRROORRRRRRrN",
              ".NROROROOOROROOrN.",
              "..NNRRRROORRRRrN..",
              "....NRROROORRrN...",
              "....NROORRRORrN...",
              "...NRROrNNNROrrN..",
              "...NRRrN...NrRrN..",
              "..NRRrN.....NrRrN.",
              "..NNNN.......NNNN.",
          });
}

/// The net of light that small waves throw on the floor of a pool: bright along the borders of a
/// mosaic, brightest where three ripples meet.
Sheet tidePool() {
    Sheet sheet(64, Tiles::Both, Ink::DeepSea);
    const Field depth = layeredNoise(64, 64, {3, 3}, 2, 224);
    const std::vector<Place> ripples = spreadPlaces(64, 64, 17, 229);
    const Field bendX = layeredNoise(64, 64, {5, 5}, 2, 222);
    const Field bendY = layeredNoise(64, 64, {5, 5}, 2, 223);
    const Field strength = layeredNoise(64, 64, {4, 4}, 2, 228);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        const StoneSpot spot = nearestStone(ripples, 64, 64, x + 16.0 * (bendX.at(x, y) - 0.5),
                                            y + 16.0 * (bendY.at(x, y) - 0.5), 1.3);
        // Far from the middle of a ripple is near a meeting point.
        const double light = 2.6 * (strength.at(x, y) - 0.42) + 0.09 * (spot.distance - 6.0);
        if (spot.toEdge < 0.8 * light) return Ink::Foam;
        if (spot.toEdge < 0.9 + 1.2 * light) return Ink::Sea;
        return shade({Ink::DeepSea, Ink::DeepSea, Ink::Sea}, depth.at(x, y), {x, y}, 0.6);
    });
    layPoolThings(sheet);
    return sheet;
}

struct Swell {
    int crests = 0;  ///< Down the sheet.
    double bend = 0;
    std::uint64_t seed = 0;
};

Field swell(int side, const Swell& shape) {
    const Field broad = layeredNoise(side, side, {3, 2}, 2, shape.seed);
    const Field cross = layeredNoise(side, side, {5, 4}, 2, shape.seed + 10);
    Field height(side, side);
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            const double phase =
                static_cast<double>(y) * shape.crests / side + shape.bend * broad.at(x, y);
            // Sharp crests and broad troughs.
            const double swing = 0.5 + 0.5 * wave(phase);
            height.at(x, y) = swing * swing + 0.55 * cross.at(x, y);
        }
    }
    return height;
}

/// Black water with the moon's road on it.
Sheet nightSea() {
    Sheet sheet(64, Tiles::Both);
    const Field height = swell(64, {6, 2.6, 231});
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        const double h = height.at(x, y);
        const double slope = height.at(x, y + 1) - height.at(x, y - 1);
        // The moon glints only where a crest turns, and most in the middle of its road.
        const double road = 1.0 - std::abs(x - 31.5) / 32.0;
        if (h > 1.17 - 0.13 * road && slope > -0.10) return road > 0.45 ? Ink::Foam : Ink::Mist;
        if (h > 1.05 - 0.10 * road && slope > -0.16) return road > 0.3 ? Ink::Mist : Ink::Stone;
        return shade({Ink::Night, Ink::Night, Ink::Slate, Ink::DeepSea}, 0.18 + 0.62 * h, {x, y},
                     0.45);
    });
    return sheet;
}

Sheet summerSea() {
    Sheet sheet(16, Tiles::Both, Ink::Sea);
    stamp(sheet, {0, 0},
          {
              "UUUUUUUUUUUUUUUU",
              "UUWWWUUUUUUUUUUU",
              "UuUUUWWUUUUUUUUU",
              "uUUUUUUWWUUUUuuu",
              "UUUUUUUUUuuuuUUU",
              "UUUUUUUUUUUUUUUU",
              "UUUUUUUUUWWWWUUU",
              "WWUUUUUuuUUUUWWU",
              "UUWUUuuUUUUUUUUW",
              "UUUuuUUUUUUUUUUU",
              "uuuUUUUUUUUUUUUu",
              "UUUUUMMMUUUUUUUU",
              "UUUUuUUUMMUUUUUU",
              "UUuuUUUUUUMUUuuU",
              "UuUUUUUUUUUuuUUU",
              "UUUUUUUUUUUUUUUU",
          });
    return sheet;
}

/// The wash on the sand: sea above, foam, wet shine and dry sand below.
Sheet foamEdge() {
    Sheet sheet(64, Tiles::Across);
    const Field bend = layeredNoise(64, 64, {3, 1}, 2, 241);
    const Field lace = layeredNoise(64, 64, {7, 7}, 2, 242);
    const Field height = swell(64, {7, 2.2, 243});
    const Field grain = layeredNoise(64, 64, {16, 16}, 2, 244);
    const std::vector<Place> bubbles = spreadPlaces(64, 64, 120, 245);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        // Bend is read along one row so that the lip of the wave is a line.
        const double lip =
            29.0 + 13.0 * (bend.at(x, 0) - 0.5) * 2.0 + 2.5 * wave(3.0 * x / 64.0 + 0.2);
        const double past = y - lip;
        if (past > 0.0) {
            if (past < 1.5) return Ink::Bark;  // the shadow of the lip
            const double shine = past + 6.0 * (grain.at(x, y) - 0.5);
            if (shine < 5.0) return shade({Ink::Stone, Ink::Mist}, 1.0 - shine / 6.0, {x, y}, 0.8);
            return shade({Ink::WetSand, Ink::WetSand, Ink::DrySand, Ink::DrySand},
                         (past - 8.0) / 26.0 + 0.7 * (grain.at(x, y) - 0.5), {x, y}, 0.5);
        }
        const double back = -past;
        if (back < 2.5) return Ink::Foam;
        const StoneSpot spot = nearestStone(bubbles, 64, 64, x, y);
        // Foam thins out seawards into a lace of bubble rims.
        const double thickness = 3.0 - back * 0.17 + 2.0 * (lace.at(x, y) - 0.5);
        if (back < 15.0 && spot.toEdge < thickness * 0.55) return Ink::Foam;
        if (back < 16.0 && spot.toEdge < thickness * 0.85) return Ink::Mist;
        if (height.at(x, y) > 1.14 && back > 13.0) return Ink::Mist;
        return shade({Ink::DeepSea, Ink::DeepSea, Ink::Sea, Ink::Sea},
                     1.05 - back / 34.0 + 0.5 * (height.at(x, y) - 0.7), {x, y}, 0.5);
    });
    return sheet;
}

/// Grey mud at low water, with the coiled casts of lugworms and their holes.
Sheet mudFlat() {
    Sheet sheet(32, Tiles::Both);
    const Field ooze = layeredNoise(32, 32, {3, 4}, 2, 251);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        return shade({Ink::Slate, Ink::Bark, Ink::Bark, Ink::WetSand},
                     0.52 + 4.2 * slopeToLight(ooze, x, y), {x, y}, 0.4);
    });
    for (const core::Point corner : {core::Point{3, 2}, {19, 9}, {6, 18}, {22, 24}}) {
        stamp(sheet, corner,
              {
                  "...TTTT...",
                  "..TAABAT..",
                  ".TABTTABT.",
                  "TAABAATABT",
                  "TBTTTABATT",
                  "TBAABTTABT",
                  ".TTABAABTT",
                  "...TTTTTT.",
              });
        stamp(sheet, {corner.x - 5, corner.y + 6}, {".AA.", "ANNB", ".BB."});
    }
    return sheet;
}

}  // namespace

std::vector<Sample> sandAndWaterSamples() {
    return {
        {"Wet sand", "beach sand ground", wetSand()},
        {"Dry sand", "beach sand ground", drySand()},
        {"Mud flat", "shore mud ground", mudFlat()},
        {"Tide pool water", "water pool shore", tidePool()},
        {"Night sea", "water sea night", nightSea()},
        {"Summer sea", "water sea", summerSea()},
        {"Foam edge", "water sea foam beach edge", foamEdge()},
    };
}

}  // namespace pantile::sample_art
