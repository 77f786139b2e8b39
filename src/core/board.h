#pragma once

// Board: the profile of a drawing device. Boards are named by class, never by maker.

#include <cstdint>
#include <string>

#include "core/geometry.h"
#include "core/result.h"
#include "core/timing.h"

namespace pantile::core {

/// Stored in libraries: never renumber.
enum class BoardMemory : unsigned char {
    Flash = 0,  ///< The load is part of the program; written as a C header.
    Card = 1,   ///< The load lies on a memory card; written as files.
};

struct Board {
    std::string name;
    std::string description;  ///< Its class, and where its figures come from.
    BoardMemory memory = BoardMemory::Flash;
    int slots = 5;
    std::int64_t bytes = 22528;  ///< What a whole load may take.
    PointerTiming timing;
    Size display = {};  ///< Cells of the small pictures that it can show; both sides 0 if none.

    bool hasDisplay() const { return display.width > 0; }

    bool operator==(const Board&) const = default;
};

inline constexpr int kMaxBoardSlots = 255;
inline constexpr int kMaxDisplaySide = 128;
inline constexpr std::int64_t kMaxBoardBytes = std::int64_t{1} << 30U;

/// Errors: InvalidInput naming the field: slots 1..255, bytes 64..2^30, timing as checkTiming,
/// display none or 1..128 on both sides.
Result<void> checkBoard(const Board& board);

}  // namespace pantile::core
