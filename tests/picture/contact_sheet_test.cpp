#include "picture/contact_sheet.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "picture/pictures.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::ErrorKind;
using core::Grid;
using core::Palette;
using core::Rgba8;
using tests::failsWith;
using tests::isOk;

constexpr Rgba8 kRed{250, 10, 20, 255};

SheetItem redItem(int width, int height, std::int64_t id = 1) {
    return {*Grid::filled(width, height, 0), *Palette::create({kRed.rgb(), {0, 0, 0}}), id};
}

// The smallest rectangle around all red pixels of a sheet.
struct Extent {
    core::Point from{1 << 20, 1 << 20};
    core::Point to{-1, -1};
    int count = 0;

    explicit Extent(const core::Pixels& sheet) {
        for (int y = 0; y < sheet.size.height; ++y) {
            for (int x = 0; x < sheet.size.width; ++x) {
                if (sheet.at(x, y) != kRed) continue;
                from = {std::min(from.x, x), std::min(from.y, y)};
                to = {std::max(to.x, x), std::max(to.y, y)};
                ++count;
            }
        }
    }

    core::Size size() const { return {to.x - from.x + 1, to.y - from.y + 1}; }
};

core::Pixels sheetOf(const std::vector<SheetItem>& items, int columns = 8) {
    auto sheet = contactSheet(items, {columns});
    EXPECT_THAT(sheet, isOk());
    return *std::move(sheet);
}

TEST(ContactSheet, ShowsTexturesOfUsualSizesEquallyLarge) {
    for (const int side : {16, 32, 64, 128}) {
        const core::Pixels sheet = sheetOf({redItem(side, side)});
        const Extent extent(sheet);
        EXPECT_EQ(extent.size(), (core::Size{128, 128})) << side;
        EXPECT_EQ(extent.count, 128 * 128);
        EXPECT_EQ(sheet.size, sheetOf({redItem(16, 16)}).size);
    }
}

TEST(ContactSheet, UsesWholeMultiplesOnly) {
    EXPECT_EQ(Extent(sheetOf({redItem(48, 48)})).size(), (core::Size{96, 96}));
    EXPECT_EQ(Extent(sheetOf({redItem(20, 7)})).size(), (core::Size{120, 42}));
    EXPECT_EQ(Extent(sheetOf({redItem(256, 100)})).size(), (core::Size{256, 100}));
    EXPECT_EQ(Extent(sheetOf({redItem(1, 1)})).size(), (core::Size{64, 64}));
}

TEST(ContactSheet, BreaksIntoRows) {
    const core::Pixels one = sheetOf({redItem(16, 16)});
    const std::vector<SheetItem> five(5, redItem(16, 16));
    const core::Pixels sheet = sheetOf(five, 3);
    EXPECT_EQ(sheet.size.width - one.size.width, 2 * (128 + 16));
    EXPECT_GT(sheet.size.height, one.size.height + 128);
    EXPECT_EQ(Extent(sheet).count, 5 * 128 * 128);
}

TEST(ContactSheet, WritesTheIdBelow) {
    const core::Pixels first = sheetOf({redItem(16, 16, 17)});
    const core::Pixels second = sheetOf({redItem(16, 16, 42)});
    ASSERT_EQ(first.size, second.size);
    int different = 0;
    for (int y = 0; y < first.size.height; ++y) {
        for (int x = 0; x < first.size.width; ++x) {
            if (first.at(x, y) == second.at(x, y)) continue;
            EXPECT_GE(y, 16 + 128) << "only below the texture";
            ++different;
        }
    }
    EXPECT_GT(different, 10);
}

TEST(ContactSheet, HatchesUnpaintedCellsAndIsOpaque) {
    SheetItem item{*Grid::filled(16, 16, 1),
                   *Palette::create({{}, kRed.rgb()}, core::PaletteIndex{1}), 3};
    const core::Pixels sheet = sheetOf({item});
    EXPECT_EQ(Extent(sheet).count, 0);
    EXPECT_NE(sheet.at(16, 16), sheet.at(17, 16));
    EXPECT_EQ(sheet.at(16, 16), sheet.at(20, 16));
    EXPECT_EQ(sheet.at(20, 16), sheet.at(19, 17)) << "the lines slant";
    EXPECT_TRUE(std::ranges::all_of(sheet.pixels, [](Rgba8 pixel) { return pixel.a == 255; }));
}

TEST(ContactSheet, RefusesNothingTooMuchAndStrangeIndices) {
    EXPECT_THAT(contactSheet({}), failsWith(ErrorKind::InvalidInput, "at least one"));
    const std::vector<SheetItem> one{redItem(2, 2)};
    EXPECT_THAT(contactSheet(one, {0}), failsWith(ErrorKind::InvalidInput, "columns"));
    const std::vector<SheetItem> many(4000, redItem(1, 1));
    EXPECT_THAT(contactSheet(many), failsWith(ErrorKind::TooLarge, "4000 textures"));
    const std::vector<SheetItem> strange{{*Grid::filled(2, 2, 9), *Palette::create({{}, {}}), 1}};
    EXPECT_THAT(contactSheet(strange), failsWith(ErrorKind::InvalidInput, "index"));
}

}  // namespace
}  // namespace pantile::picture
