// slip_soak: every one slip at every place of random codes must be put right, and of pairs of slips
// in different lines at least 99 in a hundred. tests/codec/repair_test.cpp does the same in small.
//   slip_soak [codes, 20 if not given] [seed]

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include "codec/code_support.h"
#include "codec/slips.h"

namespace pantile {
namespace {

struct Sums {
    std::int64_t tried = 0;
    std::int64_t healed = 0;

    void tryOne(const std::string& text, const core::Texture& texture) {
        const codec::Harvest harvest = codec::harvestCodes(text);
        const bool right = harvest.found.size() == 1 && harvest.found.front().texture == texture;
        ++tried;
        if (right) ++healed;
        constexpr int kMostShown = 10;
        if (!right && tried - healed <= kMostShown)
            std::printf("not put right:\n%s\n", text.c_str());
    }
};

/// With every third texture without words, so that codes of one line are among them.
core::Texture textureFor(tests::Random& random, int number) {
    const core::Texture texture = tests::randomTexture(random);
    if (number % 3 > 0) return texture;
    return *tests::randomTexture(random, {1, 1}, 2).withText({});
}

void tryEverySlip(const core::Texture& texture, Sums& sums) {
    using tests::Slip;
    const std::string code = tests::codeOf(texture);
    for (std::size_t at = 0; at < code.size(); ++at) {
        for (const char letter : tests::typedLetters()) {
            std::string text = code;
            tests::slipAt(text, at, Slip::Wrong, letter);
            sums.tryOne(text, texture);
        }
        for (const Slip slip : {Slip::Missing, Slip::Doubled, Slip::Swapped}) {
            std::string text = code;
            tests::slipAt(text, at, slip, ' ');
            sums.tryOne(text, texture);
        }
    }
}

void tryPairs(tests::Random& random, const core::Texture& texture, Sums& sums) {
    const std::vector<std::string> lines = tests::linesOf(tests::codeOf(texture));
    constexpr int kPairs = 1000;
    for (int i = 0; i < kPairs && lines.size() > 1; ++i) {
        const std::size_t one = random.next() % lines.size();
        const std::size_t two = (one + 1 + random.next() % (lines.size() - 1)) % lines.size();
        std::vector<std::string> damaged = lines;
        tests::slipAnywhere(random, damaged[one]);
        tests::slipAnywhere(random, damaged[two]);
        sums.tryOne(tests::joined(damaged, "\n"), texture);
    }
}

int soak(int codes, std::uint64_t seed) {
    tests::Random random(seed);
    Sums single;
    Sums pairs;
    for (int number = 0; number < codes; ++number) {
        const core::Texture texture = textureFor(random, number);
        tryEverySlip(texture, single);
        tryPairs(random, texture, pairs);
    }
    std::printf("single slips: %lld of %lld put right; pairs in different lines: %lld of %lld\n",
                static_cast<long long>(single.healed), static_cast<long long>(single.tried),
                static_cast<long long>(pairs.healed), static_cast<long long>(pairs.tried));
    const bool good = single.healed == single.tried && pairs.healed * 100 >= pairs.tried * 99;
    return good ? 0 : 1;
}

}  // namespace
}  // namespace pantile

int main(int argc, char** argv) {
    const int codes = argc > 1 ? std::atoi(argv[1]) : 20;
    const std::uint64_t seed = argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 1;
    return pantile::soak(codes, seed);
}
