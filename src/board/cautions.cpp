#include "board/cautions.h"

#include <array>

namespace pantile::board {
namespace {

constexpr std::array<std::string_view, 6> kCautions = {
    "The board acts as a mouse on whatever it is plugged into.",
    "It arms only after it has seen its trigger released; let go of the trigger before plugging it "
    "into a computer.",
    "Unplug other pointing devices from the console first.",
    "Keep to the console's and the toolkit's terms of use.",
    "Textures belong to their authors: keep author and licence with them.",
    "Low-voltage hobby electronics: follow the board maker's instructions; anything beyond USB "
    "power "
    "is for a qualified person.",
};

}  // namespace

std::span<const std::string_view> cautions() {
    return kCautions;
}

}  // namespace pantile::board
