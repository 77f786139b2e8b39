#include "catalogue/undo_changes.h"

#include <algorithm>
#include <set>
#include <string>

#include "catalogue/recorded_tables.h"
#include "catalogue/statement.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;
using core::TextureId;

BoundValue boundValue(const RowValue& value) {
    if (const auto* const number = std::get_if<std::int64_t>(&value)) return *number;
    if (const auto* const text = std::get_if<std::string_view>(&value)) return *text;
    if (const auto* const bytes = std::get_if<std::span<const std::uint8_t>>(&value)) {
        return *bytes;
    }
    return {};
}

std::int64_t numberIn(const RowValue& value) {
    const auto* const number = std::get_if<std::int64_t>(&value);
    return number != nullptr ? *number : 0;
}

Error changedSince(const RecordedTable& table) {
    return {ErrorKind::InvalidInput,
            "something that it changed has been changed since (" + std::string(table.name) + ")",
            "'pantile history' lists what was done"};
}

/// "id = ?1", or "shelf_id = ?1 AND texture_id = ?2"
std::string keyIs(const RecordedTable& table) {
    std::string sql;
    for (std::size_t i = 0; i < table.keys; ++i) {
        sql += (i == 0 ? "" : " AND ") + std::string(columnName(table, i)) + " = ?" +
               std::to_string(i + 1);
    }
    return sql;
}

/// Why what an action made cannot go: rows of that table hang on it.
std::string whatStandsInTheWay(std::string_view table) {
    if (table == "load_writings") return "the load was written for a board since, and that is kept";
    std::string what = "something";
    if (table == "load_slots" || table == "load_canvases" || table == "loads") what = "a load";
    if (table == "shelf_textures") what = "a texture on a shelf";
    if (table == "texture_tags") what = "a tag of a texture";
    return what + " that came later belongs to what it made";
}

class Undoing {
public:
    explicit Undoing(Connection& connection) : m_connection(connection) {}

    Result<UndoneChanges> run(std::span<const RowChange> changes) {
        noteAdded(changes);
        for (auto change = changes.rbegin(); change != changes.rend(); ++change) {
            if (!staysAdded(*change)) PANTILE_RETURN_IF_ERROR(undo(*change));
        }
        PANTILE_RETURN_IF_ERROR(checkReferences());
        for (const std::int64_t id : m_newPictures) m_undone.newPictures.push_back({id});
        return std::move(m_undone);
    }

private:
    static const RecordedTable& tableOf(const RowChange& change) {
        return recordedTables()[change.table];
    }

    void noteAdded(std::span<const RowChange> changes) {
        for (const RowChange& change : changes) {
            if (change.kind != RowChangeKind::New || tableOf(change).name != "textures") continue;
            const std::int64_t id = numberIn(change.values.front());
            m_added.insert(id);
            m_undone.added.push_back({id});
        }
    }

    /// What an added texture consists of stays with it.
    bool staysAdded(const RowChange& change) const {
        if (m_added.empty()) return false;
        const std::string_view name = tableOf(change).name;
        const bool isOfTexture =
            name == "textures" || name == "revisions" || name == "texture_tags";
        return isOfTexture && m_added.contains(numberIn(change.values.front()));
    }

    Result<void> undo(const RowChange& change) {
        const RecordedTable& table = tableOf(change);
        m_touched.insert(table.name);
        if (table.name == "canvases" || table.name == "boards") m_undone.changedProfiles = true;
        if (change.kind != RowChangeKind::Dropped) PANTILE_RETURN_IF_ERROR(checkIsAsLeft(change));
        switch (change.kind) {
            case RowChangeKind::New:
                return drop(change);
            case RowChangeKind::Changed:
                return changeBack(change);
            case RowChangeKind::Dropped:
                return bringBack(change);
        }
        return {};
    }

    Result<std::int64_t> runWith(const std::string& sql, const std::vector<BoundValue>& values) {
        PANTILE_ASSIGN_OR_RETURN(Statement statement, Statement::prepare(m_connection, sql));
        PANTILE_RETURN_IF_ERROR(statement.bind(values));
        return statement.run();
    }

    static std::vector<BoundValue> boundValues(const RowChange& change) {
        std::vector<BoundValue> values;
        for (const RowValue& value : change.values) values.push_back(boundValue(value));
        return values;
    }

    Result<void> checkIsAsLeft(const RowChange& change) {
        const RecordedTable& table = tableOf(change);
        std::string columns;
        for (std::size_t i = 0; i < table.columns; ++i) {
            columns += (i == 0 ? "" : ", ") + std::string(columnName(table, i));
        }
        const bool isSealed = table.columns > table.keys;
        PANTILE_ASSIGN_OR_RETURN(
            Statement row,
            Statement::prepare(m_connection,
                               "SELECT " + (isSealed ? "seal(" + columns + ")" : "0") + " FROM " +
                                   std::string(table.name) + " WHERE " + keyIs(table)));
        PANTILE_RETURN_IF_ERROR(row.bind(boundValues(change)));
        PANTILE_ASSIGN_OR_RETURN(const bool isThere, row.step());
        if (!isThere) return changedSince(table);
        const auto seal = static_cast<std::uint64_t>(row.integer(0));
        PANTILE_RETURN_IF_ERROR(row.columnCheck());
        if (seal != change.seal) return changedSince(table);
        return {};
    }

    Result<void> drop(const RowChange& change) {
        const RecordedTable& table = tableOf(change);
        const auto values = boundValues(change);
        PANTILE_ASSIGN_OR_RETURN(const bool isUsed, isStillUsed(table, values));
        if (isUsed) return {};
        // Textures that were added later, and stay removed, may have it.
        if (table.name == "tags") {
            PANTILE_RETURN_IF_ERROR(runWith("DELETE FROM texture_tags WHERE tag_id = ?1", values));
        }
        PANTILE_RETURN_IF_ERROR(
            runWith("DELETE FROM " + std::string(table.name) + " WHERE " + keyIs(table), values));
        m_dropped.insert(table.name);
        if (table.name != "contents") return {};
        // What is worked out of it does not go by itself while foreign keys are off.
        PANTILE_RETURN_IF_ERROR(runWith("DELETE FROM looks WHERE content_id = ?1", values));
        PANTILE_RETURN_IF_ERROR(runWith("DELETE FROM looks_missing WHERE content_id = ?1", values));
        return {};
    }

    /// Pictures and palettes are stored once for all who have them, textures that stay removed too.
    Result<bool> isStillUsed(const RecordedTable& table, const std::vector<BoundValue>& key) {
        std::string users;
        if (table.name == "contents") {
            users =
                "SELECT 1 FROM textures WHERE content_id = ?1 UNION ALL SELECT 1 FROM revisions "
                "WHERE content_id = ?1";
        } else if (table.name == "palettes") {
            users =
                "SELECT 1 FROM contents WHERE palette_id = ?1 UNION ALL SELECT 1 FROM canvases "
                "WHERE palette_id = ?1 UNION ALL SELECT 1 FROM palette_names WHERE palette_id = "
                "?1";
        } else {
            return false;
        }
        PANTILE_ASSIGN_OR_RETURN(const auto user,
                                 findNumber(m_connection, users + " LIMIT 1", {key.front()}));
        return user.has_value();
    }

    Result<void> changeBack(const RowChange& change) {
        const RecordedTable& table = tableOf(change);
        std::vector<BoundValue> values = boundValues(change);
        std::string setting;
        for (const auto& [column, value] : change.before) {
            values.push_back(boundValue(value));
            setting += (setting.empty() ? "" : ", ") + std::string(columnName(table, column)) +
                       " = ?" + std::to_string(values.size());
        }
        PANTILE_RETURN_IF_ERROR(runWith(
            "UPDATE " + std::string(table.name) + " SET " + setting + " WHERE " + keyIs(table),
            values));
        if (table.name == "textures") return noteTexture(change);
        return {};
    }

    Result<void> noteTexture(const RowChange& change) {
        const std::int64_t id = numberIn(change.values.front());
        for (const auto& [column, value] : change.before) {
            if (columnName(tableOf(change), column) != "content_id") continue;
            m_newPictures.insert(id);
            PANTILE_RETURN_IF_ERROR(
                catalogue::run(m_connection, "DELETE FROM estimates WHERE texture_id = ?1", {id}));
        }
        return {};
    }

    Result<void> bringBack(const RowChange& change) {
        const RecordedTable& table = tableOf(change);
        PANTILE_ASSIGN_OR_RETURN(const bool isThere, isThereAgain(change));
        if (isThere) return {};
        std::string marks;
        for (std::size_t i = 0; i < change.values.size(); ++i) {
            marks += (i == 0 ? "?" : ", ?") + std::to_string(i + 1);
        }
        const auto inserted = runWith("INSERT INTO " + std::string(table.name) + " (" +
                                          std::string(table.names) + ") VALUES (" + marks + ")",
                                      boundValues(change));
        if (!inserted) {
            // A name or a key that is taken now.
            if (inserted.error().kind == ErrorKind::Internal) return changedSince(table);
            return inserted.error();
        }
        if (table.name != "contents") return {};
        PANTILE_RETURN_IF_ERROR(catalogue::run(m_connection,
                                               "INSERT INTO looks_missing VALUES (?1)",
                                               {boundValue(change.values.front())}));
        return {};
    }

    /// Whether the same picture or palette was stored again under the same id, and was kept.
    Result<bool> isThereAgain(const RowChange& change) {
        const RecordedTable& table = tableOf(change);
        if (table.name != "contents" && table.name != "palettes") return false;
        std::string columns;
        std::string marks;
        for (std::size_t i = 0; i < std::min(table.columns, change.values.size()); ++i) {
            columns += (i == 0 ? "" : ", ") + std::string(columnName(table, i));
            marks += (i == 0 ? "?" : ", ?") + std::to_string(i + 1);
        }
        std::vector<BoundValue> values = boundValues(change);
        values.resize(std::min(table.columns, values.size()));
        PANTILE_ASSIGN_OR_RETURN(
            Statement row,
            Statement::prepare(m_connection, "SELECT 1 FROM " + std::string(table.name) +
                                                 " WHERE id = ?1 AND (" + columns + ") IS (" +
                                                 marks + ")"));
        PANTILE_RETURN_IF_ERROR(row.bind(values));
        return row.step();
    }

    Result<void> checkReferences() {
        std::set<std::string> tables(m_touched.begin(), m_touched.end());
        for (const std::string_view parent : m_dropped) {
            PANTILE_ASSIGN_OR_RETURN(
                const auto children,
                allTexts(m_connection,
                         "SELECT DISTINCT t.name FROM sqlite_schema t, "
                         "pragma_foreign_key_list(t.name) f WHERE t.type = 'table' AND f.\"table\" "
                         "= ?1",
                         {parent}));
            tables.insert(children.begin(), children.end());
        }
        for (const std::string& table : tables) {
            PANTILE_ASSIGN_OR_RETURN(
                const auto broken,
                allTexts(m_connection, "SELECT parent FROM pragma_foreign_key_check(?1) LIMIT 1",
                         {std::string_view(table)}));
            if (broken.empty()) continue;
            return Error{ErrorKind::InvalidInput, whatStandsInTheWay(table),
                         "'pantile history' lists what was done"};
        }
        return {};
    }

    Connection& m_connection;
    UndoneChanges m_undone;
    std::set<std::int64_t> m_added;
    std::set<std::int64_t> m_newPictures;
    std::set<std::string_view> m_touched;
    std::set<std::string_view> m_dropped;
};

}  // namespace

Result<UndoneChanges> undoChanges(Connection& connection, std::span<const RowChange> changes) {
    return Undoing(connection).run(changes);
}

}  // namespace pantile::catalogue
