#pragma once

// What a person has to know before a board is plugged in: one place, shown by the command line, on
// the slot sheet and in a written header.

#include <span>
#include <string_view>

namespace pantile::board {

/// What stands above them.
inline constexpr std::string_view kCautionsHeading = "Before you plug the board in";

/// Whole sentences in plain ASCII, in the order in which they matter.
std::span<const std::string_view> cautions();

}  // namespace pantile::board
