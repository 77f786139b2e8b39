#include "catalogue/connection.h"

#include <cctype>

#include <sqlite3.h>

#include "catalogue/action_journal.h"
#include "catalogue/index_changes.h"
#include "catalogue/seal.h"
#include "catalogue/sqlite_error.h"
#include "catalogue/statement.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::Result;

// The largest honest row is a grid of 64 KiB with its words; a forged file gets no further.
constexpr int kMaxRowBytes = 1 << 24;

// A name that SQLite reads as a URI: '?' and '#' would end the path.
std::string immutableUri(const std::filesystem::path& path) {
    constexpr std::string_view kHex = "0123456789ABCDEF";
    std::string uri = "file:";
    for (const char c : std::filesystem::absolute(path).string()) {
        const auto byte = static_cast<unsigned char>(c);
        if (std::isalnum(byte) != 0 || c == '/' || c == '.' || c == '-' || c == '_') {
            uri += c;
        } else {
            uri += '%';
            uri += kHex[byte >> 4U];
            uri += kHex[byte & 15U];
        }
    }
    return uri + "?immutable=1";
}

// A relative name must not look like a URI or an option to SQLite.
std::string plainName(const std::filesystem::path& path) {
    return std::filesystem::absolute(path).string();
}

int openFlags(FileMode mode) {
    switch (mode) {
        case FileMode::ReadWrite:
            return SQLITE_OPEN_READWRITE;
        case FileMode::ReadWriteOrCreate:
            return SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
        case FileMode::ReadOnly:
            return SQLITE_OPEN_READONLY;
        case FileMode::Immutable:
            return SQLITE_OPEN_READONLY | SQLITE_OPEN_URI;
    }
    return SQLITE_OPEN_READONLY;
}

}  // namespace

void Connection::Closer::operator()(sqlite3* handle) const {
    sqlite3_close_v2(handle);
}

void Connection::Finalizer::operator()(sqlite3_stmt* statement) const {
    sqlite3_finalize(statement);
}

Connection::Connection(std::filesystem::path path, sqlite3* handle)
    : m_path(std::move(path)),
      m_openFile(m_path),
      m_indexChanges(std::make_unique<IndexChanges>()),
      m_actionJournal(std::make_unique<ActionJournal>()),
      m_handle(handle) {}

Connection::~Connection() = default;

sqlite3_stmt* Connection::takeStatement(std::string_view sql) {
    const auto found = m_kept.find(std::string(sql));
    if (found == m_kept.end()) return nullptr;
    sqlite3_stmt* const statement = found->second.release();
    m_kept.erase(found);
    return statement;
}

void Connection::giveBack(sqlite3_stmt* statement) {
    // Queries differ; what changes the library is a few dozen.
    constexpr std::size_t kMostKept = 150;
    sqlite3_reset(statement);
    sqlite3_clear_bindings(statement);
    if (m_kept.size() >= kMostKept) m_kept.clear();
    m_kept[sqlite3_sql(statement)].reset(statement);
}

Result<std::unique_ptr<Connection>> Connection::openNamed(const std::filesystem::path& path,
                                                          const std::string& name, int flags) {
    sqlite3* handle = nullptr;
    const int code = sqlite3_open_v2(name.c_str(), &handle,
                                     flags | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE, nullptr);
    // The handle is made even on failure, and must be closed then too.
    std::unique_ptr<Connection> connection(new Connection(path, handle));
    if (code != SQLITE_OK) return sqliteError(handle, code);
    sqlite3_limit(handle, SQLITE_LIMIT_LENGTH, kMaxRowBytes);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    // The triggers that seal rows also see those that a REPLACE drops.
    PANTILE_RETURN_IF_ERROR(connection->execute(
        "PRAGMA foreign_keys=ON; PRAGMA trusted_schema=OFF; PRAGMA cell_size_check=ON; "
        "PRAGMA recursive_triggers=ON;"));
    PANTILE_RETURN_IF_ERROR(addSealFunction(*connection));
    PANTILE_RETURN_IF_ERROR(addOutdateFunction(*connection, connection->indexChanges()));
    PANTILE_RETURN_IF_ERROR(addNoteFunctions(*connection));
    return connection;
}

Result<std::unique_ptr<Connection>> Connection::open(const std::filesystem::path& path,
                                                     FileMode mode,
                                                     std::chrono::milliseconds busyTimeout) {
    const std::string name = mode == FileMode::Immutable ? immutableUri(path) : plainName(path);
    PANTILE_ASSIGN_OR_RETURN(auto connection, openNamed(path, name, openFlags(mode)));
    sqlite3_busy_timeout(connection->handle(), static_cast<int>(busyTimeout.count()));
    const bool forWriting = mode == FileMode::ReadWrite || mode == FileMode::ReadWriteOrCreate;
    // SQLite opens a file that may not be written for reading, without a word.
    if (forWriting && sqlite3_db_readonly(connection->handle(), "main") == 1) {
        return readOnlyError();
    }
    return connection;
}

Result<std::unique_ptr<Connection>> Connection::inMemory() {
    return openNamed({}, ":memory:", SQLITE_OPEN_READWRITE);
}

Result<void> Connection::execute(const std::string& sql) {
    const int code = sqlite3_exec(handle(), sql.c_str(), nullptr, nullptr, nullptr);
    if (code != SQLITE_OK) return error(code);
    return {};
}

Result<std::int64_t> Connection::number(std::string_view sql) {
    PANTILE_ASSIGN_OR_RETURN(const std::optional<std::int64_t> found, findNumber(*this, sql));
    if (!found) return corruptError("the library");
    return *found;
}

Error Connection::error(int code) const {
    return sqliteError(handle(), code);
}

bool Connection::inTransaction() const {
    return sqlite3_get_autocommit(handle()) == 0;
}

std::int64_t Connection::changes() const {
    return sqlite3_changes64(handle());
}

std::int64_t Connection::lastInsertedId() const {
    return sqlite3_last_insert_rowid(handle());
}

Result<void> Connection::setCheckpointOnClose(bool on) {
    const int code =
        sqlite3_db_config(handle(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, on ? 0 : 1, nullptr);
    if (code != SQLITE_OK) return error(code);
    return {};
}

}  // namespace pantile::catalogue
