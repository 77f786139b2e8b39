// Harbour wall: big blocks at low water, with weed below the tide mark, a ladder, and a boat.

#include <algorithm>
#include <cmath>

#include "draw/painting.h"
#include "draw/pictures.h"

namespace pantile::sample_art {

namespace {

constexpr double kWallTop = 118.0;
constexpr double kTideMark = 268.0;
constexpr double kWater = 356.0;
constexpr double kLadderX = 470.0;

struct HarbourInks {
    Light skyHigh = lightOf("#6aa3c4");
    Light skyLow = lightOf("#dfe9e2");
    Light cloudWhite = lightOf("#fbfaf2");
    Light stoneLight = lightOf("#c9bfa8");
    Light stone = lightOf("#8d8a83");
    Light stoneDark = lightOf("#4a4d55");
    Light joint = lightOf("#1d2026");
    Light weedDark = lightOf("#1f3818");
    Light weed = lightOf("#6b8429");
    Light water = lightOf("#16556f");
    Light waterDark = lightOf("#0a2a3f");
    Light glint = lightOf("#bfe3e0");
    Light iron = lightOf("#241a18");
    Light rust = lightOf("#8a3a22");
    Light red = lightOf("#c8331f");
    Light redDark = lightOf("#6a1a18");
    Light white = lightOf("#f0ece0");
    Light wood = lightOf("#a9824f");
    Light woodDark = lightOf("#4a3220");
    Light rope = lightOf("#d9bd86");
};

Light skyAt(const HarbourInks& inks, double x, double y) {
    const double bank = cloud(x / 120.0, y / 40.0, 3, 1101);
    const Light sky = blend(inks.skyHigh, inks.skyLow, smoothStep(0.0, kWallTop, y));
    return blend(sky, inks.cloudWhite, 0.85 * smoothStep(0.50, 0.68, bank));
}

Light wallAt(const HarbourInks& inks, double x, double y) {
    constexpr double kCourse = 48.0;
    constexpr double kBlock = 104.0;
    const int course = floorToInt((y - kWallTop) / kCourse);
    // Staggered by chance, never close to the joint above.
    const double shift = (course % 2 == 0 ? 0.0 : 0.5) + 0.24 * chanceAt(course, 0, 1111);
    const int block = floorToInt(x / kBlock + shift);
    const double inX = (x / kBlock + shift - block) * kBlock;
    const double inY = y - kWallTop - course * kCourse;
    const double edge = std::min({inX, inY, kBlock - inX, kCourse - inY}) +
                        2.5 * (cloud(x / 14.0, y / 14.0, 2, 1112) - 0.5);
    const double tone = chanceAt(block, course, 1113);
    Light stone = blend(inks.stone, inks.stoneLight, 0.85 * tone);
    const double grain = cloud(x / 30.0, y / 20.0, 3, 1114);
    const double slope = grain - cloud(x / 30.0 - 0.12, y / 20.0 - 0.16, 3, 1114);
    stone = blend(stone, inks.stoneDark, clampUnit(0.28 - 2.2 * slope));
    // A lit upper left and a shaded lower right edge.
    stone = blend(stone, inks.stoneLight, 0.6 * cover(std::min(inX, inY) - 7.0, 2.5));
    stone = blend(stone, inks.stoneDark,
                  0.65 * cover(std::min(kBlock - inX, kCourse - inY) - 7.0, 2.5));
    stone = blend(stone, inks.joint, cover(edge - 3.0, 1.2));
    // Below the tide mark: dark and wet, hung with weed.
    const double mark = kTideMark + 14.0 * (cloud(x / 40.0, 1.0, 3, 1115) - 0.5);
    stone = blend(stone, dimmed(stone, 0.42), smoothStep(-5.0, 10.0, y - mark));
    const double strand = cloud(x / 9.0, y / 60.0, 3, 1116);
    const double thick = smoothStep(
        0.40, 0.58, cloud(x / 34.0, y / 50.0, 2, 1117) + 0.0022 * (y - kTideMark - 20.0));
    const Light weed = blend(inks.weedDark, inks.weed, smoothStep(0.35, 0.70, strand));
    return blend(stone, weed, thick * smoothStep(0.0, 22.0, y - mark));
}

Light ladderOver(const HarbourInks& inks, Light colour, double x, double y) {
    if (y < kWallTop - 26.0 || y > kWater + 4.0) return colour;
    const double rung = std::abs((y - kWallTop) / 22.0 - std::floor((y - kWallTop) / 22.0) - 0.5);
    const double dx = std::abs(x - kLadderX);
    const double rail = std::abs(dx - 21.0) - 3.4;
    const double step = std::max(dx - 21.0, rung * 22.0 - 2.6);
    const double shadowX = std::abs(x - kLadderX - 9.0);
    const double shadow =
        std::min(std::abs(shadowX - 21.0) - 3.0, std::max(shadowX - 21.0, rung * 22.0 - 2.6));
    if (y > kWallTop) colour = blend(colour, dimmed(colour, 0.45), 0.8 * cover(shadow, 2.0));
    const double rusty = smoothStep(0.45, 0.6, cloud(x / 8.0, y / 14.0, 2, 1121));
    const Light iron = blend(inks.iron, inks.rust, rusty);
    const double frame = y < kWallTop ? rail : std::min(rail, step);
    return blend(colour, iron, cover(frame));
}

/// The capping stones along the top of the wall, and a bollard with a rope.
Light quayOver(const HarbourInks& inks, Light colour, double x, double y) {
    const double cap = std::abs(y - kWallTop + 2.0) - 11.0;
    const double joint =
        std::abs((x - 40.0) / 132.0 - std::floor((x - 40.0) / 132.0) - 0.5) * 132.0;
    Light slab = blend(inks.stoneLight, inks.stone, smoothStep(kWallTop - 12.0, kWallTop + 8.0, y));
    slab = blend(slab, inks.white, 0.5 * cover(y - kWallTop + 9.5));
    slab = blend(slab, inks.joint, cover(joint - 1.6));
    colour = blend(colour, slab, cover(cap));
    colour = blend(colour, inks.joint, 0.7 * cover(std::abs(y - kWallTop - 11.0) - 2.0, 2.5));
    // The bollard: a waisted iron post.
    const double bx = std::abs(x - 232.0);
    const double waist = 13.0 + 6.0 * smoothStep(0.3, 1.0, std::abs((y - 84.0) / 24.0));
    const double post = std::max(bx - waist, std::abs(y - 84.0) - 26.0);
    const double head = std::max(bx - 23.0, std::abs(y - 61.0) - 6.0);
    const Light iron = blend(inks.stoneDark, inks.iron, smoothStep(-14.0, 12.0, x - 232.0));
    colour = blend(colour, iron, cover(std::min(post, head)));
    for (const double ropeY : {84.0, 90.0}) {
        const double turn = std::max(bx - 15.0, std::abs(y - ropeY - 0.02 * bx * bx) - 3.2);
        const double lay = wave((x + y) / 7.0);
        colour = blend(colour, dimmed(inks.rope, 0.75 + 0.25 * lay), cover(turn));
    }
    return colour;
}

/// A red boat seen from the side, moored close under the wall.
Light boatOver(const HarbourInks& inks, Light colour, double x, double y) {
    const double share = (x - 195.0) / 150.0;
    if (std::abs(share) > 1.0) return colour;
    const double sheer = 316.0 - 26.0 * share * share - 8.0 * share;
    const double keel = 398.0 - 74.0 * share * share * share * share * share * share;
    // The inside of the far gunwale.
    const double inner = sheer - 13.0 * (1.0 - share * share);
    colour = blend(colour, inks.woodDark, cover(inner - y) * cover(y - sheer));
    colour = blend(colour, inks.wood, cover(std::abs(y - inner) - 2.4) * cover(y - sheer));
    for (const double thwart : {-0.45, 0.0, 0.45}) {
        const double seat =
            std::max(std::abs(share - thwart) * 150.0 - 12.0, std::abs(y - sheer + 4.0) - 3.0);
        colour = blend(colour, inks.wood, cover(seat));
    }
    const double down = (y - sheer) / (keel - sheer + 0.001);
    Light hull = blend(inks.red, inks.redDark, smoothStep(0.10, 1.0, down + 0.20 * share));
    hull = blend(hull, inks.white, cover(std::abs(down - 0.10) - 0.09, 0.015));
    const double strake = (down - 0.2) * 4.5 - std::floor((down - 0.2) * 4.5);
    hull = blend(hull, inks.redDark, down > 0.2 ? 0.75 * smoothStep(0.82, 0.97, strake) : 0.0);
    hull = blend(hull, inks.skyLow, down > 0.2 ? 0.16 * smoothStep(0.22, 0.05, strake) : 0.0);
    colour = blend(colour, hull, cover(sheer - y) * cover(y - keel));
    return blend(colour, inks.wood, cover(std::abs(y - sheer) - 3.2));
}

/// The mooring line hangs from the bollard to the boat's bow.
Light lineOver(const HarbourInks& inks, const Light& colour, double x, double y) {
    if (x < 214.0 || x > 333.0) return colour;
    const double share = (x - 214.0) / 119.0;
    const double hang = mix(92.0, 288.0, share * share * (0.55 + 0.45 * share));
    const double steep = 1.0 + 2.6 * share;
    return blend(colour, inks.rope, cover((std::abs(y - hang) - 2.6 * steep * 0.8) / steep));
}

Light aboveWater(const HarbourInks& inks, double x, double y) {
    Light colour = y < kWallTop ? skyAt(inks, x, y) : wallAt(inks, x, y);
    colour = quayOver(inks, colour, x, y);
    return ladderOver(inks, colour, x, y);
}

}  // namespace

core::Pixels harbourWall() {
    const HarbourInks inks;
    return paintPicture([&](double x, double y) {
        const double swell = wave(std::sqrt(std::max(0.0, y - kWater + 4.0)) * 1.5 +
                                  1.2 * cloud(x / 50.0, y / 10.0, 2, 1131));
        const double waterline = kWater + 3.0 * wave(x / 90.0) + 2.0 * wave(x / 37.0);
        Light colour = aboveWater(inks, x, y);
        if (y > waterline) {
            // The wall, mirrored and broken by the swell.
            const Light mirrored =
                aboveWater(inks, x + 7.0 * swell, 2.0 * kWater - y - 5.0 * swell);
            const double depth = smoothStep(0.0, 110.0, y - waterline);
            colour = blend(blend(inks.water, inks.waterDark, depth), mirrored, 0.34);
            colour = blend(colour, inks.glint, 0.6 * smoothStep(0.72, 0.98, swell));
            colour = blend(colour, inks.waterDark, 0.4 * smoothStep(-0.5, -0.95, swell));
        }
        colour = blend(colour, inks.glint, 0.5 * cover(std::abs(y - waterline) - 1.4));
        if (y < 384.0 + 3.0 * wave(x / 44.0)) colour = boatOver(inks, colour, x, y);
        const double lap = std::abs(y - 384.0 - 3.0 * wave(x / 44.0)) - 2.0;
        colour =
            blend(colour, inks.white, 0.8 * cover(lap) * cover(std::abs(x - 195.0) - 132.0, 8.0));
        return lineOver(inks, colour, x, y);
    });
}

}  // namespace pantile::sample_art
