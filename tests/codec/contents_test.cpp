#include "codec/contents.h"

#include <gtest/gtest.h>

#include "code_support.h"
#include "codec/modelled_form.h"
#include "support/matchers.h"

namespace pantile::codec {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

std::vector<std::uint8_t> modelled(const core::Texture& texture) {
    return packModelled({&texture, 1}, false).value();
}

std::string repeated(const std::string& letter, std::size_t times) {
    std::string text;
    for (std::size_t i = 0; i < times; ++i) text += letter;
    return text;
}

TEST(Contents, ModelledRunsHoldEveryTexture) {
    tests::Random random(311);
    for (int i = 0; i < 150; ++i) {
        const core::Texture texture =
            tests::randomTexture(random, {random.between(1, 40), random.between(1, 40)},
                                 random.between(2, i % 5 == 0 ? 256 : 20));
        const auto back = unpackTextures(modelled(texture));
        ASSERT_THAT(back, isOk()) << i;
        ASSERT_EQ(*back, std::vector{texture}) << i;
    }
}

TEST(Contents, ModelledRunsHoldWordsAndTransparency) {
    tests::Random random(312);
    core::TextureText text;
    text.title = std::string(480 / 4, 'x');
    text.author = "Näss 🪸";
    text.licence = "CC BY-SA 4.0";
    text.tags = {"brass", "kelp", "näss"};
    for (const core::PaletteIndex transparent : std::vector<core::PaletteIndex>{0, 1, 4}) {
        const core::Palette drawn = tests::randomPalette(random, 5);
        const auto colours = drawn.colours();
        const auto palette = core::Palette::create({colours.begin(), colours.end()}, transparent);
        const auto texture =
            core::Texture::create(tests::randomGrid(random, {9, 7}, 5), *palette, text);
        const auto back = unpackTextures(modelled(*texture));
        ASSERT_THAT(back, isOk());
        EXPECT_EQ(back->front(), *texture);
    }
}

TEST(Contents, TakesTheShortestForm) {
    tests::Random random(313);
    int modelledRuns = 0;
    for (int i = 0; i < 60; ++i) {
        const core::Texture texture = tests::randomTexture(random);
        const Container container = packContents(texture);
        EXPECT_LE(container.bytes.size(), packTexture(texture).bytes.size());
        EXPECT_LE(container.bytes.size(), modelled(texture).size());
        EXPECT_EQ(container.method == Method::ModelledRuns,
                  container.bytes.front() == kModelledForm);
        if (container.method == Method::ModelledRuns) ++modelledRuns;
        const Container plain = packContents(texture, {MethodChoice::PlainRunsOnly});
        EXPECT_EQ(plain.method, Method::PlainRuns);
    }
    EXPECT_GT(modelledRuns, 30);
}

TEST(Contents, PlainRunsServeWhatIsTooLargeToModel) {
    tests::Random random(314);
    const core::Texture texture = tests::randomTexture(random, {256, 129}, 3);
    EXPECT_THAT(packModelled({&texture, 1}, false), failsWith(ErrorKind::TooLarge, "33024 cells"));
    EXPECT_NE(packContents(texture).method, Method::ModelledRuns);
}

TEST(Contents, PalettesGoByTheirFingerprintsToo) {
    const core::Texture texture = tests::usualTexture(5);
    const EncodeOptions options{MethodChoice::Shortest, PaletteForm::ByFingerprint};
    const Container container = packContents(texture, options);
    EXPECT_EQ(container.method, Method::ModelledRuns);
    const std::string name = core::toHex(texture.palette().fingerprint());
    EXPECT_THAT(unpackTextures(container.bytes), failsWith(ErrorKind::NotFound, name));
    const auto back =
        unpackTextures(container.bytes, [&](core::Fingerprint) { return texture.palette(); });
    ASSERT_THAT(back, isOk());
    EXPECT_EQ(back->front(), texture);
}

std::vector<core::Texture> relatedTextures() {
    tests::Random random(315);
    const core::Palette palette = tests::randomPalette(random, 12);
    core::TextureText text;
    text.author = "Tidewrack studio";
    text.licence = "CC0-1.0";
    std::vector<core::Texture> textures;
    for (int i = 0; i < 8; ++i) {
        text.title = "Shingle " + std::to_string(i + 1);
        textures.push_back(
            *core::Texture::create(tests::randomGrid(random, {16, 16}, 12), palette, text));
    }
    return textures;
}

TEST(Contents, ASetIsShorterThanItsTexturesOneByOne) {
    const std::vector<core::Texture> textures = relatedTextures();
    const auto set = packSet(textures);
    ASSERT_THAT(set, isOk());
    std::size_t oneByOne = 0;
    for (const core::Texture& texture : textures) oneByOne += packContents(texture).bytes.size();
    EXPECT_LE(100 * set->bytes.size(), 85 * oneByOne);
    const auto back = unpackTextures(set->bytes);
    ASSERT_THAT(back, isOk());
    EXPECT_EQ(*back, textures);
}

TEST(Contents, RefusesSetsThatNoCodeHolds) {
    const core::Texture small = tests::usualTexture(6);
    EXPECT_THAT(packSet({}), failsWith(ErrorKind::InvalidInput, "at least one"));
    EXPECT_THAT(packSet({&small, 1}, {MethodChoice::PlainRunsOnly}),
                failsWith(ErrorKind::Unsupported, "plain runs"));
    const std::vector<core::Texture> many(65, small);
    EXPECT_THAT(packSet(many), failsWith(ErrorKind::TooLarge, "65 textures"));
    tests::Random random(316);
    std::vector<core::PaletteIndex> noise(32768);
    for (auto& cell : noise) cell = static_cast<core::PaletteIndex>(random.between(0, 15));
    const auto noisy = core::Texture::create(*core::Grid::create(256, 128, std::move(noise)),
                                             tests::randomPalette(random, 16));
    EXPECT_THAT(packSet({&*noisy, 1}), failsWith(ErrorKind::DoesNotFit, "too noisy"));
}

TEST(Contents, WordsHaveALimitOfTheirOwn) {
    core::TextureText text;
    text.title = text.author = text.licence = repeated("🪸", core::kMaxTitleCharacters);
    for (std::size_t i = 10; i < 10 + core::kMaxTags; ++i) {
        text.tags.push_back(std::to_string(i) + repeated("🪸", core::kMaxTagCharacters - 2));
    }
    const core::Texture plain = tests::usualTexture(6);
    const auto longest = core::Texture::create(plain.grid(), plain.palette(), text);
    ASSERT_THAT(longest, isOk());
    const auto back = unpackTextures(modelled(*longest));
    ASSERT_THAT(back, isOk());
    EXPECT_EQ(back->front(), *longest);
    EXPECT_THAT(packSet(std::vector(2, *longest)), failsWith(ErrorKind::DoesNotFit, "too long"));
}

TEST(Contents, TellsTheDecisionsOfAReading) {
    const core::Texture texture = tests::usualTexture(6);
    std::size_t decisions = 0;
    ASSERT_THAT(unpackTextures(packTexture(texture).bytes, {}, &decisions), isOk());
    EXPECT_EQ(decisions, 0U);
    std::vector<std::uint8_t> bytes = modelled(texture);
    ASSERT_THAT(unpackTextures(bytes, {}, &decisions), isOk());
    EXPECT_GE(decisions, texture.grid().cellCount());
    bytes.push_back(1);
    const std::size_t before = decisions;
    ASSERT_THAT(unpackTextures(bytes, {}, &decisions), failsWith(ErrorKind::Corrupt, "damaged"));
    EXPECT_EQ(decisions, 2 * before);
}

/// Decodings of damaged bytes: the armour tells them apart by its check values, so here they may be
/// another texture, but nothing that an encoder does not write.
bool refusesOrKeeps(const std::vector<std::uint8_t>& bytes) {
    const auto back = unpackTextures(bytes);
    return !back || *packModelled(*back, false) == bytes;
}

TEST(Contents, AcceptsNothingThatNoEncoderWrites) {
    const std::vector<std::uint8_t> bytes = modelled(tests::usualTexture(7));
    int refused = 0;
    int tried = 0;
    for (std::size_t at = 1; at < bytes.size(); ++at) {
        for (const int change : {1, 16, 128, 255}) {
            std::vector<std::uint8_t> changed = bytes;
            changed[at] = static_cast<std::uint8_t>(changed[at] ^ change);
            ++tried;
            if (!unpackTextures(changed)) ++refused;
            ASSERT_TRUE(refusesOrKeeps(changed)) << at;
        }
    }
    EXPECT_GT(refused, tried * 8 / 10);
}

TEST(Contents, AcceptsNoLengthThatNoEncoderWrites) {
    std::vector<std::uint8_t> bytes = modelled(tests::usualTexture(8));
    for (std::size_t length = 1; length < bytes.size(); ++length) {
        const auto end = bytes.begin() + static_cast<std::ptrdiff_t>(length);
        ASSERT_TRUE(refusesOrKeeps({bytes.begin(), end})) << length;
    }
    bytes.push_back(7);
    EXPECT_THAT(unpackTextures(bytes), failsWith(ErrorKind::Corrupt, "damaged"));
    bytes.back() = 0;
    EXPECT_THAT(unpackTextures(bytes), failsWith(ErrorKind::Corrupt, "damaged"));
}

}  // namespace
}  // namespace pantile::codec
