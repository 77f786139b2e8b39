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

/// In their order: that in which they were made, unless they were placed otherwise.
core::Result<std::vector<Shelf>> listShelves(const Library& library);

/// In their order on it: that in which they were put there, unless they were placed otherwise;
/// removed ones left out. Errors: NotFound.
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

/// Moves the shelf to this place among the shelves, counted from 1; beyond the last one it becomes
/// the last. Errors: NotFound.
core::Result<void> placeShelf(Library& library, std::string_view name, std::int64_t place);

/// Moves the textures, in the order given, so that the first of them comes to this place on the
/// shelf, counted from 1 without them; those not on it are put there. Errors: as putOnShelf.
core::Result<void> placeOnShelf(Library& library, std::span<const core::TextureId> ids,
                                std::string_view name, std::int64_t place);

}  // namespace pantile::catalogue
