#pragma once

// Statement: one prepared SQL statement. Values always travel as bound parameters.

#include <cstdint>
#include <initializer_list>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "catalogue/connection.h"
#include "core/result.h"

struct sqlite3_stmt;

namespace pantile::catalogue {

/// An object that a function of sql_functions.h works on. It tells objects apart by `type`, which
/// is a literal.
struct BoundObject {
    void* object = nullptr;
    const char* type = "";
};

/// NULL, a number, a text, bytes or an object. The text and the bytes must live until they are
/// bound, the object until the last step.
using BoundValue = std::variant<std::monostate, std::int64_t, std::string_view,
                                std::span<const std::uint8_t>, BoundObject>;

/// A value or NULL.
template <typename T>
BoundValue orNull(const std::optional<T>& value) {
    return value ? BoundValue(*value) : BoundValue();
}

/// It must not outlive its connection, which keeps the compiled form for the next of the same text.
class Statement {
public:
    /// Errors: as Connection::error; Internal if more than one statement stands in `sql`.
    static core::Result<Statement> prepare(Connection& connection, std::string_view sql,
                                           std::initializer_list<BoundValue> values = {});

    /// Starts over with other values. Errors: Internal if their number is not that of the
    /// parameters.
    core::Result<void> bind(std::span<const BoundValue> values);
    core::Result<void> bind(std::initializer_list<BoundValue> values);

    /// Goes to the next row; false at the end. Errors: as Connection::error, and as columnCheck for
    /// the row before.
    core::Result<bool> step();

    /// Steps to the end and gives the number of rows changed.
    core::Result<std::int64_t> run();

    /// Columns of the present row, from 0. One of another type than asked for, NULL too, gives an
    /// empty value and is reported by columnCheck.
    std::int64_t integer(int column);
    int smallInteger(int column);  ///< The same, and reported if outside the range of int.
    std::string text(int column);
    std::vector<std::uint8_t> blob(int column);
    std::string_view bytesView(int column);  ///< Of a blob; until the next step.

    bool isNull(int column) const;
    std::optional<std::int64_t> integerOrNull(int column);
    std::optional<std::string> textOrNull(int column);

    /// Errors: Corrupt if a column read since the last step was not what it had to be.
    core::Result<void> columnCheck() const;

private:
    struct GiverBack {
        Connection* connection;

        void operator()(sqlite3_stmt* statement) const { connection->giveBack(statement); }
    };

    Statement(Connection& connection, sqlite3_stmt* statement)
        : m_connection(&connection), m_statement(statement, GiverBack{&connection}) {}

    core::Result<void> bindOne(int index, const BoundValue& value);
    bool columnHasType(int column, int type);

    Connection* m_connection;
    std::unique_ptr<sqlite3_stmt, GiverBack> m_statement;
    std::optional<std::string> m_badColumn;
};

/// Prepares, binds and runs one statement; gives the number of rows changed.
core::Result<std::int64_t> run(Connection& connection, std::string_view sql,
                               std::initializer_list<BoundValue> values = {});

/// The first column of the first row, if there is a row. Errors: Corrupt if it is no number.
core::Result<std::optional<std::int64_t>> findNumber(Connection& connection, std::string_view sql,
                                                     std::initializer_list<BoundValue> values = {});

/// The first column of every row. Errors: Corrupt if one is no number, or no text.
core::Result<std::vector<std::int64_t>> allNumbers(Connection& connection, std::string_view sql,
                                                   std::initializer_list<BoundValue> values = {});
core::Result<std::vector<std::string>> allTexts(Connection& connection, std::string_view sql,
                                                std::initializer_list<BoundValue> values = {});

}  // namespace pantile::catalogue
