#pragma once

// Reads the comma-separated tables in tests/data. Lines that begin with '#' are notes.

#include <fstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace pantile::tests {

using CsvRow = std::vector<std::string>;

inline CsvRow splitCsvLine(const std::string& line) {
    CsvRow row(1);
    bool quoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const bool quote = line[i] == '"';
        if (quote && quoted && i + 1 < line.size() && line[i + 1] == '"') {
            row.back() += '"';
            ++i;
        } else if (quote) {
            quoted = !quoted;
        } else if (line[i] == ',' && !quoted) {
            row.emplace_back();
        } else {
            row.back() += line[i];
        }
    }
    return row;
}

/// The rows of `path` without notes and without the heading. Fails the test if there are none.
inline std::vector<CsvRow> readCsv(const std::string& path) {
    std::ifstream file(path);
    std::vector<CsvRow> rows;
    for (std::string line; std::getline(file, line);) {
        if (!line.empty() && line[0] != '#') rows.push_back(splitCsvLine(line));
    }
    EXPECT_GT(rows.size(), 1U) << path << " has no rows";
    if (!rows.empty()) rows.erase(rows.begin());
    return rows;
}

}  // namespace pantile::tests
