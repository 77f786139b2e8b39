#include "core/canvas.h"

#include "support/matchers.h"

namespace pantile::core {
namespace {

using tests::failsWith;
using tests::isOk;

Canvas goodCanvas() {
    Canvas canvas;
    canvas.name = "tidewrack";
    canvas.size = {64, 64};
    canvas.geometry = CanvasGeometry::beside(canvas.size);
    return canvas;
}

TEST(Canvas, UsualArrangementIsAccepted) {
    EXPECT_THAT(checkCanvas(goodCanvas()), isOk());
}

TEST(Canvas, PlacesCellsAndSwatchesByItsPitches) {
    const CanvasGeometry geometry = CanvasGeometry::beside({64, 64});
    EXPECT_EQ(geometry.cellCentre({0, 0}), (Point{4, 4}));
    EXPECT_EQ(geometry.cellCentre({63, 2}), (Point{4 + 63 * 8, 4 + 2 * 8}));
    EXPECT_EQ(geometry.swatch(0), (Point{64 * 8 + 24 + 8, 8}));
    EXPECT_EQ(geometry.swatch(15), (Point{64 * 8 + 24 + 8, 8 + 15 * 16}));
    EXPECT_EQ(geometry.swatch(16), (Point{64 * 8 + 24 + 8 + 16, 8}));
}

TEST(Canvas, ColourLimitIsThatOfTheFixedPaletteIfThereIsOne) {
    Canvas canvas = goodCanvas();
    EXPECT_EQ(canvas.colourLimit(), 16);
    canvas.palette = *Palette::create({{0, 0, 0}, {9, 9, 9}, {255, 255, 255}});
    EXPECT_EQ(canvas.colourLimit(), 3);
}

TEST(Canvas, RefusesEachFieldOutsideItsRange) {
    Canvas canvas = goodCanvas();
    canvas.size = {257, 64};
    EXPECT_THAT(checkCanvas(canvas), failsWith(ErrorKind::InvalidInput, "257x64"));
    canvas = goodCanvas();
    canvas.freeColours = 1;
    EXPECT_THAT(checkCanvas(canvas), failsWith(ErrorKind::InvalidInput, "free colours is 1"));
    canvas = goodCanvas();
    canvas.geometry.cellPitch = 0;
    EXPECT_THAT(checkCanvas(canvas), failsWith(ErrorKind::InvalidInput, "cell pitch is 0"));
    canvas = goodCanvas();
    canvas.geometry.swatchCentre.x = -1;
    EXPECT_THAT(checkCanvas(canvas),
                failsWith(ErrorKind::InvalidInput, "palette bar's left is -1"));
}

TEST(Canvas, RefusesAFillButtonOnTheGridOrOnASwatch) {
    Canvas canvas = goodCanvas();
    const auto checkedAt = [&](Point place) {
        canvas.geometry.fillButton = place;
        return checkCanvas(canvas);
    };
    EXPECT_THAT(checkedAt({600, 400}), isOk());
    EXPECT_THAT(checkedAt({511, 0}), failsWith(ErrorKind::InvalidInput, "511,0 lies on the grid"));
    EXPECT_THAT(checkedAt({512, 0}), isOk());
    EXPECT_THAT(checkedAt({536, 255}), failsWith(ErrorKind::InvalidInput, "lies on a swatch"));
    EXPECT_THAT(checkedAt({536, 256}), isOk()) << "below the last of 16 swatches";
    EXPECT_THAT(checkedAt({-1, 0}), failsWith(ErrorKind::InvalidInput, "left is -1"));
    EXPECT_THAT(checkedAt({0, 32768}), failsWith(ErrorKind::InvalidInput, "top is 32768"));
}

TEST(Name, RefusesEmptyLongAndBlankEdgedNames) {
    EXPECT_THAT(checkName("shelf name", "shore, day 2"), isOk());
    EXPECT_THAT(checkName("shelf name", ""),
                failsWith(ErrorKind::InvalidInput, "shelf name is empty"));
    EXPECT_THAT(checkName("shelf name", " shore"), failsWith(ErrorKind::InvalidInput, "blanks"));
    EXPECT_THAT(checkName("shelf name", std::string(61, 'x')),
                failsWith(ErrorKind::TooLarge, "61"));
    EXPECT_THAT(checkName("shelf name", "a\nb"), failsWith(ErrorKind::InvalidInput, "\\x0a"));
}

}  // namespace
}  // namespace pantile::core
