#include "catalogue/migrations.h"

#include <string>

#include "catalogue/file_copy.h"
#include "catalogue/sqlite_error.h"
#include "catalogue/statement.h"
#include "catalogue/transaction.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

constexpr std::size_t kCopiesKept = 5;

Result<void> checkReferences(Connection& connection) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto broken, allTexts(connection, "SELECT \"table\" FROM pragma_foreign_key_check"));
    if (broken.empty()) return {};
    return Error{ErrorKind::Corrupt, "rows of the table " + broken.front() + " point nowhere",
                 "run the check with the program that made the library"};
}

Result<void> applyOne(Connection& connection, const Migration& migration) {
    PANTILE_RETURN_IF_ERROR(connection.execute(std::string(migration.sql)));
    PANTILE_RETURN_IF_ERROR(checkReferences(connection));
    return connection.execute("PRAGMA application_id=" + std::to_string(kApplicationId) +
                              "; PRAGMA user_version=" + std::to_string(migration.version));
}

/// A copy of the library as it was before the transaction that is open on `connection`.
Result<std::filesystem::path> copyBeside(const Connection& connection, std::int64_t version) {
    // The connection that writes cannot be copied from; beside it another may read.
    PANTILE_ASSIGN_OR_RETURN(
        const auto reading,
        Connection::open(connection.path(), FileMode::ReadOnly, std::chrono::milliseconds(0)));
    auto path = freeNameBeside(connection.path(), "version-" + std::to_string(version));
    PANTILE_RETURN_IF_ERROR(copyToNewFile(*reading, path));
    return path;
}

/// Damage is not carried into a new version: what is refused stays as it was.
Result<void> checkIsSound(Connection& connection) {
    PANTILE_ASSIGN_OR_RETURN(const auto lines, allTexts(connection, "PRAGMA quick_check(1)"));
    if (lines.size() == 1 && lines.front() == "ok") return {};
    return corruptError("the library");
}

/// All steps are one transaction: another program sees the library as it was, or as it has to be.
Result<MigrationReport> applyAll(Connection& connection, std::span<const Migration> migrations) {
    MigrationReport report;
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, Transaction::begin(connection));
    // Another program may have done it in the meantime.
    PANTILE_ASSIGN_OR_RETURN(const auto version, connection.number("PRAGMA user_version"));
    if (version >= migrations.back().version) return report;
    report.created = version == 0;
    if (!report.created) PANTILE_RETURN_IF_ERROR(checkIsSound(connection));
    if (!report.created && !connection.path().empty()) {
        PANTILE_ASSIGN_OR_RETURN(report.backup, copyBeside(connection, version));
    }
    for (const Migration& migration : migrations) {
        if (migration.version <= version) continue;
        PANTILE_RETURN_IF_ERROR(applyOne(connection, migration));
    }
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    if (report.backup) keepNewestBeside(connection.path(), "version-", kCopiesKept);
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

    // A step that rebuilds a table drops rows that others point to, for a moment. SQLite allows
    // that only with the check switched off from outside the transaction; applyOne checks instead.
    PANTILE_RETURN_IF_ERROR(connection.execute("PRAGMA foreign_keys=OFF"));
    Result<MigrationReport> report = applyAll(connection, migrations);
    PANTILE_RETURN_IF_ERROR(connection.execute("PRAGMA foreign_keys=ON"));
    return report;
}

}  // namespace pantile::catalogue
