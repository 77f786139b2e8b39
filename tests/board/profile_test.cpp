#include "board/profile.h"

#include <gtest/gtest.h>

#include "board/load_layout.h"
#include "support/matchers.h"

namespace pantile::board {
namespace {

using tests::isOk;

TEST(Profile, ShipsBoardsAndCanvasesThatPassTheirChecks) {
    for (const core::Board& board : shippedBoards()) {
        EXPECT_THAT(core::checkBoard(board), isOk()) << board.name;
    }
    for (const core::Canvas& canvas : shippedCanvases()) {
        EXPECT_THAT(core::checkCanvas(canvas), isOk()) << canvas.name;
    }
}

// The class '8-bit USB microcontroller with 32 KiB flash', from such a part's datasheet, from
// memory; five slots are common practice, no source.
TEST(Profile, LeavesTheFlashBoardWhatBootloaderAndPlayerDoNotTake) {
    const core::Board board = shippedBoards()[0];
    EXPECT_EQ(board.name, "flash-32k");
    EXPECT_EQ(board.slots, 5);
    EXPECT_EQ(board.bytes, 32 * 1024 - 4 * 1024 - 6 * 1024);
    EXPECT_EQ(board.timing, core::PointerTiming::careful());
    EXPECT_EQ(board.memory, core::BoardMemory::Flash);
}

TEST(Profile, GivesTheCardBoardRoomForManySlots) {
    const core::Board board = shippedBoards()[1];
    EXPECT_EQ(board.name, "card-64");
    EXPECT_EQ(board.slots, 64);
    EXPECT_EQ(board.memory, core::BoardMemory::Card);
    EXPECT_GE(board.bytes, 64 * 65536);
}

TEST(Profile, GivesTheLinuxBoardAllSlotsThatALoadHas) {
    const core::Board board = shippedBoards()[2];
    EXPECT_EQ(board.name, "linux-255");
    EXPECT_EQ(board.slots, layout::kMaxSlots);
    EXPECT_EQ(board.memory, core::BoardMemory::Card);
    EXPECT_EQ(board.bytes, 255 * 65536);
    EXPECT_LE(board.bytes, static_cast<std::int64_t>(layout::kMaxLoadBytes));
    EXPECT_NE(board.description.find("Linux"), std::string::npos);
}

TEST(Profile, NamesCanvasesAfterTheirCells) {
    const std::vector<core::Canvas> canvases = shippedCanvases();
    ASSERT_EQ(canvases.size(), 3U);
    EXPECT_EQ(canvases[2].name, "cells-64");
    EXPECT_EQ(canvases[2].size, (core::Size{64, 64}));
    EXPECT_EQ(canvases[2].geometry, core::CanvasGeometry::beside({64, 64}));
    EXPECT_EQ(canvases[2].colourLimit(), 16);
}

}  // namespace
}  // namespace pantile::board
