#include "catalogue/fact_index.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>

#include "catalogue/id_pages.h"
#include "catalogue/sqlite_error.h"

namespace pantile::catalogue {
namespace {

using core::Result;

using FactPages = IdPages<9>;
static_assert(FactPages::kTextures == kTexturesPerFactPage);

// Of any id, also a forged one, the page lies within 2^54 of zero.
constexpr std::int64_t kPagesOfFact = std::int64_t{1} << 56;
constexpr std::int64_t kFarthestPage = std::int64_t{1} << 54;

constexpr std::string_view kAllFacts =
    "SELECT t.id, 1 + (t.removed_at IS NOT NULL), c.width, c.height, c.colours, t.stars, "
    "ifnull(c.seam, -1), ifnull(e.draw_ms, -1), ifnull(e.load_bytes, -1), c.palette_id, "
    "t.added_at, t.changed_at, ifnull(c.tone, -1), c.used FROM textures t JOIN contents c ON c.id "
    "= t.content_id LEFT JOIN estimates e ON e.texture_id = t.id";
constexpr std::size_t kUsedFact = static_cast<std::size_t>(Fact::Used0);

/// A page of every fact.
using FactTable = std::array<FactValues, kFacts>;

std::int64_t rowOf(std::size_t fact, std::int64_t page) {
    return static_cast<std::int64_t>(fact) * kPagesOfFact + page;
}

std::array<std::int64_t, 4> usedWords(Statement& row, int column) {
    constexpr std::size_t kWordBytes = 8;
    std::array<std::int64_t, 4> words{};
    if (row.isNull(column)) {
        words.fill(-1);
        return words;
    }
    const std::string_view bytes = row.bytesView(column);
    for (std::size_t i = 0; i < std::min(bytes.size(), words.size() * kWordBytes); ++i) {
        const auto byte = std::uint64_t{static_cast<std::uint8_t>(bytes[i])};
        words[i / kWordBytes] |= static_cast<std::int64_t>(byte << (8 * (i % kWordBytes)));
    }
    return words;
}

/// Of a row of kAllFacts.
void takeRow(Statement& row, FactTable& table) {
    const std::size_t place = FactPages::placeOf(row.integer(0));
    for (std::size_t fact = 0; fact < kUsedFact; ++fact) {
        table[fact][place] = row.integer(static_cast<int>(fact) + 1);
    }
    const auto words = usedWords(row, static_cast<int>(kUsedFact) + 1);
    for (std::size_t i = 0; i < words.size(); ++i) table[kUsedFact + i][place] = words[i];
}

Result<void> takeTexture(Connection& connection, std::int64_t id, FactTable& table) {
    for (FactValues& values : table) values[FactPages::placeOf(id)] = 0;
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection, std::string(kAllFacts) + " WHERE t.id = ?1", {id}));
    PANTILE_ASSIGN_OR_RETURN(const bool found, row.step());
    if (!found) return {};
    takeRow(row, table);
    return row.columnCheck();
}

/// Zeros where there is no page.
Result<FactValues> storedFacts(Connection& connection, std::int64_t id) {
    FactValues values{};
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection, "SELECT numbers FROM fact_pages WHERE id = ?1", {id}));
    PANTILE_ASSIGN_OR_RETURN(const bool found, row.step());
    if (!found) return values;
    const std::vector<std::uint8_t> bytes = row.blob(0);
    PANTILE_RETURN_IF_ERROR(row.columnCheck());
    if (!unpackFacts(bytes, values)) return corruptError("the index of facts");
    return values;
}

Result<FactTable> storedTable(Connection& connection, std::int64_t page) {
    FactTable table;
    for (std::size_t fact = 0; fact < kFacts; ++fact) {
        PANTILE_ASSIGN_OR_RETURN(table[fact], storedFacts(connection, rowOf(fact, page)));
    }
    return table;
}

bool isEmpty(const FactTable& table) {
    const FactValues& presence = table[static_cast<std::size_t>(Fact::Presence)];
    return std::all_of(presence.begin(), presence.end(), [](std::int64_t v) { return v == 0; });
}

Result<void> storeFacts(Connection& connection, std::int64_t id, const FactValues& values) {
    const std::vector<std::uint8_t> bytes = packFacts(values);
    PANTILE_RETURN_IF_ERROR(run(connection,
                                "INSERT OR REPLACE INTO fact_pages (id, numbers) VALUES (?1, ?2)",
                                {id, std::span<const std::uint8_t>(bytes)}));
    return {};
}

Result<void> dropTable(Connection& connection, std::int64_t page) {
    for (std::size_t fact = 0; fact < kFacts; ++fact) {
        PANTILE_RETURN_IF_ERROR(
            run(connection, "DELETE FROM fact_pages WHERE id = ?1", {rowOf(fact, page)}));
    }
    return {};
}

/// Leaves alone what has not changed.
Result<void> storeTable(Connection& connection, std::int64_t page, const FactTable& before,
                        const FactTable& after) {
    if (isEmpty(after)) return dropTable(connection, page);
    const bool isNew = isEmpty(before);
    for (std::size_t fact = 0; fact < kFacts; ++fact) {
        if (!isNew && before[fact] == after[fact]) continue;
        PANTILE_RETURN_IF_ERROR(storeFacts(connection, rowOf(fact, page), after[fact]));
    }
    return {};
}

/// Calls `take` with the number and the facts of each page as the textures make it, by rising
/// numbers.
template <typename Take>
Result<void> forEachTable(Connection& connection, Take take) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row, Statement::prepare(connection, std::string(kAllFacts) + " ORDER BY t.id"));
    std::optional<std::int64_t> number;
    FactTable table{};
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        const auto next = more ? std::optional(FactPages::pageOf(row.integer(0))) : std::nullopt;
        if (number && next != number) {
            PANTILE_RETURN_IF_ERROR(take(*number, table));
            table = FactTable{};
        }
        if (!more) return {};
        number = next;
        takeRow(row, table);
    }
}

void noteDifferences(std::int64_t page, const FactTable& found, const FactTable& expected,
                     std::vector<std::int64_t>& wrong) {
    for (std::size_t place = 0; place < kTexturesPerFactPage; ++place) {
        const bool same = std::equal(
            found.begin(), found.end(), expected.begin(),
            [&](const FactValues& a, const FactValues& b) { return a[place] == b[place]; });
        if (!same) wrong.push_back(FactPages::idAt(page, place));
    }
}

}  // namespace

std::int64_t FactReader::firstIdOf(std::int64_t page) {
    return FactPages::idAt(page, 0);
}

Result<FactReader> FactReader::create(Connection& connection, std::initializer_list<Fact> facts) {
    FactReader reader;
    for (const Fact fact : facts) {
        const std::int64_t base = rowOf(static_cast<std::size_t>(fact), 0);
        PANTILE_ASSIGN_OR_RETURN(
            Statement rows, Statement::prepare(connection,
                                               "SELECT id, numbers FROM fact_pages WHERE id "
                                               "BETWEEN ?1 AND ?2 ORDER BY id",
                                               {base - kFarthestPage, base + kFarthestPage - 1}));
        reader.m_columns.push_back({std::move(rows), base, 0, {}});
    }
    return reader;
}

Result<bool> FactReader::step(Column& column) {
    PANTILE_ASSIGN_OR_RETURN(const bool more, column.rows.step());
    if (more) column.page = column.rows.integer(0) - column.base;
    return more;
}

Result<bool> FactReader::next() {
    Column& first = m_columns.front();
    for (Column& column : m_columns) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, step(column));
        if (!more) return false;
    }
    // A forged library may lack some pages.
    for (bool isLevel = false; !isLevel;) {
        isLevel = true;
        for (Column& column : m_columns) {
            while (column.page < first.page) {
                PANTILE_ASSIGN_OR_RETURN(const bool more, step(column));
                if (!more) return false;
            }
            if (column.page == first.page) continue;
            isLevel = false;
            PANTILE_ASSIGN_OR_RETURN(const bool more, step(first));
            if (!more) return false;
        }
    }
    for (Column& column : m_columns) {
        const std::string_view bytes = column.rows.bytesView(1);
        const auto* const data =
            static_cast<const std::uint8_t*>(static_cast<const void*>(bytes.data()));
        if (!unpackFacts({data, bytes.size()}, column.values)) {
            return corruptError("the index of facts");
        }
    }
    return true;
}

Result<void> writeFacts(Connection& connection, std::span<const std::int64_t> ids) {
    while (!ids.empty()) {
        const std::int64_t page = FactPages::pageOf(ids.front());
        PANTILE_ASSIGN_OR_RETURN(const FactTable before, storedTable(connection, page));
        FactTable after = before;
        for (; !ids.empty() && FactPages::pageOf(ids.front()) == page; ids = ids.subspan(1)) {
            PANTILE_RETURN_IF_ERROR(takeTexture(connection, ids.front(), after));
        }
        PANTILE_RETURN_IF_ERROR(storeTable(connection, page, before, after));
    }
    return {};
}

Result<void> fillFacts(Connection& connection) {
    PANTILE_RETURN_IF_ERROR(run(connection, "DELETE FROM fact_pages"));
    return forEachTable(connection, [&](std::int64_t page, const FactTable& table) {
        return storeTable(connection, page, FactTable{}, table);
    });
}

Result<std::vector<std::int64_t>> wrongFacts(Connection& connection) {
    std::vector<std::int64_t> wrong;
    std::vector<std::int64_t> known;
    PANTILE_RETURN_IF_ERROR(
        forEachTable(connection, [&](std::int64_t page, const FactTable& expected) -> Result<void> {
            known.push_back(page);
            const auto found = storedTable(connection, page);
            if (!found && found.error().kind != core::ErrorKind::Corrupt) return found.error();
            noteDifferences(page, found ? *found : FactTable{}, expected, wrong);
            return {};
        }));
    PANTILE_ASSIGN_OR_RETURN(const auto rows, allNumbers(connection, "SELECT id FROM fact_pages"));
    for (const std::int64_t row : rows) {
        const std::int64_t fact = (row + kFarthestPage) / kPagesOfFact;
        const std::int64_t page = row - fact * kPagesOfFact;
        const bool isKnown = fact >= 0 && fact < static_cast<std::int64_t>(kFacts) &&
                             std::binary_search(known.begin(), known.end(), page);
        if (!isKnown) wrong.push_back(FactPages::idAt(page, 0));
    }
    return wrong;
}

}  // namespace pantile::catalogue
