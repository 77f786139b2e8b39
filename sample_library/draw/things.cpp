// Things of the harbour, and the lighthouse itself.

#include <algorithm>
#include <array>
#include <cmath>

#include "draw/masonry.h"
#include "draw/sample.h"

namespace pantile::sample_art {

namespace {

constexpr std::array<Ink, 4> kRedPaint = {Ink::Tar, Ink::Rust, Ink::BuoyRed, Ink::BuoyRed};
constexpr std::array<Ink, 4> kWhitePaint = {Ink::Slate, Ink::Stone, Ink::Mist, Ink::Foam};

/// How a round upright body is lit at `across` (-1 left .. 1 right).
double barrelLight(double across) {
    return 0.80 - 0.50 * across - 0.30 * across * across;
}

Sheet channelBuoy() {
    Sheet sheet(32, Tiles::No, Ink::Clear);
    // The lattice mast with its lamp.
    line(sheet, {15, 6}, {11, 15}, Ink::Stone);
    line(sheet, {16, 6}, {20, 15}, Ink::Slate);
    line(sheet, {12, 12}, {19, 12}, Ink::Stone);
    line(sheet, {13, 9}, {18, 12}, Ink::Slate);
    stamp(sheet, {13, 0}, {"..OO..", ".OYYO.", "OYWWYO", "OYWWYO", ".BOOB.", ".DGGD."});
    for (int y = 15; y < 28; ++y) {
        const double down = (y - 15) / 12.0;
        const double half = y < 23 ? 6.5 + 4.5 * down : 12.5 - 0.5 * (y - 23);
        for (int x = floorToInt(16.0 - half); x < floorToInt(16.0 + half); ++x) {
            const double lit = barrelLight((x - 15.5) / half);
            const bool white = y >= 18 && y < 21;
            Ink ink = shade(white ? kWhitePaint : kRedPaint, lit, {x, y}, 0.2);
            if (y >= 26) ink = shade({Ink::Night, Ink::DeepKelp, Ink::Kelp}, lit, {x, y}, 0.3);
            if (y == 23) ink = shade({Ink::Night, Ink::Tar, Ink::Rust}, lit);
            if (y == 22 && x % 4 == 1) ink = Ink::Foam;
            sheet.set(x, y, ink);
        }
    }
    outline(sheet, Ink::Night);
    // It rides in a ring of foam.
    stamp(sheet, {1, 26},
          {
              "..UW......................WU..",
              ".UWWW....................WWWU.",
              "UWWUWWW................WWWUWWU",
              "UuWWWUWWWWWWWWWWWWWWWWWWUWWWuU",
              "..uUUWWWWUWWWWUUWWWWWUWWUUUu..",
              ".....uuuUUUUUUUUUUUUUUuuu.....",
          });
    return sheet;
}

Sheet lifeRing() {
    Sheet sheet(32, Tiles::No, Ink::Clear);
    for (int y = 0; y < 32; ++y) {
        for (int x = 0; x < 32; ++x) {
            const double dx = x - 15.5;
            const double dy = y - 15.5;
            const double radius = std::sqrt(dx * dx + dy * dy);
            const double across = (radius - 10.0) / 4.5;
            if (std::abs(across) > 1.0) continue;
            const double turn = turnsOf(dx, dy) * 4.0 + 0.5;
            const double part = std::abs(turn - std::floor(turn) - 0.5);
            // A round tube: the inner half of the top left is shaded, its outer half lit.
            const double facing = -(dx + dy) / (radius * 1.42);
            const double lit =
                0.62 + 0.40 * across * facing - 0.18 * across * across + 0.12 * facing;
            Ink ink = shade(part < 0.19 ? std::span<const Ink>(kRedPaint) : kWhitePaint, lit,
                            {x, y}, 0.2);
            if (part >= 0.19 && part < 0.235) ink = Ink::Rust;
            sheet.set(x, y, ink);
        }
    }
    outline(sheet, Ink::Night);
    // The grab line swings from band to band.
    for (int i = 0; i < 96; ++i) {
        const double turns = i / 96.0;
        const double part = turns * 4.0 + 0.5 - std::floor(turns * 4.0 + 0.5);
        const double reach = 14.4 + 1.4 * (0.5 - 0.5 * wave(part + 0.25));
        sheet.set(floorToInt(15.5 + reach * wave(turns + 0.25) + 0.5),
                  floorToInt(15.5 + reach * wave(turns) + 0.5),
                  i % 3 == 0 ? Ink::Bark : Ink::DrySand);
    }
    return sheet;
}

Sheet oldAnchor() {
    Sheet sheet(32, Tiles::No, Ink::Clear);
    const auto bar = [&](core::Point corner, core::Size size) {
        fillRectangle(sheet, corner, size, Ink::Slate);
        line(sheet, corner, {corner.x + size.width - 1, corner.y}, Ink::Mist);
        line(sheet, corner, {corner.x, corner.y + size.height - 1}, Ink::Stone);
    };
    // The arms: a thick arc with flukes.
    for (double turns = 0.04; turns <= 0.46; turns += 1.0 / 256.0) {
        const Place at{15.5 + 11.0 * wave(turns + 0.25), 16.0 + 11.0 * wave(turns)};
        disc(sheet, at, 1.7, Ink::Slate);
    }
    for (double turns = 0.04; turns <= 0.46; turns += 1.0 / 256.0) {
        const Place at{15.5 + 10.2 * wave(turns + 0.25), 16.0 + 10.2 * wave(turns)};
        sheet.set(floorToInt(at.x + 0.5), floorToInt(at.y + 0.5), Ink::Stone);
    }
    stamp(sheet, {1, 14}, {"..M....", ".MGM...", ".MGGD..", "MGGGDD.", "MGGDDDD"});
    stamp(sheet, {23, 14}, {"....M..", "...MGD.", "..GGGD.", ".GGGDDD", "GGGDDDD"});
    bar({14, 7}, {4, 21});
    bar({7, 8}, {18, 3});
    disc(sheet, {7.0, 9.0}, 1.6, Ink::Stone);
    disc(sheet, {24.0, 9.0}, 1.6, Ink::Slate);
    for (double turns = 0.0; turns < 1.0; turns += 1.0 / 64.0)
        disc(sheet, {15.5 + 2.8 * wave(turns + 0.25), 4.0 + 2.8 * wave(turns)}, 0.8,
             turns > 0.4 && turns < 0.85 ? Ink::Mist : Ink::Slate);
    for (const core::Point spot :
         {core::Point{15, 15}, {16, 19}, {15, 20}, {9, 23}, {21, 24}, {22, 23}, {12, 9}, {20, 10}})
        sheet.set(spot.x, spot.y, Ink::Rust);
    for (const core::Point spot : {core::Point{15, 16}, {16, 20}, {10, 24}, {21, 10}})
        sheet.set(spot.x, spot.y, Ink::WetSand);
    outline(sheet, Ink::Night);
    return sheet;
}

/// A withy pot with net over its hoops.
Sheet lobsterPot() {
    Sheet sheet(32, Tiles::No, Ink::Clear);
    const auto inside = [](int x, int y) {
        const double dx = (x - 15.5) / 13.5;
        const double dy = (y - 25.0) / 18.5;
        return y < 27 && dx * dx + dy * dy <= 1.0;
    };
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        if (!inside(x, y)) return std::nullopt;
        if (wrapped(x + y, 6) == 0) return Ink::WetSand;
        if (wrapped(x - y, 6) == 0) return Ink::Bark;
        return chanceAt(x / 2, y / 2, 801) < 0.2 ? Ink::Slate : Ink::Night;
    });
    // Three hoops and the ridge.
    for (const double width : {13.5, 4.6}) {
        for (double turns = 0.5; turns <= 1.0; turns += 1.0 / 256.0) {
            const double cx = 15.5 + width * wave(turns + 0.25);
            const double cy = 25.0 + 18.0 * wave(turns);
            const bool left = wave(turns + 0.25) < 0.0;
            disc(sheet, {cx, cy}, 1.0, left ? Ink::DrySand : Ink::Bark);
        }
    }
    for (const int y : {16, 27}) {
        fillRectangle(sheet, {y == 16 ? 4 : 1, y - 1}, {y == 16 ? 24 : 30, 3}, Ink::WetSand);
        line(sheet, {y == 16 ? 4 : 1, y - 1}, {y == 16 ? 27 : 30, y - 1}, Ink::DrySand);
        line(sheet, {y == 16 ? 4 : 1, y + 1}, {y == 16 ? 27 : 30, y + 1}, Ink::Bark);
    }
    // The mouth.
    disc(sheet, {15.5, 21.5}, 3.8, Ink::Night);
    for (double turns = 0.0; turns < 1.0; turns += 1.0 / 64.0)
        sheet.set(floorToInt(15.5 + 4.0 * wave(turns + 0.25) + 0.5),
                  floorToInt(21.5 + 4.0 * wave(turns) + 0.5),
                  turns > 0.35 && turns < 0.9 ? Ink::Foam : Ink::Mist);
    drawRope(sheet,
             {{15.5, 5.6},
              {15.0, 5.0},
              {14.6, 4.2},
              {14.8, 3.4},
              {15.5, 2.8},
              {16.4, 3.0},
              {17.0, 3.8},
              {16.8, 4.8},
              {16.2, 5.5}},
             0.8);
    outline(sheet, Ink::Night);
    return sheet;
}

/// A board on a post that warns of the tide: a wave, and an arrow up.
Sheet tideWarning() {
    Sheet sheet(32, Tiles::No, Ink::Clear);
    fillRectangle(sheet, {13, 20}, {6, 12}, Ink::Bark);
    line(sheet, {13, 20}, {13, 31}, Ink::WetSand);
    line(sheet, {14, 24}, {14, 31}, Ink::WetSand);
    line(sheet, {18, 20}, {18, 31}, Ink::Tar);
    line(sheet, {16, 22}, {16, 29}, Ink::Tar);
    line(sheet, {13, 22}, {18, 22}, Ink::Tar);
    fillRectangle(sheet, {2, 2}, {28, 20}, Ink::Rust);
    fillRectangle(sheet, {2, 2}, {27, 19}, Ink::BuoyRed);
    fillRectangle(sheet, {4, 4}, {24, 16}, Ink::Foam);
    line(sheet, {4, 4}, {27, 4}, Ink::Mist);
    line(sheet, {4, 4}, {4, 19}, Ink::Mist);
    stamp(sheet, {11, 5},
          {
              ".....NN...",
              "....NNNN..",
              "...NNNNNN.",
              "..NNNNNNNN",
              ".....NN...",
              ".....NN...",
          });
    stamp(sheet, {5, 12},
          {
              "..uuuu......uuuu......",
              ".uuuuuu....uuuuuu.....",
              "uuu..uuu..uuu..uuu..uu",
              "uu....uuuuuu....uuuuuu",
              "u......uuuu......uuuu.",
              "UUUUUUUUUUUUUUUUUUUUUU",
              "UUUUUUUUUUUUUUUUUUUUUU",
          });
    for (const core::Point screw : {core::Point{3, 3}, {27, 3}, {3, 19}, {27, 19}})
        sheet.set(screw.x, screw.y, Ink::DrySand);
    outline(sheet, Ink::Night);
    return sheet;
}

Sheet messageBottle() {
    Sheet sheet(16, Tiles::No, Ink::Clear);
    stamp(sheet, {0, 0},
          {
              "............NN..",
              "...........NAAN.",
              "..........NAAABN",
              ".........NKNABN.",
              "........NWKkNN..",
              ".......NWKkN....",
              "....NNNWKkN.....",
              "...NKKWKKkN.....",
              "..NKWYYKKkN.....",
              ".NKWYYYYKkN.....",
              "NKWYYYYAKkN.....",
              "NKYYYYAAkkN.....",
              "NKKYYAAkkN......",
              "NkKKAAkkN.......",
              ".NkkkkkN........",
              "..NNNNN.........",
          });
    return sheet;
}

Sheet logbook() {
    Sheet sheet(16, Tiles::No, Ink::Clear);
    stamp(sheet, {1, 0},
          {
              "..NNNNNNNNNN..",
              ".NuUuuuuuuuuN.",
              "NuUuuuuuuuuuN.",
              "NuUuuOOOOuuuN.",
              "NuUuOuuWuOuuN.",
              "NuUuOuWWuOuuN.",
              "NuUuOuRRuOuuN.",
              "NuUuOuWWuOuuN.",
              "NuUuOuRRuOuuN.",
              "NuUuOURRUOuuN.",
              "NuUuuOOOOuuuN.",
              "NuDNNNNNNNNNN.",
              "NuNWWMWWWMWWN.",
              "NuNMWWWMWWWMN.",
              ".NuuuuuuuuuuN.",
              "..NNNNNNNNNNN.",
          });
    return sheet;
}

/// The lighthouse of the island, on its rock.
Sheet lighthouse() {
    Sheet sheet(64, Tiles::No, Ink::Clear);
    // The rock.
    const Field crag = layeredNoise(64, 64, {6, 6}, 3, 811);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        const double top = 52.0 + std::abs(x - 31.5) * 0.30 + 7.0 * (crag.at(x, 3) - 0.5);
        if (y < top) return std::nullopt;
        const double lit = 0.45 + 5.5 * slopeToLight(crag, x, y) - 0.012 * (x - 31.5);
        if (y < top + 2.0) return x < 40 ? Ink::Mist : Ink::Stone;
        return shade({Ink::Night, Ink::Slate, Ink::Slate, Ink::Stone, Ink::Mist}, lit, {x, y}, 0.2);
    });
    // The tower, narrower towards the gallery, in five bands.
    for (int y = 17; y < 56; ++y) {
        const double half = 6.0 + (y - 17) * 0.12;
        for (int x = floorToInt(32.0 - half); x < floorToInt(32.0 + half); ++x) {
            const double lit = barrelLight((x - 31.5) / half);
            const bool red = ((y - 17) / 8) % 2 == 0;
            sheet.set(x, y, shade(red ? kRedPaint : kWhitePaint, lit, {x, y}, 0.25));
        }
    }
    // Windows and the door.
    for (const int y : {27, 42}) {
        fillRectangle(sheet, {30, y}, {3, 4}, Ink::Night);
        line(sheet, {30, y}, {30, y + 3}, Ink::Brass);
    }
    stamp(sheet, {29, 49}, {".NNNN.", "NBBBTN", "NBBBTN", "NBOBTN", "NBBBTN", "NBBBTN", "NBBBTN"});
    // The gallery with its rail.
    fillRectangle(sheet, {23, 16}, {18, 2}, Ink::Slate);
    line(sheet, {23, 16}, {40, 16}, Ink::Mist);
    line(sheet, {24, 18}, {39, 18}, Ink::Night);
    for (int x = 23; x < 41; x += 3) line(sheet, {x, 12}, {x, 15}, Ink::Slate);
    line(sheet, {23, 12}, {40, 12}, Ink::Stone);
    // The lantern room: glass between bars, the lamp within.
    for (int y = 7; y < 16; ++y) {
        for (int x = 27; x < 37; ++x) {
            const double dx = x - 31.5;
            const double dy = y - 11.0;
            const double glow = 1.1 - std::sqrt(dx * dx + dy * dy) / 7.0;
            const bool barHere = x == 27 || x == 30 || x == 33 || x == 36;
            sheet.set(x, y,
                      barHere && glow < 0.75
                          ? Ink::Tar
                          : shade({Ink::Brass, Ink::Brass, Ink::DrySand, Ink::Foam}, glow));
        }
    }
    // The dome and its vane.
    stamp(sheet, {25, 0},
          {
              "......NN......",
              "......ON......",
              ".....NOBN.....",
              "....NRRrrN....",
              "...NRRRRrrN...",
              "..NRRRRRRrrN..",
              ".NRRRRRRRrrrN.",
              ".NNNNNNNNNNNN.",
          });
    outline(sheet, Ink::Night);
    // Surf at the foot of the rock.
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        const double lip = 60.0 + 1.6 * wave(x / 13.0) + 3.0 * (crag.at(x, 40) - 0.5);
        if (y < lip) return std::nullopt;
        if (y < lip + 1.5) return Ink::Foam;
        return y < lip + 2.6 ? Ink::Sea : Ink::DeepSea;
    });
    return sheet;
}

/// A clinker-built boat on the water, seen from the side, with its oar over the gunwale.
Sheet rowingBoat() {
    Sheet sheet(64, Tiles::No, Ink::Clear);
    const auto sheer = [](int x) {
        const double share = (x - 31.0) / 29.0;
        return 31.0 - 8.0 * share * share - (share > 0.0 ? 2.0 * share * share : 0.0);
    };
    // The far side of the inside.
    for (int x = 5; x < 58; ++x) {
        const int top = floorToInt(sheer(x) - 3.0 * (1.0 - std::abs(x - 31.0) / 28.0));
        for (int y = top; y < floorToInt(sheer(x)); ++y)
            sheet.set(x, y, y == top ? Ink::WetSand : Ink::Tar);
    }
    for (int x = 2; x < 62; ++x) {
        const double share = (x - 31.0) / 29.5;
        const int top = floorToInt(sheer(x));
        const double depth = 19.0 * (1.0 - share * share * share * share);
        for (int y = top; y < top + floorToInt(depth); ++y) {
            const int strake = (y - top) / 4;
            const int row = (y - top) % 4;
            const double lit = 0.75 - 0.12 * strake - 0.10 * share;
            Ink ink = shade({Ink::Night, Ink::DeepSea, Ink::DeepSea, Ink::Sea}, lit, {x, y}, 0.3);
            if (strake == 0) ink = shade({Ink::Stone, Ink::Mist, Ink::Foam}, lit + 0.1);
            if (strake >= 4) ink = Ink::Rust;
            if (row == 3) ink = strake == 0 ? Ink::Slate : Ink::Night;
            if (row == 0 && strake > 0 && strake < 4) ink = Ink::Sea;
            sheet.set(x, y, ink);
        }
    }
    for (int x = 2; x < 62; ++x) {
        sheet.set(x, floorToInt(sheer(x)) - 1, Ink::DrySand);
        sheet.set(x, floorToInt(sheer(x)), Ink::Bark);
    }
    // The stem, and the oar.
    for (int y = 19; y < 33; ++y) fillRectangle(sheet, {60 - (y - 19) / 5, y}, {2, 1}, Ink::Bark);
    for (int i = 0; i < 3; ++i)
        line(sheet, {14 + i, 15}, {34 + i, 45}, i == 2 ? Ink::Bark : Ink::DrySand);
    for (int i = 0; i < 9; ++i)
        fillRectangle(sheet, {31 + i * 2 / 3, 42 + i}, {6, 1},
                      i % 3 == 2 ? Ink::WetSand : Ink::DrySand);
    stamp(sheet, {21, 26}, {".GG.", "GNNG", "G..D"});
    outline(sheet, Ink::Night);
    const Field bend = layeredNoise(64, 64, {5, 2}, 2, 821);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        const double lip = 46.0 + 1.4 * wave(x / 16.0) + 3.0 * (bend.at(x, 7) - 0.5);
        if (y < lip) return std::nullopt;
        if (y < lip + 1.4) return Ink::Foam;
        const double ripple = wave(y / 5.0 + 2.6 * bend.at(x, y));
        if (ripple > 0.93) return y < 56 ? Ink::Foam : Ink::Mist;
        return shade({Ink::DeepSea, Ink::DeepSea, Ink::Sea}, 0.62 - (y - 46) / 34.0 + 0.3 * ripple,
                     {x, y}, 0.5);
    });
    return sheet;
}

}  // namespace

std::vector<Sample> thingSamples() {
    return {
        {"Lighthouse", "lighthouse thing sprite", lighthouse()},
        {"Rowing boat", "boat thing sprite sea", rowingBoat()},
        {"Channel buoy", "buoy thing sprite sea", channelBuoy()},
        {"Life ring", "ring thing sprite harbour", lifeRing()},
        {"Old anchor", "anchor iron thing sprite", oldAnchor()},
        {"Lobster pot", "pot net thing sprite", lobsterPot()},
        {"Tide warning", "sign thing sprite", tideWarning()},
        {"Message in a bottle", "bottle glass thing sprite", messageBottle()},
        {"Keeper's logbook", "book thing sprite", logbook()},
    };
}

}  // namespace pantile::sample_art
