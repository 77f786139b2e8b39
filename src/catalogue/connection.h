#pragma once

// Connection: one open SQLite database file. What the rest of catalogue stands on; nothing above
// catalogue uses it.

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>

#include "catalogue/open_files.h"
#include "core/result.h"

struct sqlite3;
struct sqlite3_stmt;

namespace pantile::catalogue {

class ActionJournal;
class IndexChanges;

enum class FileMode {
    ReadWrite,
    ReadWriteOrCreate,
    ReadOnly,
    /// Read only, taking for granted that nobody writes: the one way to read a file in a folder in
    /// which SQLite may not make its side files.
    Immutable,
};

/// Threads: one connection for each thread.
class Connection {
public:
    /// Foreign keys are on, the schema is not trusted, rows are limited in size.
    /// Errors: Io if the file cannot be opened so; with ReadWrite also if it only could be read.
    static core::Result<std::unique_ptr<Connection>> open(const std::filesystem::path& path,
                                                          FileMode mode,
                                                          std::chrono::milliseconds busyTimeout);

    /// An empty database that is gone with its connection.
    static core::Result<std::unique_ptr<Connection>> inMemory();

    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;
    ~Connection();

    /// Runs statements without values, one after another.
    core::Result<void> execute(const std::string& sql);

    /// The whole number that `sql` gives in its first row. Errors: Corrupt if it gives none.
    core::Result<std::int64_t> number(std::string_view sql);

    /// What a failed call's result code means to the user. Of use right after that call only.
    core::Error error(int code) const;

    /// Whether a transaction is open.
    bool inTransaction() const;

    /// Rows changed by the last statement.
    std::int64_t changes() const;

    std::int64_t lastInsertedId() const;

    /// Keeps the last close from copying the write-ahead log into the file.
    core::Result<void> setCheckpointOnClose(bool on);  // NOLINT: an on-off switch of SQLite

    const std::filesystem::path& path() const { return m_path; }

    sqlite3* handle() const { return m_handle.get(); }

    /// Changes that the indexes of words and facts do not know yet. Kept by triggers and
    /// Transaction.
    IndexChanges& indexChanges() { return *m_indexChanges; }

    /// What the open transaction did. Kept by Transaction.
    ActionJournal& actionJournal() { return *m_actionJournal; }

    /// A statement compiled from `sql` earlier and given back, or nothing.
    sqlite3_stmt* takeStatement(std::string_view sql);

    /// Keeps a statement for the next who needs the same.
    void giveBack(sqlite3_stmt* statement);

    /// Transactions now open on it, one inside the other. Kept by Transaction.
    int depth = 0;

private:
    struct Closer {
        void operator()(sqlite3* handle) const;
    };

    struct Finalizer {
        void operator()(sqlite3_stmt* statement) const;
    };

    Connection(std::filesystem::path path, sqlite3* handle);

    static core::Result<std::unique_ptr<Connection>> openNamed(const std::filesystem::path& path,
                                                               const std::string& name, int flags);

    std::filesystem::path m_path;
    OpenFile m_openFile;  // Before the handle, so that it lasts longer.
    // Functions of the handle write into these.
    std::unique_ptr<IndexChanges> m_indexChanges;
    std::unique_ptr<ActionJournal> m_actionJournal;
    std::unique_ptr<sqlite3, Closer> m_handle;
    std::unordered_map<std::string, std::unique_ptr<sqlite3_stmt, Finalizer>> m_kept;
};

}  // namespace pantile::catalogue
