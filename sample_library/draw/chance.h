#pragma once

// Seeded chance, and waves and angles made of + - * / and square roots alone: the same drawing on
// every machine.
// Source of the generator: G. Steele, D. Lea, C. Flood, 'Fast splittable pseudorandom number
// generators', OOPSLA 2014 (SplitMix64).

#include <cstdint>

namespace pantile::sample_art {

class Chance {
public:
    explicit Chance(std::uint64_t seed) : m_state(seed) {}

    std::uint64_t next();

    /// 0 .. count - 1.
    int below(int count);

    /// At least `least`, below `most`.
    double between(double least, double most);

private:
    std::uint64_t m_state;
};

/// A number in [0, 1) that belongs to the place (x, y) of the drawing `seed`.
double chanceAt(int x, int y, std::uint64_t seed);

/// Close to sin(2 pi turns); within 0.002 of it.
double wave(double turns);

/// The direction of (x, y) in turns, 0 .. 1: 0 is right, a quarter is down. Within 0.001 turns.
double turnsOf(double x, double y);

/// 0 up to `from`, 1 from `to` on, and a smooth climb between.
double smoothStep(double from, double to, double value);

double mix(double from, double to, double share);

double clampUnit(double value);

int floorToInt(double value);

/// `value` modulo `count`, never negative.
int wrapped(int value, int count);

}  // namespace pantile::sample_art
