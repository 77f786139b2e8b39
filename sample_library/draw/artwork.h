#pragma once

// Artwork: every file of the sample library that the program draws, as values; written to a folder
// or compared with one. Pictures are compared by cells, palette and pixels, as the bytes of a PNG
// hang on the packer that wrote it.

#include <filesystem>
#include <string>
#include <variant>
#include <vector>

#include "core/grid.h"
#include "core/palette.h"
#include "core/pixels.h"
#include "core/result.h"

namespace pantile::sample_art {

struct TextureFile {
    core::Grid grid;
    core::Palette palette;
};

struct ArtFile {
    std::string path;  ///< Inside the sample library, with '/'.
    std::variant<TextureFile, core::Pixels, std::string> content;
};

/// "Keeper's door" becomes "keepers-door".
std::string fileNameOf(std::string_view title);

/// All of it, computed anew; takes some seconds.
std::vector<ArtFile> drawArtwork();

/// Errors: Io with the path that could not be written.
core::Result<void> writeArtwork(const std::vector<ArtFile>& artwork,
                                const std::filesystem::path& folder);

/// One sentence for each file that is missing, differs, or stands among the drawn ones without
/// being drawn. Empty if the folder is current.
std::vector<std::string> differences(const std::vector<ArtFile>& artwork,
                                     const std::filesystem::path& folder);

}  // namespace pantile::sample_art
