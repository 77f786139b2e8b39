// What lives on the shore, and what it leaves behind.

#include <array>
#include <cmath>

#include "draw/sample.h"

namespace pantile::sample_art {

namespace {

Sheet shoreCrab() {
    Sheet sheet(32, Tiles::No, Ink::Clear);
    stamp(sheet, {0, 4},
          {
              "...rrr....................rrr...", "..rRRRr..................rRRRr..",
              ".rRYRRr..................rRRYRr.", ".rRRr.r.................r.rRRRr.",
              ".rRRr..r...............r..rRRRr.", ".rRRRrrR....NN...NN....RrrRRRr..",
              "..rRRRRr...NWWN.NWWN...rRRRRRr..", "...rRRr....NWNN.NNWN....rRRRr...",
              "....rRr.....rNrrrNr.....rRRr....", ".....rRr..rrRRRRRRRrr..rRRr.....",
              "......rRrrRRYYRRRRRRRrrRRr......", ".......rRRRYYRRRRRRRRRrRr.......",
              "........rRRYRRRRRrRRRRRr........", ".......rRRRRRRRRrRRrRRRRr.......",
              "...rrrrRRRRrRRRRRRRRrRRRRrrrr...", "..rRRrRrRRRRrrRRRrrRRRRrRrRRRr..",
              ".rRr.rRRrRRRRRrrrRRRRRrRRr..rRr.", ".rr.rRRr.rRRRRRRRRRRRrrrRRr..rr.",
              "...rRr.rrr.rrRRRRRrrrRrr.rRr....", "..rRr.rRr....rrrrr...rRr..rRr...",
              "..rr.rRr..............rRr..rr...", ".....rr................rr.......",
          });
    outline(sheet, Ink::Night);
    return sheet;
}

Sheet starfish() {
    Sheet sheet(16, Tiles::No, Ink::Clear);
    stamp(sheet, {0, 0},
          {
              ".......NN.......",
              "......NRRN......",
              "......NROrN.....",
              ".....NRRORN.....",
              ".....NRORrN.....",
              ".NNNNNROORNNNNN.",
              "NRRRRRROORRRRRrN",
              "NROROROYYORORrN.",
              ".NRRRROYYORRrN..",
              "..NNRROOOORrN...",
              "...NRORROORN....",
              "..NRROrrRRORN...",
              "..NROrNNNrRRrN..",
              ".NRRrN...NrRrN..",
              ".NrrN.....NrrrN.",
              "..NN.......NNN..",
          });
    return sheet;
}

Sheet gullFeather() {
    Sheet sheet(16, Tiles::No, Ink::Clear);
    stamp(sheet, {0, 0},
          {
              "............NNN.",
              "..........NNGDDN",
              "........NNGGGDDN",
              ".......NMMGGWDDN",
              "......NWMMGWGDN.",
              ".....NWWMMWGGN..",
              "....NWWWMWMGGN..",
              "...NWWWWWMMGN...",
              "...NWWWWMMMGN...",
              "...NWWWWMMMN....",
              "...NWWWMMMN.....",
              "...NNWMMNN......",
              "..NWANNN........",
              ".NAAN...........",
              "NAAN............",
              "NNN.............",
          });
    return sheet;
}

Sheet whelkShell() {
    Sheet sheet(16, Tiles::No, Ink::Clear);
    stamp(sheet, {0, 0},
          {
              "......NN........",
              ".....NYAN.......",
              "....NWYABN......",
              "....NYAABN......",
              "...NNBBBTNN.....",
              "..NWYYAAABBN....",
              "..NYYYAAABBN....",
              ".NNBBBBBBTTTN...",
              "NWWYYYAAAAABBN..",
              "NWYYYYAANNNABBN.",
              "NYYYAAANTTTNABN.",
              "NYYAAANTrrRNABN.",
              ".NAABANTrRRNBTN.",
              "..NBBBNTrRNBTN..",
              "...NTTBNNNNTN...",
              "....NNNN..NNN...",
          });
    return sheet;
}

/// A herring gull that stands on one leg and looks left.
Sheet herringGull() {
    Sheet sheet(32, Tiles::No, Ink::Clear);
    stamp(sheet, {1, 2},
          {
              ".......NNNNN..................", ".....NNWWWWWNN................",
              "....NWWWWWWWWWN...............", "...NWWWWWWWWWWN...............",
              "..NNWWONWWWWWWWN..............", "NNOOWWNNWWWWWWWN..............",
              "NOOOOWWWWWWWWWMN..............", "NOrONWWWWWWWWMMN..............",
              ".NNNNWWWWWWWWMN...............", ".....NWWWWWWWMN...............",
              ".....NWWWWWWWWMNN.............", ".....NWWWWWWWWWMMNNN..........",
              "....NWWWWWWWMMMGGGGGNNN.......", "....NWWWWWWMGGGGGGGGGGGNNN....",
              "....NWWWWWMGGGGGGGGGGGGGGGNNN.", "....NWWWWWMGGGGGGGGGGGGGDDDNNN",
              "....NWWWWWMGGGGGGGGGGGDDDNNNWN", ".....NWWWWWMGGGGGGGGDDDNNNNNN.",
              ".....NWWWWWWMMGGGGDDDWNNWNN...", "......NWWWWWWWMMMMMMWWWWN.....",
              ".......NMWWWWWWWWWWWWMMN......", "........NNMMWWWWWWMMNNN.......",
              "..........NNNMMMMNNN..........", ".............NNONN............",
              ".............NOBN.............", ".............NOBN.............",
              "............NNOBNN............", "...........NOOOOOBN...........",
              "...........NNNNNNNN...........",
          });
    return sheet;
}

struct Mussel {
    Place hinge;
    double turn = 0;  ///< Which way the broad end points. Units: turns.
    double length = 0;
};

/// A drop-shaped shell with growth lines, pale where the hinge is worn.
void drawMussel(Sheet& sheet, const Mussel& mussel) {
    const Place way{wave(mussel.turn + 0.25), wave(mussel.turn)};
    const int reach = floorToInt(mussel.length) + 3;
    const int middleX = floorToInt(mussel.hinge.x + way.x * mussel.length / 2.0);
    const int middleY = floorToInt(mussel.hinge.y + way.y * mussel.length / 2.0);
    for (int y = middleY - reach; y <= middleY + reach; ++y) {
        for (int x = middleX - reach; x <= middleX + reach; ++x) {
            const double dx = x - mussel.hinge.x;
            const double dy = y - mussel.hinge.y;
            const double along = (dx * way.x + dy * way.y) / mussel.length;
            const double across = (dy * way.x - dx * way.y) / mussel.length;
            if (along < -0.08 || along > 1.08) continue;
            const double t = clampUnit(along);
            // Narrow at the hinge, broadest past the middle, round at the end.
            const double half = 0.46 * std::sqrt(t * (1.0 - t * t * t)) * (0.62 + 0.55 * t);
            const double rim = half - std::abs(across);
            if (rim < -0.09) continue;
            if (rim < 0.03) {
                sheet.set(x, y, Ink::Night);
                continue;
            }
            const double facing = across * (way.y - way.x) + 0.25 * (0.5 - along);
            const double lit = 0.50 + 1.3 * facing;
            Ink ink = shade({Ink::Night, Ink::DeepSea, Ink::DeepSea, Ink::Sea, Ink::Sea}, lit);
            const double growth = (along + 1.6 * across * across) * mussel.length / 3.7;
            if (growth - std::floor(growth) < 0.25 && along > 0.3)
                ink = lit > 0.6 ? Ink::DeepSea : Ink::Night;
            if (along < 0.22) ink = Ink::Mist;
            if (along < 0.12) ink = Ink::Foam;
            if (lit > 0.80 && along > 0.45 && along < 0.65) ink = Ink::Foam;
            sheet.set(x, y, ink);
        }
    }
}

/// Mussels crowded on grey rock, all leaning with the tide.
Sheet musselBed() {
    Sheet sheet(64, Tiles::Both, Ink::Stone);
    const Field rock = layeredNoise(64, 64, {10, 10}, 2, 701);
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        return shade({Ink::Stone, Ink::Mist, Ink::Mist}, rock.at(x, y), {x, y}, 0.3);
    });
    Chance chance(702);
    for (const Place& place : spreadPlaces(64, 64, 27, 703))
        drawMussel(sheet, {place, chance.between(0.10, 0.32), chance.between(11.5, 15.0)});
    return sheet;
}

}  // namespace

std::vector<Sample> creatureSamples() {
    return {
        {"Mussel bed", "mussel rock shore", musselBed()},
        {"Shore crab", "crab creature sprite", shoreCrab()},
        {"Herring gull", "gull bird creature sprite", herringGull()},
        {"Starfish", "starfish creature sprite", starfish()},
        {"Gull feather", "gull feather thing sprite", gullFeather()},
        {"Whelk shell", "shell thing sprite", whelkShell()},
    };
}

}  // namespace pantile::sample_art
