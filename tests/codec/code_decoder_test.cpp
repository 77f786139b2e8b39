// Our codes read by a decoder in another language. tests/soak/decoder_soak does the same at length.

#include <gtest/gtest.h>

#include "decoder_cases.h"
#include "support/temporary_folder.h"

namespace pantile::codec {
namespace {

TEST(CodeDecoder, ReadsTheFrozenVectorsAndRefusesEveryChangedLetter) {
    EXPECT_EQ(tests::decoderStatus("--changes '" PANTILE_TEST_DATA "/codes'/*.txt"), 0);
}

TEST(CodeDecoder, AgreesWithOursOnRandomTextures) {
    const tests::TemporaryFolder folder;
    tests::Random random(201);
    tests::writeRandomCodes(folder.path(), random, 100);
    EXPECT_EQ(tests::decoderStatusOf(folder.path()), 0);
}

TEST(CodeDecoder, AgreesWithOursOnRandomSets) {
    const tests::TemporaryFolder folder;
    tests::Random random(202);
    tests::writeRandomSets(folder.path(), random, 12);
    EXPECT_EQ(tests::decoderStatusOf(folder.path()), 0);
}

}  // namespace
}  // namespace pantile::codec
