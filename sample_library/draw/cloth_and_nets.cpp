// Sailcloth, nets and flags.

#include <array>
#include <cmath>

#include "draw/masonry.h"
#include "draw/sample.h"

namespace pantile::sample_art {

namespace {

/// Coarse weave in soft folds, with one double-stitched seam and one across it.
Sheet sailcloth() {
    Sheet sheet(64, Tiles::Both, Ink::DrySand);
    const Field bend = layeredNoise(64, 64, {2, 2}, 2, 602);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        // Upright folds that the wind bends.
        const double fold = wave(2.0 * x / 64.0 + 0.6 * bend.at(x, y) + 0.1);
        // The weave: short threads in staggered rows, dark in the folds and bright on their backs.
        const bool thread = y % 2 == 0 && wrapped(x + y, 4) < 2;
        if (!thread) return fold < -0.93 ? Ink::WetSand : Ink::DrySand;
        return shade({Ink::Bark, Ink::WetSand, Ink::WetSand, Ink::DrySand, Ink::Foam},
                     0.55 + 0.47 * fold);
    });
    for (int y = 0; y < 64; ++y) {
        sheet.set(13, y, Ink::Foam);
        sheet.set(21, y, Ink::Bark);
        sheet.set(22, y, Ink::WetSand);
        if (y % 4 < 2) {
            sheet.set(15, y, Ink::Bark);
            sheet.set(19, y + 2, Ink::Bark);
        }
    }
    // A patch, sewn on by hand.
    for (int y = 0; y < 17; ++y) {
        for (int x = 0; x < 19; ++x) {
            const bool rim = x == 0 || y == 0 || x == 18 || y == 16;
            const Ink cloth = (x + y) % 2 == 0 ? Ink::Stone : Ink::Mist;
            sheet.set(36 + x, 30 + y, rim ? Ink::Stone : cloth);
        }
    }
    line(sheet, {37, 47}, {55, 47}, Ink::Bark);
    line(sheet, {55, 31}, {55, 47}, Ink::Bark);
    for (int i = 1; i < 18; i += 3) {
        for (const int y : {29, 46}) line(sheet, {36 + i, y}, {36 + i, y + 1}, Ink::Tar);
        if (i < 16)
            for (const int x : {35, 54}) line(sheet, {x, 30 + i}, {x + 1, 30 + i}, Ink::Tar);
    }
    return sheet;
}

/// Knotted twine before dark water, with two cork floats.
Sheet fishingNet() {
    Sheet sheet(64, Tiles::Both, Ink::Night);
    const Field water = layeredNoise(64, 64, {3, 6}, 2, 611);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        return shade({Ink::Night, Ink::Night, Ink::DeepSea, Ink::DeepSea}, water.at(x, y), {x, y},
                     0.5);
    });
    // Twine hangs in slack diamonds, a quarter of the sheet wide.
    constexpr int kMesh = 16;
    const auto twine = [&](int x, int y, Ink ink, Ink shadow) {
        sheet.set(x, y, ink);
        sheet.set(x, y + 1, shadow);
    };
    for (int row = 0; row < 64; ++row) {
        for (int i = 0; i < 4; ++i) {
            // The two twines of a mesh part and meet again in a slack curve.
            const double part = 0.5 - 0.5 * wave(row / 32.0 + 0.25);
            const int reach = floorToInt(part * kMesh / 2.0 + 0.5);
            const int middle = i * kMesh;
            twine(middle + reach, row, Ink::WetSand, Ink::Bark);
            twine(middle - reach, row, Ink::DrySand, Ink::Bark);
        }
    }
    for (int i = 0; i < 4; ++i) {
        for (const core::Point knot : {core::Point{0, 0}, {0, 32}, {8, 16}, {8, 48}}) {
            stamp(sheet, {i * kMesh + knot.x - 2, knot.y - 2},
                  {
                      ".NNN..",
                      "NYYAN.",
                      "NYABN.",
                      "NABBN.",
                      ".NNN..",
                  });
        }
    }
    constexpr std::array<Ink, 4> kCork = {Ink::Tar, Ink::Rust, Ink::BuoyRed, Ink::DrySand};
    for (const Place& at : {Place{24.0, 16.0}, Place{56.0, 48.0}}) {
        disc(sheet, at, 5.6, Ink::Night);
        ball(sheet, at, 4.8, kCork);
    }
    return sheet;
}

/// Close-meshed netting before deep water.
Sheet herringNet() {
    Sheet sheet(16, Tiles::Both, Ink::DeepSea);
    for (int i = 0; i < 16; ++i) {
        sheet.set(i, i + 1, Ink::Night);
        sheet.set(i, 17 - i, Ink::Night);
    }
    for (int i = 0; i < 16; ++i) {
        sheet.set(i, i, i % 8 < 4 ? Ink::WetSand : Ink::Bark);
        sheet.set(i, 16 - i, i % 8 < 4 ? Ink::DrySand : Ink::WetSand);
    }
    for (const core::Point knot : {core::Point{0, 0}, {8, 8}})
        stamp(sheet, {knot.x - 1, knot.y - 1}, {"YAA", "ABB", "ABT"});
    return sheet;
}

/// Knitted wool: columns of stitches like small arrows, with a band of another colour.
Sheet keepersJersey() {
    Sheet sheet(32, Tiles::Both, Ink::DeepSea);
    for (int row = 0; row < 8; ++row) {
        const bool band = row == 2 || row == 4;
        const bool dotted = row == 3;
        for (int column = 0; column < 4; ++column) {
            const bool white = band || (dotted && column % 2 == 0);
            const Ink wool = white ? Ink::Mist : Ink::DeepSea;
            const Ink light = white ? Ink::Foam : Ink::Sea;
            const Ink dark = white ? Ink::Stone : Ink::Night;
            const int x = column * 8;
            const int y = row * 4;
            for (int i = 0; i < 4; ++i) {
                for (int thick = 0; thick < 3; ++thick) {
                    sheet.set(x + i, y + i + thick - 1, thick == 0 ? light : wool);
                    sheet.set(x + 7 - i, y + i + thick - 1, wool);
                }
                sheet.set(x + i, y + i + 2, dark);
                sheet.set(x + 7 - i, y + i + 2, dark);
            }
        }
    }
    return sheet;
}

/// A flag of the island: a white tower on red over a blue wave.
Sheet islandFlag() {
    Sheet sheet(32, Tiles::No, Ink::Clear);
    for (int x = 5; x < 31; ++x) {
        const int dip = floorToInt(1.6 * wave((x - 12) / 20.0) + 0.5);
        const double fold = wave((x - 12) / 20.0 + 0.35);
        for (int y = 0; y < 18; ++y) {
            Ink ink = fold < -0.55 ? Ink::Rust : Ink::BuoyRed;
            if (y >= 13) ink = fold < -0.55 ? Ink::DeepSea : Ink::Sea;
            if (y == 12) ink = Ink::Foam;
            sheet.set(x, y + 5 + dip, ink);
        }
    }
    stamp(sheet, {14, 5},
          {
              "...N...",
              "..NON..",
              "..OWO..",
              ".NNNNN.",
              "..WWM..",
              "..WNM..",
              "..WWM..",
              "..DDD..",
              "..DDN..",
              ".WWWMM.",
              ".WWWMM.",
              ".WWNMM.",
          });
    fillRectangle(sheet, {2, 2}, {3, 29}, Ink::WetSand);
    line(sheet, {2, 2}, {2, 30}, Ink::DrySand);
    line(sheet, {4, 2}, {4, 30}, Ink::Bark);
    stamp(sheet, {2, 0}, {"YOB", "OOB"});
    outline(sheet, Ink::Night);
    return sheet;
}

}  // namespace

std::vector<Sample> clothAndNetSamples() {
    return {
        {"Sailcloth", "cloth sail", sailcloth()},
        {"Fishing net", "net rope sea", fishingNet()},
        {"Herring net", "net rope sea", herringNet()},
        {"Keeper's jersey", "cloth wool", keepersJersey()},
        {"Island flag", "cloth flag sign sprite", islandFlag()},
    };
}

}  // namespace pantile::sample_art
