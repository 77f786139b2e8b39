#include "core/palette.h"

#include "support/matchers.h"

namespace pantile::core {
namespace {

using tests::failsWith;

TEST(Palette, FingerprintHangsOnColoursOrderAndTransparency) {
    const Palette palette = *Palette::create({{1, 2, 3}, {4, 5, 6}});
    EXPECT_EQ(palette.fingerprint(), Palette::create({{1, 2, 3}, {4, 5, 6}})->fingerprint());
    EXPECT_NE(palette.fingerprint(), Palette::create({{4, 5, 6}, {1, 2, 3}})->fingerprint());
    EXPECT_NE(palette.fingerprint(), Palette::create({{1, 2, 3}, {4, 5, 7}})->fingerprint());
    EXPECT_NE(palette.fingerprint(), Palette::create({{1, 2, 3}, {4, 5, 6}}, 0)->fingerprint());
    EXPECT_NE(Palette::create({{1, 2, 3}, {4, 5, 6}}, 0)->fingerprint(),
              Palette::create({{1, 2, 3}, {4, 5, 6}}, 1)->fingerprint());
}

// The fingerprint stands in codes and libraries: this value must never change.
TEST(Palette, FingerprintIsFrozen) {
    const Palette palette = *Palette::create({{0, 0, 0}, {255, 255, 255}, {47, 111, 94}}, 1);
    EXPECT_EQ(toHex(palette.fingerprint()), "4a92e294f7f4dbd4");
}

TEST(Palette, RefusesTooFewAndTooManyColours) {
    EXPECT_THAT(Palette::create({}), failsWith(ErrorKind::InvalidInput, "not 0"));
    EXPECT_THAT(Palette::create({{1, 1, 1}}), failsWith(ErrorKind::InvalidInput, "not 1"));
    EXPECT_THAT(Palette::create(std::vector<Rgb8>(257)),
                failsWith(ErrorKind::InvalidInput, "not 257"));
}

TEST(Palette, RefusesATransparentIndexOutsideIt) {
    EXPECT_THAT(Palette::create({{1, 1, 1}, {2, 2, 2}}, 2),
                failsWith(ErrorKind::InvalidInput, "transparent index 2"));
}

}  // namespace
}  // namespace pantile::core
