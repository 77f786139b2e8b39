// draw_samples: draws the sample library's art, or checks that the committed art is what it draws.

#include <iostream>
#include <string_view>

#include "draw/artwork.h"

namespace {

constexpr int kFailed = 1;
constexpr int kWrongUsage = 2;

int write(const std::filesystem::path& folder) {
    const auto artwork = pantile::sample_art::drawArtwork();
    const auto written = pantile::sample_art::writeArtwork(artwork, folder);
    if (!written) {
        std::cerr << written.error().message << ' ' << written.error().hint << '\n';
        return kFailed;
    }
    std::cout << "Wrote " << artwork.size() << " files into " << folder.string() << ".\n";
    return 0;
}

int check(const std::filesystem::path& folder) {
    const auto artwork = pantile::sample_art::drawArtwork();
    const auto found = pantile::sample_art::differences(artwork, folder);
    for (const std::string& sentence : found) std::cerr << sentence << '\n';
    if (!found.empty()) return kFailed;
    std::cout << "All " << artwork.size() << " files are what the program draws.\n";
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    const std::string_view verb = argc == 3 ? argv[1] : "";
    if (verb == "--into") return write(argv[2]);
    if (verb == "--check") return check(argv[2]);
    std::cerr << "Usage: draw_samples --into FOLDER | --check FOLDER\n";
    return kWrongUsage;
}
