#pragma once

// Runs the programs that our results are compared with.

#include <array>
#include <cstdio>
#include <string>

namespace pantile::tests {

struct Outcome {
    std::string output;
    int status = -1;
};

inline Outcome run(const std::string& command) {
    FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) return {};
    Outcome result;
    std::array<char, 65536> block{};
    for (std::size_t count = 0; (count = fread(block.data(), 1, block.size(), pipe)) > 0;)
        result.output.append(block.data(), count);
    result.status = pclose(pipe);
    return result;
}

inline std::string inQuotes(const std::string& text) {
    return "'" + text + "'";  // the names here hold no quotes
}

/// A Python that has Pillow, or nothing; the one first on the path need not be Debian's.
inline std::string pythonWithPillow() {
    for (const char* python : {"/usr/bin/python3", "python3"}) {
        if (run(std::string(python) + " -c 'import PIL' 2>/dev/null").status == 0) return python;
    }
    return {};
}

inline std::string script(const std::string& name) {
    return inQuotes(std::string(PANTILE_SOURCE_DIR) + "/tests/outside/" + name);
}

}  // namespace pantile::tests
