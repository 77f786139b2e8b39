#pragma once

// Look-alikes: textures of the library that came from one another, or nearly so. See
// docs/look-alikes.md.

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "catalogue/library.h"
#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"
#include "core/texture.h"

namespace pantile::tasks {

struct LookAlike {
    core::TextureId id;
    std::string title;
    int distance = 0;  ///< 0..100: what `how` leaves unexplained.
    std::string how;   ///< How it comes from the one that it is like.
};

/// Keeps the look of the texture, which is that of the id. Errors: as catalogue::storeLook.
core::Result<void> noteLook(catalogue::Library& library, core::TextureId id,
                            const core::Texture& texture);

/// Works out the looks of textures that have none. On a library that cannot be changed it does
/// nothing, and those textures are not found. Errors: those of the library; Cancelled, and what was
/// worked out stays.
core::Result<void> workOutLooks(catalogue::Library& library, const core::Progress& progress = {});

/// The textures that look like `id`, the likest first, then by id.
/// Shape: `within` is 0..100; at 0 only those of which `how` explains all.
/// Errors: NotFound; InvalidInput; as workOutLooks.
core::Result<std::vector<LookAlike>> similarTo(catalogue::Library& library, core::TextureId id,
                                               int within, const core::Progress& progress = {});

/// For each of `ids` the likest of the textures with a lower id, with how the one of `ids` comes
/// from it. Those of which no look is kept are passed over. Errors: as similarTo.
core::Result<std::vector<std::optional<LookAlike>>> cameFrom(const catalogue::Library& library,
                                                             std::span<const core::TextureId> ids,
                                                             int within,
                                                             const core::Progress& progress = {});

/// Groups of textures that look like the first of their group, which has distance 0 and no `how`.
/// Ascending by the first ids; each texture is in one group at most. Errors: as similarTo.
core::Result<std::vector<std::vector<LookAlike>>> findDuplicates(
    catalogue::Library& library, int within, const core::Progress& progress = {});

}  // namespace pantile::tasks
