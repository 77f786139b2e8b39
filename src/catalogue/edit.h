#pragma once

// Edits of textures already in the library. Each is one transaction for the whole list, and one
// revision for each texture that it changes. An id that is not there fails the whole, and nothing
// is changed; one that stands twice counts once. The number given back is that of the textures that
// became different. Errors of all: NotFound naming the id, Busy, Io, Corrupt.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "catalogue/library.h"
#include "core/grid.h"
#include "core/ids.h"
#include "core/palette.h"
#include "core/result.h"

namespace pantile::catalogue {

/// The fields that are set replace the texture's.
struct TextPatch {
    std::optional<std::string> title;
    std::optional<std::string> author;
    std::optional<std::string> licence;
    std::optional<std::string> source;
    std::optional<std::string> note;
    std::optional<int> stars = {};  ///< 1 to 5, or 0 for none.
};

/// Blanks at the ends of a field other than the note are taken off.
/// Errors: also as core::checkTextureText; InvalidInput for other numbers of stars.
core::Result<std::int64_t> setText(Library& library, std::span<const core::TextureId> ids,
                                   const TextPatch& patch);

/// Takes `drop` off, then puts `add` on; words that stand for another tag mean that one, and so do
/// those that are one in other letters. Errors: also as core::checkTextureText and, for `add`,
/// checkNewTag.
core::Result<std::int64_t> changeTags(Library& library, std::span<const core::TextureId> ids,
                                      std::span<const std::string> add,
                                      std::span<const std::string> drop);

/// Gives the texture another picture. Its estimate is forgotten.
/// Errors: also InvalidInput if a cell is outside the palette; AlreadyExists, naming it, if another
/// texture has that picture.
core::Result<std::int64_t> setContent(Library& library, core::TextureId id, const core::Grid& grid,
                                      const core::Palette& palette);

/// Removed textures are out of sight and recoverable until they are purged.
core::Result<std::int64_t> removeTextures(Library& library, std::span<const core::TextureId> ids);
core::Result<std::int64_t> recoverTextures(Library& library, std::span<const core::TextureId> ids);

/// Deletes removed textures with all that the library knows of them: the one way to lose something.
/// Errors: also InvalidInput, naming it, if one is not removed or stands in a load.
core::Result<std::int64_t> purgeRemoved(Library& library, std::span<const core::TextureId> ids);

}  // namespace pantile::catalogue
