#pragma once

// Transaction: all or nothing. Inside another one it is a savepoint, so that a failed part can be
// undone alone.

#include "catalogue/connection.h"
#include "core/result.h"

namespace pantile::catalogue {

class Transaction {
public:
    /// Takes the write lock at once, so that a change never fails half-way for want of it.
    /// Errors: Busy if another program held the lock for the whole of the busy timeout; Io if
    /// SQLite gave up the transaction around it, as it does on a full disk.
    static core::Result<Transaction> begin(Connection& connection);

    /// For reading alone: everything read until it ends is of one moment.
    static core::Result<Transaction> beginReading(Connection& connection);

    Transaction(Transaction&& other) noexcept;
    Transaction& operator=(Transaction&&) = delete;
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;

    /// Rolls back unless committed.
    ~Transaction();

    /// Errors: as Connection::error; then everything is rolled back.
    core::Result<void> commit();

private:
    Transaction(Connection& connection, int depth);

    static core::Result<Transaction> beginAs(Connection& connection, const char* outermost);
    void rollBack();

    Connection* m_connection;
    int m_depth;  ///< 1 for the outermost.
};

}  // namespace pantile::catalogue
