#include "catalogue/loads.h"

#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/library_fixture.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using tests::textureOf;

class LoadsTest : public LibraryTest {
protected:
    void SetUp() override {
        core::Board board;
        board.name = "Five slots";
        ASSERT_THAT(addBoard(library(), board), isOk());
        for (std::uint64_t seed = 1; seed <= 6; ++seed) ids.push_back(add(textureOf(seed)));
    }

    StoredLoad load(const std::string& name, std::vector<core::TextureId> slots) {
        StoredLoad made;
        made.name = name;
        made.board = "Five slots";
        made.slots = std::move(slots);
        made.madeAt = now;
        return made;
    }

    std::vector<core::TextureId> ids;
};

TEST_F(LoadsTest, KeepTheirSlotsInOrder) {
    const StoredLoad harbour = load("Harbour", {ids[3], ids[0], ids[2]});
    const StoredLoad beach = load("beach", {ids[1]});
    ASSERT_THAT(addLoad(library(), harbour), isOk());
    ASSERT_THAT(addLoad(library(), beach), isOk());
    EXPECT_EQ(readLoad(library(), "harbour").value(), harbour);
    EXPECT_EQ(listLoads(library()).value(), (std::vector<StoredLoad>{beach, harbour}));
}

TEST_F(LoadsTest, KeepTheCanvasThatTheyAreMadeFor) {
    core::Canvas canvas;
    canvas.name = "Slipway";
    canvas.size = {64, 64};
    canvas.geometry = core::CanvasGeometry::beside(canvas.size);
    ASSERT_THAT(addCanvas(library(), canvas), isOk());
    StoredLoad harbour = load("Harbour", {ids[3]});
    harbour.canvas = "slipway";
    ASSERT_THAT(addLoad(library(), harbour), isOk());
    EXPECT_EQ(readLoad(library(), "harbour")->canvas, "Slipway");
    ASSERT_THAT(renameCanvas(library(), "Slipway", "Quay"), isOk());
    EXPECT_EQ(listLoads(library())->front().canvas, "Quay");
    EXPECT_THAT(removeCanvas(library(), "Quay"),
                failsWith(ErrorKind::InvalidInput, "the load 'Harbour' is for the canvas 'Quay'"));
    ASSERT_THAT(removeLoad(library(), "Harbour"), isOk());
    EXPECT_THAT(removeCanvas(library(), "Quay"), isOk());
    harbour.canvas = "nowhere";
    EXPECT_THAT(addLoad(library(), harbour), failsWith(ErrorKind::NotFound, "nowhere"));
    EXPECT_TRUE(listLoads(library())->empty());
}

TEST_F(LoadsTest, ThatCannotBeAreRefused) {
    ASSERT_THAT(addLoad(library(), load("Harbour", {ids[0]})), isOk());
    EXPECT_THAT(addLoad(library(), load("HARBOUR", {ids[1]})),
                failsWith(ErrorKind::AlreadyExists, "HARBOUR"));
    EXPECT_THAT(addLoad(library(), load("Six", ids)),
                failsWith(ErrorKind::DoesNotFit, "6 textures"));
    EXPECT_THAT(addLoad(library(), load("Twice", {ids[0], ids[1], ids[0]})),
                failsWith(ErrorKind::InvalidInput, "twice"));
    EXPECT_THAT(addLoad(library(), load("Gap", {{99}})), failsWith(ErrorKind::NotFound, "99"));
    EXPECT_THAT(addLoad(library(), load("", {ids[0]})), failsWith(ErrorKind::InvalidInput, "name"));
    StoredLoad lost = load("Lost", {ids[0]});
    lost.board = "Five slot";
    const auto refused = addLoad(library(), lost);
    EXPECT_THAT(refused, failsWith(ErrorKind::NotFound, "Five slot"));
    EXPECT_NE(refused.error().hint.find("Five slots"), std::string::npos);
    EXPECT_EQ(listLoads(library())->size(), 1U);
}

TEST_F(LoadsTest, RememberWhereTheyWereWritten) {
    ASSERT_THAT(addLoad(library(), load("Harbour", {ids[0]})), isOk());
    ASSERT_THAT(noteLoadWritten(library(), "Harbour", "/media/card"), isOk());
    now += 5;
    ASSERT_THAT(noteLoadWritten(library(), "Harbour", "sketch/"), isOk());
    EXPECT_EQ(readLoad(library(), "Harbour")->writings,
              (std::vector<LoadWriting>{{now - 5, "/media/card", "Five slots"},
                                        {now, "sketch/", "Five slots"}}));
    EXPECT_THAT(noteLoadWritten(library(), "Harbor", "x"),
                failsWith(ErrorKind::NotFound, "Harbor"));
    EXPECT_FALSE(noteLoadWritten(library(), "Harbour", "a\nb"));
}

TEST_F(LoadsTest, CanBeEmptyAndAreFilledLater) {
    ASSERT_THAT(addLoad(library(), load("Evening", {})), isOk());
    ASSERT_THAT(setLoadSlots(library(), "evening", {ids[2], ids[0]}), isOk());
    EXPECT_EQ(readLoad(library(), "Evening").value(), load("Evening", {ids[2], ids[0]}));
    ASSERT_THAT(setLoadSlots(library(), "Evening", {ids[1]}), isOk());
    EXPECT_EQ(readLoad(library(), "Evening")->slots, std::vector{ids[1]});
    EXPECT_THAT(setLoadSlots(library(), "Evening", ids),
                failsWith(ErrorKind::DoesNotFit, "6 textures"));
    EXPECT_THAT(setLoadSlots(library(), "Evening", {{99}}), failsWith(ErrorKind::NotFound, "99"));
    EXPECT_THAT(setLoadSlots(library(), "Morning", {}), failsWith(ErrorKind::NotFound, "Morning"));
    EXPECT_EQ(readLoad(library(), "Evening")->slots, std::vector{ids[1]}) << "nothing half-done";
    ASSERT_THAT(setLoadSlots(library(), "Evening", {}), isOk());
    EXPECT_TRUE(readLoad(library(), "Evening")->slots.empty());
}

TEST_F(LoadsTest, GoToAnotherBoardThatHasRoom) {
    core::Board small;
    small.name = "Two slots";
    small.slots = 2;
    ASSERT_THAT(addBoard(library(), small), isOk());
    ASSERT_THAT(addLoad(library(), load("Harbour", {ids[0], ids[1], ids[2]})), isOk());
    EXPECT_THAT(setLoadBoard(library(), "Harbour", "Two slots"),
                failsWith(ErrorKind::DoesNotFit, "3 textures"));
    ASSERT_THAT(setLoadSlots(library(), "Harbour", {ids[0], ids[1]}), isOk());
    ASSERT_THAT(setLoadBoard(library(), "Harbour", "two slots"), isOk());
    EXPECT_EQ(readLoad(library(), "Harbour")->board, "Two slots");
    EXPECT_THAT(setLoadBoard(library(), "Harbour", "Three"),
                failsWith(ErrorKind::NotFound, "Three"));
}

TEST_F(LoadsTest, AreRenamedWithTheirHistory) {
    ASSERT_THAT(addLoad(library(), load("Harbour", {ids[0]})), isOk());
    ASSERT_THAT(addLoad(library(), load("Beach", {ids[1]})), isOk());
    ASSERT_THAT(noteLoadWritten(library(), "Harbour", "sketch/"), isOk());
    EXPECT_THAT(renameLoad(library(), "Harbour", "beach"),
                failsWith(ErrorKind::AlreadyExists, "beach"));
    ASSERT_THAT(renameLoad(library(), "Harbour", "Pier"), isOk());
    EXPECT_EQ(readLoad(library(), "Pier")->writings.size(), 1U);
    EXPECT_THAT(readLoad(library(), "Harbour"), failsWith(ErrorKind::NotFound, "Harbour"));
}

TEST_F(LoadsTest, AreRemoved) {
    ASSERT_THAT(addLoad(library(), load("Harbour", {ids[0]})), isOk());
    ASSERT_THAT(removeLoad(library(), "Harbour"), isOk());
    EXPECT_THAT(readLoad(library(), "Harbour"), failsWith(ErrorKind::NotFound, "Harbour"));
    EXPECT_EQ(library().connection().number("SELECT count(*) FROM load_slots").value(), 0);
}

}  // namespace
}  // namespace pantile::catalogue
