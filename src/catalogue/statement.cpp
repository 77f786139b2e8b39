#include "catalogue/statement.h"

#include <limits>

#include <sqlite3.h>

#include "catalogue/sqlite_error.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

Error misuse(const std::string& what) {
    return {ErrorKind::Internal, what, "report this as a fault of the program"};
}

}  // namespace

Result<Statement> Statement::prepare(Connection& connection, std::string_view sql,
                                     std::initializer_list<BoundValue> values) {
    if (sqlite3_stmt* const kept = connection.takeStatement(sql)) {
        Statement statement(connection, kept);
        if (values.size() > 0) PANTILE_RETURN_IF_ERROR(statement.bind(values));
        return statement;
    }
    sqlite3_stmt* handle = nullptr;
    const char* tail = nullptr;
    const int code = sqlite3_prepare_v2(connection.handle(), sql.data(),
                                        static_cast<int>(sql.size()), &handle, &tail);
    Statement statement(connection, handle);
    if (code != SQLITE_OK) return connection.error(code);
    const std::string_view rest = sql.substr(static_cast<std::size_t>(tail - sql.data()));
    if (handle == nullptr || rest.find_first_not_of(" \n\t;") != std::string_view::npos) {
        return misuse("one statement was expected");
    }
    if (values.size() > 0) PANTILE_RETURN_IF_ERROR(statement.bind(values));
    return statement;
}

Result<void> Statement::bindOne(int index, const BoundValue& value) {
    sqlite3_stmt* s = m_statement.get();
    int code = SQLITE_OK;
    if (const auto* number = std::get_if<std::int64_t>(&value)) {
        code = sqlite3_bind_int64(s, index, *number);
    } else if (const auto* text = std::get_if<std::string_view>(&value)) {
        // An empty view may have no address, which SQLite would take for NULL.
        const char* data = text->empty() ? "" : text->data();
        code = sqlite3_bind_text64(s, index, data, text->size(), SQLITE_TRANSIENT, SQLITE_UTF8);
    } else if (const auto* bytes = std::get_if<std::span<const std::uint8_t>>(&value)) {
        code = bytes->empty()
                   ? sqlite3_bind_zeroblob(s, index, 0)
                   : sqlite3_bind_blob64(s, index, bytes->data(), bytes->size(), SQLITE_TRANSIENT);
    } else if (const auto* bound = std::get_if<BoundObject>(&value)) {
        code = sqlite3_bind_pointer(s, index, bound->object, bound->type, nullptr);
    } else {
        code = sqlite3_bind_null(s, index);
    }
    if (code != SQLITE_OK) return m_connection->error(code);
    return {};
}

Result<void> Statement::bind(std::span<const BoundValue> values) {
    sqlite3_reset(m_statement.get());
    m_badColumn.reset();
    const int expected = sqlite3_bind_parameter_count(m_statement.get());
    if (static_cast<std::size_t>(expected) != values.size()) {
        return misuse("a statement takes " + std::to_string(expected) + " values, not " +
                      std::to_string(values.size()));
    }
    int index = 1;
    for (const BoundValue& value : values) PANTILE_RETURN_IF_ERROR(bindOne(index++, value));
    return {};
}

Result<void> Statement::bind(std::initializer_list<BoundValue> values) {
    return bind(std::span<const BoundValue>(values.begin(), values.size()));
}

Result<bool> Statement::step() {
    PANTILE_RETURN_IF_ERROR(columnCheck());
    const int code = sqlite3_step(m_statement.get());
    if (code == SQLITE_ROW) return true;
    if (code == SQLITE_DONE) {
        sqlite3_reset(m_statement.get());
        return false;
    }
    const Error error = m_connection->error(code);
    sqlite3_reset(m_statement.get());
    return error;
}

Result<std::int64_t> Statement::run() {
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, step());
        if (!more) return m_connection->changes();
    }
}

bool Statement::columnHasType(int column, int type) {
    if (sqlite3_column_type(m_statement.get(), column) == type) return true;
    const char* name = sqlite3_column_name(m_statement.get(), column);
    m_badColumn = name != nullptr ? name : "?";
    return false;
}

std::int64_t Statement::integer(int column) {
    if (!columnHasType(column, SQLITE_INTEGER)) return 0;
    return sqlite3_column_int64(m_statement.get(), column);
}

int Statement::smallInteger(int column) {
    const std::int64_t value = integer(column);
    if (value < std::numeric_limits<int>::min() || value > std::numeric_limits<int>::max()) {
        m_badColumn = sqlite3_column_name(m_statement.get(), column);
        return 0;
    }
    return static_cast<int>(value);
}

std::string Statement::text(int column) {
    if (!columnHasType(column, SQLITE_TEXT)) return {};
    const auto* data = static_cast<const char*>(
        static_cast<const void*>(sqlite3_column_text(m_statement.get(), column)));
    if (data == nullptr) return {};
    return {data, static_cast<std::size_t>(sqlite3_column_bytes(m_statement.get(), column))};
}

std::string_view Statement::bytesView(int column) {
    if (!columnHasType(column, SQLITE_BLOB)) return {};
    const auto* data = static_cast<const char*>(sqlite3_column_blob(m_statement.get(), column));
    if (data == nullptr) return {};
    return {data, static_cast<std::size_t>(sqlite3_column_bytes(m_statement.get(), column))};
}

std::vector<std::uint8_t> Statement::blob(int column) {
    const std::string_view bytes = bytesView(column);
    return {bytes.begin(), bytes.end()};
}

bool Statement::isNull(int column) const {
    return sqlite3_column_type(m_statement.get(), column) == SQLITE_NULL;
}

std::optional<std::int64_t> Statement::integerOrNull(int column) {
    if (isNull(column)) return std::nullopt;
    return integer(column);
}

std::optional<std::string> Statement::textOrNull(int column) {
    if (isNull(column)) return std::nullopt;
    return text(column);
}

Result<void> Statement::columnCheck() const {
    if (m_badColumn) return corruptError("the column '" + *m_badColumn + "' of the library");
    return {};
}

Result<std::int64_t> run(Connection& connection, std::string_view sql,
                         std::initializer_list<BoundValue> values) {
    PANTILE_ASSIGN_OR_RETURN(Statement statement, Statement::prepare(connection, sql, values));
    return statement.run();
}

Result<std::optional<std::int64_t>> findNumber(Connection& connection, std::string_view sql,
                                               std::initializer_list<BoundValue> values) {
    PANTILE_ASSIGN_OR_RETURN(Statement statement, Statement::prepare(connection, sql, values));
    PANTILE_ASSIGN_OR_RETURN(const bool found, statement.step());
    if (!found) return std::optional<std::int64_t>();
    const std::int64_t number = statement.integer(0);
    PANTILE_RETURN_IF_ERROR(statement.columnCheck());
    return std::optional<std::int64_t>(number);
}

Result<std::vector<std::int64_t>> allNumbers(Connection& connection, std::string_view sql,
                                             std::initializer_list<BoundValue> values) {
    PANTILE_ASSIGN_OR_RETURN(Statement statement, Statement::prepare(connection, sql, values));
    std::vector<std::int64_t> numbers;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, statement.step());
        if (!more) return numbers;
        numbers.push_back(statement.integer(0));
    }
}

Result<std::vector<std::string>> allTexts(Connection& connection, std::string_view sql,
                                          std::initializer_list<BoundValue> values) {
    PANTILE_ASSIGN_OR_RETURN(Statement statement, Statement::prepare(connection, sql, values));
    std::vector<std::string> texts;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, statement.step());
        if (!more) return texts;
        texts.push_back(statement.text(0));
    }
}

}  // namespace pantile::catalogue
