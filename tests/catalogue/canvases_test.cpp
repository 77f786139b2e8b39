#include "catalogue/canvases.h"

#include "catalogue/library_fixture.h"

namespace pantile::catalogue {
namespace {

using core::Canvas;
using core::ErrorKind;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using CanvasesTest = LibraryTest;

Canvas quay() {
    Canvas canvas;
    canvas.name = "Quay 64";
    canvas.size = {64, 48};
    canvas.palette = tests::paletteOf(16, 9, 0);
    canvas.penModel = core::PenModel::Lines;
    canvas.rules = {false, true, core::PenLeaving::Undone};
    canvas.geometry = {{11, 22}, 9, {700, 33}, 17, 8, core::Point{710, 400}};
    return canvas;
}

TEST_F(CanvasesTest, ComeBackAsTheyWereAdded) {
    Canvas free = quay();
    free.name = "Attic";
    free.palette.reset();
    free.freeColours = 12;
    free.rules = {true, false, core::PenLeaving::Refused};
    free.geometry.fillButton.reset();
    ASSERT_THAT(addCanvas(library(), quay()), isOk());
    ASSERT_THAT(addCanvas(library(), free), isOk());
    EXPECT_EQ(readCanvas(library(), "quay 64").value(), quay());
    EXPECT_EQ(listCanvases(library()).value(), (std::vector<Canvas>{free, quay()}));
}

TEST_F(CanvasesTest, AreReplacedByName) {
    ASSERT_THAT(addCanvas(library(), quay()), isOk());
    EXPECT_THAT(addCanvas(library(), quay()), failsWith(ErrorKind::AlreadyExists, "Quay 64"));
    Canvas changed = quay();
    changed.name = "QUAY 64";
    changed.size = {32, 32};
    changed.palette.reset();
    ASSERT_THAT(setCanvas(library(), changed), isOk());
    EXPECT_EQ(readCanvas(library(), "Quay 64").value(), changed);
    EXPECT_EQ(listCanvases(library())->size(), 1U);
    EXPECT_EQ(library().connection().number("SELECT count(*) FROM palettes").value(), 0);
    changed.name = "Quai 64";
    const auto refused = setCanvas(library(), changed);
    EXPECT_THAT(refused, failsWith(ErrorKind::NotFound, "Quai 64"));
    EXPECT_NE(refused.error().hint.find("QUAY 64"), std::string::npos);
}

TEST_F(CanvasesTest, OutOfRangeAreRefused) {
    Canvas bad = quay();
    bad.size = {0, 10};
    EXPECT_FALSE(addCanvas(library(), bad));
    bad = quay();
    bad.name = "";
    EXPECT_FALSE(addCanvas(library(), bad));
    EXPECT_TRUE(listCanvases(library())->empty());
}

TEST_F(CanvasesTest, AreRenamed) {
    ASSERT_THAT(addCanvas(library(), quay()), isOk());
    ASSERT_THAT(renameCanvas(library(), "quay 64", "Pier 64"), isOk());
    Canvas renamed = quay();
    renamed.name = "Pier 64";
    EXPECT_EQ(listCanvases(library()).value(), std::vector<Canvas>{renamed});
    ASSERT_THAT(addCanvas(library(), quay()), isOk());
    EXPECT_THAT(renameCanvas(library(), "Pier 64", "QUAY 64"),
                failsWith(ErrorKind::AlreadyExists, "QUAY 64"));
    EXPECT_THAT(renameCanvas(library(), "Pier 64", ""), failsWith(ErrorKind::InvalidInput, "name"));
}

TEST_F(CanvasesTest, AreRemoved) {
    ASSERT_THAT(addCanvas(library(), quay()), isOk());
    ASSERT_THAT(removeCanvas(library(), "Quay 64"), isOk());
    EXPECT_THAT(readCanvas(library(), "Quay 64"), failsWith(ErrorKind::NotFound, "Quay 64"));
    EXPECT_THAT(removeCanvas(library(), "Quay 64"), failsWith(ErrorKind::NotFound, "Quay 64"));
}

TEST_F(CanvasesTest, ThatWereForgedAreDamaged) {
    ASSERT_THAT(addCanvas(library(), quay()), isOk());
    for (const char* forgery :
         {"UPDATE canvases SET width = 100000", "UPDATE canvases SET pen_model = 77",
          "UPDATE canvases SET cell_pitch = 5000000000", "UPDATE canvases SET pen_turns = 2",
          "UPDATE canvases SET pen_covers = -1", "UPDATE canvases SET pen_leaving = 2",
          "UPDATE canvases SET fill_x = NULL", "UPDATE canvases SET fill_y = 40000",
          "UPDATE canvases SET fill_x = 15, fill_y = 30", "UPDATE canvases SET name = char(10)"}) {
        const auto transaction = library().begin();
        forge(forgery);
        EXPECT_THAT(listCanvases(library()), failsWith(ErrorKind::Corrupt, "damaged")) << forgery;
    }
}

}  // namespace
}  // namespace pantile::catalogue
