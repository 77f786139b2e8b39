#pragma once

// PenRules: what a toolkit's pen may do, beyond what it paints while it moves.

namespace pantile::core {

/// What becomes of a stroke whose pointer leaves the canvas with the button down. Plans never do
/// so; the replay has to know. Stored in libraries and loads: never renumber.
enum class PenLeaving : unsigned char {
    Refused = 0,  ///< Nothing is known of it, so it must not happen.
    Undone = 1,   ///< The whole stroke is taken back, and paints nothing until the button goes up.
};

struct PenRules {
    bool turns = true;   ///< Go round corners with the pen down; else every stroke is straight.
    bool covers = true;  ///< Paint over what another colour painted; else that must not happen.
    PenLeaving leaving = PenLeaving::Refused;

    bool operator==(const PenRules&) const = default;
};

}  // namespace pantile::core
