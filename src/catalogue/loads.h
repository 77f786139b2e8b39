#pragma once

// The loads of a library: an ordered choice of textures for one board, and when and where files
// were written from it.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/library.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::catalogue {

inline constexpr std::size_t kMaxPlaceCharacters = 1000;

struct LoadWriting {
    std::int64_t at = 0;
    std::string place;  ///< The folder or device.
    std::string board;  ///< As it was called then.

    bool operator==(const LoadWriting&) const = default;
};

struct StoredLoad {
    std::string name;
    std::string board;
    std::vector<core::TextureId> slots;  ///< From the first slot on; removed textures too.
    std::int64_t madeAt = 0;
    std::vector<LoadWriting> writings;  ///< Oldest first.
    /// Of all of it, or empty for the smallest that takes each texture.
    std::string canvas = {};

    bool operator==(const StoredLoad&) const = default;
};

/// Sorted by name.
core::Result<std::vector<StoredLoad>> listLoads(const Library& library);

/// Errors: NotFound with the nearest name.
core::Result<StoredLoad> readLoad(const Library& library, std::string_view name);

/// Stores name, board, canvas and slots, none too; the time is set, writings are not taken.
/// Errors: AlreadyExists; as core::checkName; NotFound for board, canvas or texture; InvalidInput
/// for one that is in it twice; DoesNotFit if there are more slots than the board has.
core::Result<void> addLoad(Library& library, const StoredLoad& load);

/// What lies in the slots from now on. Errors: NotFound for the load or a texture; as addLoad.
core::Result<void> setLoadSlots(Library& library, std::string_view name,
                                const std::vector<core::TextureId>& slots);

/// For which board it is from now on. Errors: NotFound; DoesNotFit if that has fewer slots than the
/// load takes.
core::Result<void> setLoadBoard(Library& library, std::string_view name, std::string_view board);

/// Errors: NotFound; AlreadyExists; as core::checkName.
core::Result<void> renameLoad(Library& library, std::string_view name, std::string_view newName);

/// Errors: NotFound.
core::Result<void> removeLoad(Library& library, std::string_view name);

/// Notes that files of the load were written to `place` now.
/// Errors: NotFound; InvalidInput or TooLarge if the place is not one line of at most 1000
/// characters.
core::Result<void> noteLoadWritten(Library& library, std::string_view name, std::string_view place);

}  // namespace pantile::catalogue
