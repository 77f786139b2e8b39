#include "catalogue/library.h"

#include <system_error>
#include <thread>

#include "catalogue/action_journal.h"
#include "catalogue/file_header.h"
#include "catalogue/migrations.h"
#include "catalogue/sql_functions.h"
#include "catalogue/statement.h"
#include "catalogue/word_index.h"

namespace pantile::catalogue {
namespace {

namespace fs = std::filesystem;
using core::Error;
using core::ErrorKind;
using core::Result;

std::int64_t systemNow() {
    return std::chrono::duration_cast<std::chrono::seconds>(
               std::chrono::system_clock::now().time_since_epoch())
        .count();
}

int newestVersion() {
    return embeddedMigrations().back().version;
}

Error missing() {
    return {ErrorKind::NotFound, "there is no library here",
            "check the path, or add something to make a new library"};
}

Result<void> makeFolder(const fs::path& path) {
    const fs::path folder = fs::absolute(path).parent_path();
    std::error_code failure;
    fs::create_directories(folder, failure);
    if (!failure) return {};
    return Error{ErrorKind::Io, "the folder cannot be made: " + failure.message(),
                 "choose another place for the library"};
}

// What cannot be written must not need it.
Result<void> checkIsCurrent(Connection& connection, const TextFolding& folding) {
    const std::string advice = "open it once where it may be written";
    PANTILE_ASSIGN_OR_RETURN(const auto version, connection.number("PRAGMA user_version"));
    if (version != newestVersion()) {
        return Error{ErrorKind::Unsupported,
                     "the library has version " + std::to_string(version) +
                         " and must be brought to version " + std::to_string(newestVersion()),
                     advice};
    }
    PANTILE_ASSIGN_OR_RETURN(const bool isFolded, isFoldedBy(connection, folding));
    if (isFolded) return {};
    return Error{ErrorKind::Unsupported,
                 "the library's words must be indexed anew before they can be searched", advice};
}

// Changing the journal needs the file alone, and SQLite does not wait for that by itself: two
// programs that make the same library at once meet here.
Result<void> useWriteAheadLog(Connection& connection, std::chrono::milliseconds timeout) {
    constexpr std::chrono::milliseconds kPause{5};
    const auto deadline = std::chrono::steady_clock::now() + timeout;
    for (;;) {
        Result<void> done = connection.execute("PRAGMA journal_mode=WAL");
        const bool waits = !done && done.error().kind == ErrorKind::Busy;
        if (!waits || std::chrono::steady_clock::now() >= deadline) return done;
        std::this_thread::sleep_for(kPause);
    }
}

/// Makes a checked library ready for work.
Result<void> prepareFor(Connection& connection, const TextFolding& folding) {
    // 256 MiB, taken as they are needed: what is searched over and over is read once.
    PANTILE_RETURN_IF_ERROR(connection.execute("PRAGMA cache_size=-262144"));
    return addSqlFunctions(connection, folding);
}

}  // namespace

Result<Library> Library::openReadWrite(const fs::path& path, const OpenOptions& options) {
    PANTILE_ASSIGN_OR_RETURN(const HeaderState state, readFileHeader(path, newestVersion()));
    if (state == HeaderState::Missing) {
        if (options.create == OpenOptions::Create::Never) return missing();
        PANTILE_RETURN_IF_ERROR(makeFolder(path));
    }
    Library library;
    PANTILE_ASSIGN_OR_RETURN(
        library.m_connection,
        Connection::open(
            path, state == HeaderState::Missing ? FileMode::ReadWriteOrCreate : FileMode::ReadWrite,
            options.busyTimeout));
    Connection& connection = *library.m_connection;
    PANTILE_RETURN_IF_ERROR(connection.setCheckpointOnClose(false));
    PANTILE_RETURN_IF_ERROR(checkIsLibrary(connection, embeddedMigrations()));
    PANTILE_RETURN_IF_ERROR(connection.setCheckpointOnClose(true));
    PANTILE_RETURN_IF_ERROR(useWriteAheadLog(connection, options.busyTimeout));
    // What is added in large numbers changes the same pages over and over: 16 MiB of them wait in
    // the log before they are copied into the file.
    PANTILE_RETURN_IF_ERROR(
        connection.execute("PRAGMA synchronous=FULL; PRAGMA wal_autocheckpoint=4000"));
    PANTILE_ASSIGN_OR_RETURN(const MigrationReport report,
                             migrate(connection, embeddedMigrations()));
    library.m_wasCreated = report.created;
    PANTILE_RETURN_IF_ERROR(prepareFor(connection, options.folding));
    PANTILE_RETURN_IF_ERROR(foldLibrary(connection, options.folding));
    return library;
}

Result<Library> Library::openReadOnly(const fs::path& path, const OpenOptions& options) {
    PANTILE_ASSIGN_OR_RETURN(const HeaderState state, readFileHeader(path, newestVersion()));
    if (state == HeaderState::Missing) return missing();
    Library library;
    library.m_isReadOnly = true;
    PANTILE_ASSIGN_OR_RETURN(library.m_connection,
                             Connection::open(path, FileMode::ReadOnly, options.busyTimeout));
    Result<void> checked = checkIsLibrary(*library.m_connection, embeddedMigrations());
    if (!checked && checked.error().kind == ErrorKind::Io) {
        // Without its side files a library can be read only if the log holds nothing.
        std::error_code ignored;
        const auto logBytes = fs::file_size(path.string() + "-wal", ignored);
        if (!ignored && logBytes > 0) {
            return Error{ErrorKind::Io,
                         "the library was not closed properly, and its folder is read-only",
                         "copy the library and the files beside it to a folder you may write to"};
        }
        PANTILE_ASSIGN_OR_RETURN(library.m_connection,
                                 Connection::open(path, FileMode::Immutable, options.busyTimeout));
        checked = checkIsLibrary(*library.m_connection, embeddedMigrations());
    }
    PANTILE_RETURN_IF_ERROR(checked);
    PANTILE_RETURN_IF_ERROR(checkIsCurrent(*library.m_connection, options.folding));
    PANTILE_RETURN_IF_ERROR(prepareFor(*library.m_connection, options.folding));
    return library;
}

Result<Library> Library::open(const fs::path& path, const OpenOptions& options) {
    Result<Library> library = options.access == OpenOptions::Access::ReadOnly
                                  ? openReadOnly(path, options)
                                  : openReadWrite(path, options);
    const bool mayOnlyRead = options.access == OpenOptions::Access::WhatTheFileAllows;
    if (!library && library.error().kind == ErrorKind::Io && mayOnlyRead) {
        library = openReadOnly(path, options);
    }
    if (!library) return library.error().at(path.string());
    library->m_now = options.now ? options.now : systemNow;
    library->m_folding = options.folding;
    library->m_connection->actionJournal().start(library->m_now);
    return library;
}

Result<std::int64_t> Library::dataVersion() const {
    return m_connection->number("PRAGMA data_version");
}

}  // namespace pantile::catalogue
