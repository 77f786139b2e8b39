// Lighthouse at dusk: the lamp is lit, the sun is just under the sea.

#include <algorithm>
#include <cmath>

#include "draw/painting.h"
#include "draw/pictures.h"

namespace pantile::sample_art {

namespace {

constexpr double kHorizon = 345.0;
constexpr double kTowerX = 410.0;
constexpr double kLampY = 92.0;

struct Dusk {
    Light zenith = lightOf("#14204a");
    Light high = lightOf("#3d4a86");
    Light low = lightOf("#c46a6c");
    Light glow = lightOf("#ffb45a");
    Light cloudLit = lightOf("#f0875a");
    Light cloudDark = lightOf("#3a3560");
    Light seaDark = lightOf("#101c3a");
    Light rockDark = lightOf("#0c0d1a");
    Light rockLit = lightOf("#4a3a46");
    Light white = lightOf("#d8c8c8");
    Light red = lightOf("#b03224");
    Light iron = lightOf("#15162a");
    Light lamp = lightOf("#fff2b8");
};

Light skyAt(const Dusk& dusk, double x, double y) {
    const double down = clampUnit(y / kHorizon);
    Light sky = blend(dusk.zenith, dusk.high, smoothStep(0.0, 0.55, down));
    sky = blend(sky, dusk.low, smoothStep(0.40, 0.88, down));
    const double sunX = (x - 150.0) / 300.0;
    const double sunY = (y - kHorizon) / 150.0;
    sky = blend(sky, dusk.glow,
                0.95 * (1.0 - smoothStep(0.0, 1.0, std::sqrt(sunX * sunX + sunY * sunY))));
    // Long streaks of cloud, lit from below near the horizon.
    const double streak = cloud(x / 150.0 + 3.0, y / 26.0, 3, 901);
    const double thick = smoothStep(0.52, 0.72, streak) * smoothStep(60.0, 170.0, y);
    const Light lit = blend(dusk.cloudDark, dusk.cloudLit, smoothStep(150.0, 310.0, y));
    sky = blend(sky, lit, 0.75 * thick);
    // A few stars.
    const int column = floorToInt(x / 26.0);
    const int row = floorToInt(y / 26.0);
    if (chanceAt(column, row, 902) < 0.30) {
        const double starX = (column + 0.2 + 0.6 * chanceAt(column, row, 903)) * 26.0;
        const double starY = (row + 0.2 + 0.6 * chanceAt(column, row, 904)) * 26.0;
        const double away = std::sqrt((x - starX) * (x - starX) + (y - starY) * (y - starY));
        sky = added(sky, dusk.lamp, 0.8 * cover(away - 1.2) * (1.0 - smoothStep(60.0, 190.0, y)));
    }
    return sky;
}

/// The beam: two cones from the lamp, brightest at the lamp.
double beamAt(double x, double y) {
    const double dx = std::abs(x - kTowerX);
    const double dy = y - kLampY - (x < kTowerX ? 0.06 : -0.06) * dx;
    const double half = 10.0 + 0.14 * dx;
    return 0.75 * (1.0 - smoothStep(0.25, 1.0, std::abs(dy) / half)) *
           (1.0 - smoothStep(0.0, 460.0, dx));
}

Light seaAt(const Dusk& dusk, double x, double y) {
    const double depth = y - kHorizon;
    const double swell = wave(std::sqrt(depth) * 1.6 + 0.9 * cloud(x / 60.0, y / 12.0, 2, 911));
    // Calm water mirrors the sky, darker, and broken by the swell.
    const Light mirrored = skyAt(dusk, x + 10.0 * swell, kHorizon - depth * 1.3 - 6.0 * swell);
    Light sea = blend(dusk.seaDark, mirrored, 0.58 + 0.16 * swell);
    const double road = 1.0 - smoothStep(0.0, 60.0 + 0.7 * depth, std::abs(x - 150.0));
    sea = added(sea, dusk.glow, 0.6 * road * smoothStep(0.35, 0.9, swell));
    const double lampRoad = 1.0 - smoothStep(0.0, 14.0 + 0.22 * depth, std::abs(x - kTowerX));
    return added(sea, dusk.lamp, 0.55 * lampRoad * smoothStep(0.2, 0.9, swell));
}

double rockTop(double x) {
    const double dx = (x - 425.0) / 205.0;
    return 312.0 + 78.0 * dx * dx + 26.0 * (cloud(x / 34.0, 0.5, 3, 921) - 0.5);
}

}  // namespace

core::Pixels lighthouseAtDusk() {
    const Dusk dusk;
    return paintPicture([&](double x, double y) {
        Light colour = y < kHorizon ? skyAt(dusk, x, y) : seaAt(dusk, x, y);
        if (y < kHorizon) colour = blend(colour, dusk.lamp, beamAt(x, y));
        // The rock, and surf round its foot.
        const double foot =
            388.0 + 5.0 * wave(x / 70.0) + 8.0 * (cloud(x / 20.0, 7.0, 2, 922) - 0.5);
        const double face = cloud(x / 26.0, y / 20.0, 3, 923);
        const double slope = cloud(x / 26.0 - 0.2, y / 20.0 - 0.2, 3, 923) - face;
        const Light rock = blend(dusk.rockDark, dusk.rockLit, clampUnit(0.35 - 2.4 * slope));
        colour = blend(colour, rock, cover(rockTop(x) - y) * cover(y - foot));
        const double surf =
            cover(std::abs(y - foot) - 3.0 - 2.0 * cloud(x / 9.0, 1.0, 2, 924), 2.5);
        colour = blend(colour, dusk.white, 0.75 * surf * cover(rockTop(x) - foot - 4.0, 8.0));
        // The tower.
        const double rise = clampUnit((330.0 - y) / 210.0);
        const double half = mix(44.0, 27.0, rise);
        const double across = (x - kTowerX) / half;
        if (y > 112.0 && y < 332.0) {
            const bool red = floorToInt((y - 112.0) / 44.0) % 2 == 0;
            // The last light comes from the left; the right side is in the dusk.
            const double lit = 0.85 - 0.62 * smoothStep(-0.7, 0.9, across);
            Light wall = dimmed(red ? dusk.red : dusk.white, lit);
            wall = added(wall, dusk.glow, 0.16 * smoothStep(-0.2, -0.95, across));
            for (const double windowY : {176.0, 264.0}) {
                const double pane =
                    std::max(std::abs(x - kTowerX + 2.0) - 6.0, std::abs(y - windowY) - 11.0);
                wall = blend(wall, dusk.iron, cover(pane - 3.0));
                wall = blend(wall, dusk.glow, cover(pane));
            }
            colour = blend(colour, wall, cover(std::abs(x - kTowerX) - half));
        }
        // Gallery, lantern room and dome.
        colour = blend(colour, dusk.iron,
                       cover(std::max(std::abs(x - kTowerX) - 40.0, std::abs(y - 115.0) - 5.0)));
        const double rail = std::min(std::abs(y - 98.0) - 1.2,
                                     std::abs(wrapped(floorToInt(x) - 370, 10) - 0.5) - 0.6);
        colour =
            blend(colour, dusk.iron,
                  cover(std::max({rail, std::abs(x - kTowerX) - 39.0, std::abs(y - 105.0) - 8.0})));
        const double lampX = (x - kTowerX) / 22.0;
        const double lampY = (y - kLampY) / 22.0;
        const double shine = std::sqrt(lampX * lampX + lampY * lampY);
        const Light pane = blend(dusk.lamp, dusk.glow, smoothStep(0.4, 1.2, shine));
        colour = blend(colour, pane,
                       cover(std::max(std::abs(x - kTowerX) - 20.0, std::abs(y - 92.0) - 19.0)));
        const double bar = std::abs(std::abs(x - kTowerX) - 18.5) - 1.8;
        colour = blend(colour, dusk.iron, cover(std::max(bar, std::abs(y - 92.0) - 19.0)));
        const double dome = std::abs(x - kTowerX) - 0.62 * (y - 34.0);
        colour = blend(colour, blend(dusk.red, dusk.iron, smoothStep(-10.0, 18.0, x - kTowerX)),
                       cover(std::max(dome, y - 74.0)));
        colour = blend(colour, dusk.iron,
                       cover(std::max(std::abs(x - kTowerX) - 1.6, std::abs(y - 27.0) - 11.0)));
        // The glow round the lamp lies over all.
        return added(colour, dusk.lamp, 0.55 * (1.0 - smoothStep(0.0, 3.4, shine)));
    });
}

}  // namespace pantile::sample_art
