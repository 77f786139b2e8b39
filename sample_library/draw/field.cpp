#include "draw/field.h"

#include <cmath>

namespace pantile::sample_art {

namespace {

/// The shortest way from `from` to `to` on a ring of `length`.
double aroundRing(double from, double to, double length) {
    const double way = to - from;
    return way - length * std::floor(way / length + 0.5);
}

/// Moves each place to the middle of its stone, which evens them out.
std::vector<Place> relaxed(const std::vector<Place>& places, int width, int height) {
    std::vector<Place> sums(places.size());
    std::vector<double> counts(places.size());
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            const StoneSpot spot = nearestStone(places, width, height, x, y);
            sums[spot.stone].x += spot.dx;
            sums[spot.stone].y += spot.dy;
            counts[spot.stone] += 1.0;
        }
    }
    std::vector<Place> moved = places;
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (counts[i] <= 0.0) continue;
        moved[i].x += sums[i].x / counts[i];
        moved[i].y += sums[i].y / counts[i];
    }
    return moved;
}

}  // namespace

Field smoothNoise(int width, int height, NoiseGrain grain, std::uint64_t seed) {
    Field field(width, height);
    for (int y = 0; y < height; ++y) {
        const double v = static_cast<double>(y) * grain.down / height;
        const int row = floorToInt(v);
        const double down = smoothStep(0.0, 1.0, v - row);
        for (int x = 0; x < width; ++x) {
            const double u = static_cast<double>(x) * grain.across / width;
            const int column = floorToInt(u);
            const double across = smoothStep(0.0, 1.0, u - column);
            const auto knot = [&](int i, int j) {
                return chanceAt(wrapped(column + i, grain.across), wrapped(row + j, grain.down),
                                seed);
            };
            field.at(x, y) =
                mix(mix(knot(0, 0), knot(1, 0), across), mix(knot(0, 1), knot(1, 1), across), down);
        }
    }
    return field;
}

Field layeredNoise(int width, int height, NoiseGrain grain, int layers, std::uint64_t seed) {
    Field sum(width, height);
    double strength = 1.0;
    double total = 0.0;
    for (int layer = 0; layer < layers; ++layer) {
        const Field noise =
            smoothNoise(width, height, grain, seed + static_cast<std::uint64_t>(layer));
        for (int y = 0; y < height; ++y)
            for (int x = 0; x < width; ++x) sum.at(x, y) += strength * noise.at(x, y);
        total += strength;
        strength /= 2.0;
        grain = {grain.across * 2, grain.down * 2};
    }
    for (int y = 0; y < height; ++y)
        for (int x = 0; x < width; ++x) sum.at(x, y) /= total;
    return sum;
}

double slopeToLight(const Field& heights, int x, int y) {
    return (heights.at(x + 1, y) - heights.at(x - 1, y) + heights.at(x, y + 1) -
            heights.at(x, y - 1)) /
           2.0;
}

std::vector<Place> spreadPlaces(int width, int height, int count, std::uint64_t seed) {
    Chance chance(seed);
    std::vector<Place> places;
    places.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i)
        places.push_back({chance.between(0.0, width), chance.between(0.0, height)});
    constexpr int kRounds = 3;
    for (int round = 0; round < kRounds; ++round) places = relaxed(places, width, height);
    return places;
}

StoneSpot nearestStone(const std::vector<Place>& places, int width, int height, double x, double y,
                       double stretch) {
    StoneSpot best;
    best.distance = 1e9;
    double nextDistance = 1e9;
    Place next;
    for (std::size_t i = 0; i < places.size(); ++i) {
        const double dx = aroundRing(places[i].x, x, width);
        const double dy = aroundRing(places[i].y, y, height) * stretch;
        const double distance = std::sqrt(dx * dx + dy * dy);
        if (distance < best.distance) {
            nextDistance = best.distance;
            next = {best.dx, best.dy};
            best = {i, dx, dy, distance, 0.0};
        } else if (distance < nextDistance) {
            nextDistance = distance;
            next = {dx, dy};
        }
    }
    // The border is the middle line between the two places; its distance follows from the squares.
    const double apartX = best.dx - next.x;
    const double apartY = best.dy - next.y;
    const double apart = std::sqrt(apartX * apartX + apartY * apartY);
    if (apart > 0.0) {
        best.toEdge = (nextDistance * nextDistance - best.distance * best.distance) / (2.0 * apart);
    }
    return best;
}

}  // namespace pantile::sample_art
