#pragma once

// What shelves, palettes, canvases, boards and loads have in common: a name that is unique in its
// table, letter case of ASCII aside.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/connection.h"
#include "core/result.h"

namespace pantile::catalogue {

/// A table with a column "name", and the word for what it holds.
struct NamedTable {
    std::string_view table;
    std::string_view what;  ///< "canvas"
    std::string_view idColumn = "id";
};

inline constexpr NamedTable kShelves{"shelves", "shelf"};
inline constexpr NamedTable kSearches{"searches", "saved search"};
inline constexpr NamedTable kTags{"tags", "tag"};
inline constexpr NamedTable kPaletteNames{"palette_names", "palette", "palette_id"};
inline constexpr NamedTable kCanvases{"canvases", "canvas"};
inline constexpr NamedTable kBoards{"boards", "board"};
inline constexpr NamedTable kLoads{"loads", "load"};

/// Errors: NotFound with the name; the hint has the nearest name that there is.
core::Result<std::int64_t> idOfName(Connection& connection, const NamedTable& table,
                                    std::string_view name);

/// Errors: InvalidInput or TooLarge as core::checkName; AlreadyExists if the name is taken.
core::Result<void> checkNewName(Connection& connection, const NamedTable& table,
                                std::string_view name);

/// Its own name in other letters is free. Errors: NotFound; as checkNewName.
core::Result<void> renameIn(Connection& connection, const NamedTable& table, std::string_view name,
                            std::string_view newName);

/// Sorted, letter case aside.
core::Result<std::vector<std::string>> allNames(Connection& connection, const NamedTable& table);

}  // namespace pantile::catalogue
