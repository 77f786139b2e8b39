#pragma once

// From bytes back to a load, and the proof that a written load draws what it should. Input is
// hostile: every size is checked before it is used. Authority: docs/load-format.md.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "board/load.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::board {

/// Errors: Corrupt if the bytes are no load or break a rule, ChecksumMismatch if they are damaged,
/// both naming the slot; Unsupported for a newer version.
core::Result<ReadLoad> readLoad(std::span<const std::uint8_t> bytes);

struct VerifiedSlot {
    std::string title;
    std::optional<core::Grid> painted;  ///< What the replay painted; none if it failed.
    std::int64_t milliseconds = 0;      ///< The time that the replay took.
    std::int64_t bytes = 0;
    std::string fault;  ///< Empty if the slot draws exactly what it should.

    bool verified() const { return fault.empty(); }
};

struct VerifiedLoad {
    std::string name;
    std::vector<VerifiedSlot> slots;

    bool verified() const;
};

/// Reads the load, makes the pointer reports of each slot, replays them on a virtual canvas and
/// compares every cell with the slot's fingerprint, and the time with the foretold one. A slot
/// whose data are damaged or that fails has its `fault`; the others are verified all the same.
/// Errors: as readLoad for damage to the header, a directory entry or the checksum of the whole;
/// Cancelled.
core::Result<VerifiedLoad> verifyLoad(std::span<const std::uint8_t> bytes,
                                      const core::Progress& progress = {});

}  // namespace pantile::board
