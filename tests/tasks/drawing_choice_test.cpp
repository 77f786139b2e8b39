#include "tasks/drawing_choice.h"

#include <algorithm>

#include "support/matchers.h"

namespace pantile::tasks {
namespace {

using core::Canvas;
using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

const core::Rgb8 kInk{0, 0, 0};
const core::Rgb8 kPaper{255, 255, 255};
const core::Rgb8 kRust{181, 83, 45};

Canvas freeCanvas(const std::string& name, int side, int colours) {
    Canvas canvas;
    canvas.name = name;
    canvas.size = {side, side};
    canvas.freeColours = colours;
    canvas.geometry = core::CanvasGeometry::beside(canvas.size);
    return canvas;
}

Canvas fixedCanvas(const std::string& name, int side, std::vector<core::Rgb8> colours) {
    Canvas canvas = freeCanvas(name, side, 16);
    canvas.palette = *core::Palette::create(std::move(colours));
    return canvas;
}

core::Texture texture(std::vector<core::PaletteIndex> cells, std::vector<core::Rgb8> colours,
                      std::optional<core::PaletteIndex> transparent = std::nullopt) {
    const int height = static_cast<int>(cells.size()) / 2;
    return *core::Texture::create(*core::Grid::create(2, height, std::move(cells)),
                                  *core::Palette::create(std::move(colours), transparent));
}

TEST(FitToCanvas, KeepsIndicesWhereThePaletteIsSmallEnough) {
    const core::Texture source = texture({0, 2, 2, 0}, {kInk, kPaper, kRust});
    const auto fitted = fitToCanvas(source, freeCanvas("pier", 4, 3));
    ASSERT_THAT(fitted, isOk());
    EXPECT_EQ(fitted->grid, source.grid());
    EXPECT_EQ(fitted->palette, source.palette());
}

TEST(FitToCanvas, CutsAPaletteToTheColoursInUse) {
    const auto fitted =
        fitToCanvas(texture({0, 2, 2, 0}, {kInk, kPaper, kRust}), freeCanvas("pier", 4, 2));
    ASSERT_THAT(fitted, isOk());
    EXPECT_EQ(fitted->grid, *core::Grid::create(2, 2, {0, 1, 1, 0}));
    EXPECT_EQ(fitted->palette, *core::Palette::create({kInk, kRust}));
}

TEST(FitToCanvas, PutsTransparentCellsBehindTheSwatches) {
    const auto fitted = fitToCanvas(texture({0, 1, 1, 2}, {kInk, kPaper, kRust}, 0),
                                    fixedCanvas("quay", 4, {kRust, kPaper}));
    ASSERT_THAT(fitted, isOk());
    EXPECT_EQ(fitted->grid, *core::Grid::create(2, 2, {2, 1, 1, 0}));
    EXPECT_EQ(fitted->palette.transparent(), 2);
}

TEST(FitToCanvas, MapsColoursToTheFixedPalette) {
    const auto fitted = fitToCanvas(texture({0, 1, 1, 0}, {kRust, kInk}),
                                    fixedCanvas("quay", 4, {kInk, kPaper, kRust}));
    ASSERT_THAT(fitted, isOk());
    EXPECT_EQ(fitted->grid, *core::Grid::create(2, 2, {2, 0, 0, 2}));
}

TEST(FitToCanvas, SaysWhyItDoesNotFit) {
    EXPECT_THAT(fitToCanvas(texture({0, 1, 1, 0, 0, 0}, {kInk, kRust}), freeCanvas("pier", 2, 16)),
                failsWith(ErrorKind::DoesNotFit, "2x3 cells, and the canvas pier 2x2"));
    EXPECT_THAT(fitToCanvas(texture({0, 1, 2, 0}, {kInk, kPaper, kRust}), freeCanvas("pier", 2, 2)),
                failsWith(ErrorKind::DoesNotFit, "uses 3 colours, and the canvas pier has 2"));
    EXPECT_THAT(
        fitToCanvas(texture({0, 1, 1, 0}, {kInk, kRust}), fixedCanvas("quay", 2, {kInk, kPaper})),
        failsWith(ErrorKind::DoesNotFit, "#b5532d is not in the palette of the canvas quay"));
}

TEST(ChooseCanvas, TakesTheSmallestThatFitsAndFixedBeforeFree) {
    const core::Texture small = texture({0, 1, 1, 0}, {kInk, kPaper});
    const std::vector<Canvas> canvases = {freeCanvas("big", 8, 16), freeCanvas("small", 2, 16),
                                          fixedCanvas("small fixed", 2, {kInk, kPaper})};
    EXPECT_EQ(chooseCanvas(small, canvases)->name, "small fixed");
    const core::Texture coloured = texture({0, 1, 1, 0}, {kRust, kPaper});
    EXPECT_EQ(chooseCanvas(coloured, canvases)->name, "small");
    const core::Texture high = texture({0, 1, 1, 0, 1, 1}, {kRust, kPaper});
    EXPECT_EQ(chooseCanvas(high, canvases)->name, "big");
    EXPECT_THAT(chooseCanvas(small, {}), failsWith(ErrorKind::DoesNotFit, "no canvas"));
}

TEST(ChooseCanvas, NamesTheCanvasThatComesNearest) {
    const core::Texture coloured = texture({0, 1, 2, 3}, {kInk, kPaper, kRust, {9, 9, 9}});
    const core::Texture high = texture({0, 1, 1, 0, 1, 1}, {kRust, kPaper});
    // In every order: the last one tried is not the reason.
    std::vector<Canvas> canvases = {freeCanvas("big", 8, 2), freeCanvas("large", 2, 3),
                                    freeCanvas("tiny", 1, 16), freeCanvas("wide", 4, 3)};
    std::vector<Canvas> small = {freeCanvas("mote", 1, 16), freeCanvas("speck", 2, 2)};
    for (int turn = 0; turn < 4; ++turn) {
        EXPECT_THAT(chooseCanvas(coloured, canvases),
                    failsWith(ErrorKind::DoesNotFit,
                              "it fits no canvas: it uses 4 colours, and the canvas large has 3"));
        EXPECT_THAT(chooseCanvas(high, small),
                    failsWith(ErrorKind::DoesNotFit, "2x3 cells, and the canvas speck 2x2"));
        std::rotate(canvases.begin(), canvases.begin() + 1, canvases.end());
        std::rotate(small.begin(), small.begin() + 1, small.end());
    }
}

}  // namespace
}  // namespace pantile::tasks
