#include "draw/artwork.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>

#include "draw/ink.h"
#include "draw/pictures.h"
#include "draw/sample.h"
#include "image_files/read_image.h"
#include "image_files/write_png.h"

namespace pantile::sample_art {

namespace {

namespace fs = std::filesystem;

std::string_view tilesWord(Tiles tiles) {
    switch (tiles) {
        case Tiles::Both:
            return "both";
        case Tiles::Across:
            return "across";
        case Tiles::No:
            return "no";
    }
    return "no";
}

std::string paletteText() {
    std::string text;
    const core::Palette palette = tidewrackPalette();
    for (const core::Rgb8 colour : palette.colours()) text += core::toHex(colour) + "\n";
    return text;
}

bool hasClearCell(const core::Grid& grid) {
    return grid.largestIndex() >= kInkCount;
}

core::Result<std::vector<std::uint8_t>> fileBytes(const ArtFile& file) {
    if (const auto* texture = std::get_if<TextureFile>(&file.content))
        return image_files::encodePng(texture->grid, texture->palette);
    if (const auto* picture = std::get_if<core::Pixels>(&file.content))
        return image_files::encodePng(*picture);
    const auto& text = std::get<std::string>(file.content);
    return std::vector<std::uint8_t>(text.begin(), text.end());
}

core::Result<void> writeFile(const fs::path& path, const std::vector<std::uint8_t>& bytes) {
    std::error_code failure;
    fs::create_directories(path.parent_path(), failure);
    std::ofstream out(path, std::ios::binary | std::ios::trunc);
    std::copy(bytes.begin(), bytes.end(), std::ostreambuf_iterator<char>(out));
    out.close();
    if (!out)
        return core::Error{core::ErrorKind::Io, path.string() + " could not be written.",
                           "Check that the folder is there and may be written to."};
    return {};
}

bool hasText(const fs::path& path, const std::string& text) {
    std::ifstream in(path, std::ios::binary);
    const std::string found{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
    return in && found == text;
}

bool isSameTexture(const core::Picture& found, const TextureFile& drawn) {
    if (!found.indexed || found.pixels.size != drawn.grid.size()) return false;
    const auto colours = drawn.palette.colours();
    if (found.indexed->table.size() != colours.size()) return false;
    for (std::size_t i = 0; i < colours.size(); ++i) {
        const bool clear = drawn.palette.transparent() == static_cast<core::PaletteIndex>(i);
        const core::Rgba8 entry = found.indexed->table[i];
        if (entry.rgb() != colours[i] || entry.a != (clear ? 0 : 255)) return false;
    }
    return std::ranges::equal(found.indexed->indices, drawn.grid.cells());
}

bool isSame(const fs::path& path, const ArtFile& drawn) {
    if (const auto* text = std::get_if<std::string>(&drawn.content)) return hasText(path, *text);
    const auto found = image_files::readImageFile(path);
    if (!found) return false;
    if (const auto* texture = std::get_if<TextureFile>(&drawn.content))
        return isSameTexture(*found, *texture);
    const auto& picture = std::get<core::Pixels>(drawn.content);
    return found->pixels.size == picture.size && found->pixels.pixels == picture.pixels;
}

/// Files below the drawn folders that nothing here draws.
std::vector<std::string> strays(const std::set<std::string>& drawn, const fs::path& folder) {
    std::vector<std::string> found;
    for (const std::string_view part : {"textures", "pictures", "palettes"}) {
        std::error_code failure;
        for (fs::recursive_directory_iterator it(folder / part, failure), end; it != end;
             it.increment(failure)) {
            if (!it->is_regular_file(failure)) continue;
            const std::string path = it->path().lexically_relative(folder).generic_string();
            if (!drawn.contains(path)) found.push_back(path);
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

}  // namespace

std::string fileNameOf(std::string_view title) {
    std::string name;
    for (const char letter : title) {
        if (letter >= 'A' && letter <= 'Z') {
            name += static_cast<char>(letter - 'A' + 'a');
        } else if (letter == ' ') {
            name += '-';
        } else if (letter != '\'') {
            name += letter;
        }
    }
    return name;
}

std::vector<ArtFile> drawArtwork() {
    std::vector<ArtFile> files;
    std::string contents = "file,title,tags,tiles\n";
    for (const Sample& sample : allSamples()) {
        const core::Grid grid = sample.sheet.toGrid();
        const std::string name =
            std::to_string(sample.sheet.side()) + "/" + fileNameOf(sample.title) + ".png";
        contents += name + "," + sample.title + "," + sample.tags + "," +
                    std::string(tilesWord(sample.sheet.tiles())) + "\n";
        const core::Palette palette =
            hasClearCell(grid) ? tidewrackSpritePalette() : tidewrackPalette();
        files.push_back({"textures/" + name, TextureFile{grid, palette}});
    }
    files.push_back({"textures/contents.csv", contents});
    files.push_back({"palettes/tidewrack-16.txt", paletteText()});
    files.push_back({"pictures/lighthouse-at-dusk.png", lighthouseAtDusk()});
    files.push_back({"pictures/rock-pool.png", rockPool()});
    files.push_back({"pictures/storm-wave.png", stormWave()});
    files.push_back({"pictures/harbour-wall.png", harbourWall()});
    return files;
}

core::Result<void> writeArtwork(const std::vector<ArtFile>& artwork, const fs::path& folder) {
    for (const ArtFile& file : artwork) {
        PANTILE_ASSIGN_OR_RETURN(const auto bytes, fileBytes(file));
        PANTILE_RETURN_IF_ERROR(writeFile(folder / file.path, bytes));
    }
    return {};
}

std::vector<std::string> differences(const std::vector<ArtFile>& artwork, const fs::path& folder) {
    std::vector<std::string> found;
    std::set<std::string> drawn;
    for (const ArtFile& file : artwork) {
        drawn.insert(file.path);
        std::error_code failure;
        if (!fs::exists(folder / file.path, failure)) {
            found.push_back(file.path + " is missing.");
        } else if (!isSame(folder / file.path, file)) {
            found.push_back(file.path + " is not what the program draws.");
        }
    }
    for (const std::string& path : strays(drawn, folder))
        found.push_back(path + " is not drawn by the program.");
    return found;
}

}  // namespace pantile::sample_art
