// A palette file from anywhere, text or picture: refused, or a palette that the same lines give
// again.

#include <filesystem>
#include <fstream>
#include <string>

#include "fuzz/empty_library.h"
#include "fuzz/targets.h"
#include "tasks/palette_file.h"

namespace pantile::fuzz {
namespace {

std::filesystem::path fileOf(std::string_view bytes) {
    static const ScratchFolder folder;
    std::filesystem::path path = folder.path() / "palette.txt";
    std::ofstream(path, std::ios::binary) << bytes;
    return path;
}

}  // namespace

void tryPalette(Bytes input) {
    const std::string_view bytes = asText(input);
    const auto palette = tasks::readPaletteFile(fileOf(bytes));
    if (!palette) {
        require(!palette.error().message.empty() && !palette.error().hint.empty(),
                "an error says what is wrong and what to do");
        return;
    }
    std::string lines;
    for (int i = 0; i < palette->size(); ++i) {
        const auto index = static_cast<core::PaletteIndex>(i);
        lines += core::toHex(palette->colours()[index]);
        lines += palette->transparent() == index ? " transparent\n" : "\n";
    }
    const auto again = tasks::readPaletteFile(fileOf(lines));
    require(again.has_value() && *again == *palette, "its lines give the same palette");
}

}  // namespace pantile::fuzz
