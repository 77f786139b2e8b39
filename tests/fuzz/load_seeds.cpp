#include "fuzz/load_seeds.h"

#include <cstdlib>
#include <fstream>
#include <iostream>
#include <string>

#include "board/load_writer.h"
#include "board/random_load.h"

namespace pantile::fuzz {

void writeLoadSeeds(const std::filesystem::path& into) {
    constexpr std::uint64_t kSeeds = 20;
    std::filesystem::create_directories(into / "load");
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        const auto bytes = board::writeLoad(tests::randomLoad(seed, 3), tests::roomyBoard());
        if (!bytes) {
            std::cerr << bytes.error().message << '\n';
            std::exit(EXIT_FAILURE);
        }
        std::ofstream file(into / "load" / std::to_string(seed), std::ios::binary);
        for (const std::uint8_t byte : *bytes) file.put(static_cast<char>(byte));
    }
}

}  // namespace pantile::fuzz
