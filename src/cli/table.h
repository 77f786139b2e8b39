#pragma once

// Plain tables for the terminal: columns as wide as their widest entry, numbers to the right.

#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

namespace pantile::cli {

enum class Align { Left, Right };

struct Column {
    std::string_view heading;
    Align align = Align::Left;
};

class Table {
public:
    explicit Table(std::vector<Column> columns) : m_columns(std::move(columns)) {}

    /// Shape: one entry for each column. Entries are made safe to print.
    void addRow(std::vector<std::string> entries);

    /// Heading and rows, each line ended; nothing at all if there are no rows.
    void print(std::ostream& out) const;

private:
    std::vector<Column> m_columns;
    std::vector<std::vector<std::string>> m_rows;
};

}  // namespace pantile::cli
