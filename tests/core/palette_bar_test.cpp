#include "core/palette_bar.h"

#include <gtest/gtest.h>

#include "support/matchers.h"

namespace pantile::core {
namespace {

using tests::failsWith;
using tests::isOk;

/// 16 by 16 cells of 12 counts, the first at 10,10: the grid reaches from 4 to 195.
Canvas barCanvas(Point bar) {
    Canvas canvas;
    canvas.name = "tiny";
    canvas.size = {16, 16};
    canvas.freeColours = 8;
    canvas.geometry = CanvasGeometry::beside(canvas.size);
    canvas.geometry.gridCentre = {10, 10};
    canvas.geometry.cellPitch = 12;
    canvas.geometry.swatchCentre = bar;
    return canvas;
}

TEST(PaletteBar, LiesOverTheGridFromTheFirstCountThatTheyShare) {
    EXPECT_THAT(checkBar(barCanvas({204, 8})), isOk());
    EXPECT_THAT(checkBar(barCanvas({203, 8})),
                failsWith(ErrorKind::InvalidInput, "the swatch of colour 0 lies over"));
    EXPECT_NE(checkBar(barCanvas({160, 8})).error().hint.find("--bar-at X,Y"), std::string::npos);
    // Only the second column of the bar reaches the grid.
    Canvas folded = barCanvas({3, 400});
    folded.geometry.swatchesPerColumn = 4;
    EXPECT_THAT(checkBar(folded), isOk());
    folded.geometry.gridCentre = {20, 10};
    folded.geometry.swatchCentre = {0, 20};
    EXPECT_THAT(checkSwatch(0, folded), isOk());
    EXPECT_THAT(checkBar(folded), failsWith(ErrorKind::InvalidInput, "colour 4"));
}

TEST(PaletteBar, RefusesWhatIsNoCanvas) {
    Canvas canvas = barCanvas({300, 8});
    canvas.geometry.swatchesPerColumn = 0;
    EXPECT_THAT(checkBar(canvas), failsWith(ErrorKind::InvalidInput, "swatches in a column"));
}

TEST(PaletteBar, UsuallyLiesToTheRightOfTheGrid) {
    const CanvasGeometry corner = CanvasGeometry::beside({64, 64});
    EXPECT_EQ(corner.swatchCentre, (Point{544, 8}));
    const Canvas canvas = barCanvas({0, 0});
    EXPECT_EQ(usualBarPlace(canvas.geometry, canvas.size), (Point{228, 12}));
}

TEST(PaletteBar, IsMovedOnlyIfNobodyPlacedItAndTheGridLiesUnderIt) {
    const CanvasGeometry before = CanvasGeometry::beside({16, 16});
    Canvas canvas = barCanvas(before.swatchCentre);
    keepUsualBarClear(canvas, before, canvas.size);
    EXPECT_EQ(canvas.geometry.swatchCentre, (Point{228, 12}));

    CanvasGeometry placed = before;
    placed.swatchCentre = {161, 8};
    Canvas kept = barCanvas(placed.swatchCentre);
    keepUsualBarClear(kept, placed, kept.size);
    EXPECT_EQ(kept.geometry.swatchCentre, placed.swatchCentre);

    Canvas clear = barCanvas(before.swatchCentre);
    clear.geometry.cellPitch = 6;
    keepUsualBarClear(clear, before, clear.size);
    EXPECT_EQ(clear.geometry.swatchCentre, before.swatchCentre);
}

}  // namespace
}  // namespace pantile::core
