#pragma once

// Blocks in courses and loose stones: what walls, roofs, paths and beaches are laid from.

#include <cstdint>
#include <vector>

#include "draw/sheet.h"

namespace pantile::sample_art {

/// Units: cells; a block may run over the sheet's edge and come back in.
struct Block {
    int x = 0;
    int y = 0;
    int width = 0;
    int height = 0;
    int course = 0;
};

struct BlockWidths {
    int least = 4;
    int most = 8;
};

/// Fills `side` columns with courses of the given heights, each of blocks of chance widths that go
/// round without a remainder. No joint lies on the joint of the course above.
std::vector<Block> layCourses(int side, const std::vector<int>& heights, BlockWidths widths,
                              std::uint64_t seed);

struct BlockInks {
    Ink face = Ink::Stone;
    Ink light = Ink::Mist;    ///< Along the top and the left edge.
    Ink shadow = Ink::Slate;  ///< Along the bottom and the right edge.
};

/// Draws a block one cell smaller than its place at the right and the bottom: there the joint is.
void layBlock(Sheet& sheet, const Block& block, const BlockInks& inks);

struct Pebble {
    Place centre;
    Place radii;
    double turn = 0;  ///< Units: whole turns.
};

/// A rounded stone lit from the top left, with a dark rim.
void pebble(Sheet& sheet, const Pebble& shape, std::span<const Ink> ramp, Ink rim);

}  // namespace pantile::sample_art
