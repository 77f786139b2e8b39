#include "drawing/request.h"

#include <gtest/gtest.h>

#include "drawing/requests.h"
#include "support/matchers.h"

namespace pantile::drawing {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

TEST(DrawingRequest, TakesATextureThatFits) {
    EXPECT_THAT(checkRequest(tests::requestFor({"01", "f."})), isOk());
}

TEST(DrawingRequest, TakesASmallerTextureThanTheCanvas) {
    DrawingRequest request = tests::requestFor({"01"});
    request.canvas = tests::canvasFor({5, 4}, 2);
    EXPECT_THAT(checkRequest(request), isOk());
}

TEST(DrawingRequest, RefusesATextureLargerThanTheCanvas) {
    DrawingRequest request = tests::requestFor({"000", "000"});
    request.canvas = tests::canvasFor({2, 2}, 16);
    EXPECT_THAT(checkRequest(request),
                failsWith(ErrorKind::DoesNotFit, "3x2 cells is larger than the canvas of 2x2"));
    request.canvas = tests::canvasFor({3, 1}, 16);
    EXPECT_THAT(checkRequest(request), failsWith(ErrorKind::DoesNotFit, "3x2"));
}

TEST(DrawingRequest, RefusesAColourWithoutASwatch) {
    DrawingRequest request = tests::requestFor({"01g"});
    EXPECT_THAT(checkRequest(request), failsWith(ErrorKind::DoesNotFit,
                                                 "uses colour 16, but the canvas has only colours "
                                                 "0 to 15"));
    request.leaveUnpainted = core::PaletteIndex{16};
    EXPECT_THAT(checkRequest(request), isOk()) << "an unpainted index needs no swatch";
}

TEST(DrawingRequest, CountsTheColoursOfAFixedPalette) {
    DrawingRequest request = tests::requestFor({"012"});
    request.canvas.palette = core::Palette::create({{0, 0, 0}, {255, 255, 255}}).value();
    EXPECT_THAT(checkRequest(request), failsWith(ErrorKind::DoesNotFit, "uses colour 2"));
}

TEST(DrawingRequest, RefusesASwatchOverTheGrid) {
    DrawingRequest request = tests::requestFor({"01", "11"});
    request.canvas.geometry.swatchCentre = {15, 8};
    EXPECT_THAT(checkRequest(request),
                failsWith(ErrorKind::InvalidInput, "swatch of colour 0 lies over"));
    request.canvas.geometry.swatchCentre = {24, 8};
    EXPECT_THAT(checkRequest(request), isOk()) << "side by side is not over";
}

TEST(DrawingRequest, RefusesPitchesAndTimesOutOfRange) {
    DrawingRequest request = tests::requestFor({"01"});
    request.canvas.geometry.cellPitch = 0;
    EXPECT_THAT(checkRequest(request), failsWith(ErrorKind::InvalidInput, "cell pitch"));
    request = tests::requestFor({"01"});
    request.canvas.geometry.swatchesPerColumn = 0;
    EXPECT_THAT(checkRequest(request), failsWith(ErrorKind::InvalidInput, "swatches"));
    request = tests::requestFor({"01"});
    request.timing.maxStepUp = 128;
    EXPECT_THAT(checkRequest(request), failsWith(ErrorKind::InvalidInput, "pen up"));
    request = tests::requestFor({"01"});
    request.canvas.size = {1000, 1};
    EXPECT_THAT(checkRequest(request), failsWith(ErrorKind::InvalidInput, "1000x1"));
}

}  // namespace
}  // namespace pantile::drawing
