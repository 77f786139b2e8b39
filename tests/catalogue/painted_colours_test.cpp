#include "catalogue/painted_colours.h"

#include <gtest/gtest.h>

namespace pantile::catalogue {
namespace {

using core::Rgb8;
using Bytes = std::vector<std::uint8_t>;

core::Grid gridOf(std::vector<core::PaletteIndex> cells) {
    const int width = static_cast<int>(cells.size());
    return core::Grid::create(width, 1, std::move(cells)).value();
}

core::Palette manyColours(int count) {
    std::vector<Rgb8> colours;
    for (int i = 0; i < count; ++i) colours.push_back({static_cast<std::uint8_t>(i), 0, 0});
    return core::Palette::create(std::move(colours), core::PaletteIndex{3}).value();
}

TEST(PaintedColours, HaveABitForEachEntryThatOccurs) {
    const auto palette = manyColours(20);
    EXPECT_EQ(paintedColours(gridOf({0, 0, 2}), palette).used, (Bytes{0x05}));
    EXPECT_EQ(paintedColours(gridOf({1, 19}), palette).used, (Bytes{0x02, 0x00, 0x08}));
    EXPECT_EQ(paintedColours(gridOf({3, 3, 8}), palette).used, (Bytes{0x00, 0x01}))
        << "the transparent entry is no colour";
    const PaintedColours nothing = paintedColours(gridOf({3}), palette);
    EXPECT_EQ(nothing, PaintedColours{});
}

TEST(PaintedColours, AreInTheOrderOfGreysAndHues) {
    const auto tone = [](Rgb8 colour) {
        const auto palette = core::Palette::create({colour, {1, 2, 3}}).value();
        return paintedColours(gridOf({0, 0, 1}), palette).tone;
    };
    const std::vector<Rgb8> inOrder = {{0, 0, 0},     {128, 128, 128}, {255, 255, 255}, {90, 0, 0},
                                       {255, 0, 0},   {255, 160, 0},   {255, 255, 0},   {0, 200, 0},
                                       {0, 255, 255}, {0, 0, 255}};
    for (std::size_t i = 1; i < inOrder.size(); ++i) {
        EXPECT_LT(tone(inOrder[i - 1]), tone(inOrder[i])) << i;
    }
}

}  // namespace
}  // namespace pantile::catalogue
