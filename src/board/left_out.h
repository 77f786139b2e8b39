#pragma once

// Why a texture did not get into a load, and what would let it in.

#include <span>
#include <string>
#include <vector>

#include "board/fit.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::board {

/// One for each item that `choice` leaves out, ascending. Errors: Cancelled.
/// Cost: after a fixed number of steps it goes on without exchanges.
core::Result<std::vector<LeftOut>> explainLeftOut(std::span<const FitItem> items,
                                                  const FitLimits& limits, const FitChoice& choice,
                                                  const core::Progress& progress);

/// The change as a sentence such as "It fits in place of 17 Kelp bed (worth 2), or with 412 bytes
/// more." Empty if there is none.
std::string changeText(std::span<const FitItem> items, const LeftOut& left);

}  // namespace pantile::board
