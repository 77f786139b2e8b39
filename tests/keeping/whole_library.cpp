#include "keeping/whole_library.h"

#include <string_view>
#include <system_error>

#include <gtest/gtest.h>

#include "catalogue/actions.h"
#include "catalogue/integrity.h"
#include "catalogue/library.h"
#include "catalogue/rescue_rows.h"
#include "catalogue/statement.h"
#include "support/matchers.h"
#include "tasks/files.h"
#include "tasks/text_folding.h"

namespace pantile::tests {

namespace fs = std::filesystem;
using core::Result;

namespace {

Result<std::string> wholeTable(catalogue::Connection& connection, const std::string& table) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto columns,
        allTexts(connection, "SELECT name FROM pragma_table_info(?1) ORDER BY cid",
                 {std::string_view(table)}));
    std::string values;
    for (const std::string& column : columns) {
        values += (values.empty() ? "" : " || ' ' || ") + ("quote(\"" + column + "\")");
    }
    PANTILE_ASSIGN_OR_RETURN(const auto rows, allTexts(connection, "SELECT " + values + " FROM \"" +
                                                                       table + "\" ORDER BY 1"));
    std::string text = table + '\n';
    for (const std::string& row : rows) text += "  " + row + '\n';
    return text;
}

}  // namespace

Result<std::string> wholeLibrary(catalogue::Connection& connection) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto tables,
        allTexts(connection,
                 "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' "
                 "AND name NOT LIKE 'word%' ORDER BY name"));
    std::string text;
    for (const std::string& table : tables) {
        PANTILE_ASSIGN_OR_RETURN(const std::string rows, wholeTable(connection, table));
        text += rows;
    }
    return text;
}

Result<std::string> keptRows(catalogue::Connection& connection) {
    std::string text;
    for (const catalogue::RescuedTable& table : catalogue::rescuedTables()) {
        PANTILE_ASSIGN_OR_RETURN(const std::string rows,
                                 wholeTable(connection, std::string(table.name)));
        text += rows;
    }
    return text;
}

Result<std::string> rescuedLibrary(const fs::path& path) {
    {
        catalogue::OpenOptions options;
        options.folding = tasks::unicodeFolding();
        auto library = catalogue::Library::open(path, options);
        if (library) PANTILE_RETURN_IF_ERROR(catalogue::forgetActions(*library));
    }
    return wholeLibrary(path);
}

Result<std::string> wholeLibrary(const fs::path& path) {
    catalogue::OpenOptions options;
    options.folding = tasks::unicodeFolding();
    options.create = catalogue::OpenOptions::Create::Never;
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             catalogue::Library::open(path, options));
    PANTILE_ASSIGN_OR_RETURN(std::string text, wholeLibrary(library.connection()));
    PANTILE_ASSIGN_OR_RETURN(const auto report, catalogue::checkLibrary(library));
    for (const auto& problem : report.problems) {
        text += "PROBLEM " + problem.where + ": " + problem.what + '\n';
    }
    return text;
}

void copyLibrary(const fs::path& from, const fs::path& to) {
    for (const char* suffix : {"", "-wal", "-shm"}) {
        const fs::path source = from.string() + suffix;
        std::error_code ignored;
        fs::remove(to.string() + suffix, ignored);
        if (fs::exists(source)) fs::copy_file(source, to.string() + suffix);
    }
}

void makeOldLibrary(const fs::path& path, int version) {
    constexpr std::int64_t kMostSqlBytes = 1 << 24;
    const auto sql = tasks::readFile(
        fs::path(PANTILE_TEST_DATA) / "libraries" / ("version-" + std::to_string(version) + ".sql"),
        kMostSqlBytes);
    ASSERT_THAT(sql, isOk());
    const auto connection = catalogue::Connection::open(
        path, catalogue::FileMode::ReadWriteOrCreate, std::chrono::milliseconds(0));
    ASSERT_THAT(connection, isOk());
    // Tables stand in the order of their names, rows before those that they point to.
    ASSERT_THAT((*connection)->execute("PRAGMA foreign_keys=OFF;" + *sql), isOk());
}

}  // namespace pantile::tests
