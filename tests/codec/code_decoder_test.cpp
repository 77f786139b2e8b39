// Our codes read by a decoder in another language that was written from docs/code-format.md, not
// from our sources: tests/outside/code_decoder.py.

#include <cstdlib>
#include <fstream>
#include <string>

#include <gtest/gtest.h>

#include "code_support.h"
#include "codec/parts.h"
#include "support/temporary_folder.h"

namespace pantile::codec {
namespace {

int decoderStatus(const std::string& arguments) {
    const std::string command =
        "python3 '" PANTILE_SOURCE_DIR "/tests/outside/code_decoder.py' " + arguments;
    return std::system(command.c_str());
}

TEST(CodeDecoder, ReadsTheFrozenVectorsAndRefusesEveryChangedLetter) {
    EXPECT_EQ(decoderStatus("--changes '" PANTILE_TEST_DATA "/codes'/*.txt"), 0);
}

TEST(CodeDecoder, AgreesWithOursOnRandomTextures) {
    constexpr int kTextures = 100;
    const tests::TemporaryFolder folder;
    tests::Random random(201);
    for (int i = 0; i < kTextures; ++i) {
        const core::Texture texture = tests::randomTexture(random);
        const EncodeOptions options{
            i % 3 == 0 ? MethodChoice::PlainRunsOnly : MethodChoice::Shortest,
            i % 5 == 0 ? PaletteForm::ByFingerprint : PaletteForm::Inside};
        std::ofstream file(folder.path() / (std::to_string(i) + ".txt"));
        file << tests::codeVectorText(texture, options) << "parts:\n";
        const auto parts = static_cast<std::size_t>(random.between(2, 9));
        const auto codes = armouredParts(packContents(texture, options).bytes, parts);
        for (const std::string& code : *codes) file << code << '\n';
    }
    EXPECT_EQ(decoderStatus("'" + folder.path().string() + "'/*.txt"), 0);
}

TEST(CodeDecoder, AgreesWithOursOnRandomSets) {
    const tests::TemporaryFolder folder;
    tests::Random random(202);
    for (int i = 0; i < 12; ++i) {
        std::vector<core::Texture> textures;
        const core::Palette palette = tests::randomPalette(random, 9);
        for (int count = random.between(2, 5); count > 0; --count) {
            const core::Size size{random.between(1, 12), random.between(1, 12)};
            const core::Grid grid = tests::randomGrid(random, size, 9);
            const bool sharesPalette = random.between(0, 2) > 0;
            textures.push_back(*core::Texture::create(
                grid, sharesPalette ? palette : tests::randomPalette(random, 9),
                tests::randomWords(random)));
        }
        const EncodeOptions options;
        const auto container = packSet(textures, options);
        ASSERT_TRUE(container);
        for (std::size_t place = 0; place < textures.size(); ++place) {
            std::ofstream file(folder.path() /
                               (std::to_string(i) + "-" + std::to_string(place) + ".txt"));
            file << tests::codeVectorText(textures[place], options, *container, place);
        }
    }
    EXPECT_EQ(decoderStatus("'" + folder.path().string() + "'/*.txt"), 0);
}

}  // namespace
}  // namespace pantile::codec
