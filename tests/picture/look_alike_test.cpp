#include "picture/look_alike.h"

#include <algorithm>
#include <set>
#include <vector>

#include <gtest/gtest.h>

#include "picture/cell_art.h"
#include "picture/look.h"
#include "picture/resize.h"
#include "picture/transform.h"

namespace pantile::picture {
namespace {

using core::Grid;
using core::Palette;
using core::Rgb8;

Palette paletteOf(std::vector<Rgb8> colours,
                  std::optional<core::PaletteIndex> transparent = std::nullopt) {
    return *Palette::create(std::move(colours), transparent);
}

const Palette kShore = paletteOf(
    {{20, 30, 50}, {230, 220, 190}, {180, 60, 40}, {60, 120, 80}, {90, 90, 100}, {0, 0, 0}}, 5);
const Palette kDusk = paletteOf(
    {{60, 20, 60}, {250, 190, 120}, {90, 10, 30}, {10, 60, 120}, {140, 120, 150}, {0, 0, 0}}, 5);

// No way of turning, mirroring or shifting leaves it as it is.
const Art kHook = {"0011", "0122", "0334", "5555"};

std::optional<Likeness> likeness(const Grid& grid, const Grid& other) {
    return sameShape(grid, kShore, other, kShore);
}

TEST(SameShape, SaysWhatWasDone) {
    const Grid hook = gridOf(kHook);
    const auto how = [&](const Grid& other) {
        const auto found = likeness(hook, other);
        return found ? found->how : "nothing";
    };
    EXPECT_EQ(how(hook), "the same cells, with another palette");
    EXPECT_EQ(how(mirrored(hook, Mirror::LeftRight)), "mirrored left to right");
    EXPECT_EQ(how(mirrored(hook, Mirror::TopBottom)), "mirrored top to bottom");
    EXPECT_EQ(how(turned(hook, Turn::Quarter)), "turned a quarter to the right");
    EXPECT_EQ(how(turned(hook, Turn::Half)), "turned upside down");
    EXPECT_EQ(how(turned(hook, Turn::ThreeQuarters)), "turned a quarter to the left");
    EXPECT_EQ(how(shifted(hook, {1, 0})), "shifted 1 to the right");
    EXPECT_EQ(how(shifted(hook, {0, 3})), "shifted 3 down");
    EXPECT_EQ(how(shifted(hook, {-1, 2})), "shifted 3 to the right and 2 down");
    EXPECT_EQ(how(*scaledUp(hook, 3)), "enlarged 3 times");
    EXPECT_EQ(how(shifted(*scaledUp(mirrored(hook, Mirror::LeftRight), 2), {2, 4})),
              "mirrored left to right, shifted 2 to the right and 4 down, enlarged 2 times");
    EXPECT_EQ(how(shifted(*scaledUp(hook, 2), {3, 0})), "shifted 3 to the right, enlarged 2 times");
    EXPECT_EQ(sameShape(*scaledUp(hook, 4), kShore, *scaledUp(hook, 2), kShore)->how,
              "made 2 times smaller");
    EXPECT_EQ(sameShape(*scaledUp(hook, 2), kShore, *scaledUp(hook, 3), kShore)->how,
              "enlarged 3 to 2");
    EXPECT_EQ(sameShape(hook, kShore, hook, kDusk)->how, "recoloured");
    EXPECT_EQ(sameShape(hook, kShore, turned(hook, Turn::Half), kDusk)->how,
              "turned upside down, recoloured");
}

TEST(SameShape, TellsOtherShapesApart) {
    const Grid hook = gridOf(kHook);
    EXPECT_FALSE(likeness(hook, gridOf({"0011", "0122", "0344", "5555"})));
    EXPECT_FALSE(likeness(hook, gridOf({"0011", "0122", "0334"})));
    // Two colours became one.
    EXPECT_FALSE(likeness(hook, gridOf({"0011", "0122", "0332", "5555"})));
    // What was painted is unpainted, and the other way round.
    EXPECT_FALSE(likeness(gridOf({"0005"}), gridOf({"5550"})));
}

TEST(SameShape, DoesNotTakeOneColourForAnother) {
    EXPECT_FALSE(likeness(gridOf({"00", "00"}), gridOf({"11", "11"})));
    EXPECT_EQ(likeness(gridOf({"00", "00"}), gridOf({"0"}))->how, "made 2 times smaller");
}

TEST(SameShape, TakesEqualColoursOfAPaletteForOne) {
    const Palette twice = paletteOf({{1, 2, 3}, {200, 90, 8}, {1, 2, 3}});
    const Palette once = paletteOf({{200, 90, 8}, {1, 2, 3}});
    const auto found = sameShape(gridOf({"012"}), twice, gridOf({"101"}), once);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->how, "the same cells, with another palette");
}

Palette randomPalette(tests::Random& random, int size) {
    std::set<Rgb8> colours;
    while (std::ssize(colours) < size) {
        const auto channel = [&] { return static_cast<std::uint8_t>(random.between(0, 255)); };
        colours.insert(Rgb8{channel(), channel(), channel()});
    }
    std::vector<Rgb8> order(colours.begin(), colours.end());
    for (std::size_t i = order.size(); i > 1; --i)
        std::swap(order[i - 1],
                  order[static_cast<std::size_t>(random.between(0, static_cast<int>(i) - 1))]);
    return paletteOf(std::move(order));
}

Grid randomlyTurned(Grid grid, tests::Random& random) {
    for (int turns = random.between(0, 3); turns > 0; --turns) grid = turned(grid, Turn::Quarter);
    if (random.between(0, 1) == 1) grid = mirrored(grid, Mirror::LeftRight);
    return grid;
}

TEST(SameShape, FindsEveryMixtureOfEdits) {
    tests::Random random(1968);
    for (int round = 0; round < 200; ++round) {
        const int colours = random.between(2, 8);
        const Grid grid = randomGrid(randomSize(random, 12), colours, random);
        const Palette palette = randomPalette(random, colours);
        const Palette other = random.between(0, 1) == 1 ? palette : randomPalette(random, colours);
        const Grid edited = shifted(*scaledUp(randomlyTurned(grid, random), random.between(1, 3)),
                                    randomPoint(random, -9, 9));
        SCOPED_TRACE(::testing::PrintToString(artOf(grid)));
        EXPECT_EQ(lookOf(grid, palette).shape, lookOf(edited, other).shape);
        const auto classes = ColourClasses::of(grid, palette);
        const bool oneColour = classes.colours.size() == 1;
        if (oneColour && palette != other) continue;
        const auto found = sameShape(grid, palette, edited, other);
        ASSERT_TRUE(found);
        EXPECT_EQ(found->distance, 0);
        EXPECT_EQ(found->how.find("recoloured") == std::string::npos, palette == other);
    }
}

TEST(SameShape, OneChangedCellIsAnotherShape) {
    tests::Random random(5);
    for (int round = 0; round < 200; ++round) {
        const Grid grid = randomGrid({random.between(4, 12), random.between(4, 12)}, 4, random);
        Grid edited = grid;
        const int x = random.between(0, grid.width() - 1);
        const int y = random.between(0, grid.height() - 1);
        edited.set(x, y,
                   static_cast<core::PaletteIndex>((grid.at(x, y) + random.between(1, 3)) % 4));
        const Palette palette = randomPalette(random, 4);
        EXPECT_NE(lookOf(grid, palette).shape, lookOf(edited, palette).shape);
        EXPECT_FALSE(sameShape(grid, palette, edited, palette));
    }
}

TEST(SameShape, HasAnEndOnPicturesThatRepeatThemselves) {
    // Stripes and boards of which every cell looks the same from where it is.
    std::vector<core::PaletteIndex> cells;
    for (int y = 0; y < 256; ++y) {
        for (int x = 0; x < 256; ++x) cells.push_back(static_cast<core::PaletteIndex>((x + y) % 2));
    }
    const Grid board = *Grid::create(256, 256, cells);
    EXPECT_TRUE(sameShape(board, kShore, shifted(board, {1, 0}), kShore));
}

TEST(NearlySame, CountsTheCellsThatDiffer) {
    const Grid hook = gridOf(kHook);
    Grid edited = hook;
    edited.set(0, 0, 1);
    const auto found = nearlySame(hook, kShore, edited, kShore, 10);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->how, "nearly the same: 1 of 16 cells differs");
    // Lightness 0.24 and 0.90 of OKLab: about 66 of 100 in one cell of sixteen, rounded up.
    EXPECT_EQ(found->distance, 5);
    EXPECT_FALSE(nearlySame(hook, kShore, edited, kShore, 4));
    EXPECT_EQ(nearlySame(hook, kShore, mirrored(edited, Mirror::TopBottom), kShore, 10)->how,
              "mirrored top to bottom, nearly the same: 1 of 16 cells differs");
    EXPECT_EQ(nearlySame(hook, kShore, *scaledUp(edited, 2), kShore, 10)->how,
              "enlarged 2 times, nearly the same: 4 of 64 cells differ");
    EXPECT_FALSE(nearlySame(hook, kShore, gridOf({"00"}), kShore, 100));
}

TEST(NearlySame, IsNothingAtEqualPictures) {
    const Grid hook = gridOf(kHook);
    EXPECT_EQ(nearlySame(hook, kShore, hook, kShore, 0)->distance, 0);
}

TEST(NearlySame, AnUnpaintedCellIsAsFarAsCanBe) {
    EXPECT_EQ(nearlySame(gridOf({"5"}), kShore, gridOf({"1"}), kShore, 100)->distance, 100);
    EXPECT_EQ(nearlySame(gridOf({"5"}), kShore, gridOf({"5"}), kDusk, 0)->distance, 0);
}

/// Whether the looks leave it open in some orientation.
bool looksMayBeNear(const Look& p, const Look& q, int within) {
    if (!mayBeNear(p.mean, q.mean, within)) return false;
    return std::any_of(kOrientations.begin(), kOrientations.end(), [&](Orientation orientation) {
        return mayBeNear({p.shape, p.mean, orientedLights(p.lights, orientation)}, q, within);
    });
}

TEST(Look, NeverRulesOutWhatIsNear) {
    tests::Random random(77);
    int ruledOut = 0;
    for (int round = 0; round < 300; ++round) {
        const core::Size size = randomSize(random, 20);
        const Grid grid = randomGrid(size, 6, random);
        const Grid other = random.between(0, 2) > 0 ? randomGrid(size, 6, random) : grid;
        const Palette& otherPalette = random.between(0, 1) == 1 ? kDusk : kShore;
        const auto found = nearlySame(grid, kShore, other, otherPalette, 100);
        ASSERT_TRUE(found);
        const Look look = lookOf(grid, kShore);
        const Look otherLook = lookOf(other, otherPalette);
        EXPECT_TRUE(looksMayBeNear(look, otherLook, found->distance));
        EXPECT_LE(std::abs(look.mean.lightness - otherLook.mean.lightness),
                  meanReach(found->distance));
        if (!looksMayBeNear(look, otherLook, 2)) ++ruledOut;
    }
    EXPECT_GT(ruledOut, 200);
}

TEST(Look, LightsTurnAsThePictureDoes) {
    tests::Random random(78);
    for (int round = 0; round < 50; ++round) {
        const Grid grid = randomGrid(randomSize(random, 20), 6, random);
        const Look look = lookOf(grid, kShore);
        for (const Orientation orientation : kOrientations) {
            const Look turnedLook = lookOf(oriented(grid, orientation), kShore);
            EXPECT_EQ(orientedLights(look.lights, orientation), turnedLook.lights);
            EXPECT_EQ(turnedLook.mean, look.mean);
        }
    }
}

TEST(Look, MeansAreThoseOfTheCells) {
    const Palette palette = paletteOf({{0, 0, 0}, {255, 255, 255}, {0, 0, 0}}, 2);
    const Look half = lookOf(gridOf({"0011", "0011", "0011", "0011"}), palette);
    EXPECT_EQ(half.mean, (MeanTint{100, 100, 100, 0}));
    EXPECT_EQ(half.lights,
              (PartLights{0, 0, 200, 200, 0, 0, 200, 200, 0, 0, 200, 200, 0, 0, 200, 200}));
    // Unpainted is grey, and eight tenths of black to white away.
    EXPECT_EQ(lookOf(gridOf({"2"}), palette).mean, (MeanTint{100, 100, 100, 160}));
    // Parts of three quarters of a cell.
    const Look three = lookOf(gridOf({"100"}), palette);
    EXPECT_EQ(three.lights[0], 200);
    EXPECT_EQ(three.lights[1], 67);
    EXPECT_EQ(three.lights[2], 0);
}

// The library keeps looks: they may not change from one version to the next.
TEST(Look, StaysAsItWas) {
    const Look look = lookOf(gridOf(kHook), kShore);
    EXPECT_EQ(look.shape, 193183556U);
    EXPECT_EQ(look.mean, (MeanTint{102, 101, 102, 40}));
}

}  // namespace
}  // namespace pantile::picture
