#pragma once

// What stands in a library file, in which order, and in which columns of the library: one table
// that writer and reader share. Authority: docs/library-file.md.

#include <cstdint>
#include <span>
#include <string_view>

namespace pantile::catalogue {

/// The first member of the file; its value is the version.
inline constexpr std::string_view kLibraryFileMark = "pantile_library";
inline constexpr std::int64_t kLibraryFileVersion = 2;

/// The second: the highest id that a texture ever had.
inline constexpr std::string_view kLastTexture = "last_texture";

enum class ColumnKind {
    Id,      ///< 1 to kMaxJsonNumber.
    Number,  ///< -kMaxJsonNumber to kMaxJsonNumber.
    Time,    ///< Unix seconds from 1970 to the year 9999.
    Text,
    Colours,  ///< A palette's, as a list of "#rrggbb".
    Cells,    ///< A picture's, as a list of rows of indices.
};

struct FileColumn {
    std::string_view name;    ///< In the file.
    std::string_view column;  ///< In the table.
    ColumnKind kind = ColumnKind::Number;
    bool mayBeNull = false;
};

enum class SectionKind {
    Palettes,
    Pictures,
    Textures,
    Revisions,
    Estimates,
    Tags,
    TextureTags,
    Shelves,
    ShelfTextures,
    PaletteNames,
    Canvases,
    Boards,
    Loads,
    LoadSlots,
    LoadWritings,
    LoadCanvases,
    TagAliases,
    Searches,
};

/// A list of records. Records stand in the order of their key, and those that others point to
/// before them.
struct FileSection {
    SectionKind kind;
    std::string_view name;  ///< In the file.
    std::string_view table;
    std::string_view order;  ///< The columns of the key.
    std::span<const FileColumn> columns;
    std::int64_t since = 1;  ///< The first version of the format that has it.
};

/// In the order of the file.
std::span<const FileSection> libraryFileSections();

}  // namespace pantile::catalogue
