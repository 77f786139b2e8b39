// calibrate_canvas.h: the load of a calibration, and the canvas that comes of reading it off.

#include "tasks/calibrate_canvas.h"

#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/loads.h"
#include "core/palette_bar.h"
#include "tasks/library_fixture.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

class Calibrating : public tests::LibraryFixture {
protected:
    Calibrating() {
        core::Board board;
        board.name = "pier";
        board.memory = core::BoardMemory::Card;
        EXPECT_THAT(catalogue::addBoard(m_library, board), isOk());
        core::Canvas canvas;
        canvas.name = "harbour";
        canvas.size = {64, 64};
        canvas.geometry = core::CanvasGeometry::beside(canvas.size);
        EXPECT_THAT(catalogue::addCanvas(m_library, canvas), isOk());
    }

    /// Puts the palette bar there, as a library of an earlier version may have it.
    void place(core::Point bar) {
        core::Canvas canvas = catalogue::readCanvas(m_library, "harbour").value();
        canvas.geometry.swatchCentre = bar;
        EXPECT_THAT(catalogue::setCanvas(m_library, canvas), isOk());
    }
};

TEST_F(Calibrating, WritesALoadThatIsProvenAndNotKept) {
    const auto written = writeCalibration(m_library, "harbour", "pier", path("out"), {});
    ASSERT_THAT(written, isOk());
    ASSERT_EQ(written->files.size(), 2U);
    const auto verified = verifyLoadFile(path("out/calibration"));
    ASSERT_THAT(verified, isOk());
    EXPECT_TRUE(verified->verified());
    EXPECT_EQ(verified->slots[0].title, "Calibration");
    EXPECT_TRUE(catalogue::listLoads(m_library)->empty());
    EXPECT_THAT(writeCalibration(m_library, "harbour", "pier", path("out"), {}),
                failsWith(ErrorKind::AlreadyExists, "load.bin"));
    EXPECT_THAT(writeCalibration(m_library, "habour", "pier", path("out"), {}),
                failsWith(ErrorKind::NotFound, "habour"));
}

TEST_F(Calibrating, GivesTheCanvasWhatExplainsTheCells) {
    // Drawn with 7 counts a cell from (4, 4): with cells of 10 counts whose first begins at (-6, 4)
    // the near mark at 18 lies in cells 2 and 1, the far one at 340 in cells 34 and 33.
    place({900, 8});
    const auto taken = takeCalibration(m_library, "harbour", {{2, 1}, {34, 33}, {}, {}});
    ASSERT_THAT(taken, isOk());
    EXPECT_EQ(taken->found.cellPitch, 10);
    const core::CanvasGeometry after = catalogue::readCanvas(m_library, "harbour").value().geometry;
    EXPECT_EQ(after.cellPitch, 10);
    EXPECT_EQ(after.gridCentre, taken->found.gridCentre);
    EXPECT_EQ(after.swatchCentre, (core::Point{900, 8}));
}

TEST_F(Calibrating, KeepsThePaletteBarClearOfTheGrid) {
    // With 10 counts a cell the grid reaches over the usual place of the bar.
    const auto taken = takeCalibration(m_library, "harbour", {{2, 1}, {34, 33}, {}, {}});
    ASSERT_THAT(taken, isOk());
    EXPECT_THAT(core::checkBar(taken->canvas), isOk());
    EXPECT_EQ(taken->canvas, catalogue::readCanvas(m_library, "harbour").value());
}

TEST_F(Calibrating, WritesNothingIfThePaletteBarLiesOverTheGrid) {
    place({200, 8});
    EXPECT_THAT(writeCalibration(m_library, "harbour", "pier", path("out"), {}),
                failsWith(ErrorKind::InvalidInput, "swatch of colour 0 lies over"));
    EXPECT_FALSE(std::filesystem::exists(path("out")));
    EXPECT_THAT(takeCalibration(m_library, "harbour", {{2, 1}, {34, 33}, {}, {}}),
                failsWith(ErrorKind::InvalidInput, "swatch of colour 0 lies over"));
}

TEST_F(Calibrating, LeavesTheCanvasAloneIfNothingExplainsTheCells) {
    const auto before = catalogue::readCanvas(m_library, "harbour").value();
    EXPECT_THAT(takeCalibration(m_library, "harbour", {{2, 2}, {50, 20}, {}, {}}),
                failsWith(ErrorKind::InvalidInput, "no pitch and origin"));
    EXPECT_EQ(catalogue::readCanvas(m_library, "harbour").value(), before);
}

}  // namespace
}  // namespace pantile::tasks
