#include "catalogue/transaction.h"

#include <string>
#include <utility>

#include "catalogue/action_journal.h"
#include "catalogue/index_changes.h"
#include "catalogue/statement.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

std::string savepoint(int depth) {
    return "pantile_" + std::to_string(depth);
}

// On a full disk and the like SQLite rolls back everything by itself. Going on would write each
// further change for itself, outside the transaction that its caller believes in.
Error givenUp() {
    return {ErrorKind::Io, "the whole change was undone after an earlier failure",
            "put right what failed, and start the change again"};
}

/// Compiled once, where execute() would compile each time.
Result<void> obey(Connection& connection, const std::string& sql) {
    PANTILE_RETURN_IF_ERROR(run(connection, sql));
    return {};
}

/// What is written once for all of a transaction.
Result<void> writeWhatWaits(Connection& connection) {
    PANTILE_RETURN_IF_ERROR(connection.indexChanges().write(connection));
    return connection.actionJournal().write(connection);
}

}  // namespace

Result<Transaction> Transaction::beginAs(Connection& connection, const char* outermost) {
    if (connection.depth > 0 && !connection.inTransaction()) return givenUp();
    const int depth = connection.depth + 1;
    PANTILE_RETURN_IF_ERROR(
        obey(connection, depth == 1 ? outermost : "SAVEPOINT " + savepoint(depth)));
    connection.depth = depth;
    connection.actionJournal().open();
    return Transaction(connection, depth);
}

Result<Transaction> Transaction::begin(Connection& connection) {
    return beginAs(connection, "BEGIN IMMEDIATE");
}

Result<Transaction> Transaction::beginReading(Connection& connection) {
    return beginAs(connection, "BEGIN DEFERRED");
}

Transaction::Transaction(Connection& connection, int depth)
    : m_connection(&connection), m_depth(depth) {}

Transaction::Transaction(Transaction&& other) noexcept
    : m_connection(std::exchange(other.m_connection, nullptr)), m_depth(other.m_depth) {}

Transaction::~Transaction() {
    if (m_connection != nullptr) rollBack();
}

Result<void> Transaction::commit() {
    if (!m_connection->inTransaction()) {
        rollBack();
        return givenUp();
    }
    Result<void> done = m_depth == 1 ? writeWhatWaits(*m_connection) : Result<void>();
    if (done) {
        done = obey(*m_connection, m_depth == 1 ? "COMMIT" : "RELEASE " + savepoint(m_depth));
    }
    if (!done) {
        rollBack();
        return done;
    }
    if (m_depth == 1) {
        m_connection->indexChanges().clear();
        m_connection->actionJournal().clear();
    } else {
        m_connection->actionJournal().keep();
    }
    std::exchange(m_connection, nullptr)->depth = m_depth - 1;
    return {};
}

void Transaction::rollBack() {
    Connection* connection = std::exchange(m_connection, nullptr);
    connection->depth = m_depth - 1;
    if (m_depth == 1) {
        connection->indexChanges().clear();
        connection->actionJournal().clear();
    } else {
        connection->indexChanges().takeBack();
        connection->actionJournal().takeBack();
    }
    if (!connection->inTransaction()) return;
    const std::string name = savepoint(m_depth);
    // If even this fails, SQLite undoes the change when the file is next opened.
    (void)connection->execute(m_depth == 1 ? "ROLLBACK"
                                           : "ROLLBACK TO " + name + "; RELEASE " + name);
}

}  // namespace pantile::catalogue
