#pragma once

// Keep: which load was written when, for which board, and what lies in its slots.

#include <cstdint>
#include <string>
#include <vector>

#include "catalogue/library.h"
#include "catalogue/loads.h"
#include "core/ids.h"
#include "core/result.h"
#include "tasks/split_over_loads.h"

namespace pantile::tasks {

struct LoadedTexture {
    core::TextureId id;
    std::string title;          ///< As it is called now.
    bool changedSince = false;  ///< What is on the board is not what the library shows.
    bool removed = false;       ///< It is in the load still; purge spares it.
};

struct WrittenOnce {
    std::string load;
    catalogue::LoadWriting writing;
    std::vector<LoadedTexture> slots;  ///< From the first slot on.
};

/// Newest first. With a board only what was written for a board of this name: its first entry is
/// what lies on it, if the files of the last writing were put there.
/// Errors: NotFound if nothing was written for that board and there is none of the name.
core::Result<std::vector<WrittenOnce>> loadHistory(const catalogue::Library& library,
                                                   const std::string& board);

/// The textures in the slots of a load, as they are called now.
core::Result<std::vector<LoadedTexture>> texturesOf(const catalogue::Library& library,
                                                    const catalogue::StoredLoad& load);

/// Keeps the loads of a split, made for `canvas` or, if that is empty, for any: one under `name`,
/// several under `name` with numbers from 1. All or none. Gives their names.
/// Errors: as catalogue::addLoad; InvalidInput if there is no load.
core::Result<std::vector<std::string>> keepSplit(catalogue::Library& library,
                                                 const std::string& name, const Split& split,
                                                 const std::string& canvas);

}  // namespace pantile::tasks
