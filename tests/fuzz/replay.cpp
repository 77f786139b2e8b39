// Runs a fuzz target without a fuzzer: on each file of a folder, and on seeded random changes of
// each, so that the targets hold in every build; and prints how long the slowest took.
// usage: fuzz_targets TARGET FOLDER CHANGES

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <vector>

#include "fuzz/targets.h"
#include "support/random.h"

namespace {

using Input = std::vector<std::uint8_t>;

constexpr int kMostEdits = 4;

Input readInput(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

Input changed(Input input, pantile::tests::Random& random) {
    for (int edits = random.between(1, kMostEdits); edits > 0 && !input.empty(); --edits) {
        const auto at = random.between(0, static_cast<int>(input.size()) - 1);
        const auto byte = static_cast<std::uint8_t>(random.between(0, 255));
        switch (random.between(0, 3)) {
            case 0:
                input[static_cast<std::size_t>(at)] = byte;
                break;
            case 1:
                input.insert(input.begin() + at, byte);
                break;
            case 2:
                input.erase(input.begin() + at);
                break;
            default:
                input.resize(static_cast<std::size_t>(at));
        }
    }
    return input;
}

/// Milliseconds of the processor. For people to read: it decides nothing.
double tryInput(pantile::fuzz::Target target, const Input& input) {
    const std::clock_t start = std::clock();
    target(input);
    return 1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

int replay(pantile::fuzz::Target target, const std::filesystem::path& folder, int changes) {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        paths.push_back(entry.path());
    }
    std::sort(paths.begin(), paths.end());
    pantile::tests::Random random(1);
    double slowest = 0;
    for (const auto& path : paths) {
        const Input input = readInput(path);
        slowest = std::max(slowest, tryInput(target, input));
        for (int i = 0; i < changes; ++i) {
            slowest = std::max(slowest, tryInput(target, changed(input, random)));
        }
    }
    std::cout << paths.size() << " inputs, each as it is and with " << changes
              << " changes, the slowest " << slowest << " ms\n";
    return paths.empty() ? EXIT_FAILURE : EXIT_SUCCESS;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 4) {
        std::cerr << "usage: fuzz_targets TARGET FOLDER CHANGES\n";
        return 2;
    }
    return replay(pantile::fuzz::targetNamed(argv[1]), argv[2], std::atoi(argv[3]));
}
