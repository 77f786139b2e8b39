#pragma once

// Changed rows as bytes: what an action keeps of each so that it can be undone.
//
// A change begins with a byte: 64 x kind + the table's place among recordedTables(). Then come
//   New:      the key; the seal of the row
//   Changed:  the key; the seal of the row as it became; how many values follow; of each the column
//   and
//             what it was before
//   Dropped:  how many values follow; those of all columns
// There is no seal where all columns are key. Numbers are unsigned, seven bits a byte, lowest
// first, the highest bit set where more follow. A value is a number n: n % 4 is 0 for NULL; 1 for
// the whole number that zigzag makes of n / 4; 2 for a text and 3 for bytes, of length n / 4, which
// follow. Whole numbers that do not fit so are n = 4 and eight bytes, lowest first.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "core/result.h"

namespace pantile::catalogue {

/// NULL, a number, a text or bytes; these lie elsewhere.
using RowValue =
    std::variant<std::monostate, std::int64_t, std::string_view, std::span<const std::uint8_t>>;

/// Stored in libraries: never renumber.
enum class RowChangeKind : unsigned char { New = 0, Changed = 1, Dropped = 2 };

struct RowChange {
    RowChangeKind kind = RowChangeKind::New;
    std::size_t table = 0;
    std::vector<RowValue> values;  ///< New, Changed: the key. Dropped: all of it.
    std::uint64_t seal = 0;
    std::vector<std::pair<std::size_t, RowValue>> before;  ///< Changed: column and value.
};

void packChange(std::string& out, const RowChange& change);

/// The texts and bytes in them lie in `bytes`. Errors: Corrupt.
core::Result<std::vector<RowChange>> unpackChanges(std::string_view bytes);

}  // namespace pantile::catalogue
