#pragma once

// Reports: what a board sends to carry out a plan, as a relative mouse in boot form (USB HID 1.11,
// appendix B.2). Authority: docs/drawing.md section 3.

#include <cstdint>
#include <vector>

#include "core/canvas.h"
#include "core/timing.h"
#include "drawing/stroke.h"

namespace pantile::drawing {

/// One report, and how long the board waits after it.
/// Units: counts, each in -127..127 (-128 lies outside the protocol's logical range); x runs right,
/// y runs down.
struct Report {
    std::int8_t dx = 0;
    std::int8_t dy = 0;
    bool pressed = false;
    std::uint16_t milliseconds = 0;
    bool operator==(const Report&) const = default;
};

/// The reports of `plan` from the pen's start at cell (0, 0). A report moves or changes the button
/// or waits, never two of these; a way is cut into full steps and a rest.
std::vector<Report> reportsOf(const Plan& plan, const core::Canvas& canvas,
                              const core::PointerTiming& timing);

}  // namespace pantile::drawing
