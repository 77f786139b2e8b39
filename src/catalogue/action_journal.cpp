#include "catalogue/action_journal.h"

#include <algorithm>
#include <array>
#include <optional>
#include <span>
#include <utility>

#include <sqlite3.h>

#include "catalogue/recorded_tables.h"
#include "catalogue/seal.h"
#include "catalogue/statement.h"

namespace pantile::catalogue {
namespace {

using core::Result;
using Values = std::span<sqlite3_value*>;

// A row holds 16 MiB at most.
constexpr std::size_t kPartBytes = std::size_t{4} << 20U;

RowValue rowValue(sqlite3_value* value) {
    const auto length = static_cast<std::size_t>(sqlite3_value_bytes(value));
    switch (sqlite3_value_type(value)) {
        case SQLITE_INTEGER:
            return sqlite3_value_int64(value);
        case SQLITE_TEXT:
            return std::string_view(static_cast<const char*>(sqlite3_value_blob(value)), length);
        case SQLITE_BLOB:
            return std::span(static_cast<const std::uint8_t*>(sqlite3_value_blob(value)), length);
        default:
            return {};
    }
}

bool isSame(sqlite3_value* a, sqlite3_value* b) {
    const RowValue left = rowValue(a);
    const RowValue right = rowValue(b);
    if (left.index() != right.index()) return false;
    const auto* const bytes = std::get_if<std::span<const std::uint8_t>>(&left);
    if (bytes != nullptr) {
        return std::ranges::equal(*bytes, std::get<std::span<const std::uint8_t>>(right));
    }
    if (const auto* const text = std::get_if<std::string_view>(&left)) {
        return *text == std::get<std::string_view>(right);
    }
    const auto* const number = std::get_if<std::int64_t>(&left);
    return number == nullptr || *number == std::get<std::int64_t>(right);
}

/// The table that the first value names, while changes of the connection are taken down.
std::optional<std::size_t> tableToNote(const ActionJournal& journal, sqlite3_value* name) {
    if (!journal.isTaking()) return std::nullopt;
    return recordedTableNamed(std::get<std::string_view>(rowValue(name)));
}

RowChange keyedChange(RowChangeKind kind, std::size_t table, Values row) {
    RowChange change;
    change.kind = kind;
    change.table = table;
    const RecordedTable& recorded = recordedTables()[table];
    for (sqlite3_value* const value : row.first(recorded.keys)) {
        change.values.push_back(rowValue(value));
    }
    if (recorded.columns > recorded.keys) change.seal = sealOf(row);
    return change;
}

ActionJournal& journalOf(sqlite3_context* context) {
    return *static_cast<ActionJournal*>(sqlite3_user_data(context));
}

void noteNew(sqlite3_context* context, int count, sqlite3_value** values) {
    const auto table = tableToNote(journalOf(context), values[0]);
    if (!table) return;
    const Values row = Values(values, static_cast<std::size_t>(count)).subspan(1);
    journalOf(context).note(keyedChange(RowChangeKind::New, *table, row));
}

void noteChanged(sqlite3_context* context, int count, sqlite3_value** values) {
    const auto table = tableToNote(journalOf(context), values[0]);
    if (!table) return;
    const Values both = Values(values, static_cast<std::size_t>(count)).subspan(1);
    const Values before = both.first(both.size() / 2);
    const Values after = both.subspan(both.size() / 2);
    RowChange change = keyedChange(RowChangeKind::Changed, *table, after);
    for (std::size_t i = 0; i < before.size(); ++i) {
        if (!isSame(before[i], after[i])) change.before.emplace_back(i, rowValue(before[i]));
    }
    if (!change.before.empty()) journalOf(context).note(change);
}

void noteDropped(sqlite3_context* context, int count, sqlite3_value** values) {
    const auto table = tableToNote(journalOf(context), values[0]);
    if (!table) return;
    RowChange change;
    change.kind = RowChangeKind::Dropped;
    change.table = *table;
    for (sqlite3_value* const value : Values(values, static_cast<std::size_t>(count)).subspan(1)) {
        change.values.push_back(rowValue(value));
    }
    journalOf(context).note(change);
}

Result<void> insertParts(Connection& connection, std::int64_t action, std::string_view changes) {
    for (; !changes.empty(); changes.remove_prefix(std::min(kPartBytes, changes.size()))) {
        const std::string_view part = changes.substr(0, kPartBytes);
        const auto* const bytes =
            static_cast<const std::uint8_t*>(static_cast<const void*>(part.data()));
        PANTILE_RETURN_IF_ERROR(run(connection,
                                    "INSERT INTO action_changes (action_id, body) VALUES (?1, ?2)",
                                    {action, std::span(bytes, part.size())}));
    }
    return {};
}

/// Nothing up to this action can be undone from now on.
Result<void> makeFinal(Connection& connection, std::int64_t upTo) {
    PANTILE_RETURN_IF_ERROR(
        run(connection, "DELETE FROM action_changes WHERE action_id <= ?1", {upTo}));
    PANTILE_RETURN_IF_ERROR(
        run(connection, "UPDATE actions SET state = ?2, bytes = 0 WHERE id <= ?1 AND state <> ?2",
            {upTo, static_cast<std::int64_t>(ActionState::DoneForGood)}));
    return {};
}

/// The newest action of which all bytes, with those of newer ones, are too many; but the newest
/// itself only if it is too long alone.
Result<std::int64_t> lastTooMuch(Connection& connection) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto found,
        findNumber(connection,
                   "SELECT max(id) FROM (SELECT id, bytes, sum(bytes) OVER (ORDER BY id DESC) AS "
                   "many FROM actions) WHERE many > ?1 AND id < (SELECT max(id) FROM actions) "
                   "AND bytes > 0 OR bytes > ?2",
                   {kMostActionBytes, kMostBytesOfAnAction}));
    return found.value_or(0);
}

Result<void> keepNewest(Connection& connection) {
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t bytes,
                             connection.number("SELECT ifnull(sum(bytes), 0) FROM actions"));
    if (bytes > kMostActionBytes) {
        PANTILE_ASSIGN_OR_RETURN(const std::int64_t upTo, lastTooMuch(connection));
        PANTILE_RETURN_IF_ERROR(makeFinal(connection, upTo));
    }
    PANTILE_RETURN_IF_ERROR(run(connection,
                                "DELETE FROM actions WHERE id <= (SELECT id FROM actions ORDER BY "
                                "id DESC LIMIT 1 OFFSET ?1)",
                                {kMostActionsKept}));
    return {};
}

}  // namespace

void ActionJournal::note(const RowChange& change) {
    if (!isTooLong()) packChange(m_changes, change);
}

bool ActionJournal::isTooLong() const {
    return m_changes.size() > static_cast<std::size_t>(kMostBytesOfAnAction);
}

void ActionJournal::name(std::string what) {
    if (m_name.empty()) m_name = std::move(what);
}

void ActionJournal::beginAction(std::string what) {
    m_spansTransactions = true;
    m_spanName = std::move(what);
    m_spanId = 0;
}

void ActionJournal::endAction() {
    m_spansTransactions = false;
}

std::string ActionJournal::take() {
    for (std::size_t& mark : m_marks) mark = 0;
    return std::exchange(m_changes, {});
}

void ActionJournal::takeBack() {
    m_changes.resize(std::min(m_changes.size(), m_marks.back()));
    m_marks.pop_back();
}

void ActionJournal::clear() {
    m_changes.clear();
    m_marks.clear();
    m_name.clear();
    m_destroys = false;
}

/// The row of this transaction's action: that of those before it, where nothing was done in
/// between.
Result<std::int64_t> ActionJournal::actionToWrite(Connection& connection) {
    if (m_spansTransactions && m_spanId != 0) {
        PANTILE_ASSIGN_OR_RETURN(
            const auto newest,
            findNumber(connection, "SELECT max(id) FROM actions WHERE state = ?1",
                       {static_cast<std::int64_t>(ActionState::Done)}));
        PANTILE_ASSIGN_OR_RETURN(const std::int64_t last,
                                 connection.number("SELECT ifnull(max(id), 0) FROM actions"));
        if (newest == m_spanId && last == m_spanId) return m_spanId;
    }
    std::string what = m_spansTransactions ? m_spanName : m_name;
    if (what.empty()) what = "Change the library";
    PANTILE_RETURN_IF_ERROR(
        run(connection, "INSERT INTO actions (at, what, state, bytes) VALUES (?1, ?2, ?3, 0)",
            {m_now(), std::string_view(what), static_cast<std::int64_t>(ActionState::Done)}));
    const std::int64_t id = connection.lastInsertedId();
    if (m_spansTransactions) m_spanId = id;
    return id;
}

Result<void> ActionJournal::write(Connection& connection) {
    if (m_changes.empty()) return {};
    // What was undone cannot be done again behind something new.
    PANTILE_RETURN_IF_ERROR(run(connection, "DELETE FROM actions WHERE state = ?1",
                                {static_cast<std::int64_t>(ActionState::Undone)}));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t action, actionToWrite(connection));
    if (m_destroys || isTooLong()) return makeFinal(connection, action);
    PANTILE_RETURN_IF_ERROR(insertParts(connection, action, m_changes));
    PANTILE_RETURN_IF_ERROR(run(connection, "UPDATE actions SET bytes = bytes + ?2 WHERE id = ?1",
                                {action, std::ssize(m_changes)}));
    return keepNewest(connection);
}

Result<void> storeChanges(Connection& connection, std::int64_t action, std::string_view changes) {
    PANTILE_RETURN_IF_ERROR(
        run(connection, "DELETE FROM action_changes WHERE action_id = ?1", {action}));
    PANTILE_RETURN_IF_ERROR(insertParts(connection, action, changes));
    PANTILE_RETURN_IF_ERROR(run(connection, "UPDATE actions SET bytes = ?2 WHERE id = ?1",
                                {action, static_cast<std::int64_t>(changes.size())}));
    return {};
}

Result<void> addNoteFunctions(Connection& connection) {
    using Function = void (*)(sqlite3_context*, int, sqlite3_value**);
    constexpr std::array<std::pair<const char*, Function>, 3> kFunctions = {
        {{"note_new", noteNew}, {"note_changed", noteChanged}, {"note_dropped", noteDropped}}};
    for (const auto& [name, function] : kFunctions) {
        const int code = sqlite3_create_function_v2(
            connection.handle(), name, -1, SQLITE_UTF8 | SQLITE_INNOCUOUS,
            &connection.actionJournal(), function, nullptr, nullptr, nullptr);
        if (code != SQLITE_OK) return connection.error(code);
    }
    return {};
}

}  // namespace pantile::catalogue
