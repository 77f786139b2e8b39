// Writer and reader together, against docs/load-format.md.

#include <gtest/gtest.h>

#include "board/load_layout.h"
#include "board/load_reader.h"
#include "board/load_writer.h"
#include "board/profile.h"
#include "board/random_load.h"
#include "board/small_picture.h"
#include "drawing/planner.h"
#include "support/matchers.h"

namespace pantile::board {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;
using Bytes = std::vector<std::uint8_t>;

/// The load of section 6 of the specification.
Load exampleLoad() {
    core::Canvas canvas;
    canvas.name = "cells-2";
    canvas.size = {2, 2};
    canvas.freeColours = 2;
    canvas.geometry = core::CanvasGeometry::beside(canvas.size);
    std::vector<drawing::Stroke> strokes = {{0, {{0, 1}, {0, 0}, {1, 0}}}, {1, {{1, 1}}}};
    const core::PointerTiming timing = core::PointerTiming::careful();
    LoadSlot slot = {"Wet sand", *core::Grid::create(2, 2, {0, 0, 0, 1}),
                     *core::Palette::create({{0, 0, 0}, {255, 255, 255}}), canvas,
                     drawing::timedPlan(std::move(strokes), drawing::TimeModel(canvas, timing))};
    return {"Example", timing, {std::move(slot)}};
}

Bytes written(const Load& load) {
    auto bytes = writeLoad(load, tests::roomyBoard());
    EXPECT_THAT(bytes, isOk());
    return bytes ? *std::move(bytes) : Bytes{};
}

void putLittle(Bytes& bytes, std::size_t at, std::uint64_t value, int count) {
    for (int i = 0; i < count; ++i) {
        bytes[at + static_cast<std::size_t>(i)] = static_cast<std::uint8_t>(value >> 8 * i);
    }
}

/// Makes every checksum of a load with one slot right again, so that only its sizes and rules are
/// left to be looked at.
Bytes withRightChecksums(Bytes bytes) {
    const auto sum = [&](std::size_t from, std::size_t count) {
        return layout::checksumOf(std::span(bytes).subspan(from, count));
    };
    const std::size_t data = layout::kHeaderBytes + layout::kEntryBytes;
    putLittle(bytes, layout::kHeaderBytes + 8, sum(data, bytes.size() - data - 4), 4);
    putLittle(bytes, layout::kHeaderBytes + 92, sum(layout::kHeaderBytes, 92), 4);
    putLittle(bytes, 60, sum(0, 60), 4);
    putLittle(bytes, bytes.size() - 4, sum(0, bytes.size() - 4), 4);
    return bytes;
}

Bytes forged(std::size_t at, std::uint64_t value, int count) {
    Bytes bytes = written(exampleLoad());
    putLittle(bytes, at, value, count);
    return withRightChecksums(std::move(bytes));
}

TEST(LoadFormat, WritesTheExampleOfTheSpecification) {
    const Bytes bytes = written(exampleLoad());
    ASSERT_EQ(bytes.size(), 175U);
    const Bytes data(bytes.begin() + 160, bytes.end() - 4);
    EXPECT_EQ(data, (Bytes{0x00, 0x00, 0x00, 0xFF, 0xFF, 0xFF, 0x92, 0x25, 0xA1, 0xE4, 0x78}));
    const Bytes start(bytes.begin(), bytes.begin() + 24);
    EXPECT_EQ(start, (Bytes{0x50, 0x54, 0x4C, 0x44, 1,  64, 1,  96, 175, 0, 0,  0,
                            8,    0,    127,  8,    33, 0,  33, 0,  100, 0, 65, 0}));
    EXPECT_EQ(withRightChecksums(bytes), bytes);
}

TEST(LoadFormat, BringsBackWhatWasWritten) {
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        const Load load = tests::randomLoad(seed, 5);
        const auto read = readLoad(written(load));
        ASSERT_THAT(read, isOk()) << "seed " << seed;
        EXPECT_EQ(read->name, load.name);
        EXPECT_EQ(read->timing, load.timing);
        ASSERT_EQ(read->slots.size(), load.slots.size());
        for (std::size_t i = 0; i < load.slots.size(); ++i) {
            const LoadSlot& in = load.slots[i];
            const ReadSlot& out = read->slots[i];
            EXPECT_EQ(out.title, in.title);
            EXPECT_EQ(out.size, in.grid.size());
            EXPECT_EQ(out.palette, in.palette);
            EXPECT_EQ(out.plan, in.plan) << "seed " << seed;
            EXPECT_EQ(out.foretoldMs, in.plan.milliseconds);
            EXPECT_EQ(out.canvas.geometry, in.canvas.geometry);
            EXPECT_EQ(out.canvas.size, in.canvas.size);
            EXPECT_EQ(out.canvas.penModel, in.canvas.penModel);
            EXPECT_EQ(out.canvas.rules, in.canvas.rules);
        }
    }
}

TEST(LoadFormat, BringsBackSmallPictures) {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        Load load = tests::randomLoad(seed, 5);
        tests::Random random(seed);
        for (LoadSlot& slot : load.slots) {
            if (random.between(0, 3) == 0) continue;
            const core::Size screen = {random.between(1, 30), random.between(1, 30)};
            slot.picture = smallPicture(slot.grid, screen);
        }
        std::int64_t bytes = loadBaseBytes();
        for (const LoadSlot& slot : load.slots) bytes += *slotBytes(slot);
        const Bytes whole = written(load);
        EXPECT_EQ(static_cast<std::int64_t>(whole.size()), bytes) << "seed " << seed;
        const auto read = readLoad(whole);
        ASSERT_THAT(read, isOk()) << "seed " << seed;
        for (std::size_t i = 0; i < load.slots.size(); ++i) {
            EXPECT_EQ(read->slots[i].picture, load.slots[i].picture) << "seed " << seed;
            EXPECT_EQ(read->slots[i].plan, load.slots[i].plan) << "seed " << seed;
        }
    }
}

TEST(LoadFormat, RefusesSmallPicturesThatCannotBe) {
    Load load = exampleLoad();
    load.slots[0].picture = *core::Grid::filled(129, 1, 0);
    EXPECT_THAT(writeLoad(load, tests::roomyBoard()), failsWith(ErrorKind::DoesNotFit, "129 x 1"));
    load.slots[0].picture = *core::Grid::filled(2, 2, 2);
    EXPECT_THAT(writeLoad(load, tests::roomyBoard()),
                failsWith(ErrorKind::InvalidInput, "outside the palette"));
    // One side without the other, a side too long, and a picture that leaves no script.
    const std::size_t sides = layout::kHeaderBytes + 44;
    EXPECT_THAT(readLoad(forged(sides, 0x0001, 2)), failsWith(ErrorKind::Corrupt, "small picture"));
    EXPECT_THAT(readLoad(forged(sides, 0x0181, 2)), failsWith(ErrorKind::Corrupt, "small picture"));
    EXPECT_THAT(readLoad(forged(sides, 0x0303, 2)),
                failsWith(ErrorKind::Corrupt, "states 11 bytes"));
    // What follows the palette is the picture then: 92 is no picture of two colours.
    EXPECT_THAT(readLoad(forged(sides, 0x0103, 2)),
                failsWith(ErrorKind::Corrupt, "outside the palette"));
}

/// The example on a canvas that is filled with colour 0 first.
Load filledExample() {
    Load load = exampleLoad();
    LoadSlot& slot = load.slots[0];
    slot.canvas.geometry.fillButton = core::Point{300, 2};
    const drawing::TimeModel model(slot.canvas, load.timing);
    slot.plan = drawing::timedPlan({{1, {{1, 1}}}}, model, core::PaletteIndex{0});
    return load;
}

TEST(LoadFormat, WritesAFillAsTheSpecificationSays) {
    const Bytes bytes = written(filledExample());
    const Bytes data(bytes.begin() + 160, bytes.end() - 4);
    EXPECT_EQ(data, (Bytes{0x00, 0x00, 0x00, 0xFF, 0xFF, 0xFF, 0x00, 0x2C, 0x01, 0x02, 0x00, 0xF2,
                           0x3C}));
    EXPECT_EQ(bytes[layout::kHeaderBytes + 31], 128);
    const auto verified = verifyLoad(bytes);
    ASSERT_THAT(verified, isOk());
    EXPECT_TRUE(verified->verified()) << verified->slots[0].fault;
}

TEST(LoadFormat, RefusesForgedFills) {
    const Bytes good = written(filledExample());
    const auto forgedData = [&](std::size_t at, std::uint64_t value, int count) {
        Bytes bytes = good;
        putLittle(bytes, 160 + 6 + at, value, count);
        return readLoad(withRightChecksums(std::move(bytes)));
    };
    EXPECT_THAT(forgedData(0, 2, 1), failsWith(ErrorKind::Corrupt, "fills with colour 2"));
    EXPECT_THAT(forgedData(1, 5, 2), failsWith(ErrorKind::Corrupt, "5,2 lies on the grid"));
    EXPECT_THAT(forgedData(1, 40000, 2), failsWith(ErrorKind::Corrupt, "left is 40000"));
    Load noButton = filledExample();
    noButton.slots[0].canvas.geometry.fillButton.reset();
    EXPECT_THAT(writeLoad(noButton, tests::roomyBoard()),
                failsWith(ErrorKind::InvalidInput, "cannot be filled"));
    Load noColour = filledExample();
    noColour.slots[0].plan.fill = core::PaletteIndex{2};
    EXPECT_THAT(writeLoad(noColour, tests::roomyBoard()),
                failsWith(ErrorKind::InvalidInput, "fills with a colour"));
}

TEST(LoadFormat, KeepsThePenRulesThatAReplayNeeds) {
    Load load = exampleLoad();
    LoadSlot& slot = load.slots[0];
    slot.canvas.rules = {false, false, core::PenLeaving::Undone};
    EXPECT_THAT(writeLoad(load, tests::roomyBoard()),
                failsWith(ErrorKind::InvalidInput, "turns, which the pen cannot"));
    slot.plan = drawing::timedPlan({{0, {{0, 0}, {1, 0}}}, {0, {{0, 1}, {1, 1}}}, {1, {{1, 1}}}},
                                   drawing::TimeModel(slot.canvas, load.timing));
    const Bytes bytes = written(load);
    EXPECT_EQ(bytes[layout::kHeaderBytes + 31], 112);
    const auto verified = verifyLoad(bytes);
    ASSERT_THAT(verified, isOk());
    EXPECT_THAT(verified->slots[0].fault, ::testing::HasSubstr("paints over another colour"));
    EXPECT_FALSE(verified->slots[0].painted.has_value());
}

TEST(LoadFormat, TakesExactlyTheBytesThatItsSlotsSay) {
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
        const Load load = tests::randomLoad(seed, 6);
        std::int64_t bytes = loadBaseBytes();
        for (const LoadSlot& slot : load.slots) bytes += *slotBytes(slot);
        EXPECT_EQ(static_cast<std::int64_t>(written(load).size()), bytes) << "seed " << seed;
    }
}

TEST(LoadFormat, FitsABoardToTheLastByte) {
    const Load load = tests::randomLoad(4, 4);
    core::Board board = tests::roomyBoard();
    board.bytes = static_cast<std::int64_t>(written(load).size());
    EXPECT_THAT(writeLoad(load, board), isOk());
    --board.bytes;
    EXPECT_THAT(writeLoad(load, board),
                failsWith(ErrorKind::DoesNotFit, std::to_string(board.bytes)));
}

TEST(LoadFormat, RefusesMoreTexturesThanSlots) {
    Load load = exampleLoad();
    load.slots.push_back(load.slots[0]);
    core::Board board = tests::roomyBoard();
    board.slots = 1;
    EXPECT_THAT(writeLoad(load, board),
                failsWith(ErrorKind::DoesNotFit, "has 2 textures, and the board roomy has 1"));
    load.slots.clear();
    EXPECT_THAT(writeLoad(load, board), failsWith(ErrorKind::InvalidInput, "without textures"));
}

TEST(LoadFormat, NamesTheSlotThatCannotBeWritten) {
    Load load = exampleLoad();
    load.slots.push_back(load.slots[0]);
    load.slots[1].plan.strokes[0].path[0] = {5, 0};
    EXPECT_THAT(writeLoad(load, tests::roomyBoard()),
                failsWith(ErrorKind::InvalidInput, "slot 2 (Wet sand): stroke 1"));
    load.slots[1] = load.slots[0];
    load.slots[1].canvas.size = {1, 2};
    EXPECT_THAT(writeLoad(load, tests::roomyBoard()),
                failsWith(ErrorKind::DoesNotFit, "slot 2 (Wet sand): a grid of 2 x 2"));
}

TEST(LoadFormat, CutsALongTitleBetweenCharacters) {
    Load load = exampleLoad();
    load.slots[0].title = std::string(45, 'a') + "\u00e4\u00e4";
    const auto read = readLoad(written(load));
    ASSERT_THAT(read, isOk());
    EXPECT_EQ(read->slots[0].title, std::string(45, 'a'));
}

TEST(LoadFormat, RefusesEveryDamagedByte) {
    const Bytes good = written(exampleLoad());
    for (std::size_t at = 0; at < good.size(); ++at) {
        for (unsigned flip = 1; flip < 256; ++flip) {
            Bytes bad = good;
            bad[at] = static_cast<std::uint8_t>(bad[at] ^ flip);
            ASSERT_FALSE(readLoad(bad).has_value()) << "byte " << at << ", flip " << flip;
        }
    }
}

TEST(LoadFormat, NamesTheDamagedSlot) {
    Load load = exampleLoad();
    for (const char* title : {"Kelp", "Tarred planks"}) {
        load.slots.push_back(load.slots[0]);
        load.slots.back().title = title;
    }
    Bytes bytes = written(load);
    bytes[bytes.size() - 8] ^= 1U;
    EXPECT_THAT(readLoad(bytes),
                failsWith(ErrorKind::ChecksumMismatch,
                          "slot 3 (Tarred planks): its data is damaged: its checksum is"));
    const auto verified = verifyLoad(bytes);
    ASSERT_THAT(verified, isOk());
    EXPECT_FALSE(verified->verified());
    EXPECT_TRUE(verified->slots[0].verified());
    EXPECT_TRUE(verified->slots[1].verified());
    EXPECT_THAT(verified->slots[2].fault, ::testing::HasSubstr("its data is damaged"));
    bytes = written(load);
    bytes[layout::kHeaderBytes + layout::kEntryBytes + 50] ^= 1U;
    EXPECT_THAT(readLoad(bytes), failsWith(ErrorKind::ChecksumMismatch, "slot 2: its directory"));
    EXPECT_THAT(verifyLoad(bytes), failsWith(ErrorKind::ChecksumMismatch, "slot 2: its directory"));
    bytes = written(load);
    bytes.back() ^= 1U;
    EXPECT_THAT(verifyLoad(bytes), failsWith(ErrorKind::ChecksumMismatch, "the load is damaged"));
}

TEST(LoadFormat, RefusesEveryTruncation) {
    const Bytes good = written(tests::randomLoad(9, 3));
    for (std::size_t size = 0; size < good.size(); ++size) {
        ASSERT_FALSE(readLoad(std::span(good).first(size)).has_value()) << size;
    }
    Bytes longer = good;
    longer.push_back(0);
    EXPECT_FALSE(readLoad(longer).has_value());
}

TEST(LoadFormat, RefusesForgedSizesWithRightChecksums) {
    EXPECT_THAT(readLoad(forged(6, 0, 1)), failsWith(ErrorKind::Corrupt, "0 slots"));
    EXPECT_THAT(readLoad(forged(6, 255, 1)), failsWith(ErrorKind::Corrupt, "cannot hold 255"));
    EXPECT_THAT(readLoad(forged(5, 65, 1)), failsWith(ErrorKind::Corrupt, "laid out"));
    EXPECT_THAT(readLoad(forged(8, 0xFFFFFFFF, 4)), failsWith(ErrorKind::Corrupt, "4294967295"));
    EXPECT_THAT(readLoad(forged(12, 0, 2)), failsWith(ErrorKind::Corrupt, "timing"));
    EXPECT_THAT(readLoad(forged(22, 0, 2)), failsWith(ErrorKind::Corrupt, "corner"));
    EXPECT_THAT(readLoad(forged(24, 1, 4)), failsWith(ErrorKind::Corrupt, "laid out"));
    const std::size_t entry = layout::kHeaderBytes;
    EXPECT_THAT(readLoad(forged(entry, 0xFFFFFFFF, 4)),
                failsWith(ErrorKind::Corrupt, "do not lie"));
    EXPECT_THAT(readLoad(forged(entry + 4, 0xFFFFFFFF, 4)),
                failsWith(ErrorKind::Corrupt, "do not lie"));
    EXPECT_THAT(readLoad(forged(entry + 24, 255, 1)),
                failsWith(ErrorKind::Corrupt, "larger than its canvas"));
    EXPECT_THAT(readLoad(forged(entry + 28, 0, 1)), failsWith(ErrorKind::Corrupt, "palette"));
    EXPECT_THAT(readLoad(forged(entry + 28, 255, 1)), failsWith(ErrorKind::Corrupt, "states 11"));
    EXPECT_THAT(readLoad(forged(entry + 30, 2, 1)), failsWith(ErrorKind::Corrupt, "palette"));
    EXPECT_THAT(readLoad(forged(entry + 31, 4, 1)), failsWith(ErrorKind::Corrupt, "pen model 4"));
    EXPECT_THAT(readLoad(forged(entry + 32, 40000, 2)), failsWith(ErrorKind::Corrupt, "canvas"));
    EXPECT_THAT(readLoad(forged(entry + 40, 0, 1)), failsWith(ErrorKind::Corrupt, "pitch"));
    EXPECT_THAT(readLoad(forged(entry + 43, 1, 1)),
                failsWith(ErrorKind::Unsupported, "encoding 1"));
    EXPECT_THAT(readLoad(forged(entry + 46, 0x2E80E2, 3)), failsWith(ErrorKind::Corrupt, "title"));
    EXPECT_THAT(readLoad(forged(4, 2, 1)), failsWith(ErrorKind::Unsupported, "version 2"));
}

TEST(LoadFormat, ReadsNothingThatIsNoLoad) {
    EXPECT_THAT(readLoad({}), failsWith(ErrorKind::Corrupt, "no Pantile load"));
    EXPECT_THAT(readLoad(Bytes{0x89, 'P', 'N', 'G', 13, 10, 26, 10}),
                failsWith(ErrorKind::Corrupt, "no Pantile load"));
}

TEST(LoadVerification, ReplaysEverySlotToItsTexture) {
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
        const Load load = tests::randomLoad(seed, 4);
        const auto verified = verifyLoad(written(load));
        ASSERT_THAT(verified, isOk()) << "seed " << seed;
        EXPECT_TRUE(verified->verified());
        for (std::size_t i = 0; i < load.slots.size(); ++i) {
            const VerifiedSlot& slot = verified->slots[i];
            EXPECT_EQ(slot.fault, "") << "seed " << seed << ", slot " << i;
            EXPECT_EQ(slot.painted, load.slots[i].grid) << "seed " << seed << ", slot " << i;
            EXPECT_EQ(slot.milliseconds, load.slots[i].plan.milliseconds);
        }
    }
}

TEST(LoadVerification, ReplaysPlannedTextures) {
    tests::Random random(5);
    const core::Canvas canvas = shippedCanvases()[1];
    const core::Board board = shippedBoards()[0];
    Load load{"Harbour", board.timing, {}};
    for (int slot = 0; slot < 2; ++slot) {
        std::vector<core::PaletteIndex> cells;
        for (int i = 0; i < 32 * 32; ++i) {
            cells.push_back(static_cast<core::PaletteIndex>(random.between(0, 7) / 2));
        }
        const core::Grid grid = *core::Grid::create(32, 32, std::move(cells));
        const auto plan = drawing::planDrawing({grid, std::nullopt, canvas, board.timing});
        ASSERT_THAT(plan, isOk());
        load.slots.push_back(
            {"Slate", grid, *core::Palette::create({{0, 0, 0}, {9, 9, 9}, {99, 9, 9}, {9, 9, 99}}),
             canvas, *plan});
    }
    const auto bytes = writeLoad(load, board);
    ASSERT_THAT(bytes, isOk());
    const auto verified = verifyLoad(*bytes);
    ASSERT_THAT(verified, isOk());
    EXPECT_TRUE(verified->verified());
    EXPECT_EQ(verified->slots[1].painted, load.slots[1].grid);
}

TEST(LoadVerification, FindsAPlanThatPaintsSomethingElse) {
    Load load = exampleLoad();
    load.slots.push_back(load.slots[0]);
    load.slots[1].grid.set(0, 0, 1);
    const auto verified = verifyLoad(written(load));
    ASSERT_THAT(verified, isOk());
    EXPECT_FALSE(verified->verified());
    EXPECT_TRUE(verified->slots[0].verified());
    EXPECT_THAT(verified->slots[1].fault, ::testing::HasSubstr("something else"));
}

TEST(LoadVerification, FindsACellThatIsLeftOut) {
    Load load = exampleLoad();
    load.slots[0].plan.strokes.pop_back();
    const auto verified = verifyLoad(written(load));
    ASSERT_THAT(verified, isOk());
    EXPECT_THAT(verified->slots[0].fault, ::testing::HasSubstr("leaves cell (1, 1) unpainted"));
}

TEST(LoadVerification, FindsAForetoldTimeThatIsWrong) {
    Load load = exampleLoad();
    ++load.slots[0].plan.milliseconds;
    const auto verified = verifyLoad(written(load));
    ASSERT_THAT(verified, isOk());
    EXPECT_THAT(verified->slots[0].fault, ::testing::HasSubstr("foretells"));
}

}  // namespace
}  // namespace pantile::board
