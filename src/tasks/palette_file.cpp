#include "tasks/palette_file.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/range_check.h"
#include "image_files/image_kind.h"
#include "image_files/read_image.h"
#include "tasks/bytes.h"
#include "tasks/files.h"
#include "tasks/text_lines.h"

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

constexpr std::size_t kMostLines = 10000;  // far more than 256 colours with remarks need

Error tooManyLines() {
    return {ErrorKind::TooLarge,
            "it has more than " + std::to_string(kMostLines) + " lines, the limit for a palette",
            "leave out empty lines and remarks"};
}

Result<core::Palette> parsePaletteText(std::string_view text) {
    std::vector<core::Rgb8> colours;
    std::optional<core::PaletteIndex> transparent;
    for (std::size_t number = 1; !text.empty(); ++number) {
        if (number > kMostLines) return tooManyLines();
        const std::string_view line = trimmed(takeLine(text));
        if (line.empty() || line == "#" || line.starts_with("# ")) continue;
        const std::size_t blank = line.find_first_of(" \t");
        const auto colour = core::parseHexColour(line.substr(0, blank));
        if (!colour) return colour.error().at("line " + std::to_string(number));
        if (blank != std::string_view::npos && trimmed(line.substr(blank)) == "transparent") {
            transparent = static_cast<core::PaletteIndex>(colours.size());
        }
        colours.push_back(*colour);
        if (colours.size() > core::kMaxPaletteColours) break;
    }
    return core::Palette::create(std::move(colours), transparent);
}

Result<core::Palette> paletteOf(const core::Picture& picture) {
    if (!picture.indexed) {
        return Error{ErrorKind::InvalidInput, "the picture has no palette of its own",
                     "'pantile palette from-picture' chooses colours from it"};
    }
    std::vector<core::Rgb8> colours;
    std::optional<core::PaletteIndex> transparent;
    for (const core::Rgba8& entry : picture.indexed->table) {
        if (entry.a == 0 && !transparent)
            transparent = static_cast<core::PaletteIndex>(colours.size());
        colours.push_back(entry.rgb());
    }
    return core::Palette::create(std::move(colours), transparent);
}

}  // namespace

Result<core::Palette> readPaletteFile(const std::filesystem::path& path) {
    PANTILE_ASSIGN_OR_RETURN(const std::string bytes,
                             readFile(path, image_files::kMaxImageFileBytes));
    const std::span<const std::uint8_t> raw = asBytes(bytes);
    const std::string name = path.filename().string();
    if (!image_files::imageKindOf(raw)) {
        auto palette = parsePaletteText(bytes);
        if (!palette) return palette.error().at(name);
        return palette;
    }
    PANTILE_ASSIGN_OR_RETURN(const core::Picture picture, image_files::readImageBytes(raw, name));
    auto palette = paletteOf(picture);
    if (!palette) return palette.error().at(name);
    return palette;
}

std::string paletteText(const core::Palette& palette) {
    std::string text;
    for (int i = 0; i < palette.size(); ++i) {
        const auto index = static_cast<core::PaletteIndex>(i);
        text += core::toHex(palette[index]);
        text += palette.transparent() == index ? " transparent\n" : "\n";
    }
    return text;
}

Result<void> writePaletteFile(const std::filesystem::path& path, const core::Palette& palette,
                              IfExists ifExists) {
    return writeFile(path, paletteText(palette), ifExists);
}

Result<core::Palette> paletteFromPicture(const std::filesystem::path& path,
                                         const picture::FreePaletteOptions& options) {
    PANTILE_RETURN_IF_ERROR(core::checkRange("the number of colours", options.most,
                                             core::kMinPaletteColours, core::kMaxPaletteColours));
    PANTILE_ASSIGN_OR_RETURN(const core::Picture picture, image_files::readImageFile(path));
    std::vector<core::Rgb8> seen;
    for (const core::Rgba8& pixel : picture.pixels.pixels) {
        if (pixel.a >= 128) seen.push_back(pixel.rgb());
    }
    if (seen.empty()) {
        return Error{ErrorKind::InvalidInput, path.filename().string() + " is wholly transparent",
                     "give a picture with colours in it"};
    }
    return picture::freePalette(seen, options);
}

Result<core::Palette> paletteFromFile(const std::filesystem::path& path,
                                      const picture::FreePaletteOptions& options) {
    PANTILE_ASSIGN_OR_RETURN(const std::string bytes,
                             readFile(path, image_files::kMaxImageFileBytes));
    const std::span<const std::uint8_t> raw = asBytes(bytes);
    if (!image_files::imageKindOf(raw)) return readPaletteFile(path);
    PANTILE_ASSIGN_OR_RETURN(const core::Picture picture,
                             image_files::readImageBytes(raw, path.filename().string()));
    return picture.indexed ? readPaletteFile(path) : paletteFromPicture(path, options);
}

}  // namespace pantile::tasks
