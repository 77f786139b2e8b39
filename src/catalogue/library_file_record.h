#pragma once

// One record of a library file, as it is read: its members are those of its section, in any order,
// each of its kind.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/json_reader.h"
#include "catalogue/library_file_format.h"
#include "core/colour.h"
#include "core/grid.h"
#include "core/result.h"

namespace pantile::catalogue {

class FileRecord {
public:
    /// Errors: as JsonReader; for members that are missing, unknown or stand twice; for values of
    /// another kind or out of its range.
    static core::Result<FileRecord> read(JsonReader& json, const FileSection& section);

    const FileSection& section() const { return *m_section; }

    /// The line on which it begins.
    std::int64_t line() const { return m_line; }

    const JsonValue& value(std::size_t column) const { return m_values[column]; }

    /// By the name of a member that there is; 0, empty or nothing for null.
    std::int64_t number(std::string_view name) const;
    std::string text(std::string_view name) const;
    std::optional<std::int64_t> numberOrNull(std::string_view name) const;
    std::optional<std::string> textOrNull(std::string_view name) const;

    const std::vector<core::Rgb8>& colours() const { return m_colours; }

    const core::Grid& grid() const { return *m_grid; }

private:
    explicit FileRecord(const FileSection& section)
        : m_section(&section), m_values(section.columns.size()), m_isRead(section.columns.size()) {}

    core::Result<void> readMember(JsonReader& json, const std::string& name);
    core::Result<void> readColours(JsonReader& json);
    core::Result<void> readCells(JsonReader& json);
    const JsonValue& named(std::string_view name) const;

    const FileSection* m_section;
    std::int64_t m_line = 0;
    std::vector<JsonValue> m_values;
    std::vector<bool> m_isRead;
    std::vector<core::Rgb8> m_colours;
    std::optional<core::Grid> m_grid;
};

}  // namespace pantile::catalogue
