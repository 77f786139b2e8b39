#include "board/profile.h"

#include <array>
#include <string>

namespace pantile::board {
namespace {

constexpr std::int64_t kFlashAfterBootloader = 28672;  // 32 KiB less a bootloader of 4 KiB.
constexpr std::int64_t kFlashForPlayer = 6144;         // What the player is held to.
constexpr std::int64_t kBytesPerCardSlot = 65536;

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
    core::Board board;
    board.name = "card-64";
    board.description =
        "8-bit USB board with a memory card. 64 slots are what a person still finds by short "
        "presses; 64 KiB for each is far above what a texture takes, and far below any card. Both "
        "are choices of ours. Careful timing: common practice, no source.";
    board.memory = core::BoardMemory::Card;
    board.slots = kSlots;
    board.bytes = kSlots * kBytesPerCardSlot;
    board.timing = core::PointerTiming::careful();
    return board;
}

core::Board linuxBoard() {
    core::Board board;
    board.name = "linux-255";
    board.description =
        "Small Linux board whose kernel makes it a USB mouse; the load is a file on its card. 255 "
        "slots are the most that a load has: its player names each on a terminal. 64 KiB for each "
        "as for card-64, a choice of ours. Careful timing: common practice, no source.";
    board.memory = core::BoardMemory::Card;
    board.slots = core::kMaxBoardSlots;
    board.bytes = core::kMaxBoardSlots * kBytesPerCardSlot;
    board.timing = core::PointerTiming::careful();
    return board;
}

}  // namespace

std::vector<core::Board> shippedBoards() {
    return {flashBoard(), cardBoard(), linuxBoard()};
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
