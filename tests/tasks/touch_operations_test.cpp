// touch_operations.h: that each operation does what it is called, with its pen, on small grids
// worked by hand. What the shapes look like in general is tested in tests/picture.

#include "tasks/touch_operations.h"

#include <algorithm>
#include <optional>

#include "picture/cell_art.h"
#include "support/matchers.h"

namespace pantile::tasks {
namespace {

using core::Error;
using core::ErrorKind;
using core::Palette;
using core::Result;
using core::Texture;
using picture::Art;
using picture::artOf;
using picture::gridOf;
using picture::Neighbours;
using picture::Symmetry;
using tests::failsWith;
using tests::isOk;

// Wet sand, foam, rope, kelp.
const std::vector<core::Rgb8> kColours = {
    {27, 38, 49}, {242, 239, 228}, {181, 83, 45}, {79, 111, 82}};

Texture textureOf(const Art& art) {
    core::TextureText text;
    text.title = "Shingle";
    return *Texture::create(gridOf(art), *Palette::create(kColours), text);
}

Result<Palette> noPalettes(const std::string& name) {
    return Error{ErrorKind::NotFound, "no palette " + name, ""};
}

Result<Texture> after(const Art& art, const TouchOperation& operation) {
    return touched(textureOf(art), operation, noPalettes);
}

Art artAfter(const Art& art, const TouchOperation& operation) {
    const auto texture = after(art, operation);
    EXPECT_THAT(texture, isOk());
    if (!texture) return {};
    EXPECT_EQ(texture->text().title, "Shingle");
    EXPECT_EQ(texture->palette(), *Palette::create(kColours));
    return artOf(texture->grid());
}

Pen pen(core::PaletteIndex colour) {
    Pen pen;
    pen.colour = colour;
    return pen;
}

const Art kPlain5 = {"00000", "00000", "00000", "00000", "00000"};

TEST(TouchOperations, LinesGoFromPlaceToPlace) {
    EXPECT_EQ(artAfter({"0000", "0000", "0000"}, DrawLine{{{0, 0}, {2, 2}, {3, 2}}, pen(1)}),
              (Art{"1000", "0100", "0011"}));
    EXPECT_EQ(artAfter({"00", "00"}, DrawLine{{{1, 0}}, pen(3)}), (Art{"03", "00"}));
    EXPECT_EQ(artAfter({"000"}, DrawLine{{{-5, 0}, {1, 0}}, pen(2)}), (Art{"220"})) << "clipped";
}

TEST(TouchOperations, ThePenHasABrushASymmetryAndAColourToSpare) {
    Pen wide = pen(1);
    wide.brush.size = 2;
    EXPECT_EQ(artAfter({"0000", "0000", "0000"}, DrawLine{{{1, 1}}, wide}),
              (Art{"0000", "0110", "0110"}));
    Pen mirrored = pen(1);
    mirrored.symmetry = Symmetry::Four;
    EXPECT_EQ(artAfter({"0000", "0000", "0000"}, DrawLine{{{0, 0}}, mirrored}),
              (Art{"1001", "0000", "1001"}));
    Pen over = pen(1);
    over.only = 2;
    EXPECT_EQ(artAfter({"0230", "0230"}, DrawRectangle{{0, 0}, {3, 1}, Interior::Filled, over}),
              (Art{"0130", "0130"}));
}

TEST(TouchOperations, ACurveIsAtItsMiddlePlaceHalfWay) {
    const Art curve = artAfter(kPlain5, DrawCurve{{0, 0}, {2, 4}, {4, 0}, pen(1)});
    EXPECT_EQ(curve.front(), "10001");
    EXPECT_EQ(curve.back()[2], '1');
    EXPECT_EQ(artAfter({"00000", "00000"}, DrawCurve{{0, 1}, {2, 1}, {4, 1}, pen(1)}),
              (Art{"00000", "11111"}));
}

TEST(TouchOperations, RectanglesAndEllipsesAreEmptyOrFilled) {
    EXPECT_EQ(artAfter(kPlain5, DrawRectangle{{3, 3}, {0, 1}, Interior::Empty, pen(1)}),
              (Art{"00000", "11110", "10010", "11110", "00000"}));
    EXPECT_EQ(artAfter(kPlain5, DrawRectangle{{3, 3}, {0, 1}, Interior::Filled, pen(1)}),
              (Art{"00000", "11110", "11110", "11110", "00000"}));
    EXPECT_EQ(artAfter(kPlain5, DrawEllipse{{4, 0}, {0, 4}, Interior::Empty, pen(1)}),
              (Art{"01110", "10001", "10001", "10001", "01110"}));
    EXPECT_EQ(artAfter(kPlain5, DrawEllipse{{0, 0}, {4, 4}, Interior::Filled, pen(1)}),
              (Art{"01110", "11111", "11111", "11111", "01110"}));
}

TEST(TouchOperations, OutlinesAndFills) {
    const Art buoy = {"0000", "0030", "0000"};
    EXPECT_EQ(artAfter(buoy, DrawOutline{0, Neighbours::Four, pen(1)}),
              (Art{"0010", "0131", "0010"}));
    EXPECT_EQ(artAfter(buoy, DrawOutline{0, Neighbours::Eight, pen(1)}),
              (Art{"0111", "0131", "0111"}));
    const Art knots = {"022", "200", "022"};
    EXPECT_EQ(artAfter(knots, Fill{{1, 0}, Neighbours::Four, pen(1)}), (Art{"011", "200", "022"}));
    EXPECT_EQ(artAfter(knots, Fill{{1, 0}, Neighbours::Eight, pen(1)}), (Art{"011", "100", "011"}));
    EXPECT_EQ(artAfter(knots, FillAlike{{1, 0}, pen(1)}), (Art{"011", "100", "011"}));
}

TEST(TouchOperations, GradientsKeepToTheirColoursAndTheColourToPaintOver) {
    EXPECT_EQ(artAfter({"00", "00"}, DrawGradient{{{0, 0}, {1, 0}, {1, 2}}, std::nullopt}),
              (Art{"12", "12"}));
    EXPECT_EQ(artAfter({"03", "00"}, DrawGradient{{{0, 0}, {1, 0}, {1, 2}}, 0}), (Art{"13", "12"}));
}

TEST(TouchOperations, ColoursChangePlaces) {
    EXPECT_EQ(artAfter({"0123"}, ReplaceColour{1, 3}), (Art{"0323"}));
    EXPECT_EQ(artAfter({"0123"}, SwapColours{1, 3}), (Art{"0321"}));
}

TEST(TouchOperations, CellsMove) {
    const Art art = {"012", "300"};
    EXPECT_EQ(artAfter(art, MirrorCells{picture::Mirror::LeftRight}), (Art{"210", "003"}));
    EXPECT_EQ(artAfter(art, MirrorCells{picture::Mirror::TopBottom}), (Art{"300", "012"}));
    EXPECT_EQ(artAfter(art, TurnCells{picture::Turn::Quarter}), (Art{"30", "01", "02"}));
    EXPECT_EQ(artAfter(art, TurnCells{picture::Turn::ThreeQuarters}), (Art{"20", "10", "03"}));
    EXPECT_EQ(artAfter(art, ShiftCells{{1, 0}}), (Art{"201", "030"}));
    EXPECT_EQ(artAfter(art, ShiftCells{{-4, 3}}), (Art{"003", "120"})) << "round and round";
}

TEST(TouchOperations, SizesChange) {
    const Art art = {"012", "300"};
    EXPECT_EQ(artAfter(art, Crop{{2, 1}, {1, 0}}), (Art{"12", "00"}));
    EXPECT_EQ(artAfter(art, Extend{{1, 0, 0, 2}, 3}), (Art{"3012", "3300", "3333", "3333"}));
    EXPECT_EQ(artAfter(art, Enlarge{2}), (Art{"001122", "001122", "330000", "330000"}));
    EXPECT_EQ(artAfter({"0011", "0111"}, Shrink{2}), (Art{"01"}));
}

TEST(TouchOperations, NoiseKeepsToItsColours) {
    picture::NoiseOptions all{{1, 2}, 100, 7};
    EXPECT_EQ(artAfter({"0123"}, AddNoise{all}), (Art{"0213"}));
    all.percent = 50;
    const Art half = artAfter({"11111111", "33333333"}, AddNoise{all});
    EXPECT_EQ(half[1], "33333333");
    EXPECT_EQ(std::count(half[0].begin(), half[0].end(), '2'), 4);
    all.seed = 8;
    EXPECT_NE(artAfter({"11111111", "33333333"}, AddNoise{all}), half) << "another seed";
}

TEST(TouchOperations, StraysGoAndSmallDifferencesToo) {
    EXPECT_EQ(artAfter({"000", "020", "000"}, RemoveStrays{{1, Neighbours::Four}}),
              (Art{"000", "000", "000"}));
    EXPECT_EQ(artAfter({"020", "002"}, RemoveStrays{{1, Neighbours::Eight}}), (Art{"020", "002"}))
        << "two that hang together over a corner";
    EXPECT_EQ(artAfter({"000", "020", "000"}, Simplify{0}), (Art{"000", "020", "000"}));
    EXPECT_EQ(artAfter({"000", "020", "000"}, Simplify{1000}), (Art{"000", "000", "000"}));
}

// The one strip that joins both sides is plain; from top to bottom there is nothing to heal.
TEST(TouchOperations, SeamsAreHealedByCellsOfTheInside) {
    const Art pebbles = {"00000001", "00000001", "00000001", "00000001"};
    EXPECT_EQ(artAfter(pebbles, HealSeams{{picture::HealedSeams::Horizontal, 1}}), pebbles);
    EXPECT_EQ(artAfter(pebbles, HealSeams{{picture::HealedSeams::Vertical, 1}}),
              (Art{"00000000", "00000000", "00000000", "00000000"}));
}

TEST(TouchOperations, RecolouringTakesTheNearestOfTheNamedPalette) {
    const Palette wanted = *Palette::create({{255, 255, 255}, {0, 0, 0}});
    const auto lookUp = [&](const std::string& name) -> Result<Palette> {
        if (name == "slate") return wanted;
        return noPalettes(name);
    };
    const auto slate = touched(textureOf({"01"}), Recolour{"slate"}, lookUp);
    ASSERT_THAT(slate, isOk());
    EXPECT_EQ(artOf(slate->grid()), (Art{"10"}));
    EXPECT_EQ(slate->palette(), wanted);
    EXPECT_EQ(slate->text().title, "Shingle");
    EXPECT_THAT(touched(textureOf({"01"}), Recolour{"shale"}, lookUp),
                failsWith(ErrorKind::NotFound, "shale"));
}

TEST(TouchOperations, FewerColoursAreLeftInThePalette) {
    const auto fewer = after({"0001", "1113"}, ReduceColours{2});
    ASSERT_THAT(fewer, isOk());
    EXPECT_EQ(artOf(fewer->grid()), (Art{"0001", "1110"}));
    EXPECT_EQ(fewer->palette(), *Palette::create({kColours[0], kColours[1]}));
}

TEST(TouchOperations, ColoursOutsideThePaletteAreRefused) {
    const Art art = {"0123", "3210"};
    Pen over = pen(1);
    over.only = 4;
    const std::vector<TouchOperation> operations = {
        DrawLine{{{0, 0}}, pen(4)},
        DrawLine{{{0, 0}}, over},
        DrawCurve{{0, 0}, {1, 1}, {2, 0}, pen(200)},
        DrawRectangle{{0, 0}, {1, 1}, Interior::Filled, pen(4)},
        DrawEllipse{{0, 0}, {1, 1}, Interior::Empty, pen(4)},
        DrawOutline{4, Neighbours::Four, pen(1)},
        DrawOutline{0, Neighbours::Four, pen(4)},
        Fill{{0, 0}, Neighbours::Four, pen(4)},
        FillAlike{{0, 0}, pen(4)},
        DrawGradient{{{0, 0}, {1, 0}, {0, 4}}, std::nullopt},
        DrawGradient{{{0, 0}, {1, 0}, {0, 1}}, 4},
        ReplaceColour{0, 4},
        ReplaceColour{255, 0},
        SwapColours{4, 0},
        Extend{{1, 0, 0, 0}, 4},
        AddNoise{{{0, 4}, 50, 1}},
    };
    for (std::size_t i = 0; i < operations.size(); ++i) {
        EXPECT_THAT(after(art, operations[i]),
                    failsWith(ErrorKind::InvalidInput, "is not in the palette, which ends at 3"))
            << "operation " << i;
    }
}

TEST(TouchOperations, PlacesSizesAndCountsOutOfRangeAreRefused) {
    const Art art = {"0123", "3210"};
    Pen wide = pen(1);
    wide.brush.size = 17;
    picture::NoiseOptions noise{{0, 1}, 101, 1};
    const std::vector<TouchOperation> operations = {
        DrawLine{{}, pen(1)},
        DrawLine{std::vector<core::Point>(kMaxCorners + 1), pen(1)},
        DrawLine{{{0, 0}, {4097, 0}}, pen(1)},
        DrawLine{{{0, 0}}, wide},
        DrawCurve{{0, 0}, {0, -4097}, {1, 1}, pen(1)},
        DrawRectangle{{0, 0}, {2'000'000'000, 1}, Interior::Filled, pen(1)},
        DrawEllipse{{-2'000'000'000, 0}, {1, 1}, Interior::Empty, pen(1)},
        Fill{{4, 0}, Neighbours::Four, pen(1)},
        FillAlike{{0, -1}, pen(1)},
        DrawGradient{{{0, 0}, {0, 0}, {0, 1}}, std::nullopt},
        DrawGradient{{{0, 0}, {1, 0}, {0}}, std::nullopt},
        Crop{{0, 0}, {4, 1}},
        Extend{{253, 0, 0, 0}, 0},
        Extend{{-1, 0, 0, 0}, 0},
        Enlarge{0},
        Enlarge{65},
        Shrink{3},
        Shrink{0},
        AddNoise{noise},
        HealSeams{{picture::HealedSeams::Both, 3}},
        HealSeams{{picture::HealedSeams::Both, -1}},
        RemoveStrays{{0, Neighbours::Four}},
        Simplify{-1},
        ReduceColours{1},
        ReduceColours{257},
    };
    for (std::size_t i = 0; i < operations.size(); ++i) {
        const auto result = after(art, operations[i]);
        ASSERT_FALSE(result.has_value()) << "operation " << i;
        EXPECT_EQ(result.error().kind, ErrorKind::InvalidInput) << "operation " << i;
        EXPECT_NE(result.error().hint, "") << "operation " << i << ": " << result.error().message;
    }
}

TEST(TouchOperations, EightfoldSymmetryNeedsASquare) {
    Pen star = pen(1);
    star.symmetry = Symmetry::Eight;
    EXPECT_THAT(after({"00", "00", "00"}, DrawLine{{{0, 0}}, star}),
                failsWith(ErrorKind::InvalidInput, "square"));
    EXPECT_EQ(artAfter({"000", "000", "000"}, DrawLine{{{1, 0}}, star}),
              (Art{"010", "101", "010"}));
}

}  // namespace
}  // namespace pantile::tasks
