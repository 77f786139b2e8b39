#include "picture/stored_lines.h"

#include <gtest/gtest.h>

#include "picture/pixel_scale.h"
#include "picture/small_art.h"
#include "picture/stored_planes.h"

namespace pantile::picture {
namespace {

constexpr int kStoredCells = 16;
constexpr int kStep = 6;

// A buoy's frame: four lines in all, too few for steps to prove anything.
core::Picture frame() {
    core::Picture art{{{kStoredCells, kStoredCells}, {}}, std::nullopt};
    for (int i = 0; i < kStoredCells * kStoredCells; ++i) {
        const int x = i % kStoredCells;
        const int y = i / kStoredCells;
        const bool inside = x >= 3 && x < 12 && y >= 2 && y < 13;
        art.pixels.pixels.push_back(inside ? core::Rgba8{214, 65, 41, 255}
                                           : core::Rgba8{239, 247, 249, 255});
    }
    return art;
}

core::Picture enlargedTimes(const core::Picture& art, int factor) {
    core::Picture large{{{art.pixels.size.width * factor, art.pixels.size.height * factor}, {}},
                        std::nullopt};
    for (int y = 0; y < large.pixels.size.height; ++y) {
        for (int x = 0; x < large.pixels.size.width; ++x)
            large.pixels.pixels.push_back(art.pixels.at(x / factor, y / factor));
    }
    return large;
}

// As a lossy file: no pixel is exactly like the next.
core::Picture stored(core::Picture picture) {
    picture.planes = planesOf(picture.pixels, kStep);
    core::Picture noisy = withNoise(picture, 2, 9);
    noisy.planes = picture.planes;
    return noisy;
}

TEST(StoredLines, FindsArtOfTooFewLinesForSteps) {
    for (const int factor : {5, 6}) {
        SCOPED_TRACE(factor);
        const core::Picture picture = stored(enlargedTimes(frame(), factor));
        EXPECT_FALSE(findCellLines(picture.pixels));
        const auto lines = findStoredLines(picture);
        ASSERT_TRUE(lines);
        EXPECT_EQ(lines->columns, (CellSide{{0, factor, 1}, kStoredCells}));
        EXPECT_EQ(lines->rows, (CellSide{{0, factor, 1}, kStoredCells}));
        const auto art = findEnlargedArt(picture);
        ASSERT_TRUE(art);
        for (std::size_t i = 0; i < art->small.pixels.pixels.size(); ++i) {
            EXPECT_NEAR(art->small.pixels.pixels[i].r, frame().pixels.pixels[i].r, 3);
            EXPECT_NEAR(art->small.pixels.pixels[i].g, frame().pixels.pixels[i].g, 3);
            EXPECT_NEAR(art->small.pixels.pixels[i].b, frame().pixels.pixels[i].b, 3);
        }
    }
}

TEST(StoredLines, FindsNothingWhereCellsWouldNotBeStoredSo) {
    EXPECT_FALSE(findStoredLines(stored(smallArt(48, 48, 1)))) << "each pixel is a cell";
    EXPECT_FALSE(findStoredLines(stored(enlargedTimes(frame(), 2))))
        << "smooth photographs look so";
    core::Picture slope{{{64, 64}, {}}, std::nullopt};
    for (int i = 0; i < 64 * 64; ++i) {
        const auto level = static_cast<std::uint8_t>(40 + 2 * (i % 64) + i / 64);
        slope.pixels.pixels.push_back({level, level, level, 255});
    }
    EXPECT_FALSE(findStoredLines(stored(slope)));
    core::Picture flat{{{64, 64}, std::vector<core::Rgba8>(64 * 64)}, std::nullopt};
    EXPECT_FALSE(findStoredLines(stored(flat))) << "nothing is stored that could tell";
}

TEST(StoredLines, TellsCellsFromTheFilesOwnBlocks) {
    const CellSide eights{{0, 8, 1}, 8};
    const CellSide between{{4, 8, 1}, 7};
    const core::Picture art = stored(enlargedTimes(smallArt(8, 8, 2), 8));
    EXPECT_FALSE(areOwnBlocks(*art.planes, {eights, eights, false}));
    const core::Picture finer = stored(enlargedTimes(smallArt(16, 16, 2), 4));
    EXPECT_TRUE(areOwnBlocks(*finer.planes, {eights, eights, false}));
    EXPECT_FALSE(areOwnBlocks(*finer.planes, {between, eights, false}));
    EXPECT_FALSE(areOwnBlocks(*finer.planes, {eights, {{0, 4, 1}, 16}, false}));
}

TEST(StoredLines, NeedsWhatTheFileStores) {
    core::Picture picture = stored(enlargedTimes(frame(), 4));
    picture.planes.reset();
    EXPECT_FALSE(findStoredLines(picture));
    EXPECT_FALSE(findEnlargedArt(picture));
}

}  // namespace
}  // namespace pantile::picture
