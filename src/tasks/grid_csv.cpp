#include "tasks/grid_csv.h"

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <vector>

#include "core/counted.h"
#include "core/text.h"
#include "tasks/text_lines.h"

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

constexpr std::string_view kSeparators = ",;\t";
constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

std::string place(int row, int column) {
    return "row " + std::to_string(row) + ", column " + std::to_string(column);
}

std::optional<core::PaletteIndex> parseIndex(std::string_view text) {
    int number = 0;
    const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool whole = problem == std::errc() && end == text.data() + text.size();
    if (!whole || number < 0 || number > 255) return std::nullopt;
    return static_cast<core::PaletteIndex>(number);
}

Result<core::PaletteIndex> parseEntry(std::string_view entry, int row, int column) {
    if (const auto index = parseIndex(entry)) return *index;
    return Error{ErrorKind::InvalidInput,
                 place(row, column) + ": '" + core::excerpt(entry) + "' is no palette index",
                 "every entry is a whole number from 0 to 255, with commas between"};
}

Result<std::vector<core::PaletteIndex>> parseRow(std::string_view line, int row) {
    std::vector<core::PaletteIndex> cells;
    for (bool more = true; more;) {
        const std::size_t end = line.find_first_of(kSeparators);
        more = end != std::string_view::npos;
        const int column = static_cast<int>(cells.size()) + 1;
        if (column > core::kMaxGridSide) {
            return Error{ErrorKind::TooLarge,
                         "row " + std::to_string(row) + " has more than 256 columns",
                         "a grid is at most 256 cells wide"};
        }
        PANTILE_ASSIGN_OR_RETURN(const core::PaletteIndex cell,
                                 parseEntry(trimmed(line.substr(0, end)), row, column));
        cells.push_back(cell);
        if (more) line.remove_prefix(end + 1);
    }
    return cells;
}

/// What a line says behind its '#'; nothing if it is none of remarks. Programs that keep tables put
/// a field with a separator or a quote in it into quotes, and so does writeGridCsv (RFC 4180).
std::optional<std::string> remarkIn(std::string_view line) {
    if (line.starts_with('#')) return std::string(line.substr(1));
    if (!line.starts_with("\"#") || line.size() < 3 || !line.ends_with('"')) return std::nullopt;
    std::string remark(line.substr(2, line.size() - 3));
    for (std::size_t at = remark.find("\"\""); at != std::string::npos;
         at = remark.find("\"\"", at + 1)) {
        remark.erase(at, 1);
    }
    return remark;
}

struct Remarks {
    std::vector<core::Rgb8> colours;
    std::optional<core::PaletteIndex> transparent;
    std::string title;
};

Result<void> readRemark(std::string_view remark, Remarks& remarks) {
    const std::size_t blank = std::min(remark.find(' '), remark.size());
    const std::string_view key = remark.substr(0, blank);
    std::string_view rest = trimmed(remark.substr(blank));
    if (key == "title") {
        remarks.title = core::cleanedText(rest, {"title", core::kMaxTitleCharacters});
    } else if (key == "transparent") {
        remarks.transparent = parseIndex(rest);
        if (!remarks.transparent) {
            return Error{ErrorKind::InvalidInput,
                         "the remark '" + core::excerpt(remark) + "' names no palette index",
                         "write for example '# transparent 0'"};
        }
    } else if (key == "palette") {
        while (!rest.empty()) {
            const std::size_t end = std::min(rest.find(' '), rest.size());
            PANTILE_ASSIGN_OR_RETURN(const core::Rgb8 colour,
                                     core::parseHexColour(rest.substr(0, end)));
            remarks.colours.push_back(colour);
            if (remarks.colours.size() > core::kMaxPaletteColours) break;
            rest = trimmed(rest.substr(end));
        }
    }
    return {};
}

/// One field whatever separates them, so that no part of a title is taken for a formula.
std::string remarkField(const std::string& remark) {
    if (remark.find_first_of(",;\t\"") == std::string::npos) return remark;
    std::string field = "\"";
    for (const char c : remark) field += c == '"' ? std::string("\"\"") : std::string(1, c);
    return field + '"';
}

}  // namespace

bool looksLikeGridCsv(std::string_view text) {
    if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
    while (!text.empty()) {
        const std::string_view line = trimmed(takeLine(text));
        if (line.empty() || remarkIn(line)) continue;
        const std::size_t end = line.find_first_of(kSeparators);
        const std::string_view first = trimmed(line.substr(0, end));
        return !first.empty() && !first.starts_with("--") &&
               first.find_first_not_of("-0123456789") == std::string_view::npos;
    }
    return false;
}

Result<GridCsv> parseGridCsv(std::string_view text) {
    if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
    Remarks remarks;
    std::vector<core::PaletteIndex> cells;
    std::size_t width = 0;
    int row = 0;
    while (!text.empty()) {
        const std::string_view line = trimmed(takeLine(text));
        if (line.empty()) continue;
        if (const auto remark = remarkIn(line)) {
            PANTILE_RETURN_IF_ERROR(readRemark(trimmed(*remark), remarks));
            continue;
        }
        if (++row > core::kMaxGridSide) {
            return Error{ErrorKind::TooLarge, "there are more than 256 rows",
                         "a grid is at most 256 cells high"};
        }
        PANTILE_ASSIGN_OR_RETURN(const std::vector<core::PaletteIndex> rowCells,
                                 parseRow(line, row));
        if (row == 1) width = rowCells.size();
        if (rowCells.size() != width) {
            return Error{ErrorKind::InvalidInput,
                         "row " + std::to_string(row) + " has " +
                             core::counted(std::ssize(rowCells), "entry", "entries") +
                             ", and row 1 has " + std::to_string(width),
                         "give every row the same number of entries"};
        }
        cells.insert(cells.end(), rowCells.begin(), rowCells.end());
    }
    PANTILE_ASSIGN_OR_RETURN(core::Grid grid,
                             core::Grid::create(static_cast<int>(width), row, std::move(cells)));
    GridCsv csv{std::move(grid), std::nullopt, std::move(remarks.title)};
    if (!remarks.colours.empty()) {
        PANTILE_ASSIGN_OR_RETURN(
            csv.palette, core::Palette::create(std::move(remarks.colours), remarks.transparent));
    }
    return csv;
}

std::string writeGridCsv(const core::Texture& texture) {
    std::string text;
    if (!texture.text().title.empty())
        text += remarkField("# title " + texture.text().title) + "\n";
    text += "# palette";
    for (const core::Rgb8 colour : texture.palette().colours()) text += " " + core::toHex(colour);
    text += '\n';
    if (const auto transparent = texture.palette().transparent()) {
        text += "# transparent " + std::to_string(*transparent) + "\n";
    }
    const core::Grid& grid = texture.grid();
    for (int y = 0; y < grid.height(); ++y) {
        for (int x = 0; x < grid.width(); ++x) {
            if (x > 0) text += ',';
            text += std::to_string(grid.at(x, y));
        }
        text += '\n';
    }
    return text;
}

}  // namespace pantile::tasks
