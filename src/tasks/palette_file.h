#pragma once

// Palettes from files: one #RRGGBB a line, the palette of an indexed picture, or colours chosen
// from any picture.

#include <filesystem>
#include <string>

#include "core/palette.h"
#include "core/result.h"
#include "picture/free_palette.h"
#include "tasks/files.h"

namespace pantile::tasks {

/// Reads text with one #RRGGBB a line ("transparent" behind one marks the index to leave unpainted,
/// lines that begin with '#' and a blank are remarks), or takes the palette of an indexed picture.
/// Errors: NotFound, Io; InvalidInput naming the line, or for a picture that has no palette.
core::Result<core::Palette> readPaletteFile(const std::filesystem::path& path);

/// The same, or of a picture without a palette of its own what paletteFromPicture gives.
core::Result<core::Palette> paletteFromFile(const std::filesystem::path& path,
                                            const picture::FreePaletteOptions& options);

/// What readPaletteFile reads again as the same palette.
std::string paletteText(const core::Palette& palette);

/// Writes paletteText. Errors: as writeFile.
core::Result<void> writePaletteFile(const std::filesystem::path& path, const core::Palette& palette,
                                    IfExists ifExists);

/// At most `options.most` colours that stand for those of the picture that are seen.
/// Errors: as reading a picture and picture::freePalette; InvalidInput for a number outside 2..256
/// or a picture of which nothing is seen.
core::Result<core::Palette> paletteFromPicture(const std::filesystem::path& path,
                                               const picture::FreePaletteOptions& options);

}  // namespace pantile::tasks
