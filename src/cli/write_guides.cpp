// write_guides: the manual page and the completions for shells, from the words of the help.
//   write_guides FOLDER

#include <filesystem>
#include <fstream>
#include <iostream>

#include "cli/completions.h"
#include "cli/manual_page.h"

namespace {

template <typename Write>
bool written(const std::filesystem::path& path, Write write) {
    std::ofstream file(path, std::ios::binary);
    write(file);
    if (file.flush()) return true;
    std::cerr << path.string() << " cannot be written\n";
    return false;
}

}  // namespace

int main(int count, char** words) {
    using namespace pantile::cli;
    if (count != 2) {
        std::cerr << "write_guides FOLDER\n";
        return 2;
    }
    const std::filesystem::path folder = words[1];
    const auto manual = [](std::ostream& out) { writeManualPage(out, PANTILE_VERSION); };
    const bool done = written(folder / "pantile.1", manual) &&
                      written(folder / "pantile.bash", writeBashCompletion) &&
                      written(folder / "_pantile", writeZshCompletion) &&
                      written(folder / "pantile.fish", writeFishCompletion);
    return done ? 0 : 1;
}
