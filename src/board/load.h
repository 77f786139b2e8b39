#pragma once

// Load: an ordered choice of textures for one board, ready to be written. Authority for the bytes:
// docs/load-format.md.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/canvas.h"
#include "core/fingerprint.h"
#include "core/grid.h"
#include "core/palette.h"
#include "core/timing.h"
#include "drawing/stroke.h"

namespace pantile::board {

struct LoadSlot {
    std::string title;
    core::Grid grid;
    core::Palette palette;
    core::Canvas canvas;
    drawing::Plan plan;
    /// For a board with a screen: the texture made smaller, in indices of the same palette.
    std::optional<core::Grid> picture = {};
};

struct Load {
    std::string name;
    core::PointerTiming timing;
    std::vector<LoadSlot> slots;
};

/// A slot as it stands in a written load. The grid is not stored: it comes out of replaying.
struct ReadSlot {
    std::string title;  ///< At most 46 bytes: longer ones were cut.
    core::Size size;
    core::Palette palette;
    core::Canvas canvas;            ///< Without a name of its own; as many colours as the palette.
    drawing::Plan plan;             ///< Its time is the one that its strokes take.
    std::int64_t foretoldMs = 0;    ///< The time that the load itself states.
    core::Fingerprint fingerprint;  ///< Of the wanted grid and palette.
    std::int64_t bytes = 0;         ///< What the slot takes of the load.
    std::optional<core::Grid> picture = {};  ///< For a board with a screen.
};

struct ReadLoad {
    std::string name;  ///< At most 32 bytes: longer ones were cut.
    core::PointerTiming timing;
    std::vector<ReadSlot> slots;
};

}  // namespace pantile::board
