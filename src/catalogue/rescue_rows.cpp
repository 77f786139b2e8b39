#include "catalogue/rescue_rows.h"

#include <optional>
#include <set>

#include "catalogue/statement.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using core::Result;

/// The column that says which rows to copy.
bool isText(const RescuedTable& table) {
    return table.key == "name" || table.key == "alias";
}

class Rescue {
public:
    Rescue(Connection& connection, const RescuedTable& table, std::vector<Problem>& lost)
        : m_connection(connection), m_table(table), m_lost(lost) {}

    Result<void> run() {
        PANTILE_ASSIGN_OR_RETURN(const bool isThere, findColumns());
        if (!isThere) return {};
        const auto all = catalogue::run(m_connection, copyingAll());
        if (all) return {};
        if (all.error().kind == ErrorKind::Io) return all.error();
        return isText(m_table) ? copyEach(names()) : copyEach(numbers());
    }

private:
    void lose(const std::string& what) {
        m_lost.push_back({"table " + std::string(m_table.name), core::visibleText(what)});
    }

    /// Those of this version of the library; false if it has no such table yet.
    Result<bool> findColumns() {
        PANTILE_ASSIGN_OR_RETURN(
            const auto columns,
            allTexts(m_connection, "SELECT name FROM pragma_table_info(?1) ORDER BY cid",
                     {m_table.name}));
        for (const std::string& column : columns) {
            m_columns += (m_columns.empty() ? "" : ", ") + column;
        }
        return !columns.empty();
    }

    std::string copyingAll() const {
        const std::string name(m_table.name);
        return "INSERT INTO main." + name + " (" + m_columns + ") SELECT " + m_columns +
               " FROM damaged." + name + " NOT INDEXED";
    }

    /// Calls `take` with each row's key until the end, or until one cannot be read: then false.
    template <typename Take>
    bool readKeys(std::string_view direction, Take take) {
        const std::string key(m_table.key);
        auto row = Statement::prepare(
            m_connection, "SELECT " + key + " FROM damaged." + std::string(m_table.name) +
                              " NOT INDEXED ORDER BY " + key + std::string(direction));
        if (!row) return false;
        for (;;) {
            const auto more = row->step();
            if (!more) return false;
            if (!*more) return true;
            take(*row);
        }
    }

    /// From both ends up to the damage, and all that may lie in between.
    std::set<std::int64_t> numbers() {
        constexpr std::int64_t kMostBetween = 1'000'000;
        std::set<std::int64_t> keys;
        std::optional<std::int64_t> low;
        std::optional<std::int64_t> high;
        const auto note = [&keys](std::optional<std::int64_t>& end) {
            return [&](Statement& row) {
                end = row.integer(0);
                keys.insert(*end);
            };
        };
        if (readKeys("", note(low))) return keys;
        (void)readKeys(" DESC", note(high));
        if (low && high && *high - *low < kMostBetween) {
            for (std::int64_t key = *low; key < *high; ++key) keys.insert(key);
        }
        return keys;
    }

    std::set<std::string> names() {
        std::set<std::string> keys;
        const auto note = [&keys](Statement& row) { keys.insert(row.text(0)); };
        if (!readKeys("", note)) (void)readKeys(" DESC", note);
        return keys;
    }

    static BoundValue bound(std::int64_t key) { return key; }

    static BoundValue bound(const std::string& key) { return std::string_view(key); }

    static std::string shown(std::int64_t key) { return std::to_string(key); }

    static std::string shown(const std::string& key) { return "'" + key + "'"; }

    template <typename Keys>
    Result<void> copyEach(const Keys& keys) {
        const std::string copying = copyingAll() + " WHERE " + std::string(m_table.key) + " = ?1";
        lose("part of it cannot be read");
        for (const auto& key : keys) {
            const auto copied = catalogue::run(m_connection, copying, {bound(key)});
            if (copied) continue;
            if (copied.error().kind == ErrorKind::Io) return copied.error();
            lose("row " + shown(key) + ": " + copied.error().message);
        }
        return {};
    }

    Connection& m_connection;
    const RescuedTable& m_table;
    std::vector<Problem>& m_lost;
    std::string m_columns;
};

}  // namespace

std::vector<RescuedTable> rescuedTables() {
    return {{"palettes", "id"},
            {"contents", "id"},
            {"textures", "id"},
            {"estimates", "texture_id"},
            {"tags", "id"},
            {"texture_tags", "texture_id"},
            {"shelves", "id"},
            {"shelf_textures", "shelf_id"},
            {"canvases", "id"},
            {"boards", "id"},
            {"loads", "id"},
            {"load_slots", "load_id"},
            {"load_canvases", "load_id"},
            {"load_writings", "id"},
            {"revisions", "texture_id"},
            {"palette_names", "name"},
            {"tag_aliases", "alias"},
            {"searches", "id"}};
}

std::vector<std::string_view> derivedTables() {
    return {"action_changes", "actions",       "fact_pages", "folding",
            "looks",          "looks_missing", "seals",      "word_pages"};
}

Result<void> rescueRows(Connection& connection, const RescuedTable& table,
                        std::vector<Problem>& lost) {
    return Rescue(connection, table, lost).run();
}

}  // namespace pantile::catalogue
