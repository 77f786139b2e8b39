#pragma once

// What writer and reader of a script share: directions, and which ways a pen has. Authority:
// docs/load-format.md section 3.

#include <array>
#include <string>

#include "board/stroke_script.h"
#include "core/geometry.h"

namespace pantile::board {

/// Eight directions clockwise, 0 is east. Shape of a step: x right, y down.
inline constexpr std::array<core::Point, 8> kDirections = {
    {{1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}, {0, -1}, {1, -1}}};

/// Turns, in eighths clockwise.
inline constexpr int kRight = 2;
inline constexpr int kBack = 4;
inline constexpr int kLeft = 6;

constexpr int turned(int direction, int eighths) {
    return (direction + eighths) & 7;
}

// Parameters of numbers. Stored in loads: never change them.
inline constexpr int kStrokesParameter = 2;
inline constexpr int kMoveParameter = 3;
inline constexpr int kJumpParameter = 2;
inline constexpr int kLongParameter = 0;

inline constexpr int kUnaryLength = 4;       ///< Lengths up to this are so many bits.
inline constexpr int kRunParameterBits = 2;  ///< A run's parameters are 0..3.
inline constexpr int kMostRunParameter = 3;

/// Whether the pen goes in eight directions, not in four.
constexpr bool goesAslant(const ScriptBounds& bounds) {
    return bounds.pen == core::PenModel::Diagonals || bounds.pen == core::PenModel::Sampled;
}

constexpr bool jumps(const ScriptBounds& bounds) {
    return bounds.pen == core::PenModel::Sampled && bounds.turns;
}

constexpr int directionBits(const ScriptBounds& bounds) {
    return goesAslant(bounds) ? 3 : 2;
}

constexpr bool contains(const ScriptBounds& bounds, core::Point p) {
    return p.x >= 0 && p.y >= 0 && p.x < bounds.grid.width && p.y < bounds.grid.height;
}

/// The number of bits that name a colour.
int colourBits(const ScriptBounds& bounds);

/// Where the next run after one that ends in `last` may begin, counted row by row.
constexpr int nextRunPlace(const ScriptBounds& bounds, core::Point last) {
    const int behind = last.x + 1 < bounds.grid.width ? 2 : 1;
    return last.y * bounds.grid.width + last.x + behind;
}

inline std::string cellText(core::Point p) {
    return "(" + std::to_string(p.x) + ", " + std::to_string(p.y) + ")";
}

}  // namespace pantile::board
