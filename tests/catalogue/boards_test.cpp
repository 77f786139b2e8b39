#include "catalogue/boards.h"

#include "catalogue/library_fixture.h"
#include "catalogue/loads.h"

namespace pantile::catalogue {
namespace {

using core::Board;
using core::ErrorKind;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using BoardsTest = LibraryTest;

Board cardBoard() {
    Board board;
    board.name = "Card board";
    board.description = "32-bit USB board with a memory card";
    board.memory = core::BoardMemory::Card;
    board.slots = 200;
    board.bytes = 1 << 20;
    board.timing = {4, 100, 7, 20, 21, 55};
    board.display = {96, 64};
    return board;
}

TEST_F(BoardsTest, ComeBackAsTheyWereAdded) {
    Board flash;
    flash.name = "8-bit USB board, 32 KiB flash";
    ASSERT_THAT(addBoard(library(), cardBoard()), isOk());
    ASSERT_THAT(addBoard(library(), flash), isOk());
    EXPECT_EQ(readBoard(library(), "CARD BOARD").value(), cardBoard());
    EXPECT_EQ(listBoards(library()).value(), (std::vector<Board>{flash, cardBoard()}));
}

TEST_F(BoardsTest, AreReplacedByName) {
    ASSERT_THAT(addBoard(library(), cardBoard()), isOk());
    EXPECT_THAT(addBoard(library(), cardBoard()),
                failsWith(ErrorKind::AlreadyExists, "Card board"));
    Board changed = cardBoard();
    changed.slots = 3;
    ASSERT_THAT(setBoard(library(), changed), isOk());
    EXPECT_EQ(readBoard(library(), "Card board").value(), changed);
    changed.slots = 0;
    EXPECT_FALSE(setBoard(library(), changed));
    changed = cardBoard();
    changed.name = "Bard coard";
    EXPECT_THAT(setBoard(library(), changed), failsWith(ErrorKind::NotFound, "Bard coard"));
}

TEST_F(BoardsTest, StayWhileALoadIsForThem) {
    ASSERT_THAT(addBoard(library(), cardBoard()), isOk());
    StoredLoad load;
    load.name = "Harbour";
    load.board = "card board";
    load.slots = {add(tests::textureOf(1))};
    ASSERT_THAT(addLoad(library(), load), isOk());
    EXPECT_THAT(removeBoard(library(), "Card board"),
                failsWith(ErrorKind::InvalidInput, "Harbour"));
    ASSERT_THAT(setBoard(library(), cardBoard()), isOk());
    EXPECT_EQ(readLoad(library(), "Harbour")->board, "Card board");
    ASSERT_THAT(renameBoard(library(), "Card board", "Board with a card"), isOk());
    EXPECT_EQ(readLoad(library(), "Harbour")->board, "Board with a card");
    ASSERT_THAT(removeLoad(library(), "Harbour"), isOk());
    EXPECT_THAT(renameBoard(library(), "Card board", "Slate"),
                failsWith(ErrorKind::NotFound, "Card"));
    ASSERT_THAT(removeBoard(library(), "Board with a card"), isOk());
    EXPECT_THAT(removeBoard(library(), "Board with a card"),
                failsWith(ErrorKind::NotFound, "card"));
}

TEST_F(BoardsTest, ThatWereForgedAreDamaged) {
    ASSERT_THAT(addBoard(library(), cardBoard()), isOk());
    for (const char* forgery : {"UPDATE boards SET slots = 256", "UPDATE boards SET memory = 2",
                                "UPDATE boards SET press_ms = -1"}) {
        const auto transaction = library().begin();
        forge(forgery);
        EXPECT_THAT(readBoard(library(), "Card board"), failsWith(ErrorKind::Corrupt, "Card board"))
            << forgery;
    }
}

}  // namespace
}  // namespace pantile::catalogue
