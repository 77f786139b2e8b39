#pragma once

// From a load to its bytes, the card form. Authority: docs/load-format.md.

#include <cstdint>
#include <vector>

#include "board/load.h"
#include "core/board.h"
#include "core/result.h"

namespace pantile::board {

/// What a load takes before its first slot.
std::int64_t loadBaseBytes();

/// What one slot takes: directory entry, palette and script. loadBaseBytes and the slotBytes of all
/// slots add up to the size of the written load exactly.
/// Errors: InvalidInput or TooLarge if the slot's plan cannot be written.
core::Result<std::int64_t> slotBytes(const LoadSlot& slot);

/// Errors: InvalidInput naming the slot if it or the timing is not valid, or if there is none;
/// DoesNotFit with the figures if the slots or the bytes are more than the board has.
core::Result<std::vector<std::uint8_t>> writeLoad(const Load& load, const core::Board& board);

}  // namespace pantile::board
