#pragma once

// Choose by hand: what is put in a load, taken out and carried from one to another. Each is one
// action that can be undone.

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/library.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::tasks {

/// New loads for a board and, if it is named, a canvas, one for each list of textures, which may be
/// empty, as one action. Each has the first name that is free of "Load 1", "Load 2" and so on.
/// Returns the names. Errors: as catalogue::addLoad.
core::Result<std::vector<std::string>> newLoads(
    catalogue::Library& library, const std::string& board,
    const std::vector<std::vector<core::TextureId>>& loads, const std::string& canvas = {});

/// Puts textures in one after the other, the first in slot `place` (from 0) or after the last one;
/// those that are in it already go there too. Returns how many were not in it before.
/// Errors: NotFound; DoesNotFit if there are more than slots.
core::Result<std::int64_t> putInLoad(catalogue::Library& library, std::string_view load,
                                     const std::vector<core::TextureId>& ids, std::size_t place);

/// Returns how many were in it. Errors: NotFound for the load.
core::Result<std::int64_t> takeFromLoad(catalogue::Library& library, std::string_view load,
                                        const std::vector<core::TextureId>& ids);

/// Takes them from one load and puts them in another, as putInLoad.
core::Result<std::int64_t> carryToLoad(catalogue::Library& library, std::string_view from,
                                       const std::vector<core::TextureId>& ids, std::string_view to,
                                       std::size_t place);

/// Lets just these lie in it, in that order. Errors: as catalogue::setLoadSlots.
core::Result<void> fillLoad(catalogue::Library& library, std::string_view load,
                            const std::vector<core::TextureId>& ids);

}  // namespace pantile::tasks
