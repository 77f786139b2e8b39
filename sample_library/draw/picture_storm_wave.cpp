// Storm wave: a great breaker that curls over, under a dark sky.

#include <algorithm>
#include <array>
#include <cmath>

#include "draw/painting.h"
#include "draw/pictures.h"

namespace pantile::sample_art {

namespace {

struct StormInks {
    Light skyHigh = lightOf("#1b222e");
    Light skyLow = lightOf("#7c8891");
    Light skyBreak = lightOf("#d8d3b8");
    Light deep = lightOf("#0b2438");
    Light body = lightOf("#14516e");
    Light clear = lightOf("#3fa79a");
    Light thin = lightOf("#a8dcbc");
    Light foam = lightOf("#f1f8f8");
    Light foamShade = lightOf("#8fa9b4");
};

constexpr Place kCurl{262.0, 292.0};  ///< The middle of the hollow under the lip.
constexpr Place kCurlRadii{170.0, 140.0};

/// 1 on the wall of the hollow, less inside it.
double hollow(double x, double y) {
    const double u = (x - kCurl.x) / kCurlRadii.x;
    const double v = (y - kCurl.y) / kCurlRadii.y;
    return std::sqrt(u * u + v * v);
}

/// The upper edge of the wave: it climbs from the right and ends in the lip on the left.
double crestTop(double x) {
    const double share = (x - 300.0) / 340.0;
    const double ridge = 88.0 + 215.0 * share * share * (share > 0.0 ? 1.0 : 2.2);
    return ridge + 10.0 * (cloud(x / 40.0, 3.0, 3, 1001) - 0.5);
}

Light skyAt(const StormInks& inks, double x, double y) {
    const double bank = cloud(x / 170.0 + 0.004 * y, y / 70.0, 4, 1011);
    Light sky = blend(inks.skyHigh, inks.skyLow, smoothStep(0.0, 330.0, y));
    sky = blend(sky, inks.skyHigh, 0.85 * smoothStep(0.46, 0.70, bank));
    sky = blend(sky, inks.skyLow, 0.55 * smoothStep(0.52, 0.30, bank) * 0.6);
    const double breakX = (x - 90.0) / 190.0;
    const double breakY = (y - 290.0) / 110.0;
    sky = blend(sky, inks.skyBreak,
                0.8 * (1.0 - smoothStep(0.1, 1.0, std::sqrt(breakX * breakX + breakY * breakY))));
    // Rain drives from the right.
    const double rain = cloud((x + 0.35 * y) / 5.0, y / 150.0, 1, 1012);
    return added(sky, inks.skyLow, 0.07 * smoothStep(0.6, 0.95, rain));
}

Light seaAt(const StormInks& inks, double x, double y) {
    const double depth = y - 368.0;
    const double swell = cloud(x / 90.0 + 0.01 * y, depth / 16.0, 3, 1021);
    Light sea = blend(inks.deep, inks.body, smoothStep(0.35, 0.75, swell));
    sea = blend(sea, inks.skyLow, 0.35 * smoothStep(0.66, 0.82, swell));
    const double streak = std::abs(cloud(x / 70.0, depth / 18.0 + x / 300.0, 3, 1022) - 0.5);
    return blend(sea, inks.foam, 0.75 * (1.0 - smoothStep(0.0, 0.03, streak)));
}

/// Foam breaks up along its edge: `within` is positive inside it, in units.
double foamCover(double x, double y, double within, std::uint64_t seed) {
    const double torn = 30.0 * (cloud(x / 22.0, y / 22.0, 3, seed) - 0.5);
    return smoothStep(-3.0, 3.0, within + torn);
}

Light foamAt(const StormInks& inks, double x, double y) {
    const double puff = cloud(x / 26.0, y / 22.0, 3, 1031);
    const double slope = puff - cloud(x / 26.0 - 0.18, y / 22.0 - 0.22, 3, 1031);
    return blend(inks.foamShade, inks.foam, clampUnit(0.62 + 2.6 * slope));
}

/// The face of the wave within the hollow: streaks drawn up round the curl.
Light faceAt(const StormInks& inks, double x, double y) {
    const double radius = hollow(x, y);
    // The turn at which the count starts anew lies to the left, in the open air.
    const double turn = turnsOf(kCurl.x - x, kCurl.y - y);
    const double height = clampUnit((y - 150.0) / 250.0);
    Light face = blend(inks.clear, inks.body, smoothStep(0.0, 0.55, height));
    face = blend(face, inks.deep, smoothStep(0.50, 1.0, height));
    const double streak = cloud(radius * 16.0, turn * 9.0, 3, 1041);
    face = blend(face, inks.thin, 0.55 * smoothStep(0.56, 0.80, streak) * (1.0 - height));
    face = blend(face, inks.deep, 0.45 * smoothStep(0.50, 0.25, streak));
    return blend(face, inks.foam,
                 0.6 * smoothStep(0.70, 0.80, cloud(radius * 9.0, turn * 14.0, 3, 1042)));
}

Light backAt(const StormInks& inks, double x, double y) {
    const double below = y - crestTop(x);
    Light back = blend(inks.clear, inks.body, smoothStep(0.0, 90.0, below));
    back = blend(back, inks.deep, smoothStep(60.0, 260.0, below));
    const double fold = cloud(x / 60.0 + below / 90.0, below / 26.0, 3, 1051);
    back = blend(back, inks.thin, 0.35 * smoothStep(0.58, 0.78, fold));
    const double lace = std::abs(cloud(x / 46.0 + 8.0, below / 30.0, 3, 1052) - 0.5);
    return blend(back, inks.foam, 0.7 * (1.0 - smoothStep(0.0, 0.035, lace)));
}

}  // namespace

core::Pixels stormWave() {
    const StormInks inks;
    return paintPicture([&](double x, double y) {
        Light colour = y < 368.0 ? skyAt(inks, x, y) : seaAt(inks, x, y);
        const double top = crestTop(x);
        const double radius = hollow(x, y);
        const double rimAway = (radius - 1.0) * 150.0;
        if (radius < 1.0 && y < 400.0) {
            // Open air in front of the face on the left, the face itself on the right.
            const double faceEdge = 208.0 + 0.22 * (y - 150.0) - 70.0 * smoothStep(330.0, 400.0, y);
            colour = blend(colour, faceAt(inks, x, y), smoothStep(-26.0, 26.0, x - faceEdge));
            // Deep shade right under the lip.
            colour = blend(colour, inks.deep,
                           0.55 * smoothStep(-48.0, 0.0, rimAway) * cover(y - 300.0, 40.0));
        } else if (x > kCurl.x - kCurlRadii.x && (y < kCurl.y || x > kCurl.x)) {
            const double foot = 418.0 + 26.0 * (cloud(x / 50.0, 2.0, 2, 1061) - 0.5);
            colour = blend(colour, backAt(inks, x, y), cover(top - y) * cover(y - foot, 12.0));
        }
        // Foam: on the crest, down the lip, and where it strikes the sea.
        const double onCrest = 22.0 - std::abs(y - top - 6.0) - 60.0 * smoothStep(130.0, 90.0, x);
        colour = blend(colour, foamAt(inks, x, y), foamCover(x, y, onCrest, 1071));
        const double thick = 36.0 * smoothStep(430.0, 210.0, x) -
                             60.0 * smoothStep(330.0, 380.0, y) -
                             60.0 * smoothStep(330.0, 430.0, x);
        const double onLip = thick - 12.0 - std::abs(rimAway - 8.0);
        colour = blend(colour, foamAt(inks, x, y), foamCover(x, y, onLip, 1072));
        const double splashX = (x - 165.0) / 200.0;
        const double splashY = (y - 402.0) / 58.0;
        const double splash = (1.0 - std::sqrt(splashX * splashX + splashY * splashY)) * 70.0 +
                              80.0 * (cloud(x / 46.0, y / 40.0, 2, 1074) - 0.55);
        colour = blend(colour, foamAt(inks, x, y), foamCover(x, y, splash, 1073));
        // Spray flies off the crest.
        const double above = top - y;
        const double overCrest = above > 0.0 ? smoothStep(60.0, 170.0, x) : 0.0;
        const int column = floorToInt(x / 9.0);
        const int row = floorToInt(y / 9.0);
        if (chanceAt(column, row, 1081) < 0.55 * overCrest * smoothStep(95.0, 0.0, above)) {
            const double dropX = x - (column + 0.3 + 0.4 * chanceAt(column, row, 1082)) * 9.0;
            const double dropY = y - (row + 0.3 + 0.4 * chanceAt(column, row, 1083)) * 9.0;
            const double size = 0.8 + 1.8 * chanceAt(column, row, 1084);
            const double away = std::sqrt(dropX * dropX + dropY * dropY);
            colour = blend(colour, inks.foam, 0.9 * cover(away - size));
        }
        const double mist = overCrest * smoothStep(110.0, 0.0, above) *
                            cloud(x / 50.0 - y / 60.0, y / 40.0, 3, 1085);
        return blend(colour, inks.foam, 0.42 * mist);
    });
}

}  // namespace pantile::sample_art
