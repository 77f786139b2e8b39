#include "picture/crop.h"

#include <limits>

#include <gtest/gtest.h>

#include "picture/pictures.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

core::Picture numbered(int width, int height) {
    core::Picture picture{{{width, height}, {}}, core::IndexedPixels{}};
    for (int i = 0; i < width * height; ++i) {
        picture.pixels.pixels.push_back(grey(i));
        picture.indexed->table.push_back(grey(i));
        picture.indexed->indices.push_back(static_cast<std::uint8_t>(i));
    }
    return picture;
}

TEST(Crop, KeepsThePixelsAndIndicesOfThePart) {
    const auto part = cropped(numbered(5, 4), {{1, 2}, {3, 2}});
    ASSERT_THAT(part, isOk());
    EXPECT_EQ(part->pixels.size, (core::Size{3, 2}));
    EXPECT_EQ(part->pixels.pixels,
              (std::vector{grey(11), grey(12), grey(13), grey(16), grey(17), grey(18)}));
    EXPECT_EQ(part->indexed->indices, (std::vector<std::uint8_t>{11, 12, 13, 16, 17, 18}));
    EXPECT_EQ(part->indexed->table.size(), 20U);
}

TEST(Crop, OfTheWholeChangesNothing) {
    const core::Picture picture = numbered(7, 3);
    const auto whole = cropped(picture, {{0, 0}, {7, 3}});
    ASSERT_THAT(whole, isOk());
    EXPECT_EQ(whole->pixels.pixels, picture.pixels.pixels);
    EXPECT_EQ(whole->indexed->indices, picture.indexed->indices);
}

TEST(Crop, RefusesWhatReachesOutside) {
    constexpr int kMost = std::numeric_limits<int>::max();
    for (const Rectangle& part : {Rectangle{{-1, 0}, {2, 2}}, Rectangle{{0, 3}, {1, 2}},
                                  Rectangle{{0, 0}, {0, 1}}, Rectangle{{5, 0}, {1, 1}},
                                  Rectangle{{1, 1}, {kMost, 1}}, Rectangle{{kMost, 0}, {1, 1}}}) {
        EXPECT_THAT(cropped(numbered(5, 4), part),
                    failsWith(ErrorKind::InvalidInput, "not inside a picture of 5x4"));
    }
}

}  // namespace
}  // namespace pantile::picture
