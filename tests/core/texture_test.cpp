#include "core/texture.h"

#include "support/matchers.h"

namespace pantile::core {
namespace {

using tests::failsWith;
using tests::isOk;

Palette threeColours(std::optional<PaletteIndex> transparent = std::nullopt) {
    return *Palette::create({{0, 0, 0}, {128, 128, 128}, {255, 255, 255}}, transparent);
}

Grid smallGrid() {
    return *Grid::create(2, 2, {0, 1, 1, 2});
}

TEST(Texture, RefusesACellOutsideThePalette) {
    EXPECT_THAT(Texture::create(*Grid::filled(2, 2, 3), threeColours()),
                failsWith(ErrorKind::InvalidInput, "index 3"));
}

TEST(Texture, SortsTagsAndKeepsEachOnce) {
    TextureText text;
    text.tags = {"sand", "kelp", "sand"};
    const Texture texture = *Texture::create(smallGrid(), threeColours(), text);
    EXPECT_EQ(texture.text().tags, (std::vector<std::string>{"kelp", "sand"}));
}

TEST(Texture, CountsTheColoursThatItPaints) {
    EXPECT_EQ(Texture::create(smallGrid(), threeColours())->coloursUsed(), 3);
    EXPECT_EQ(Texture::create(smallGrid(), threeColours(1))->coloursUsed(), 2);
}

TEST(Texture, ContentFingerprintIgnoresWordsButNotCellsSizesOrColours) {
    TextureText text;
    text.title = "wet sand";
    const Texture texture = *Texture::create(smallGrid(), threeColours());
    EXPECT_EQ(texture.contentFingerprint(), texture.withText(text)->contentFingerprint());
    EXPECT_NE(texture.contentFingerprint(), contentFingerprint(smallGrid(), threeColours(0)));
    EXPECT_NE(contentFingerprint(*Grid::filled(2, 3, 0), threeColours()),
              contentFingerprint(*Grid::filled(3, 2, 0), threeColours()));
    Grid other = smallGrid();
    other.set(1, 1, 0);
    EXPECT_NE(texture.contentFingerprint(), contentFingerprint(other, threeColours()));
}

// It stands in libraries and loads: this value must never change.
TEST(Texture, ContentFingerprintIsFrozen) {
    EXPECT_EQ(toHex(contentFingerprint(smallGrid(), threeColours(2))), "399c63a572e61f41");
}

TEST(Texture, TextLimitsAreHeld) {
    TextureText text;
    text.title = std::string(10000, 'k');
    EXPECT_THAT(checkTextureText(text),
                failsWith(ErrorKind::TooLarge, "title has 10000 characters"));
    text = {};
    text.note = "first line\nsecond line";
    EXPECT_THAT(checkTextureText(text), isOk());
    text.author = "a\nb";
    EXPECT_THAT(checkTextureText(text), failsWith(ErrorKind::InvalidInput, "author"));
    text = {};
    for (std::size_t i = 0; i <= kMaxTags; ++i) text.tags.push_back("t" + std::to_string(i));
    EXPECT_THAT(checkTextureText(text), failsWith(ErrorKind::TooLarge, "at most 64 tags"));
}

TEST(Tag, IsOneWordWithoutMarks) {
    EXPECT_THAT(checkTag("wet-sand"), isOk());
    EXPECT_THAT(checkTag("stone/slate"), isOk());
    EXPECT_THAT(checkTag("blåstång"), isOk());
    for (const char* bad :
         {"", "wet sand", "-kelp", "+kelp", "a,b", "tag:kelp", "a|b", "(a", "\"a\""}) {
        EXPECT_THAT(checkTag(bad), failsWith(ErrorKind::InvalidInput, "cannot be a tag")) << bad;
    }
    EXPECT_THAT(checkTag(std::string(41, 'k')), failsWith(ErrorKind::TooLarge, "41"));
}

}  // namespace
}  // namespace pantile::core
