// Rock pool: clear water between dark rocks, seen from above.

#include <algorithm>
#include <array>
#include <cmath>

#include "draw/painting.h"
#include "draw/pictures.h"

namespace pantile::sample_art {

namespace {

struct PoolInks {
    Light shallow = lightOf("#37a3ae");
    Light middle = lightOf("#1f86a6");
    Light deep = lightOf("#0a4677");
    Light light = lightOf("#f2fff4");
    Light rockDark = lightOf("#15161b");
    Light rockMiddle = lightOf("#5a5a62");
    Light rockLight = lightOf("#b9b2a6");
    Light wet = lightOf("#2a2e38");
    Light weedDark = lightOf("#24401c");
    Light weed = lightOf("#6f8a2a");
    Light weedTip = lightOf("#c8b84a");
    Light starDark = lightOf("#9a2a1a");
    Light star = lightOf("#ee5a2c");
    Light starLight = lightOf("#ffc27a");
    Light barnacle = lightOf("#e8e2d2");
    Light sand = lightOf("#d9c79a");
};

/// Negative in the pool, 0 on its rim; in units.
double poolRim(double x, double y) {
    const double u = (x - 325.0) / 255.0;
    const double v = (y - 245.0) / 178.0;
    const double bend = cloud(x / 85.0 + 2.0, y / 85.0, 2, 931) - 0.5;
    return (std::sqrt(u * u + v * v) - 1.0) * 190.0 + 95.0 * bend;
}

/// Bright lines where ripples meet; a mosaic of places that does not repeat.
double causticAt(double x, double y) {
    const double bendX = x + 40.0 * (cloud(x / 50.0, y / 50.0, 2, 941) - 0.5);
    const double bendY = y + 40.0 * (cloud(x / 50.0, y / 50.0, 2, 942) - 0.5);
    constexpr double kRipple = 58.0;
    const int column = floorToInt(bendX / kRipple);
    const int row = floorToInt(bendY / kRipple);
    double nearest = 1e9;
    double next = 1e9;
    for (int j = -1; j <= 1; ++j) {
        for (int i = -1; i <= 1; ++i) {
            const double placeX = (column + i + chanceAt(column + i, row + j, 943)) * kRipple;
            const double placeY = (row + j + chanceAt(column + i, row + j, 944)) * kRipple;
            const double away = std::sqrt((bendX - placeX) * (bendX - placeX) +
                                          (bendY - placeY) * (bendY - placeY));
            if (away < nearest) {
                next = nearest;
                nearest = away;
            } else {
                next = std::min(next, away);
            }
        }
    }
    return 1.0 - smoothStep(0.0, 11.0, next - nearest);
}

/// Negative in a five-armed star with round arms.
double starShape(double dx, double dy, double size, double turn) {
    const double radius = std::sqrt(dx * dx + dy * dy);
    const double part = (turnsOf(dx, dy) + turn) * 5.0;
    const double fromArm = std::abs(part - std::floor(part) - 0.5) * 2.0;  // 1 on an arm's middle
    const double arm = 1.0 - fromArm;
    return radius - size * (0.34 + 0.66 * (1.0 - smoothStep(0.0, 0.86, arm)));
}

Light paintStar(const PoolInks& inks, const Light& under, double dx, double dy, double size) {
    const double shadow = starShape(dx - 7.0, dy - 10.0, size, 0.05);
    Light colour = blend(under, dimmed(under, 0.35), 0.8 * cover(shadow, 5.0));
    const double shape = starShape(dx, dy, size, 0.05);
    const double lit = clampUnit(-shape / (size * 0.22));
    Light star = blend(inks.starDark, inks.star, smoothStep(0.0, 0.6, lit - 0.004 * (dx + dy)));
    const double bump = wave(dx / 7.0) * wave(dy / 7.0);
    star = blend(star, inks.starLight, 0.75 * smoothStep(0.45, 0.9, bump) * lit);
    star = blend(star, inks.starLight, 0.45 * smoothStep(0.75, 1.0, lit));
    return blend(colour, star, cover(shape));
}

Light rockAt(const PoolInks& inks, double x, double y, double rim) {
    const double big = cloud(x / 70.0, y / 70.0, 3, 951);
    const double slope = big - cloud(x / 70.0 - 0.07, y / 70.0 - 0.07, 3, 951);
    double lit = 0.45 + 6.0 * slope;
    // Cracks.
    const double crack = std::abs(cloud(x / 90.0 + 5.0, y / 60.0, 3, 952) - 0.5);
    lit *= smoothStep(0.0, 0.022, crack);
    Light rock = blend(inks.rockDark, inks.rockMiddle, clampUnit(lit * 1.3));
    rock = blend(rock, inks.rockLight, 0.85 * smoothStep(0.52, 1.0, lit));
    // The wet rim is dark, and weed grows in patches on it.
    rock = blend(rock, inks.wet, 0.75 * (1.0 - smoothStep(4.0, 26.0, rim)));
    const double patch = smoothStep(0.54, 0.66, cloud(x / 80.0, y / 80.0 + 9.0, 2, 953));
    const double blade = cloud(x / 7.0 + 0.05 * y, y / 16.0, 2, 954);
    const Light weed = blend(blend(inks.weedDark, inks.weed, smoothStep(0.3, 0.6, blade)),
                             inks.weedTip, smoothStep(0.64, 0.82, blade));
    return blend(rock, weed, patch * (1.0 - smoothStep(40.0, 75.0, rim)));
}

Light barnaclesAt(const PoolInks& inks, const Light& under, double x, double y) {
    constexpr double kApart = 21.0;
    const int column = floorToInt(x / kApart);
    const int row = floorToInt(y / kApart);
    if (chanceAt(column, row, 961) > 0.42) return under;
    const double placeX = (column + 0.35 + 0.3 * chanceAt(column, row, 962)) * kApart;
    const double placeY = (row + 0.35 + 0.3 * chanceAt(column, row, 963)) * kApart;
    if (poolRim(placeX, placeY) < 24.0) return under;
    const double size = 4.0 + 3.0 * chanceAt(column, row, 964);
    const double dx = x - placeX;
    const double dy = y - placeY;
    const double away = std::sqrt(dx * dx + dy * dy);
    Light cone = dimmed(inks.barnacle, 0.75 - 0.45 * (dx + dy) / (1.4 * size));
    cone = blend(cone, inks.rockDark, cover(away - 0.36 * size));
    return blend(under, cone, cover(away - size));
}

Light paintPebbles(const PoolInks& inks, const Light& under, double x, double y) {
    constexpr double kApart = 62.0;
    const int column = floorToInt(x / kApart);
    const int row = floorToInt(y / kApart);
    if (chanceAt(column, row, 971) > 0.5) return under;
    const double dx = x - (column + 0.4 + 0.2 * chanceAt(column, row, 972)) * kApart;
    const double dy = (y - (row + 0.4 + 0.2 * chanceAt(column, row, 973)) * kApart) * 1.35;
    const double size = 13.0 + 9.0 * chanceAt(column, row, 974);
    const double away = std::sqrt(dx * dx + dy * dy) - size;
    const double shadowAway = std::sqrt((dx - 5.0) * (dx - 5.0) + (dy - 8.0) * (dy - 8.0)) - size;
    Light colour = blend(under, dimmed(under, 0.4), 0.7 * cover(shadowAway, 4.0));
    const double tone = chanceAt(column, row, 975);
    const Light body = tone < 0.5 ? inks.rockMiddle : tone < 0.8 ? inks.sand : inks.starDark;
    const double lit = 0.85 - 0.5 * (dx + dy) / (1.4 * size);
    return blend(colour, dimmed(body, lit), cover(away));
}

/// A beadlet anemone: a ring of tentacles round a dark mouth.
Light paintAnemone(const PoolInks& inks, const Light& under, double dx, double dy) {
    const double radius = std::sqrt(dx * dx + dy * dy);
    const double part = turnsOf(dx, dy) * 22.0;
    const double finger = std::abs(part - std::floor(part) - 0.5) * 2.0;
    const double reach = 36.0 - 13.0 * finger;
    const Light body =
        blend(inks.starDark, inks.star, smoothStep(8.0, 34.0, radius) * (1.0 - finger));
    Light colour =
        blend(under, dimmed(under, 0.4),
              0.6 * cover(std::sqrt((dx - 5) * (dx - 5) + (dy - 7) * (dy - 7)) - 31.0, 5.0));
    colour = blend(colour, body, cover(radius - reach));
    return blend(colour, inks.rockDark, 0.7 * cover(radius - 7.0, 3.0));
}

}  // namespace

core::Pixels rockPool() {
    const PoolInks inks;
    return paintPicture([&](double x, double y) {
        const double rim = poolRim(x, y);
        if (rim > 1.5) return barnaclesAt(inks, rockAt(inks, x, y, rim), x, y);
        // The floor first, then what lies on it, then the light of the water over all.
        const double depth = smoothStep(0.0, 150.0, -rim);
        const double grain = cloud(x / 30.0, y / 24.0, 2, 981);
        Light floor = blend(inks.sand, dimmed(inks.sand, 0.7), grain);
        floor = paintPebbles(inks, floor, x, y);
        floor = paintStar(inks, floor, x - 395.0, y - 265.0, 88.0);
        floor = paintAnemone(inks, floor, x - 205.0, y - 195.0);
        const Light water = blend(blend(inks.shallow, inks.middle, smoothStep(0.0, 0.5, depth)),
                                  inks.deep, smoothStep(0.45, 1.0, depth));
        const bool alive = starShape(x - 395.0, y - 265.0, 88.0, 0.05) < 0.0 ||
                           (x - 205.0) * (x - 205.0) + (y - 195.0) * (y - 195.0) < 1100.0;
        Light colour = blend(floor, water, alive ? 0.08 : 0.76 + 0.16 * depth);
        colour = added(colour, inks.light, (alive ? 0.08 : 0.27) * causticAt(x, y));
        // The rock's shadow falls into the water at the top left.
        colour = blend(colour, inks.rockDark,
                       0.62 * (1.0 - smoothStep(0.0, 34.0, -poolRim(x - 12.0, y - 16.0))));
        // A shine of sky along the lower rim.
        const double edge = cover(std::abs(rim + 5.0) - 1.6, 1.5);
        colour = blend(colour, inks.light, 0.55 * edge);
        return blend(colour, rockAt(inks, x, y, 1.0), cover(-rim));
    });
}

}  // namespace pantile::sample_art
