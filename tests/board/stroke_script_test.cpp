#include "board/stroke_script.h"

#include <array>
#include <string>

#include <gtest/gtest.h>

#include "board/load_layout.h"
#include "board/random_load.h"
#include "board/script_bits.h"
#include "support/matchers.h"

namespace pantile::board {
namespace {

using core::ErrorKind;
using core::PenModel;
using drawing::Stroke;
using tests::failsWith;
using tests::isOk;
using Bytes = std::vector<std::uint8_t>;

constexpr ScriptBounds kBounds = {{64, 64}, 16};
constexpr ScriptBounds kAslant = {{64, 64}, 16, PenModel::Diagonals};
constexpr ScriptBounds kJumping = {{64, 64}, 16, PenModel::Sampled, true, 15};
constexpr ScriptBounds kStraight = {{64, 64}, 16, PenModel::WholeCells, false};

/// Bytes from 0 and 1; blanks are for the eye.
Bytes bitsOf(const std::string& text) {
    ScriptBitWriter out;
    for (const char c : text) {
        if (c != ' ') out.bit(c == '1');
    }
    return out.bytes();
}

void expectWrites(const std::vector<Stroke>& strokes, const ScriptBounds& bounds,
                  const std::string& bits) {
    const auto script = encodeScript(strokes, bounds);
    ASSERT_THAT(script, isOk());
    EXPECT_EQ(*script, bitsOf(bits));
    const auto again = decodeScript(*script, bounds);
    ASSERT_THAT(again, isOk());
    EXPECT_EQ(*again, strokes);
}

TEST(StrokeScript, SaysPiecesByTheirTurns) {
    // Visit of strokes in colour 3, one of them; to (4, 1); east 2, right, left, left again, back.
    expectWrites({{3, {{4, 1}, {6, 1}, {6, 2}, {7, 2}, {7, 1}, {7, 6}}}}, kBounds,
                 "1 0 0011 100  1111 1001  0 00 10  1 0  1 0  01 0  001 11111  000  0");
}

TEST(StrokeScript, SaysLongPiecesByANumber) {
    expectWrites({{0, {{0, 0}, {0, 4}, {1, 4}, {1, 36}}}}, kBounds,
                 "1 0 0000 100  1000 1000  0 01 1110  01 0  1 1111 000011100  000  0");
}

TEST(StrokeScript, SaysEighthsOfTurnsForPensThatGoAslant) {
    expectWrites({{1, {{0, 0}, {2, 2}, {2, 1}, {1, 0}}}}, kAslant,
                 "1 0 0001 100  1000 1000  0 001 10  101 0  111 0  000  0");
}

TEST(StrokeScript, SaysDirectionsBetweenJumps) {
    expectWrites(
        {{3, {{1, 0}, {3, 1}, {4, 1}, {6, 1}, {0, 0}}, {false, true, false, false, true}}},
        kJumping,
        "1 0 0011 100  1001 1000  1 111 101  0 000 0  0 000 10  1 0010000 110  1 100 100  0");
}

TEST(StrokeScript, NeedsNoEndForPensThatDoNotTurn) {
    expectWrites({{1, {{5, 0}, {5, 2}}}, {1, {{4, 4}}}}, kStraight,
                 "1 0 0001 101  010001 1000  0 01 10  1010 1011  1  0");
}

TEST(StrokeScript, SaysManyRunsByGapsAndLengths) {
    const std::vector<Stroke> runs = {
        {2, {{3, 0}}}, {2, {{5, 0}, {6, 0}}}, {2, {{63, 0}}}, {2, {{0, 1}, {1, 1}}}, {2, {{3, 1}}}};
    // Parameters 0 and 0; gaps 3, 0, 55, 0, 0; lengths beyond a cell 0, 1, 0, 1, 0.
    expectWrites(runs, kBounds,
                 "1 1 0010 01000 00 00  00100 1  1 010  00000111000 1  1 010  1 1  0");
}

TEST(StrokeScript, TakesRunsForStrokesOnlyInTheirOrder) {
    const std::vector<Stroke> runs = {{2, {{3, 0}}}, {2, {{5, 0}}}, {2, {{9, 0}}}};
    const auto bits = [](std::vector<Stroke> strokes) { return *visitBits(strokes, kBounds); };
    EXPECT_EQ(bits(runs), 1U + 1 + 4 + 3 + 4 + 5 + 1 + 1 + 1 + 3 + 1);
    EXPECT_GT(bits({runs[1], runs[0], runs[2]}), bits(runs));
    EXPECT_GT(bits({runs[0], {2, {{4, 0}}}, runs[2]}), bits(runs)) << "no cell lies between";
    EXPECT_GT(bits({runs[0], {2, {{6, 0}, {5, 0}}}, runs[2]}), bits(runs)) << "to the left";
    EXPECT_GT(bits({runs[0], {2, {{5, 0}, {5, 1}}}, runs[2]}), bits(runs)) << "down";
}

TEST(StrokeScript, SaysAnEmptyPlan) {
    expectWrites({}, kBounds, "0");
}

TEST(StrokeScript, BringsBackRandomStrokes) {
    std::size_t asRuns = 0;
    for (std::uint64_t seed = 1; seed <= 500; ++seed) {
        tests::Random random(seed);
        const LoadSlot slot = tests::randomSlot(random, {});
        const ScriptBounds bounds = {
            slot.grid.size(), slot.palette.size(), slot.canvas.penModel, slot.canvas.rules.turns,
            drawing::TimeModel(slot.canvas, core::PointerTiming{}).jumpCells()};
        const auto script = encodeScript(slot.plan.strokes, bounds);
        ASSERT_THAT(script, isOk()) << "seed " << seed;
        const auto strokes = decodeScript(*script, bounds);
        ASSERT_THAT(strokes, isOk()) << "seed " << seed;
        EXPECT_EQ(*strokes, slot.plan.strokes) << "seed " << seed;
        if ((script->front() & 0x40) != 0) ++asRuns;
    }
    EXPECT_GT(asRuns, 10U);
}

TEST(StrokeScript, RefusesStrokesThatCannotBeDrawn) {
    const auto encode = [](const Stroke& stroke, const ScriptBounds& bounds = kBounds) {
        return encodeScript(std::vector{stroke}, bounds);
    };
    EXPECT_THAT(encode({0, {}}), failsWith(ErrorKind::InvalidInput, "stroke 1 of the plan has no"));
    EXPECT_THAT(encode({16, {{0, 0}}}), failsWith(ErrorKind::InvalidInput, "colour 16"));
    EXPECT_THAT(encode({0, {{0, 64}}}), failsWith(ErrorKind::InvalidInput, "(0, 64)"));
    EXPECT_THAT(encode({0, {{0, 0}, {-1, 0}}}), failsWith(ErrorKind::InvalidInput, "(-1, 0)"));
    EXPECT_THAT(encode({0, {{2, 1}, {2, 1}}}), failsWith(ErrorKind::InvalidInput, "still"));
    EXPECT_THAT(encode({0, {{2, 1}, {4, 2}}}),
                failsWith(ErrorKind::InvalidInput, "not go straight"));
    EXPECT_THAT(encode({0, {{2, 1}, {4, 3}}}), failsWith(ErrorKind::InvalidInput, "aslant"));
    EXPECT_THAT(encode({0, {{2, 1}, {4, 3}}}, kAslant), isOk());
    EXPECT_THAT(encode({0, {{2, 1}, {4, 1}, {5, 1}}}),
                failsWith(ErrorKind::InvalidInput, "straight on in two pieces to cell (5, 1)"));
    EXPECT_THAT(encode({0, {{2, 1}, {4, 1}, {4, 2}}}, kStraight),
                failsWith(ErrorKind::InvalidInput, "turns, which the pen cannot"));
    const Stroke far = {3, {{0, 0}, {16, 0}}, {false, true}};
    EXPECT_THAT(encode(far, kJumping), failsWith(ErrorKind::InvalidInput, "further"));
    EXPECT_THAT(encode({3, {{0, 0}, {1, 0}}, {false, true}}, kAslant),
                failsWith(ErrorKind::InvalidInput, "further"));
}

TEST(StrokeScript, RefusesPlansThatAreTooLong) {
    const std::vector<Stroke> many(mostNumber(2) + 2, Stroke{1, {{0, 0}}});
    EXPECT_THAT(encodeScript(many, kBounds), failsWith(ErrorKind::TooLarge, "65532 strokes"));
    // Twice across a large grid for every stroke.
    const ScriptBounds large = {{256, 256}, 2};
    std::vector<Stroke> far;
    for (int i = 0; i < 30000; ++i) {
        const auto colour = static_cast<core::PaletteIndex>(i % 2);
        far.push_back({colour, {{255, 255}}});
        far.push_back({colour, {{0, 0}}});
    }
    EXPECT_THAT(encodeScript(far, large), failsWith(ErrorKind::TooLarge, "262144 bytes"));
}

TEST(StrokeScript, RefusesBitsThatBreakARule) {
    const auto decode = [](const std::string& bits, const ScriptBounds& bounds = kBounds) {
        return decodeScript(bitsOf(bits), bounds);
    };
    const std::string visit = "1 0 0001 100 ";
    EXPECT_THAT(decodeScript({}, kBounds), failsWith(ErrorKind::Corrupt, "breaks off"));
    EXPECT_THAT(decode("1"), failsWith(ErrorKind::Corrupt, "breaks off"));
    EXPECT_THAT(decode(visit + "1000 1000 1 1"), failsWith(ErrorKind::Corrupt, "breaks off"));
    EXPECT_THAT(decode(visit + "1000 1000 1 0 1"), failsWith(ErrorKind::Corrupt, "last bit"));
    EXPECT_THAT(decode("0 0000000 00000000"), failsWith(ErrorKind::Corrupt, "last bit"));
    EXPECT_THAT(decode("1 0 10001 100 1000 1000 1 0", {{64, 64}, 17}),
                failsWith(ErrorKind::Corrupt, "colour 17"));
    EXPECT_THAT(decode(visit + "1000 1000 1 " + visit + "1000 1000 1 0"),
                failsWith(ErrorKind::Corrupt, "already"));
    EXPECT_THAT(decode(visit + "1010 1000 1 0"), failsWith(ErrorKind::Corrupt, "(-1, 0)"));
    EXPECT_THAT(decode(visit + "1000 0000000000000000"), failsWith(ErrorKind::Corrupt, "too long"));
    EXPECT_THAT(decode(visit + "1000 1000 0 10 0 000 0"), failsWith(ErrorKind::Corrupt, "(-1, 0)"));
    EXPECT_THAT(decode(visit + "1000 1000 0 00 1111 00000111100 000 0"),
                failsWith(ErrorKind::Corrupt, "(64, 0)"));
    EXPECT_THAT(decode("1 1 0001 100 00 00  0000000000001000000000001 1 0"),
                failsWith(ErrorKind::Corrupt, "(0, 64)"));
    EXPECT_THAT(decode("1 1 0001 100 00 00  1 0000001000001 0"),
                failsWith(ErrorKind::Corrupt, "(64, 0)"));
    EXPECT_THAT(decode(visit + "1000 1000 1 000100001 100 1 100 100 0", kJumping), isOk());
    EXPECT_THAT(decode(visit + "1000 1000 1 000100011 100 1 100 100 0", kJumping),
                failsWith(ErrorKind::Corrupt, "jumps 16 cells, where the pen can 15"));
}

TEST(StrokeScript, SurvivesRandomBytes) {
    tests::Random random(99);
    int taken = 0;
    const std::array all = {kBounds, kAslant, kJumping, kStraight};
    for (std::size_t round = 0; round < 20000; ++round) {
        Bytes script(static_cast<std::size_t>(random.between(1, 40)));
        for (std::uint8_t& byte : script) byte = static_cast<std::uint8_t>(random.next());
        script.front() |= 0x80;
        // What a script breaks off in is mostly zeros.
        script.resize(script.size() + static_cast<std::size_t>(random.between(0, 2)));
        const ScriptBounds& bounds = all[round % all.size()];
        const auto strokes = decodeScript(script, bounds);
        if (!strokes) continue;
        ++taken;
        const auto again = encodeScript(*strokes, bounds);
        ASSERT_THAT(again, isOk()) << "round " << round;
        EXPECT_LE(again->size(), script.size());
        EXPECT_EQ(*decodeScript(*again, bounds), *strokes) << "round " << round;
    }
    EXPECT_GT(taken, 20);
}

}  // namespace
}  // namespace pantile::board
