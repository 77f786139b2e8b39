#pragma once

// Contents and palettes as the library stores them: once for equal content. The fingerprint finds
// what may be equal; the cells and colours themselves decide, for a fingerprint can be forged.

#include <cstdint>
#include <optional>

#include "catalogue/connection.h"
#include "core/grid.h"
#include "core/palette.h"
#include "core/result.h"
#include "core/texture.h"

namespace pantile::catalogue {

/// The 64 bits as SQLite stores them.
std::int64_t storedFingerprint(core::Fingerprint fingerprint);

core::Result<std::optional<std::int64_t>> findPaletteId(Connection& connection,
                                                        const core::Palette& palette);
core::Result<std::int64_t> storePalette(Connection& connection, const core::Palette& palette);

/// For one that findPaletteId does not find; with an id of the caller's choice, or the next.
core::Result<std::int64_t> insertPalette(Connection& connection, const core::Palette& palette,
                                         std::optional<std::int64_t> id = std::nullopt);

/// Errors: Corrupt if it is missing, malformed or not what its fingerprint says.
core::Result<core::Palette> loadPalette(Connection& connection, std::int64_t paletteId);

core::Result<std::optional<std::int64_t>> findContentId(Connection& connection,
                                                        const core::Grid& grid,
                                                        const core::Palette& palette);
core::Result<std::int64_t> storeContent(Connection& connection, const core::Grid& grid,
                                        const core::Palette& palette);

/// For one that findContentId does not find; `paletteId` is that of the texture's palette.
core::Result<std::int64_t> insertContent(Connection& connection, const core::Texture& texture,
                                         std::int64_t paletteId,
                                         std::optional<std::int64_t> id = std::nullopt);

struct Content {
    core::Grid grid;
    core::Palette palette;
};

/// Errors: Corrupt if it is missing, malformed or not what its fingerprint says.
core::Result<Content> loadContent(Connection& connection, std::int64_t contentId);

/// Works out anew what contents.used and contents.tone hold; where the grid is damaged, nothing.
core::Result<void> describeContent(Connection& connection, std::int64_t contentId);

/// Deletes palettes without name or use.
core::Result<void> dropUnusedPalettes(Connection& connection);

/// Deletes contents that no texture and no revision holds, and then palettes.
core::Result<void> dropUnusedContents(Connection& connection);

}  // namespace pantile::catalogue
