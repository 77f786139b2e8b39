#include "draw/chance.h"

#include <cmath>

namespace pantile::sample_art {

namespace {

constexpr double kTwoToMinus53 = 1.0 / 9007199254740992.0;

double unit(std::uint64_t bits) {
    return static_cast<double>(bits >> 11U) * kTwoToMinus53;
}

}  // namespace

std::uint64_t Chance::next() {
    m_state += 0x9E3779B97F4A7C15U;
    std::uint64_t z = m_state;
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
    return z ^ (z >> 31U);
}

int Chance::below(int count) {
    return static_cast<int>(next() % static_cast<std::uint64_t>(count));
}

double Chance::between(double least, double most) {
    return least + unit(next()) * (most - least);
}

double chanceAt(int x, int y, std::uint64_t seed) {
    const auto column = static_cast<std::uint64_t>(static_cast<std::int64_t>(x));
    const auto row = static_cast<std::uint64_t>(static_cast<std::int64_t>(y));
    Chance chance(seed * 0x2545F4914F6CDD1DU + column * 0x9E3779B97F4A7C15U +
                  row * 0xD6E8FEB86659FD93U);
    chance.next();
    return unit(chance.next());
}

double wave(double turns) {
    const double part = turns - std::floor(turns);
    // A parabola for each half wave, then bent by its own square towards the sine.
    const double half = part < 0.5 ? part * 2.0 : (part - 0.5) * 2.0;
    const double arch = 4.0 * half * (1.0 - half);
    const double bent = arch * (0.775 + 0.225 * arch);
    return part < 0.5 ? bent : -bent;
}

double turnsOf(double x, double y) {
    const double ax = std::abs(x);
    const double ay = std::abs(y);
    if (ax + ay <= 0.0) return 0.0;
    const double slope = ax > ay ? ay / ax : ax / ay;
    // arctan(slope) / 2 pi for a slope of 0..1: a straight line, and a small bow that is 0 at both
    // ends.
    double turns = slope * (0.125 + (1.0 - slope) * (0.03895 + 0.01055 * slope));
    if (ay > ax) turns = 0.25 - turns;
    if (x < 0.0) turns = 0.5 - turns;
    return y < 0.0 ? 1.0 - turns : turns;
}

double smoothStep(double from, double to, double value) {
    const double t = clampUnit((value - from) / (to - from));
    return t * t * (3.0 - 2.0 * t);
}

double mix(double from, double to, double share) {
    return from + (to - from) * share;
}

double clampUnit(double value) {
    if (value < 0.0) return 0.0;
    return value > 1.0 ? 1.0 : value;
}

int floorToInt(double value) {
    return static_cast<int>(std::floor(value));
}

int wrapped(int value, int count) {
    const int rest = value % count;
    return rest < 0 ? rest + count : rest;
}

}  // namespace pantile::sample_art
