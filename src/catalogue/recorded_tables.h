#pragma once

// The tables of which every change is taken down, so that it can be undone: all but those that are
// worked out from others. The triggers of schema/0007_actions.sql name the same columns in the same
// order.

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace pantile::catalogue {

struct RecordedTable {
    std::string_view name;
    std::size_t keys = 1;  ///< So many of the columns, from the first, are the key.
    std::size_t columns =
        0;  ///< That nothing but an action changes; some are worked out behind these.
    std::string_view names;  ///< Of all of them, with ", " between.
};

/// Their places are stored in libraries: never reorder.
std::span<const RecordedTable> recordedTables();

std::optional<std::size_t> recordedTableNamed(std::string_view name);

/// Of a column of the table.
std::string_view columnName(const RecordedTable& table, std::size_t column);

}  // namespace pantile::catalogue
