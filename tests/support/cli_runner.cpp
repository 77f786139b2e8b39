#include "support/cli_runner.h"

#include <fstream>
#include <iterator>

#include "support/random.h"

namespace pantile::tests {

void CliRunner::writeText(const std::string& name, const std::string& text) const {
    std::ofstream(path(name), std::ios::binary) << text;
}

std::string CliRunner::readText(const std::string& pathOfFile) const {
    std::ifstream file(pathOfFile, std::ios::binary);
    EXPECT_TRUE(file) << pathOfFile;
    return {std::istreambuf_iterator<char>(file), {}};
}

std::string CliRunner::writeGrid(const std::string& name, int seed, int side) const {
    Random random(static_cast<std::uint64_t>(seed));
    std::string text = "# palette #1b2631 #f2efe4 #b5532d #4f6f52\n";
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            text += (x > 0 ? "," : "") + std::to_string(random.between(0, 3));
        }
        text += '\n';
    }
    writeText(name, text);
    return path(name);
}

}  // namespace pantile::tests
