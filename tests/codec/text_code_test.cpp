#include "codec/text_code.h"

#include <gtest/gtest.h>

#include "code_support.h"
#include "codec/base58.h"
#include "support/matchers.h"

namespace pantile::codec {
namespace {

using tests::isOk;

/// The one texture that `text` must hold.
void expectHolds(const std::string& text, const core::Texture& texture, std::string_view about) {
    const Harvest harvest = harvestCodes(text);
    ASSERT_EQ(harvest.found.size(), 1U) << about;
    ASSERT_EQ(harvest.found[0].texture, texture) << about;
    ASSERT_TRUE(harvest.damaged.empty()) << about << ": " << harvest.damaged[0].reason;
}

TEST(TextCode, RoundTripsRandomTextures) {
    tests::Random random(101);
    for (int i = 0; i < 600; ++i) {
        const core::Texture texture = tests::randomTexture(random);
        for (const MethodChoice method : {MethodChoice::Shortest, MethodChoice::PlainRunsOnly}) {
            expectHolds(tests::codeOf(texture, {method}), texture, "round " + std::to_string(i));
        }
    }
}

TEST(TextCode, RoundTripsEverySizeEdge) {
    tests::Random random(102);
    for (const core::Size size :
         {core::Size{1, 1}, {2, 1}, {1, 2}, {255, 1}, {1, 256}, {256, 2}, {256, 256}}) {
        for (const int colours : {2, 3, 16, 17, 255, 256}) {
            const core::Texture texture = tests::randomTexture(random, size, colours);
            expectHolds(tests::codeOf(texture), texture,
                        std::to_string(size.width) + "x" + std::to_string(size.height) + " in " +
                            std::to_string(colours));
        }
    }
}

TEST(TextCode, SaysItsBytesAndItsMethod) {
    const core::Texture texture = tests::usualTexture(2);
    const auto code = encodeTextCode(texture);
    ASSERT_THAT(code, isOk());
    const Container container = packContents(texture);
    EXPECT_EQ(code->bytes, container.bytes.size());
    EXPECT_EQ(code->method, container.method);
    EXPECT_NE(code->text.back(), '\n');
}

TEST(TextCode, WritesWhatTheFrozenVectorsSay) {
    for (const tests::CodeVector& vector : tests::readCodeVectors()) {
        // Another zlib may deflate otherwise; then only reading is frozen.
        if (vector.method == methodName(Method::DeflatedRuns)) continue;
        const auto code = encodeTextCode(vector.texture, vector.options);
        ASSERT_THAT(code, isOk());
        EXPECT_EQ(code->text, vector.code) << vector.name;
        EXPECT_EQ(packContents(vector.texture, vector.options).bytes, vector.bytes) << vector.name;
    }
}

TEST(TextCode, ReadsTheFrozenVectors) {
    for (const tests::CodeVector& vector : tests::readCodeVectors()) {
        const PaletteLookup lookup = [&](core::Fingerprint) {
            return std::optional(vector.texture.palette());
        };
        const Harvest harvest = harvestCodes(vector.code, lookup);
        ASSERT_EQ(harvest.found.size(), 1U) << vector.name;
        EXPECT_EQ(harvest.found[0].texture, vector.texture) << vector.name;
        const auto unpacked = unpackTextures(vector.bytes, lookup);
        ASSERT_THAT(unpacked, isOk()) << vector.name;
        EXPECT_EQ(*unpacked, std::vector{vector.texture}) << vector.name;
    }
}

/// The textures of all frozen vectors, as the one set code that is frozen with them.
TEST(TextCode, WritesAndReadsTheFrozenSet) {
    std::vector<core::Texture> textures;
    for (const tests::CodeVector& vector : tests::readCodeVectors()) {
        textures.push_back(vector.texture);
    }
    const std::string frozen = tests::readFields(tests::vectorFiles("set_codes").at(0)).at("code");
    const auto code = encodeSetCode(textures);
    ASSERT_THAT(code, isOk());
    EXPECT_EQ(code->text, frozen);
    std::vector<core::Texture> read;
    for (const FoundCode& found : harvestCodes(frozen).found) read.push_back(found.texture);
    EXPECT_EQ(read, textures);
}

/// Whatever is read from a damaged text must be the texture itself; and where it may be told from
/// other text, something must be said.
void expectNothingWrong(const std::string& text, const core::Texture& texture, bool mustSay) {
    const Harvest harvest = harvestCodes(text);
    for (const FoundCode& found : harvest.found) ASSERT_EQ(found.texture, texture) << text;
    if (mustSay) {
        ASSERT_FALSE(harvest.found.empty() && harvest.damaged.empty()) << text;
    }
}

std::vector<core::Texture> texturesToCut() {
    tests::Random random(103);
    return {tests::randomTexture(random, {1, 1}, 2), tests::randomTexture(random, {8, 8}, 4),
            tests::usualTexture(3)};
}

TEST(TextCode, NoticesEveryTruncation) {
    constexpr std::size_t kFewestTold = 18;  // A start mark and 16 letters: less is no sure code.
    for (const core::Texture& texture : texturesToCut()) {
        const std::string code = tests::codeOf(texture);
        for (std::size_t length = 0; length < code.size(); ++length) {
            expectNothingWrong(code.substr(0, length), texture, length >= kFewestTold);
        }
    }
}

}  // namespace
}  // namespace pantile::codec
