#include "tasks/text_picture.h"

#include <gtest/gtest.h>

namespace pantile::tasks {
namespace {

TEST(TextPicture, HasACharacterForEachCell) {
    const core::Grid grid = *core::Grid::create(3, 2, {0, 9, 10, 35, 36, 1});
    const core::Palette palette = *core::Palette::create(std::vector<core::Rgb8>(40), 1);
    EXPECT_EQ(textPicture(grid, palette), "09a\nzA.\n");
}

TEST(TextPicture, UsesTwoDigitsWhereOneIsNotEnough) {
    const core::Grid grid = *core::Grid::create(2, 2, {0, 62, 255, 3});
    const core::Palette palette = *core::Palette::create(std::vector<core::Rgb8>(256), 3);
    EXPECT_EQ(textPicture(grid, palette), "00 3e\nff ..\n");
}

}  // namespace
}  // namespace pantile::tasks
