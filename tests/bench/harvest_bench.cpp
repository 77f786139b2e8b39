// harvest_bench: how long reading 10 MB of text takes, for texts of friends and of foes. It prints
// and decides nothing.
//   harvest_bench [megabytes] [words of the name of the text]

#include <algorithm>
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <string>
#include <vector>

#include "codec/armour.h"
#include "codec/code_support.h"
#include "codec/slips.h"

namespace pantile {
namespace {

std::string_view wantedName;

std::string repeated(const std::string& unit, std::size_t bytes) {
    std::string text;
    while (text.size() < bytes) text += unit;
    return text;
}

std::string generated(std::size_t bytes, const std::function<std::string(std::uint64_t)>& unit) {
    std::string text;
    for (std::uint64_t i = 1; text.size() < bytes; ++i) text += unit(i);
    return text;
}

std::string randomLetters(std::size_t bytes, std::string_view letters) {
    tests::Random random(3);
    std::string text;
    while (text.size() < bytes) {
        text += letters[random.next() % letters.size()];
        if (text.size() % 77 == 76) text += '\n';
    }
    return text;
}

std::string prose(std::size_t bytes) {
    static const std::vector<std::string> kWords = {"Old",  "Ida",  "0I",    "kelp", "the",
                                                    "tide", "rope", "0I2ab", "10:01"};
    tests::Random random(4);
    std::string text;
    while (text.size() < bytes) {
        text += kWords[random.next() % kWords.size()];
        text += random.between(0, 9) == 0 ? '\n' : ' ';
    }
    return text;
}

core::Texture texture(std::uint64_t seed, int side) {
    tests::Random random(seed);
    return tests::randomTexture(random, {side, side}, 4);
}

std::string codeBySeed(std::uint64_t seed) {
    return tests::codeOf(texture(seed, 8)) + "\n\n";
}

std::string slippedCode(std::uint64_t seed, int slips) {
    tests::Random random(seed);
    std::string code = tests::codeOf(texture(seed, 8));
    for (int i = 0; i < slips; ++i) tests::slipAnywhere(random, code);
    return code + "\n\n";
}

std::string containerBytes(std::uint64_t seed, std::size_t bytes) {
    tests::Random random(seed);
    std::vector<std::uint8_t> container(bytes);
    for (auto& byte : container) byte = static_cast<std::uint8_t>(random.next());
    return *codec::armoured(container) + "\n";
}

/// A part of a code of thousands, of which no other arrives.
std::string lonelyPart(std::uint64_t seed) {
    tests::Random random(seed);
    std::vector<std::uint8_t> part = {0, 0xFF, 0x3F};
    for (int i = 0; i < 10; ++i) part.push_back(static_cast<std::uint8_t>(random.next()));
    return *codec::armoured(part, codec::ArmourForm::Part) + "\n";
}

void measure(std::string_view name, const std::function<std::string()>& make) {
    if (name.find(wantedName) == std::string_view::npos) return;
    const std::string text = make();
    constexpr int kTimes = 3;
    double best = 1e9;
    codec::Harvest harvest;
    for (int i = 0; i < kTimes; ++i) {
        harvest = {};
        const auto begin = std::chrono::steady_clock::now();
        harvest = codec::harvestCodes(text);
        const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - begin;
        best = std::min(best, taken.count());
    }
    std::printf("%-44s %7.3f s %8zu read %8zu damaged\n", name.data(), best, harvest.found.size(),
                harvest.damaged.size());
}

void measureAll(std::size_t bytes) {
    const std::string greedy =
        tests::linesOf(*codec::armoured(std::vector<std::uint8_t>(190000, 0x5A))).front();
    const std::string code = tests::codeOf(tests::usualTexture(8));
    const std::vector<std::string> lines = tests::linesOf(code);
    const std::string cut = lines[0] + "\n" + lines[1] + "\n";
    measure("prose", [&] { return prose(bytes); });
    measure("random letters", [&] {
        return randomLetters(bytes,
                             "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrs"
                             "tuvwxyz0123456789+/");
    });
    measure("random letters, many marks", [&] { return randomLetters(bytes, "0I2310Ikelp"); });
    measure("codes, each another texture", [&] { return generated(bytes, codeBySeed); });
    measure("one code again and again", [&] { return repeated(code + "\n", bytes); });
    measure("codes with one slip",
            [&] { return generated(bytes, [](auto seed) { return slippedCode(seed, 1); }); });
    measure("codes with two slips",
            [&] { return generated(bytes, [](auto seed) { return slippedCode(seed, 2); }); });
    measure("codes with six slips",
            [&] { return generated(bytes, [](auto seed) { return slippedCode(seed, 6); }); });
    measure("codes of random bytes",
            [&] { return generated(bytes, [](auto seed) { return containerBytes(seed, 14); }); });
    measure("parts without the others", [&] { return generated(bytes, lonelyPart); });
    measure("nothing but 0I2", [&] { return repeated("0I2", bytes); });
    measure("nothing but 0I", [&] { return repeated("0I", bytes); });
    measure("nothing but 0", [&] { return repeated("0", bytes); });
    measure("nothing but I2", [&] { return repeated("I2", bytes); });
    measure("nothing but 2", [&] { return repeated("2", bytes); });
    measure("nothing but line breaks", [&] { return repeated("\n", bytes); });
    measure("line marks with a letter", [&] { return repeated("0a", bytes); });
    measure("one line again and again", [&] { return repeated(lines[2] + "\n", bytes); });
    measure("first lines that promise much", [&] { return repeated(greedy + "\n", bytes); });
    measure("first lines, one line each behind",
            [&] { return repeated(greedy + "\n" + lines[2] + "\n", bytes); });
    measure("first lines without their marks",
            [&] { return repeated(greedy.substr(1) + "\n", bytes); });
    measure("one first line, one line again and again",
            [&] { return greedy + "\n" + repeated(lines[2] + "\n", bytes); });
    measure("codes cut behind two lines", [&] { return repeated(cut, bytes); });
    measure("codes without their end",
            [&] { return repeated(code.substr(0, code.size() - 40) + "\n", bytes); });
    measure("tags that never end", [&] { return repeated("<a", bytes); });
    measure("entities that never end", [&] { return repeated("&#", bytes); });
    measure("percent signs", [&] { return repeated("%0", bytes); });
}

}  // namespace
}  // namespace pantile

int main(int argc, char** argv) {
    const int megabytes = argc > 1 ? std::max(1, std::atoi(argv[1])) : 10;
    if (argc > 2) pantile::wantedName = argv[2];
    pantile::measureAll(static_cast<std::size_t>(megabytes) * 1000000);
    return 0;
}
