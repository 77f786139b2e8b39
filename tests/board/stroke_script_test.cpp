#include "board/stroke_script.h"

#include <gtest/gtest.h>

#include "board/random_load.h"
#include "support/matchers.h"

namespace pantile::board {
namespace {

using core::ErrorKind;
using drawing::Stroke;
using tests::failsWith;
using tests::isOk;
using Bytes = std::vector<std::uint8_t>;

constexpr ScriptBounds kBounds = {{64, 64}, 16};

TEST(StrokeScript, PicksPressesDragsAndEnds) {
    const std::vector<Stroke> strokes = {{3, {{10, 0}, {14, 0}, {14, 2}}}, {3, {{15, 3}}}};
    const auto script = encodeScript(strokes, kBounds);
    ASSERT_THAT(script, isOk());
    EXPECT_EQ(*script, (Bytes{0x01, 3, 0x02, 10, 0, 0x83, 0xA1, 0x6D, 0x00}));
}

TEST(StrokeScript, TakesOneByteForEachFifteenCells) {
    const std::vector<Stroke> strokes = {{0, {{0, 0}, {15, 0}, {31, 0}}}};
    const auto script = encodeScript(strokes, kBounds);
    ASSERT_THAT(script, isOk());
    EXPECT_EQ(*script, (Bytes{0x01, 0, 0x64, 0x8E, 0x8F, 0x80, 0x00}));
}

TEST(StrokeScript, KeepsPointsOnAStraightWay) {
    for (int x = 1; x < 63; ++x) {
        const std::vector<Stroke> strokes = {{1, {{0, 5}, {x, 5}, {63, 5}}}};
        const auto script = encodeScript(strokes, kBounds);
        ASSERT_THAT(script, isOk());
        EXPECT_EQ(*decodeScript(*script, kBounds), strokes) << x;
    }
}

TEST(StrokeScript, BringsBackJumpsOfAnyShape) {
    const std::vector<Stroke> strokes = {{1, {{0, 5}, {17, 6}, {3, 60}, {4, 61}, {63, 2}}}};
    const auto script = encodeScript(strokes, kBounds);
    ASSERT_THAT(script, isOk());
    EXPECT_EQ(*decodeScript(*script, kBounds), strokes);
}

constexpr ScriptBounds kJumping = {{64, 64}, 16, 15};

TEST(StrokeScript, WritesJumpsNearAndFar) {
    const std::vector<Stroke> strokes = {
        {3, {{10, 10}, {7, 13}, {8, 13}, {23, 12}, {23, 9}}, {false, true, false, true, true}}};
    const auto script = encodeScript(strokes, kJumping);
    ASSERT_THAT(script, isOk());
    // Near ones: 8 + 7 (dy + 3) + dx + 3, so (-3, 3) is 50 and (0, -3) is 11.
    EXPECT_EQ(*script, (Bytes{0x01, 3, 0x02, 10, 10, 0x32, 0x80, 0x04, 23, 12, 0x0B, 0x00}));
    EXPECT_EQ(*decodeScript(*script, kJumping), strokes);
}

TEST(StrokeScript, RefusesJumpsThatThePenCannotMake) {
    const std::vector<Stroke> far = {{3, {{0, 0}, {16, 0}}, {false, true}}};
    EXPECT_THAT(encodeScript(far, kJumping), failsWith(ErrorKind::InvalidInput, "(16, 0)"));
    EXPECT_THAT(encodeScript(far, kBounds), failsWith(ErrorKind::InvalidInput, "further"));
    const auto decode = [](const Bytes& script, const ScriptBounds& bounds) {
        return decodeScript(script, bounds);
    };
    EXPECT_THAT(decode({0x01, 1, 0x64, 0x04, 15, 0, 0x00}, kJumping), isOk());
    EXPECT_THAT(decode({0x01, 1, 0x64, 0x04, 16, 0, 0x00}, kJumping),
                failsWith(ErrorKind::Corrupt, "byte 3, jumps 16 cells, where the pen can 15"));
    EXPECT_THAT(decode({0x01, 1, 0x64, 0x22, 0x00}, kBounds),
                failsWith(ErrorKind::Corrupt, "the pen can 0"));
    EXPECT_THAT(decode({0x01, 1, 0x64, 0x20, 0x00}, kJumping),
                failsWith(ErrorKind::Corrupt, "still"));
    EXPECT_THAT(decode({0x01, 1, 0x64, 0x1F, 0x00}, kJumping),
                failsWith(ErrorKind::Corrupt, "(-1, 0)"));
    EXPECT_THAT(decode({0x01, 1, 0x04, 1, 1, 0x00}, kJumping),
                failsWith(ErrorKind::Corrupt, "without a stroke"));
    EXPECT_THAT(decode({0x01, 1, 0x64, 0x39, 0x00}, kJumping),
                failsWith(ErrorKind::Corrupt, "unknown step 57"));
}

TEST(StrokeScript, BringsBackRandomStrokes) {
    for (std::uint64_t seed = 1; seed <= 500; ++seed) {
        tests::Random random(seed);
        const LoadSlot slot = tests::randomSlot(random, {});
        const ScriptBounds bounds = {
            slot.grid.size(), slot.palette.size(),
            drawing::TimeModel(slot.canvas, core::PointerTiming{}).jumpCells()};
        const auto script = encodeScript(slot.plan.strokes, bounds);
        ASSERT_THAT(script, isOk()) << "seed " << seed;
        const auto strokes = decodeScript(*script, bounds);
        ASSERT_THAT(strokes, isOk()) << "seed " << seed;
        EXPECT_EQ(*strokes, slot.plan.strokes) << "seed " << seed;
    }
}

TEST(StrokeScript, RefusesStrokesThatCannotBeDrawn) {
    const auto encode = [](const Stroke& stroke) {
        return encodeScript(std::vector{stroke}, kBounds);
    };
    EXPECT_THAT(encode({0, {}}), failsWith(ErrorKind::InvalidInput, "stroke 1 of the plan has no"));
    EXPECT_THAT(encode({16, {{0, 0}}}), failsWith(ErrorKind::InvalidInput, "colour 16"));
    EXPECT_THAT(encode({0, {{0, 64}}}), failsWith(ErrorKind::InvalidInput, "(0, 64)"));
    EXPECT_THAT(encode({0, {{0, 0}, {-1, 0}}}), failsWith(ErrorKind::InvalidInput, "(-1, 0)"));
    EXPECT_THAT(encode({0, {{2, 1}, {2, 1}}}), failsWith(ErrorKind::InvalidInput, "still"));
}

TEST(StrokeScript, RefusesBytesThatBreakARule) {
    const auto decode = [](const Bytes& script) { return decodeScript(script, kBounds); };
    EXPECT_THAT(decode({}), failsWith(ErrorKind::Corrupt, "breaks off"));
    EXPECT_THAT(decode({0x01}), failsWith(ErrorKind::Corrupt, "breaks off"));
    EXPECT_THAT(decode({0x01, 1, 0x02, 3}), failsWith(ErrorKind::Corrupt, "breaks off"));
    EXPECT_THAT(decode({0x00, 0x00}), failsWith(ErrorKind::Corrupt, "before its last byte"));
    EXPECT_THAT(decode({0x01, 16, 0x00}), failsWith(ErrorKind::Corrupt, "colour 16"));
    EXPECT_THAT(decode({0x01, 1, 0x01, 1, 0x00}), failsWith(ErrorKind::Corrupt, "already"));
    EXPECT_THAT(decode({0x64, 0x00}), failsWith(ErrorKind::Corrupt, "before a colour"));
    EXPECT_THAT(decode({0x01, 1, 0x80, 0x00}), failsWith(ErrorKind::Corrupt, "without a stroke"));
    EXPECT_THAT(decode({0x01, 1, 0x64, 0x01, 2, 0x80, 0x00}),
                failsWith(ErrorKind::Corrupt, "byte 5, drags without a stroke"));
    EXPECT_THAT(decode({0x01, 1, 0x44, 0x00}), failsWith(ErrorKind::Corrupt, "(-4, 0)"));
    EXPECT_THAT(decode({0x01, 1, 0x02, 64, 0, 0x00}), failsWith(ErrorKind::Corrupt, "(64, 0)"));
    EXPECT_THAT(decode({0x01, 1, 0x64, 0xC0, 0x00}), failsWith(ErrorKind::Corrupt, "(-1, 0)"));
    EXPECT_THAT(decode({0x01, 1, 0x64, 0x03, 0, 0, 0x00}), failsWith(ErrorKind::Corrupt, "still"));
    EXPECT_THAT(decode({0x01, 1, 0x64, 0x8F, 0xA0, 0x00}),
                failsWith(ErrorKind::Corrupt, "middle of a drag"));
    EXPECT_THAT(decode({0x05, 0x00}), failsWith(ErrorKind::Corrupt, "unknown step 5"));
    Bytes endless = {0x01, 1, 0x64};
    endless.insert(endless.end(), 1000, 0x8F);
    EXPECT_THAT(decode(endless), failsWith(ErrorKind::Corrupt, "beyond the largest grid"));
}

TEST(StrokeScript, SurvivesRandomBytes) {
    tests::Random random(99);
    for (int round = 0; round < 20000; ++round) {
        Bytes script(static_cast<std::size_t>(random.between(1, 40)));
        for (std::uint8_t& byte : script) byte = static_cast<std::uint8_t>(random.next());
        script.insert(script.begin(), {0x01, 0x01});
        const ScriptBounds& bounds = round % 2 == 0 ? kBounds : kJumping;
        const auto strokes = decodeScript(script, bounds);
        if (!strokes) continue;
        const auto again = encodeScript(*strokes, bounds);
        ASSERT_THAT(again, isOk());
        EXPECT_EQ(*decodeScript(*again, bounds), *strokes) << "round " << round;
    }
}

}  // namespace
}  // namespace pantile::board
