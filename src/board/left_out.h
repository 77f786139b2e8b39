#pragma once

// Why a texture did not get into a load, in words.

#include <span>
#include <vector>

#include "board/fit.h"

namespace pantile::board {

/// One reason for each item that `choice` leaves out, ascending.
std::vector<LeftOut> explainLeftOut(std::span<const FitItem> items, const FitLimits& limits,
                                    const FitChoice& choice);

}  // namespace pantile::board
