// Weed, grass and flowers of the shore.

#include <array>
#include <cmath>

#include "draw/sample.h"

namespace pantile::sample_art {

namespace {

struct Leaf {
    Place from;
    Place to;
    double bow = 0;    ///< How far the middle stands off the straight line, to its left.
    double width = 0;  ///< Half the width where it is widest.
};

struct LeafInks {
    Ink rim = Ink::Night;
    Ink dark = Ink::DeepKelp;
    Ink light = Ink::Kelp;
    Ink glint = Ink::Brass;  ///< Along the lit edge, in the middle of the leaf.
};

/// A pointed leaf along a bowed line: rim, lit upper half, dark lower half.
void drawLeaf(Sheet& sheet, const Leaf& leaf, const LeafInks& inks) {
    const double dx = leaf.to.x - leaf.from.x;
    const double dy = leaf.to.y - leaf.from.y;
    const double length = std::sqrt(dx * dx + dy * dy);
    const Place side{dy / length, -dx / length};
    // Which side of the leaf looks to the light at the top left.
    const double lit = side.x + side.y < 0.0 ? 1.0 : -1.0;
    const int steps = floorToInt(length * 2.0);
    for (const bool onlyRim : {true, false}) {
        for (int i = 0; i <= steps; ++i) {
            const double t = static_cast<double>(i) / steps;
            const double arch = 4.0 * t * (1.0 - t);
            const double half =
                leaf.width * std::sqrt(arch) * (1.0 - 0.35 * t) + (onlyRim ? 1.0 : 0.0);
            for (double across = -half; across <= half; across += 0.5) {
                const double off = leaf.bow * arch + across;
                const int x = floorToInt(leaf.from.x + dx * t + side.x * off + 0.5);
                const int y = floorToInt(leaf.from.y + dy * t + side.y * off + 0.5);
                const double toLight = lit * across / (leaf.width + 0.01);
                Ink ink = toLight > -0.15 ? inks.light : inks.dark;
                if (toLight > 0.6 && t > 0.25 && t < 0.7) ink = inks.glint;
                sheet.set(x, y, onlyRim ? inks.rim : ink);
            }
        }
    }
}

/// A stem that sways up the whole sheet, with leaves to both sides and a float under each.
void kelpPlant(Sheet& sheet, double root, double phase, const LeafInks& inks) {
    const int side = sheet.side();
    const auto stem = [&](double y) { return root + 4.0 * wave(y / side + phase); };
    constexpr int kLeaves = 7;
    for (int i = 0; i < kLeaves; ++i) {
        const double y = side - (i + phase) * side / kLeaves;
        const double way = i % 2 == 0 ? 1.0 : -1.0;
        const Place from{stem(y) + way, y};
        drawLeaf(sheet, {from, {from.x + way * 9.0, y - 15.0}, way * 2.6, 2.6}, inks);
    }
    for (int y = 0; y < side; ++y) {
        const int x = floorToInt(stem(y) + 0.5);
        sheet.set(x - 1, y, inks.rim);
        sheet.set(x, y, inks.light);
        sheet.set(x + 1, y, inks.dark);
        sheet.set(x + 2, y, inks.rim);
    }
    const std::array<Ink, 3> bulb = {inks.dark, inks.light, inks.glint};
    for (int i = 0; i < kLeaves; ++i) {
        const double y = side - (i + phase) * side / kLeaves;
        const double way = i % 2 == 0 ? 2.5 : -1.5;
        disc(sheet, {stem(y) + way, y}, 2.5, inks.rim);
        ball(sheet, {stem(y) + way, y}, 1.9, bulb);
    }
}

Sheet kelpBed() {
    Sheet sheet(64, Tiles::Both, Ink::Night);
    const Field gloom = layeredNoise(64, 64, {3, 3}, 2, 301);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        return shade({Ink::Night, Ink::DeepSea, Ink::DeepSea, Ink::DeepSea}, gloom.at(x, y) - 0.05,
                     {x, y}, 0.5);
    });
    const LeafInks far{Ink::Night, Ink::Night, Ink::DeepKelp, Ink::DeepKelp};
    const LeafInks near{Ink::Night, Ink::DeepKelp, Ink::Kelp, Ink::Brass};
    for (const double root : {0.0, 32.0}) kelpPlant(sheet, root, root / 64.0 + 0.4, far);
    for (const double root : {16.0, 48.0}) kelpPlant(sheet, root, root / 64.0, near);
    return sheet;
}

struct Strap {
    Place from;
    double turn = 0;  ///< Direction of growth in turns; 0.75 is up.
    int forks = 0;    ///< How often it still forks.
};

/// A strap of wrack that forks, with pairs of round floats below the lower forks.
void wrackStrap(Sheet& sheet, const Strap& strap) {
    const double length = 6.5 + 1.2 * strap.forks;
    const Place to{strap.from.x + length * wave(strap.turn + 0.25),
                   strap.from.y + length * wave(strap.turn)};
    const double half = 1.2 + 0.2 * strap.forks;
    const int steps = floorToInt(length * 2.0);
    for (const double reach : {half + 1.0, half}) {
        for (int i = 0; i <= steps; ++i) {
            const double t = static_cast<double>(i) / steps;
            disc(sheet, {mix(strap.from.x, to.x, t), mix(strap.from.y, to.y, t)}, reach,
                 reach > half ? Ink::Night : Ink::Kelp);
        }
    }
    for (int i = 0; i <= steps; ++i) {
        const double t = static_cast<double>(i) / steps;
        sheet.set(floorToInt(mix(strap.from.x, to.x, t) + 1.0),
                  floorToInt(mix(strap.from.y, to.y, t) + 0.5), Ink::DeepKelp);
    }
    if (strap.forks == 0) return;
    wrackStrap(sheet, {to, strap.turn - 0.085, strap.forks - 1});
    wrackStrap(sheet, {to, strap.turn + 0.085, strap.forks - 1});
    if (strap.forks == 1) return;
    constexpr std::array<Ink, 4> kFloat = {Ink::DeepKelp, Ink::Kelp, Ink::Kelp, Ink::Brass};
    for (const double way : {-2.8, 2.8}) {
        const Place middle{mix(strap.from.x, to.x, 0.65) - way * wave(strap.turn),
                           mix(strap.from.y, to.y, 0.65) + way * wave(strap.turn + 0.25)};
        disc(sheet, middle, 2.7, Ink::Night);
        ball(sheet, middle, 2.2, kFloat);
    }
}

Sheet bladderWrack() {
    Sheet sheet(64, Tiles::Both, Ink::Slate);
    const Field rock = layeredNoise(64, 64, {5, 5}, 3, 311);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        return shade({Ink::Slate, Ink::Stone, Ink::Stone, Ink::Mist},
                     0.42 + 4.0 * slopeToLight(rock, x, y), {x, y}, 0.2);
    });
    wrackStrap(sheet, {{14.0, 30.0}, 0.79, 3});
    wrackStrap(sheet, {{46.0, 46.0}, 0.70, 3});
    wrackStrap(sheet, {{10.0, 62.0}, 0.75, 2});
    wrackStrap(sheet, {{48.0, 8.0}, 0.80, 2});
    return sheet;
}

/// Tufts of dune grass on blown sand.
Sheet marramGrass() {
    Sheet sheet(32, Tiles::Both, Ink::DrySand);
    const Field drift = layeredNoise(32, 32, {3, 6}, 2, 322);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        return shade({Ink::WetSand, Ink::DrySand, Ink::DrySand}, drift.at(x, y) - 0.08, {x, y},
                     0.5);
    });
    for (const core::Point corner : {core::Point{1, 1}, {17, 5}, {6, 17}, {22, 21}}) {
        stamp(sheet, corner,
              {
                  "...k.......k...",
                  "k...k..k..k....",
                  ".k..kK.k.kK...k",
                  ".kK..K.KkK...k.",
                  "..KK.kKKK..kK..",
                  "k..KKkKkK.kKk..",
                  ".kK.KKKkKKKk..k",
                  "..kKkKkKKKkkKk.",
                  "...kKkKKkKKKk..",
                  "....kkKKkKkkBB.",
                  "....TkkKkkkBBBB",
                  ".....TTkTTBBB..",
              });
    }
    return sheet;
}

/// White flowers with yellow hearts in feathery turf.
Sheet seaMayweed() {
    Sheet sheet(32, Tiles::Both, Ink::DeepKelp);
    const Field turf = layeredNoise(32, 32, {8, 8}, 2, 331);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        return shade({Ink::Tar, Ink::DeepKelp, Ink::DeepKelp, Ink::Kelp}, turf.at(x, y), {x, y},
                     0.9);
    });
    for (const core::Point corner : {core::Point{2, 0},
                                     {13, 5},
                                     {24, 1},
                                     {6, 12},
                                     {18, 14},
                                     {28, 12},
                                     {1, 22},
                                     {12, 23},
                                     {22, 24}}) {
        stamp(sheet, corner,
              {
                  "...N.N...",
                  ".NNWNWNN.",
                  ".NWWWWWN.",
                  "NWWOOOWWN",
                  ".NWOOBWN.",
                  "NWWOBBWMN",
                  ".NMWWWMN.",
                  "..NMNMN..",
                  "...NKN...",
                  "....K....",
              });
    }
    return sheet;
}

}  // namespace

std::vector<Sample> plantSamples() {
    return {
        {"Kelp bed", "kelp plant sea", kelpBed()},
        {"Bladder wrack", "kelp plant shore rock", bladderWrack()},
        {"Marram grass", "grass plant dune", marramGrass()},
        {"Sea mayweed", "flower plant ground", seaMayweed()},
    };
}

}  // namespace pantile::sample_art
