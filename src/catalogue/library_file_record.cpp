#include "catalogue/library_file_record.h"

#include <cassert>

#include "core/palette.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::Result;

constexpr std::int64_t kLastSecondOfYear9999 = 253402300799;

std::string inQuotes(std::string_view name) {
    return "'" + core::excerpt(name) + "'";
}

std::size_t columnOf(const FileSection& section, std::string_view name) {
    std::size_t i = 0;
    while (i < section.columns.size() && section.columns[i].name != name) ++i;
    return i;
}

std::string kindInWords(const FileColumn& column) {
    const std::string orNothing = column.mayBeNull ? " or null" : "";
    switch (column.kind) {
        case ColumnKind::Id:
            return "a whole number from 1 on" + orNothing;
        case ColumnKind::Time:
            return "a time in seconds since 1970" + orNothing;
        case ColumnKind::Text:
            return "a text" + orNothing;
        default:
            return "a whole number" + orNothing;
    }
}

bool isOfKind(const FileColumn& column, const JsonValue& value) {
    if (std::holds_alternative<std::monostate>(value)) return column.mayBeNull;
    const auto* const number = std::get_if<std::int64_t>(&value);
    switch (column.kind) {
        case ColumnKind::Id:
            return number != nullptr && *number >= 1;
        case ColumnKind::Time:
            return number != nullptr && *number >= 0 && *number <= kLastSecondOfYear9999;
        case ColumnKind::Text:
            return number == nullptr;
        default:
            return number != nullptr;
    }
}

}  // namespace

Result<void> FileRecord::readColours(JsonReader& json) {
    PANTILE_RETURN_IF_ERROR(json.openList());
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, json.nextElement());
        if (!more) return {};
        PANTILE_ASSIGN_OR_RETURN(const std::string text, json.text());
        const auto colour = core::parseHexColour(text);
        if (!colour) return json.errorHere(colour.error().message, colour.error().hint);
        if (m_colours.size() == core::kMaxPaletteColours) {
            return json.errorHere("a palette has more than " +
                                  std::to_string(core::kMaxPaletteColours) + " colours");
        }
        m_colours.push_back(*colour);
    }
}

Result<void> FileRecord::readCells(JsonReader& json) {
    constexpr auto kMostSide = static_cast<std::size_t>(core::kMaxGridSide);
    constexpr std::int64_t kMostIndex = 255;
    std::vector<core::PaletteIndex> cells;
    std::size_t width = 0;
    std::size_t height = 0;
    PANTILE_RETURN_IF_ERROR(json.openList());
    for (;; ++height) {
        PANTILE_ASSIGN_OR_RETURN(const bool hasRow, json.nextElement());
        if (!hasRow) break;
        if (height == kMostSide) return json.errorHere("a picture has more than 256 rows");
        PANTILE_RETURN_IF_ERROR(json.openList());
        std::size_t x = 0;
        for (;; ++x) {
            PANTILE_ASSIGN_OR_RETURN(const bool hasCell, json.nextElement());
            if (!hasCell) break;
            if (x == kMostSide) return json.errorHere("a row has more than 256 cells");
            PANTILE_ASSIGN_OR_RETURN(const std::int64_t index, json.number());
            if (index < 0 || index > kMostIndex) {
                return json.errorHere("a cell is " + std::to_string(index) +
                                      ", which is no index of a palette");
            }
            cells.push_back(static_cast<core::PaletteIndex>(index));
        }
        if (height > 0 && x != width) {
            return json.errorHere("row " + std::to_string(height) + " has " + std::to_string(x) +
                                      " cells, and row 0 has " + std::to_string(width),
                                  "give every row the same number of cells");
        }
        width = x;
    }
    auto grid =
        core::Grid::create(static_cast<int>(width), static_cast<int>(height), std::move(cells));
    if (!grid) return json.errorHere(grid.error().message, grid.error().hint);
    m_grid = *std::move(grid);
    return {};
}

Result<void> FileRecord::readMember(JsonReader& json, const std::string& name) {
    const std::size_t i = columnOf(*m_section, name);
    if (i == m_section->columns.size()) {
        return json.errorHere(std::string(m_section->name) + " have no " + inQuotes(name),
                              "docs/library-file.md lists what they have");
    }
    if (m_isRead[i]) return json.errorHere(inQuotes(name) + " stands twice");
    m_isRead[i] = true;
    const FileColumn& column = m_section->columns[i];
    if (column.kind == ColumnKind::Colours) return readColours(json);
    if (column.kind == ColumnKind::Cells) return readCells(json);
    PANTILE_ASSIGN_OR_RETURN(m_values[i], json.value());
    if (isOfKind(column, m_values[i])) return {};
    return json.errorHere(inQuotes(name) + " has to be " + kindInWords(column));
}

Result<FileRecord> FileRecord::read(JsonReader& json, const FileSection& section) {
    FileRecord record(section);
    PANTILE_RETURN_IF_ERROR(json.openObject());
    record.m_line = json.line();
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const auto name, json.nextMember());
        if (!name) break;
        PANTILE_RETURN_IF_ERROR(record.readMember(json, *name));
    }
    for (std::size_t i = 0; i < section.columns.size(); ++i) {
        if (!record.m_isRead[i]) {
            return json.errorHere("one of the " + std::string(section.name) + " has no " +
                                  inQuotes(section.columns[i].name));
        }
    }
    return record;
}

const JsonValue& FileRecord::named(std::string_view name) const {
    const std::size_t i = columnOf(*m_section, name);
    assert(i < m_values.size());
    return m_values[i];
}

std::optional<std::int64_t> FileRecord::numberOrNull(std::string_view name) const {
    const auto* const number = std::get_if<std::int64_t>(&named(name));
    return number != nullptr ? std::optional(*number) : std::nullopt;
}

std::optional<std::string> FileRecord::textOrNull(std::string_view name) const {
    const auto* const text = std::get_if<std::string>(&named(name));
    return text != nullptr ? std::optional(*text) : std::nullopt;
}

std::int64_t FileRecord::number(std::string_view name) const {
    return numberOrNull(name).value_or(0);
}

std::string FileRecord::text(std::string_view name) const {
    return textOrNull(name).value_or("");
}

}  // namespace pantile::catalogue
