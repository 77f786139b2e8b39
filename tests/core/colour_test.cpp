#include "core/colour.h"

#include "support/matchers.h"

namespace pantile::core {
namespace {

using tests::failsWith;

TEST(Colour, HexTextGoesThereAndBack) {
    EXPECT_EQ(toHex({0x2F, 0x6F, 0x5E}), "#2f6f5e");
    EXPECT_EQ(*parseHexColour("#2F6f5e"), (Rgb8{0x2F, 0x6F, 0x5E}));
}

TEST(Colour, RefusesWhatIsNoHexColour) {
    for (const char* text :
         {"", "#", "2f6f5e", "#2f6f5", "#2f6f5e0", "#2f6f5g", "#-1-1-1", "#+f0000", "# f0f0f"}) {
        EXPECT_THAT(parseHexColour(text), failsWith(ErrorKind::InvalidInput, "is not a colour"))
            << text;
    }
}

}  // namespace
}  // namespace pantile::core
