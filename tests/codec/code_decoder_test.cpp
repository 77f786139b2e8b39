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
    constexpr int kTextures = 500;
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
        const auto codes = armouredParts(packTexture(texture, options).bytes, parts);
        for (const std::string& code : *codes) file << code << '\n';
    }
    EXPECT_EQ(decoderStatus("'" + folder.path().string() + "'/*.txt"), 0);
}

}  // namespace
}  // namespace pantile::codec
