#include "codec/container.h"

#include <functional>

#include <gtest/gtest.h>

#include "code_support.h"
#include "support/matchers.h"

namespace pantile::codec {
namespace {

using Bytes = std::vector<std::uint8_t>;
using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

/// 2x1 cells in two colours, with nothing but a title.
Bytes small() {
    return {1, 0x08, 1, 0, 1, 10, 20, 30, 40, 50, 60, 4, 'K', 'e', 'l', 'p', 0, 0x01, 0x11};
}

Bytes changed(std::size_t at, std::uint8_t byte) {
    Bytes bytes = small();
    bytes.at(at) = byte;
    return bytes;
}

TEST(Container, IsLaidOutAsThePageSays) {
    core::TextureText text;
    text.title = "Kelp";
    const auto texture = core::Texture::create(*core::Grid::create(2, 1, {0, 1}),
                                               *core::Palette::create({{10, 20, 30}, {40, 50, 60}}),
                                               std::move(text));
    const Container container = packTexture(*texture);
    EXPECT_EQ(container.bytes, small());
    EXPECT_EQ(container.method, Method::PlainRuns);
    const auto back = unpackTexture(small());
    ASSERT_THAT(back, isOk());
    EXPECT_EQ(*back, *texture);
}

TEST(Container, RoundTripsRandomTextures) {
    tests::Random random(31);
    for (int i = 0; i < 500; ++i) {
        const core::Texture texture = tests::randomTexture(random);
        const auto back = unpackTexture(packTexture(texture).bytes);
        ASSERT_THAT(back, isOk()) << i;
        ASSERT_EQ(*back, texture) << i;
    }
}

TEST(Container, LeavesNoteAndSourceAtHome) {
    core::TextureText text;
    text.title = "Rope";
    text.note = "for the third island";
    text.source = "photographs/rope.png";
    const core::Texture texture = *tests::usualTexture(1).withText(text);
    const auto back = unpackTexture(packTexture(texture).bytes);
    ASSERT_THAT(back, isOk());
    EXPECT_EQ(back->text().title, "Rope");
    EXPECT_EQ(back->text().note, "");
    EXPECT_EQ(back->text().source, "");
}

TEST(Container, FindsAPaletteByItsFingerprint) {
    const core::Texture texture = tests::usualTexture(2);
    const Bytes bytes =
        packTexture(texture, {MethodChoice::Shortest, PaletteForm::ByFingerprint}).bytes;
    EXPECT_LT(bytes.size(), packTexture(texture).bytes.size());
    const PaletteLookup lookup = [&](core::Fingerprint asked) {
        return asked == texture.palette().fingerprint() ? std::optional(texture.palette())
                                                        : std::nullopt;
    };
    const auto back = unpackTexture(bytes, lookup);
    ASSERT_THAT(back, isOk());
    EXPECT_EQ(*back, texture);
}

TEST(Container, NamesThePaletteThatIsNotKnown) {
    const core::Texture texture = tests::usualTexture(2);
    const Bytes bytes =
        packTexture(texture, {MethodChoice::Shortest, PaletteForm::ByFingerprint}).bytes;
    const std::string name = core::toHex(texture.palette().fingerprint());
    EXPECT_THAT(unpackTexture(bytes), failsWith(ErrorKind::NotFound, name));
    const PaletteLookup wrong = [](core::Fingerprint) {
        return std::optional(*core::Palette::create({{1, 1, 1}, {2, 2, 2}}));
    };
    EXPECT_THAT(unpackTexture(bytes, wrong), failsWith(ErrorKind::NotFound, name));
}

TEST(Container, RefusesEveryCutAndEveryAddition) {
    for (std::size_t length = 0; length < small().size(); ++length) {
        Bytes bytes = small();
        bytes.resize(length);
        EXPECT_THAT(unpackTexture(bytes), failsWith(ErrorKind::Corrupt, "")) << length;
    }
    Bytes longer = small();
    longer.push_back(0x01);
    EXPECT_THAT(unpackTexture(longer), failsWith(ErrorKind::Corrupt, "too many"));
}

TEST(Container, NamesWhatANewerVersionMayHaveWritten) {
    const std::string_view newer = "made by a newer Pantile";
    EXPECT_THAT(unpackTexture(changed(0, 2)), failsWith(ErrorKind::Unsupported, "form 2"));
    EXPECT_THAT(unpackTexture(changed(0, 255)), failsWith(ErrorKind::Unsupported, newer));
    EXPECT_THAT(unpackTexture(changed(1, 0x88)), failsWith(ErrorKind::Unsupported, newer));
    EXPECT_THAT(unpackTexture(changed(1, 0x0A)), failsWith(ErrorKind::Unsupported, "way 2"));
    EXPECT_THAT(unpackTexture(changed(16, 2)), failsWith(ErrorKind::Unsupported, "method 2"));
}

TEST(Container, RefusesForgedSizesAndCounts) {
    EXPECT_THAT(unpackTexture(changed(0, 0)), failsWith(ErrorKind::Corrupt, "form number 0"));
    EXPECT_THAT(unpackTexture(changed(2, 255)), failsWith(ErrorKind::Corrupt, "cut short"));
    EXPECT_THAT(unpackTexture(changed(2, 0)), failsWith(ErrorKind::Corrupt, "too many"));
    EXPECT_THAT(unpackTexture(changed(4, 0)), failsWith(ErrorKind::Corrupt, "1 colour"));
    EXPECT_THAT(unpackTexture(changed(4, 255)), failsWith(ErrorKind::Corrupt, "palette"));
    EXPECT_THAT(unpackTexture(changed(11, 0)), failsWith(ErrorKind::Corrupt, "title"));
    EXPECT_THAT(unpackTexture(changed(11, 100)), failsWith(ErrorKind::Corrupt, "title"));
    EXPECT_THAT(unpackTexture(changed(18, 0x21)), failsWith(ErrorKind::Corrupt, "colour 2"));
}

TEST(Container, RefusesWordsThatNoTextureHas) {
    EXPECT_THAT(unpackTexture(changed(12, 0x1B)), failsWith(ErrorKind::Corrupt, "\\x1b"));
    EXPECT_THAT(unpackTexture(changed(12, 0xFF)), failsWith(ErrorKind::Corrupt, "UTF-8"));
}

/// small() with tags in place of the title.
Bytes withTags(const Bytes& tags) {
    Bytes bytes = {1, 0x40, 1, 0, 1, 10, 20, 30, 40, 50, 60};
    for (const Bytes& part : {tags, Bytes{0, 0x01, 0x11}}) {
        for (const std::uint8_t byte : part) bytes.push_back(byte);
    }
    return bytes;
}

TEST(Container, TakesTagsOnlyInOrderAndOnce) {
    EXPECT_THAT(unpackTexture(withTags({2, 1, 'a', 1, 'b'})), isOk());
    EXPECT_THAT(unpackTexture(withTags({2, 1, 'b', 1, 'a'})),
                failsWith(ErrorKind::Corrupt, "not in order"));
    EXPECT_THAT(unpackTexture(withTags({2, 1, 'a', 1, 'a'})),
                failsWith(ErrorKind::Corrupt, "not in order"));
    EXPECT_THAT(unpackTexture(withTags({0})), failsWith(ErrorKind::Corrupt, "tags"));
    EXPECT_THAT(unpackTexture(withTags({65, 1, 'a'})), failsWith(ErrorKind::Corrupt, "tags"));
    EXPECT_THAT(unpackTexture(withTags({1, 3, 'a', ' ', 'b'})),
                failsWith(ErrorKind::Corrupt, "cannot be a tag"));
}

TEST(Container, RefusesATransparentIndexOutsideThePalette) {
    const Bytes bytes = {1, 0x04, 1, 0, 1, 1, 10, 20, 30, 40, 50, 60, 0, 0x01, 0x11};
    EXPECT_THAT(unpackTexture(bytes), isOk());
    Bytes outside = bytes;
    outside[5] = 2;
    EXPECT_THAT(unpackTexture(outside), failsWith(ErrorKind::Corrupt, "transparent index 2"));
    const Bytes beside = {1, 0x05, 1, 0, 1, 1, 2, 3, 4, 5, 6, 7, 8, 0, 0x01, 0x11};
    EXPECT_THAT(unpackTexture(beside), failsWith(ErrorKind::Corrupt, "transparent index beside"));
}

TEST(Container, AcceptsOnlyWhatItWouldWriteWhenOneByteChanges) {
    tests::Random random(33);
    for (int i = 0; i < 60; ++i) {
        const Bytes original =
            packTexture(tests::randomTexture(random, {8, 8}, 5), {MethodChoice::PlainRunsOnly})
                .bytes;
        for (int change = 0; change < 300; ++change) {
            Bytes bytes = original;
            const auto at =
                static_cast<std::size_t>(random.between(0, static_cast<int>(bytes.size()) - 1));
            bytes[at] = static_cast<std::uint8_t>(random.next());
            const auto texture = unpackTexture(bytes);
            if (texture) {
                ASSERT_EQ(packTexture(*texture, {MethodChoice::PlainRunsOnly}).bytes, bytes);
            }
        }
    }
}

}  // namespace
}  // namespace pantile::codec
