#include "cli/table.h"

#include <algorithm>
#include <cassert>
#include <ostream>

#include "cli/column_width.h"
#include "core/text.h"

namespace pantile::cli {
namespace {

std::string padded(std::string_view entry, std::size_t width, Align align) {
    const std::size_t length = columnWidth(entry);
    const std::string blanks(width > length ? width - length : 0, ' ');
    return align == Align::Right ? blanks + std::string(entry) : std::string(entry) + blanks;
}

}  // namespace

void Table::addRow(std::vector<std::string> entries) {
    assert(entries.size() == m_columns.size());
    for (std::string& entry : entries) entry = core::visibleText(entry);
    m_rows.push_back(std::move(entries));
}

void Table::print(std::ostream& out) const {
    if (m_rows.empty()) return;
    std::vector<std::size_t> widths;
    for (std::size_t i = 0; i < m_columns.size(); ++i) {
        std::size_t width = columnWidth(m_columns[i].heading);
        for (const auto& row : m_rows) width = std::max(width, columnWidth(row[i]));
        widths.push_back(width);
    }
    const auto printLine = [&](const auto& entryAt) {
        std::string line;
        for (std::size_t i = 0; i < m_columns.size(); ++i) {
            if (i > 0) line += "  ";
            line += padded(entryAt(i), widths[i], m_columns[i].align);
        }
        line.erase(line.find_last_not_of(' ') + 1);
        out << line << '\n';
    };
    printLine([&](std::size_t i) { return m_columns[i].heading; });
    for (const auto& row : m_rows) {
        printLine([&](std::size_t i) -> std::string_view { return row[i]; });
    }
}

}  // namespace pantile::cli
