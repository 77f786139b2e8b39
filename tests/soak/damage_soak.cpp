// damage_soak: damages codes at random, reads them, and fails if anything but the code's own
// texture is ever read. Too long for every run of the tests; tests/codec/repair_test.cpp does the
// same in small.
//   damage_soak [damages, ten million if not given] [seed]

#include <array>
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "codec/code_support.h"
#include "codec/slips.h"

namespace pantile {
namespace {

struct Sums {
    std::int64_t read = 0;      ///< As if nothing had happened.
    std::int64_t repaired = 0;  ///< Put right.
    std::int64_t told = 0;      ///< Said to be damaged.
    std::int64_t silent = 0;    ///< Not taken for a code.
    std::int64_t wrong = 0;
};

/// Codes of all usual lengths: one to some forty lines, plain and deflated, with many and few
/// colours, with words and without.
core::Texture textureFor(tests::Random& random) {
    constexpr std::array<core::Size, 6> kSizes = {
        {{1, 1}, {4, 4}, {8, 8}, {16, 16}, {24, 16}, {32, 24}}};
    constexpr std::array<int, 5> kColours = {2, 4, 12, 20, 64};
    const core::Size size = kSizes[random.next() % kSizes.size()];
    const int colours = kColours[random.next() % kColours.size()];
    return tests::randomTexture(random, size, colours);
}

void tryOne(tests::Random& random, const core::Texture& texture, const std::string& code,
            Sums& sums) {
    const std::string text = tests::damaged(random, code);
    const codec::Harvest harvest = codec::harvestCodes(text);
    for (const codec::FoundCode& found : harvest.found) {
        if (found.texture == texture) continue;
        ++sums.wrong;
        std::printf("WRONG, from\n%s\nread out of\n%s\n", code.c_str(), text.c_str());
    }
    if (harvest.found.empty()) {
        ++(harvest.damaged.empty() ? sums.silent : sums.told);
    } else {
        ++(harvest.found.front().repaired > 0 ? sums.repaired : sums.read);
    }
}

int soak(std::int64_t damages, std::uint64_t seed) {
    constexpr int kDamagesForOne = 50;
    tests::Random random(seed);
    Sums sums;
    const auto begin = std::chrono::steady_clock::now();
    for (std::int64_t done = 0; done < damages;) {
        const core::Texture texture = textureFor(random);
        const codec::EncodeOptions options{random.between(0, 1) == 0
                                               ? codec::MethodChoice::Shortest
                                               : codec::MethodChoice::PlainRunsOnly};
        const std::string code = tests::codeOf(texture, options);
        for (int i = 0; i < kDamagesForOne && done < damages; ++i, ++done) {
            tryOne(random, texture, code, sums);
        }
    }
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - begin;
    std::printf(
        "%lld damages, seed %llu, %.0f s: %lld read, %lld put right, %lld told, %lld "
        "passed over, %lld wrong\n",
        static_cast<long long>(damages), static_cast<unsigned long long>(seed), taken.count(),
        static_cast<long long>(sums.read), static_cast<long long>(sums.repaired),
        static_cast<long long>(sums.told), static_cast<long long>(sums.silent),
        static_cast<long long>(sums.wrong));
    return sums.wrong == 0 ? 0 : 1;
}

}  // namespace
}  // namespace pantile

int main(int argc, char** argv) {
    const std::int64_t damages = argc > 1 ? std::atoll(argv[1]) : 10000000;
    const std::uint64_t seed = argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 1;
    return pantile::soak(damages, seed);
}
