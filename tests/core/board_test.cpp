#include "core/board.h"

#include "support/matchers.h"

namespace pantile::core {
namespace {

using tests::failsWith;
using tests::isOk;

Board goodBoard() {
    Board board;
    board.name = "pier board";
    return board;
}

TEST(Board, DefaultProfileIsAccepted) {
    EXPECT_THAT(checkBoard(goodBoard()), isOk());
}

TEST(Board, RefusesSlotsAndBytesOutsideTheirRange) {
    Board board = goodBoard();
    board.slots = 0;
    EXPECT_THAT(checkBoard(board), failsWith(ErrorKind::InvalidInput, "number of slots is 0"));
    board.slots = kMaxBoardSlots + 1;
    EXPECT_THAT(checkBoard(board), failsWith(ErrorKind::InvalidInput, "number of slots is 256"));
    board = goodBoard();
    board.bytes = 63;
    EXPECT_THAT(checkBoard(board), failsWith(ErrorKind::InvalidInput, "number of bytes is 63"));
}

TEST(Board, HasADisplayOfBothSidesOrNone) {
    Board board = goodBoard();
    EXPECT_FALSE(board.hasDisplay());
    board.display = {128, 1};
    EXPECT_TRUE(board.hasDisplay());
    EXPECT_THAT(checkBoard(board), isOk());
    board.display = {0, 5};
    EXPECT_THAT(checkBoard(board), failsWith(ErrorKind::InvalidInput, "display's width is 0"));
    board.display = {64, 129};
    EXPECT_THAT(checkBoard(board), failsWith(ErrorKind::InvalidInput, "display's height is 129"));
}

TEST(Board, RefusesAStepBeyondTheProtocolsLimit) {
    Board board = goodBoard();
    board.timing.maxStepUp = 128;
    EXPECT_THAT(checkBoard(board), failsWith(ErrorKind::InvalidInput, "pen up is 128"));
}

TEST(Board, RefusesTimesOutsideTheirRange) {
    Board board = goodBoard();
    board.timing.reportIntervalMs = 0;
    EXPECT_THAT(checkBoard(board), failsWith(ErrorKind::InvalidInput, "report interval"));
    board = goodBoard();
    board.timing.settleMs = 5001;
    EXPECT_THAT(checkBoard(board), failsWith(ErrorKind::InvalidInput, "settle"));
}

TEST(Board, ShippedTimingsAreAccepted) {
    EXPECT_THAT(checkTiming(PointerTiming::careful()), isOk());
    EXPECT_THAT(checkTiming(PointerTiming::quick()), isOk());
}

}  // namespace
}  // namespace pantile::core
