#pragma once

// Migrations: the steps that bring a library's tables to the version this program works with. They
// stand in schema/NNNN_name.sql and are part of the program.

#include <cstdint>
#include <filesystem>
#include <optional>
#include <span>
#include <string_view>

#include "catalogue/connection.h"
#include "core/result.h"

namespace pantile::catalogue {

/// "PTLE" in the file's header: this database is a Pantile library. Never changed.
inline constexpr std::int32_t kApplicationId = 0x50544C45;

struct Migration {
    int version = 0;  ///< The version that it leads to; the first is 1.
    std::string_view name;
    std::string_view sql;
};

std::span<const Migration> embeddedMigrations();

core::Error newerVersionError(std::int64_t version, int newest);

/// Errors: InvalidInput if the database is not blank and not a library, Unsupported if it is of a
/// newer version than the last of `migrations`.
core::Result<void> checkIsLibrary(Connection& connection, std::span<const Migration> migrations);

struct MigrationReport {
    bool created = false;                         ///< The database was blank before.
    std::optional<std::filesystem::path> backup;  ///< Copy of an older library, made before.
};

/// Brings a blank or older database to the last version, all steps and the version number in one
/// transaction; several programs may do so at once. An older library is copied beside itself first;
/// of such copies the newest five are kept.
/// Errors: as checkIsLibrary and Connection::error; what was not finished is as before.
core::Result<MigrationReport> migrate(Connection& connection,
                                      std::span<const Migration> migrations);

}  // namespace pantile::catalogue
