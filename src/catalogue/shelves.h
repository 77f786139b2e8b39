#pragma once

// Shelves: named, ordered groups of textures, in an order of their own.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/library.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::catalogue {

struct Shelf {
    std::string name;
    std::int64_t count = 0;  ///< Of the textures on it that are not removed.
};

/// In the order in which they were made.
core::Result<std::vector<Shelf>> listShelves(const Library& library);

/// In the order in which they were put there, removed ones left out. Errors: NotFound.
core::Result<std::vector<core::TextureId>> texturesOnShelf(const Library& library,
                                                           std::string_view name);

/// Errors: AlreadyExists; as core::checkName.
core::Result<void> createShelf(Library& library, std::string_view name);

/// The textures on it stay in the library. Errors: NotFound.
core::Result<void> deleteShelf(Library& library, std::string_view name);

/// Errors: NotFound; AlreadyExists; as core::checkName.
core::Result<void> renameShelf(Library& library, std::string_view name, std::string_view newName);

/// Puts the textures behind those on the shelf, which is made if there is none of that name. Gives
/// how many were not on it before. Errors: NotFound naming the id; as core::checkName.
core::Result<std::int64_t> putOnShelf(Library& library, std::span<const core::TextureId> ids,
                                      std::string_view name);

/// Gives how many were on it. Errors: NotFound for the shelf or an id.
core::Result<std::int64_t> takeFromShelf(Library& library, std::span<const core::TextureId> ids,
                                         std::string_view name);

}  // namespace pantile::catalogue
