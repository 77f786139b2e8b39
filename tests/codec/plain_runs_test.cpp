#include "codec/plain_runs.h"

#include <limits>

#include <gtest/gtest.h>

#include "code_support.h"
#include "support/matchers.h"

namespace pantile::codec {
namespace {

using Bytes = std::vector<std::uint8_t>;
using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

core::Grid row(std::vector<core::PaletteIndex> cells) {
    const auto width = static_cast<int>(cells.size());
    return *core::Grid::create(width, 1, std::move(cells));
}

TEST(PlainRuns, PutColourAndLengthIntoOneByteUpToSixteenColours) {
    EXPECT_EQ(packPlainRuns(row({1, 1, 1, 0, 15}), 16), (Bytes{0x13, 0x01, 0xF1}));
}

TEST(PlainRuns, WriteLengthsFromSixteenOnBehindTheColour) {
    EXPECT_EQ(packPlainRuns(row(Bytes(15, 2)), 4), (Bytes{0x2F}));
    EXPECT_EQ(packPlainRuns(row(Bytes(16, 2)), 4), (Bytes{0x20, 0x00}));
    EXPECT_EQ(packPlainRuns(row(Bytes(144, 2)), 4), (Bytes{0x20, 0x80, 0x01}));
}

TEST(PlainRuns, GiveAByteToTheColourAboveSixteenColours) {
    EXPECT_EQ(packPlainRuns(row({200, 200, 7}), 256), (Bytes{200, 1, 7, 0}));
    EXPECT_EQ(packPlainRuns(row(Bytes(129, 16)), 17), (Bytes{16, 0x80, 0x01}));
}

TEST(PlainRuns, GoOnOverTheEndsOfRows) {
    const core::Grid grid = *core::Grid::create(2, 3, {0, 1, 1, 1, 1, 0});
    EXPECT_EQ(packPlainRuns(grid, 2), (Bytes{0x01, 0x14, 0x01}));
}

TEST(PlainRuns, NeverTakeMoreThanTheStatedMost) {
    tests::Random random(7);
    for (int i = 0; i < 300; ++i) {
        const int colours = random.between(2, 40);
        const core::Grid grid =
            tests::randomGrid(random, {random.between(1, 40), random.between(1, 40)}, colours);
        EXPECT_LE(packPlainRuns(grid, colours).size(),
                  mostPlainRunsBytes(grid.cellCount(), colours));
    }
}

/// The fewest bytes for `cells` from `from` on, over all ways to cut them into runs of one colour,
/// merged or not.
std::size_t fewestBytes(const std::vector<core::PaletteIndex>& cells, std::size_t from,
                        int colours) {
    if (from == cells.size()) return 0;
    std::size_t fewest = std::numeric_limits<std::size_t>::max();
    for (std::size_t end = from + 1; end <= cells.size() && cells[end - 1] == cells[from]; ++end) {
        const std::vector<core::PaletteIndex> run(end - from, cells[from]);
        fewest = std::min(
            fewest, packPlainRuns(row(run), colours).size() + fewestBytes(cells, end, colours));
    }
    return fewest;
}

TEST(PlainRuns, AreTheShortestOfTheirFormOnEveryTinyGrid) {
    for (const int colours : {2, 3, 17}) {
        const int used = std::min(colours, 3);
        int grids = 1;
        for (int cell = 0; cell < 7; ++cell) grids *= used;
        for (int number = 0; number < grids; ++number) {
            std::vector<core::PaletteIndex> cells;
            for (int rest = number; cells.size() < 7; rest /= used) {
                cells.push_back(static_cast<core::PaletteIndex>(rest % used));
            }
            ASSERT_EQ(packPlainRuns(row(cells), colours).size(), fewestBytes(cells, 0, colours))
                << number << " in " << colours << " colours";
        }
    }
}

// A length of 16 to 30 could be two bytes either way; only the merged run is accepted.
TEST(PlainRuns, AreNotLongerThanTwoRunsOfOneColour) {
    for (std::size_t length = 1; length <= 60; ++length) {
        const std::vector<core::PaletteIndex> cells(length, 1);
        ASSERT_EQ(packPlainRuns(row(cells), 2).size(), [&] {
            std::size_t fewest = packPlainRuns(row(cells), 2).size();
            for (std::size_t first = 1; first < length; ++first) {
                const std::vector<core::PaletteIndex> front(first, 1);
                const std::vector<core::PaletteIndex> back(length - first, 1);
                fewest = std::min(fewest, packPlainRuns(row(front), 2).size() +
                                              packPlainRuns(row(back), 2).size());
            }
            return fewest;
        }()) << length;
    }
}

TEST(PlainRuns, RefuseEveryOtherFormOfTheSameCells) {
    const core::Size size{4, 5};
    EXPECT_THAT(unpackPlainRuns(Bytes{0x10, 0x04}, size, 2), isOk());
    EXPECT_THAT(unpackPlainRuns(Bytes{0x1F, 0x15}, size, 2),
                failsWith(ErrorKind::Corrupt, "repeats the colour before it at byte 2"));
    EXPECT_THAT(unpackPlainRuns(Bytes{0x10, 0x84, 0x00}, size, 2),
                failsWith(ErrorKind::Corrupt, "malformed at byte 1"));
}

TEST(PlainRuns, RefuseWhatIsTooShortTooLongOrOutsideThePalette) {
    const core::Size size{4, 5};
    EXPECT_THAT(unpackPlainRuns(Bytes{}, size, 2), failsWith(ErrorKind::Corrupt, "cut short"));
    EXPECT_THAT(unpackPlainRuns(Bytes{0x1F}, size, 2), failsWith(ErrorKind::Corrupt, "at byte 2"));
    EXPECT_THAT(unpackPlainRuns(Bytes{0x1F, 0x06}, size, 2),
                failsWith(ErrorKind::Corrupt, "beyond the last of 20 cells"));
    EXPECT_THAT(unpackPlainRuns(Bytes{0x1F, 0x05, 0x00}, size, 2),
                failsWith(ErrorKind::Corrupt, "1 bytes too many"));
    EXPECT_THAT(unpackPlainRuns(Bytes{0x1F, 0x25}, size, 2),
                failsWith(ErrorKind::Corrupt, "colour 2 of only 2"));
    EXPECT_THAT(unpackPlainRuns(Bytes{0x10, 0xFF, 0xFF, 0xFF, 0x7F}, size, 2),
                failsWith(ErrorKind::Corrupt, "beyond"));
}

TEST(PlainRuns, RefuseSizesAndPalettesThatCannotBe) {
    EXPECT_THAT(unpackPlainRuns(Bytes{0x11}, {0, 1}, 2), failsWith(ErrorKind::InvalidInput, "0x1"));
    EXPECT_THAT(unpackPlainRuns(Bytes{0x11}, {1, 257}, 2),
                failsWith(ErrorKind::InvalidInput, "1x257"));
    EXPECT_THAT(unpackPlainRuns(Bytes{0x11}, {1, 1}, 1), failsWith(ErrorKind::InvalidInput, "1"));
    EXPECT_THAT(unpackPlainRuns(Bytes{0x11}, {1, 1}, 257),
                failsWith(ErrorKind::InvalidInput, "257"));
}

TEST(PlainRuns, AcceptOnlyWhatTheyWouldWrite) {
    tests::Random random(11);
    int accepted = 0;
    for (int i = 0; i < 200000; ++i) {
        Bytes bytes(static_cast<std::size_t>(random.between(1, 5)));
        for (auto& byte : bytes) byte = static_cast<std::uint8_t>(random.next());
        const int colours = random.between(2, 20);
        const auto grid =
            unpackPlainRuns(bytes, {random.between(1, 6), random.between(1, 3)}, colours);
        if (!grid) continue;
        ++accepted;
        ASSERT_EQ(packPlainRuns(*grid, colours), bytes);
    }
    EXPECT_GT(accepted, 20);
}

}  // namespace
}  // namespace pantile::codec
