#pragma once

// Palettes from files: one #RRGGBB a line, the palette of an indexed picture, or colours chosen
// from any picture.

#include <filesystem>

#include "core/palette.h"
#include "core/result.h"

namespace pantile::tasks {

/// Reads text with one #RRGGBB a line ("transparent" behind one marks the index to leave unpainted,
/// lines that begin with '#' and a blank are remarks), or takes the palette of an indexed picture.
/// Errors: NotFound, Io; InvalidInput naming the line, or for a picture that has no palette.
core::Result<core::Palette> readPaletteFile(const std::filesystem::path& path);

/// At most `colours` colours that stand for those of the picture.
/// Errors: as reading a picture; InvalidInput for a number outside 2..256.
core::Result<core::Palette> paletteFromPicture(const std::filesystem::path& path, int colours);

}  // namespace pantile::tasks
