// decoder_soak: codes of many random textures and sets, read by the decoder in another language
// that was written from docs/code-format.md. tests/codec/code_decoder_test.cpp does the same in
// small.
//   decoder_soak [textures, ten thousand if not given] [seed]

#include <cstdio>
#include <cstdlib>

#include "codec/decoder_cases.h"
#include "support/temporary_folder.h"

int main(int count, char** arguments) {
    using namespace pantile;
    constexpr int kAtOnce = 200;
    constexpr int kSetsAtOnce = 10;
    const int textures = count > 1 ? std::atoi(arguments[1]) : 10000;
    tests::Random random(count > 2 ? std::strtoull(arguments[2], nullptr, 10) : 1);
    int sets = 0;
    for (int done = 0; done < textures; done += kAtOnce) {
        const tests::TemporaryFolder folder;
        tests::writeRandomCodes(folder.path(), random, std::min(kAtOnce, textures - done));
        tests::writeRandomSets(folder.path(), random, kSetsAtOnce);
        if (tests::decoderStatusOf(folder.path()) != 0) {
            std::puts("the two decoders do not agree");
            return EXIT_FAILURE;
        }
        sets += kSetsAtOnce;
    }
    std::printf("%d textures and %d sets are read alike\n", textures, sets);
    return EXIT_SUCCESS;
}
