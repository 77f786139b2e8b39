// Brass, iron and the lamp.

#include <algorithm>
#include <array>
#include <cmath>

#include "draw/masonry.h"
#include "draw/sample.h"

namespace pantile::sample_art {

namespace {

constexpr std::array<Ink, 5> kBrass = {Ink::Tar, Ink::Bark, Ink::Brass, Ink::DrySand, Ink::Foam};

/// Riveted brass with a brushed shine that runs aslant.
Sheet brassPlate() {
    Sheet sheet(32, Tiles::Both, Ink::Brass);
    const Field brush = layeredNoise(32, 32, {2, 32}, 1, 501);
    const Field tarnish = layeredNoise(32, 32, {3, 3}, 2, 502);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        const double shine = wave((x + y) / 32.0 + 0.6);
        const double lit =
            0.54 + 0.30 * shine + 0.30 * (brush.at(x, y) - 0.5) + 0.30 * (tarnish.at(x, y) - 0.5);
        return shade({Ink::Bark, Ink::WetSand, Ink::Brass, Ink::Brass, Ink::Brass, Ink::DrySand},
                     lit, {x, y}, 0.3);
    });
    for (const core::Point corner : {core::Point{3, 3}}) {
        // The joint between plates, and four rivets at its corners.
        line(sheet, {corner.x, 0}, {corner.x, 31}, Ink::Tar);
        line(sheet, {0, corner.y}, {31, corner.y}, Ink::Tar);
        line(sheet, {corner.x + 1, corner.y + 1}, {corner.x + 31, corner.y + 1}, Ink::DrySand);
        line(sheet, {corner.x + 1, corner.y + 1}, {corner.x + 1, corner.y + 31}, Ink::DrySand);
        line(sheet, {corner.x - 1, corner.y + 1}, {corner.x - 1, corner.y + 31}, Ink::Bark);
        line(sheet, {corner.x + 1, corner.y - 1}, {corner.x + 31, corner.y - 1}, Ink::Bark);
        for (const core::Point rivet : {core::Point{4, 4}, {27, 4}, {4, 27}, {27, 27}}) {
            const core::Point at{corner.x + rivet.x, corner.y + rivet.y};
            stamp(sheet, {at.x - 2, at.y - 2},
                  {
                      ".BBB..",
                      "BWYOB.",
                      "BYOOT.",
                      "BOOBT.",
                      ".BTTTB",
                      "...BB.",
                  });
        }
    }
    return sheet;
}

/// Iron plates of a hull under old paint, with rust that runs from the seams.
Sheet rustyHull() {
    Sheet sheet(64, Tiles::Both, Ink::Slate);
    const Field paint = layeredNoise(64, 64, {4, 4}, 3, 511);
    const Field runs = layeredNoise(64, 64, {32, 3}, 2, 512);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        const int row = wrapped(y - 9, 32);
        const int column = wrapped(x - (wrapped(y - 9, 64) < 32 ? 7 : 39), 64);
        if (row == 0 || column == 0) return Ink::Night;
        // Rust gathers below a seam and thins downwards.
        const double rust =
            0.75 - row / 26.0 + 1.3 * (runs.at(x, y) - 0.5) + 0.9 * (paint.at(x, y) - 0.5);
        if (rust > 0.80) return Ink::WetSand;
        if (rust > 0.56) return Ink::Rust;
        if (rust > 0.48) return Ink::Bark;
        if (row == 1 || column == 1) return Ink::Mist;
        if (row == 31 || column == 63) return Ink::Slate;
        return shade({Ink::Slate, Ink::DeepSea, Ink::DeepSea, Ink::DeepSea, Ink::Stone},
                     paint.at(x, y) + 0.02, {x, y}, 0.2);
    });
    for (int y = 13; y < 64; y += 32) {
        for (int x = 3; x < 64; x += 8) {
            stamp(sheet, {x - 1, y - 1}, {".MM.", "MMGN", "MGDN", ".NN."});
            stamp(sheet, {x - 1, y + 23}, {".MM.", "MMGN", "MGDN", ".NN."});
        }
    }
    return sheet;
}

Sheet ironGrating() {
    Sheet sheet(16, Tiles::Both, Ink::Night);
    for (int i = 0; i < 2; ++i) {
        for (int x = 0; x < 16; ++x) {
            const int y = i * 8 + 2;
            sheet.set(x, y, Ink::Mist);
            sheet.set(x, y + 1, Ink::Stone);
            sheet.set(x, y + 2, Ink::Slate);
        }
    }
    for (int i = 0; i < 2; ++i) {
        for (int y = 0; y < 16; ++y) {
            const int x = i * 8 + 2;
            const bool under = (y / 8 + i) % 2 == 0 && wrapped(y, 8) >= 2 && wrapped(y, 8) <= 4;
            if (under) continue;
            sheet.set(x, y, Ink::Mist);
            sheet.set(x + 1, y, Ink::Stone);
            sheet.set(x + 2, y, Ink::Slate);
        }
    }
    sheet.set(11, 11, Ink::Rust);
    sheet.set(12, 12, Ink::Rust);
    sheet.set(12, 11, Ink::Bark);
    return sheet;
}

/// The lens of the lamp: rings of prisms round a bull's eye, in a brass frame.
Sheet lampGlass() {
    Sheet sheet(64, Tiles::Both, Ink::Bark);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        const double dx = x - 31.5;
        const double dy = y - 31.5;
        const double radius = std::sqrt(dx * dx + dy * dy);
        const int rim = std::min({x, y, 63 - x, 63 - y});
        if (rim == 0) return Ink::Tar;
        if (rim < 4) {
            const bool lit = (x < 4 && y < 64 - x) || (y < 4 && x < 64 - y);
            if (rim == 3) return lit ? Ink::Bark : Ink::DrySand;
            if (rim == 1) return lit ? Ink::DrySand : Ink::Bark;
            return Ink::Brass;
        }
        const double toLight = (dx + dy) / (radius + 0.5);  // -1.4 top left .. 1.4 bottom right
        if (radius < 9.0) {
            const double glow = 1.15 - radius / 11.0;
            if (radius > 8.0) return Ink::Tar;
            return shade({Ink::Brass, Ink::Brass, Ink::DrySand, Ink::Foam, Ink::Foam}, glow, {x, y},
                         0.3);
        }
        // Each ring is a prism: a bright slope and a dark back.
        const double ring = (radius - 9.0) / 5.2;
        const double part = ring - std::floor(ring);
        if (part < 0.16) return Ink::Slate;
        const double fade = radius / 60.0;
        const double lit = 1.05 - part * 0.75 - fade - 0.18 * toLight;
        // The beam's glare crosses the glass aslant.
        const double glare = std::abs(dx - 0.5 * dy + 4.0);
        if (glare < 3.5 && part > 0.3 && part < 0.8) return Ink::Foam;
        if (radius < 24.0)
            return shade({Ink::DeepSea, Ink::Sea, Ink::Mist, Ink::DrySand, Ink::Foam}, lit, {x, y},
                         0.4);
        return shade({Ink::Slate, Ink::DeepSea, Ink::Sea, Ink::Mist, Ink::Foam}, lit, {x, y}, 0.4);
    });
    for (const core::Point screw : {core::Point{6, 6}, {57, 6}, {6, 57}, {57, 57}}) {
        disc(sheet, {screw.x * 1.0, screw.y * 1.0}, 2.6, Ink::Tar);
        ball(sheet, {screw.x * 1.0, screw.y * 1.0}, 2.1, kBrass);
    }
    return sheet;
}

/// Links in turn flat and on edge.
Sheet anchorChain() {
    Sheet sheet(16, Tiles::Across, Ink::Clear);
    stamp(sheet, {0, 3},
          {
              "..NNNNNNNN......",
              ".NMMMMMMMGN.....",
              "NMGGGGGGGGDN....",
              "NMGDNNNNDGDN....",
              "MGDN....NNNNNNNN",
              "MGN.....NMMMMMMM",
              "MGN.....NDDDDDDD",
              "MGDN....NNNNNNNN",
              "NGGDNNNNDGDN....",
              "NGGGGGGGGDDN....",
              ".NDDDDDDDDN.....",
              "..NNNNNNNN......",
          });
    return sheet;
}

Sheet brassBell() {
    Sheet sheet(32, Tiles::No, Ink::Clear);
    for (int y = 6; y < 26; ++y) {
        const double down = (y - 6) / 19.0;
        // A shoulder, a waist and a flared mouth.
        double half = 5.0 + 3.6 * smoothStep(0.0, 0.25, down) + 4.6 * down * down * down;
        if (y == 6) half = 4.0;
        for (int x = floorToInt(15.5 - half + 0.5); x <= floorToInt(15.5 + half); ++x) {
            const double across = (x - 15.5) / half;
            double lit = 0.62 - 0.55 * across - 0.5 * across * across + 0.1;
            if (y == 10 || y == 21) lit -= 0.3;
            if (y == 11 || y == 22) lit += 0.12;
            Ink ink = shade({Ink::Tar, Ink::Bark, Ink::Brass, Ink::Brass, Ink::DrySand}, lit,
                            {x, y}, 0.25);
            if (across > -0.62 && across < -0.40 && y > 12 && y < 20) ink = Ink::Foam;
            sheet.set(x, y, ink);
        }
    }
    stamp(sheet, {11, 0},
          {
              "...NNNN...",
              "..NYOOBN..",
              ".NYONNOBN.",
              ".NOB..NBN.",
              ".NOB..NBN.",
              "..NOOOBN..",
          });
    stamp(sheet, {12, 26}, {".TBOBT..", "..BOYOB.", "..BOOOB.", "...BBB.."});
    outline(sheet, Ink::Night);
    return sheet;
}

Sheet stormLantern() {
    Sheet sheet(32, Tiles::No, Ink::Clear);
    // The wire handle.
    for (double turns = 0.5; turns <= 1.0; turns += 1.0 / 128.0) {
        const int x = floorToInt(15.5 + 9.5 * wave(turns + 0.25) + 0.5);
        const int y = floorToInt(9.0 + 8.0 * wave(turns) + 0.5);
        sheet.set(x, y, Ink::Stone);
    }
    for (int y = 8; y < 28; ++y) {
        for (int x = 5; x < 27; ++x) {
            const double across = (x - 15.5) / 9.0;
            const auto within = [&](double half) { return std::abs(x - 15.5) <= half; };
            const double lit = 0.66 - 0.5 * across;
            if (y < 11) {
                if (within(3.0 + (y - 8) * 1.5))
                    sheet.set(x, y, shade({Ink::Rust, Ink::BuoyRed, Ink::BuoyRed}, lit));
            } else if (y < 22) {
                const double half = 6.2 + 1.8 * wave((y - 11) / 22.0);
                if (!within(half)) continue;
                const double dx = x - 15.5;
                const double dy = y - 17.0;
                const double glow = 0.95 - std::sqrt(dx * dx + dy * dy * 0.7) / 10.0;
                sheet.set(x, y,
                          shade({Ink::Bark, Ink::Bark, Ink::Brass, Ink::Brass, Ink::DrySand}, glow,
                                {x, y}, 0.4));
            } else if (within(y < 24 ? 7.5 : 9.0)) {
                sheet.set(
                    x, y,
                    y == 24 ? Ink::Rust : shade({Ink::Rust, Ink::BuoyRed, Ink::BuoyRed}, lit));
            }
        }
    }
    // The guard: two bars, the ends of a hoop, and the gleam of the glass.
    for (const int x : {6, 25}) line(sheet, {x, 10}, {x, 24}, Ink::Stone);
    line(sheet, {7, 15}, {10, 15}, Ink::Slate);
    line(sheet, {21, 15}, {24, 15}, Ink::Slate);
    line(sheet, {9, 12}, {9, 19}, Ink::Foam);
    stamp(sheet, {13, 12},
          {"..W...", "..WW..", ".WWWW.", ".WWWW.", "WWWWWW", "WWOOWW", "WWORWW", ".WRRW.", "..TT..",
           "..TT.."});
    line(sheet, {13, 6}, {18, 6}, Ink::Mist);
    line(sheet, {12, 7}, {19, 7}, Ink::Slate);
    outline(sheet, Ink::Night);
    return sheet;
}

Sheet brassKey() {
    Sheet sheet(16, Tiles::No, Ink::Clear);
    stamp(sheet, {2, 0},
          {
              "...NNNN.....",
              "..NYYOBN....",
              ".NYONNOBN...",
              "NYON..NOBN..",
              "NON....NBN..",
              "NOBN..NOBN..",
              ".NOBNNOBN...",
              "..NBOOBN....",
              "...NYBN.....",
              "...NYBN.....",
              "...NYBNNNN..",
              "...NYOYYON..",
              "...NYBNNBN..",
              "...NYOYYON..",
              "...NOBNNNN..",
              "...NNNN.....",
          });
    return sheet;
}

}  // namespace

std::vector<Sample> metalAndGlassSamples() {
    return {
        {"Brass plate", "metal brass", brassPlate()},
        {"Rusty hull", "metal iron rust ship", rustyHull()},
        {"Iron grating", "metal iron ground", ironGrating()},
        {"Lamp glass", "glass lamp lighthouse brass", lampGlass()},
        {"Anchor chain", "metal iron chain edge sprite", anchorChain()},
        {"Brass bell", "metal brass bell thing sprite", brassBell()},
        {"Storm lantern", "lamp light thing sprite night", stormLantern()},
        {"Brass key", "metal brass key thing sprite", brassKey()},
    };
}

}  // namespace pantile::sample_art
