#include "catalogue/migrations.h"

#include <string>

#include "catalogue/file_copy.h"
#include "catalogue/statement.h"
#include "catalogue/transaction.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

Result<void> checkReferences(Connection& connection) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto broken, allTexts(connection, "SELECT \"table\" FROM pragma_foreign_key_check"));
    if (broken.empty()) return {};
    return Error{ErrorKind::Corrupt, "rows of the table " + broken.front() + " point nowhere",
                 "run the check with the program that made the library"};
}

/// False if another program has brought the database this far in the meantime.
Result<bool> applyOne(Connection& connection, const Migration& migration) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, Transaction::begin(connection));
    PANTILE_ASSIGN_OR_RETURN(const auto version, connection.number("PRAGMA user_version"));
    if (version >= migration.version) return false;
    PANTILE_RETURN_IF_ERROR(connection.execute(std::string(migration.sql)));
    PANTILE_RETURN_IF_ERROR(checkReferences(connection));
    PANTILE_RETURN_IF_ERROR(
        connection.execute("PRAGMA application_id=" + std::to_string(kApplicationId) +
                           "; PRAGMA user_version=" + std::to_string(migration.version)));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return true;
}

Result<MigrationReport> applyAll(Connection& connection, std::span<const Migration> migrations) {
    MigrationReport report;
    for (const Migration& migration : migrations) {
        PANTILE_ASSIGN_OR_RETURN(const bool applied, applyOne(connection, migration));
        if (applied && migration.version == 1) report.created = true;
    }
    return report;
}

}  // namespace

Error newerVersionError(std::int64_t version, int newest) {
    return {ErrorKind::Unsupported,
            "the library has version " + std::to_string(version) +
                ", and this program knows versions up to " + std::to_string(newest),
            "use a newer version of this program"};
}

Result<void> checkIsLibrary(Connection& connection, std::span<const Migration> migrations) {
    // Of one moment: another program may be making the library just now.
    PANTILE_ASSIGN_OR_RETURN(const Transaction reading, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(const auto application, connection.number("PRAGMA application_id"));
    PANTILE_ASSIGN_OR_RETURN(const auto version, connection.number("PRAGMA user_version"));
    PANTILE_ASSIGN_OR_RETURN(const auto objects,
                             connection.number("SELECT count(*) FROM sqlite_schema"));
    const bool blank = application == 0 && version == 0 && objects == 0;
    if (!blank && application != kApplicationId) {
        return Error{ErrorKind::InvalidInput, "this SQLite file is no Pantile library",
                     "give the path of a library made by this program"};
    }
    const auto newest = migrations.back().version;
    if (version > newest) return newerVersionError(version, newest);
    if (!blank && version < 1) {
        return Error{ErrorKind::Corrupt,
                     "the library says that it has version " + std::to_string(version),
                     "restore a backup"};
    }
    return {};
}

Result<MigrationReport> migrate(Connection& connection, std::span<const Migration> migrations) {
    PANTILE_RETURN_IF_ERROR(checkIsLibrary(connection, migrations));
    PANTILE_ASSIGN_OR_RETURN(const auto version, connection.number("PRAGMA user_version"));
    if (version == migrations.back().version) return MigrationReport{};

    std::optional<std::filesystem::path> backup;
    if (version > 0 && !connection.path().empty()) {
        backup = freeNameBeside(connection.path(), "version-" + std::to_string(version));
        PANTILE_RETURN_IF_ERROR(copyToNewFile(connection, *backup));
    }
    // A step that rebuilds a table drops rows that others point to, for a moment. SQLite allows
    // that only with the check switched off from outside the transaction; applyOne checks instead.
    PANTILE_RETURN_IF_ERROR(connection.execute("PRAGMA foreign_keys=OFF"));
    Result<MigrationReport> report = applyAll(connection, migrations);
    PANTILE_RETURN_IF_ERROR(connection.execute("PRAGMA foreign_keys=ON"));
    if (report) report->backup = backup;
    return report;
}

}  // namespace pantile::catalogue
