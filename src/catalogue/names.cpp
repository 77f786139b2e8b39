#include "catalogue/names.h"

#include "catalogue/statement.h"
#include "core/canvas.h"
#include "core/nearest_word.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

Result<std::optional<std::int64_t>> findName(Connection& connection, const NamedTable& table,
                                             std::string_view name) {
    return findNumber(connection,
                      "SELECT " + std::string(table.idColumn) + " FROM " +
                          std::string(table.table) + " WHERE name = ?1",
                      {name});
}

}  // namespace

Result<std::int64_t> idOfName(Connection& connection, const NamedTable& table,
                              std::string_view name) {
    PANTILE_ASSIGN_OR_RETURN(const auto id, findName(connection, table, name));
    if (id) return *id;
    PANTILE_ASSIGN_OR_RETURN(const std::vector<std::string> names, allNames(connection, table));
    const std::vector<std::string_view> views(names.begin(), names.end());
    const std::string what(table.what);
    const std::string otherwise =
        names.empty() ? "the library has none yet" : "list shows which there are";
    return Error{ErrorKind::NotFound, "there is no " + what + " '" + core::excerpt(name) + "'",
                 core::didYouMean(name, views, otherwise)};
}

Result<void> checkNewName(Connection& connection, const NamedTable& table, std::string_view name) {
    const std::string what(table.what);
    PANTILE_RETURN_IF_ERROR(core::checkName(what + " name", name));
    PANTILE_ASSIGN_OR_RETURN(const auto taken, findName(connection, table, name));
    if (!taken) return {};
    return Error{ErrorKind::AlreadyExists,
                 "there is a " + what + " '" + core::excerpt(name) + "' already",
                 "choose another name, or remove that one first"};
}

Result<std::vector<std::string>> allNames(Connection& connection, const NamedTable& table) {
    return allTexts(connection, "SELECT name FROM " + std::string(table.table) +
                                    " ORDER BY name COLLATE NOCASE, name");
}

}  // namespace pantile::catalogue
