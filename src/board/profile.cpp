#include "board/profile.h"

#include <array>
#include <string>

namespace pantile::board {
namespace {

constexpr std::int64_t kFlashAfterBootloader = 28672;  // 32 KiB less a bootloader of 4 KiB.
constexpr std::int64_t kFlashForPlayer = 6144;         // What the player is held to.

core::Board flashBoard() {
    core::Board board;
    board.name = "flash-32k";
    board.description =
        "8-bit USB board, 32 KiB flash. 28672 bytes are left by a bootloader of 4 KiB (from such a "
        "part's datasheet); 6144 of them are kept for the player. Five slots and careful timing: "
        "common practice, no source.";
    board.memory = core::BoardMemory::Flash;
    board.slots = 5;
    board.bytes = kFlashAfterBootloader - kFlashForPlayer;
    board.timing = core::PointerTiming::careful();
    return board;
}

core::Board cardBoard() {
    constexpr int kSlots = 64;
    constexpr std::int64_t kBytesPerSlot = 65536;
    core::Board board;
    board.name = "card-64";
    board.description =
        "8-bit USB board with a memory card. 64 slots are what a person still finds by short "
        "presses; 64 KiB for each is far above what a texture takes, and far below any card. Both "
        "are choices of ours. Careful timing: common practice, no source.";
    board.memory = core::BoardMemory::Card;
    board.slots = kSlots;
    board.bytes = kSlots * kBytesPerSlot;
    board.timing = core::PointerTiming::careful();
    return board;
}

}  // namespace

std::vector<core::Board> shippedBoards() {
    return {flashBoard(), cardBoard()};
}

std::vector<core::Canvas> shippedCanvases() {
    std::vector<core::Canvas> canvases;
    for (const int side : {16, 32, 64}) {
        core::Canvas canvas;
        canvas.name = "cells-" + std::to_string(side);
        canvas.size = {side, side};
        canvas.freeColours = 16;
        canvas.geometry = core::CanvasGeometry::beside(canvas.size);
        canvases.push_back(std::move(canvas));
    }
    return canvases;
}

}  // namespace pantile::board
