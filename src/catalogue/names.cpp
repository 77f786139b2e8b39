#include "catalogue/names.h"

#include <algorithm>

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

std::string lowered(std::string_view text) {
    std::string lower(text);
    for (char& c : lower) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return lower;
}

/// "there are: 'Quay 64', 'Pier'", or the first of them where there are many.
std::string thoseThereAre(const std::vector<std::string>& known) {
    constexpr std::size_t kMostNamed = 8;
    std::string text = "there are: ";
    for (std::size_t i = 0; i < std::min(known.size(), kMostNamed); ++i) {
        text += (i == 0 ? "'" : ", '") + core::excerpt(known[i]) + "'";
    }
    return known.size() > kMostNamed ? text + " and others" : text;
}

/// "did you mean 'Quay 64'?"; names are compared without regard to case, as the tables do.
std::string hintFor(std::string_view name, const std::vector<std::string>& known) {
    if (known.empty()) return "the library has none yet";
    std::vector<std::string> lower;
    lower.reserve(known.size());
    for (const std::string& one : known) lower.push_back(lowered(one));
    const std::vector<std::string_view> views(lower.begin(), lower.end());
    const auto near = core::nearestWord(lowered(name), views);
    if (!near) return thoseThereAre(known);
    const auto place = std::find(views.begin(), views.end(), *near) - views.begin();
    return "did you mean '" + core::excerpt(known[static_cast<std::size_t>(place)]) + "'?";
}

}  // namespace

Result<std::int64_t> idOfName(Connection& connection, const NamedTable& table,
                              std::string_view name) {
    PANTILE_ASSIGN_OR_RETURN(const auto id, findName(connection, table, name));
    if (id) return *id;
    PANTILE_ASSIGN_OR_RETURN(const std::vector<std::string> names, allNames(connection, table));
    return Error{ErrorKind::NotFound,
                 "there is no " + std::string(table.what) + " '" + core::excerpt(name) + "'",
                 hintFor(name, names)};
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

Result<void> renameIn(Connection& connection, const NamedTable& table, std::string_view name,
                      std::string_view newName) {
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t id, idOfName(connection, table, name));
    const Result<std::int64_t> holder = idOfName(connection, table, newName);
    const bool isItself = holder && *holder == id;
    if (!isItself) PANTILE_RETURN_IF_ERROR(checkNewName(connection, table, newName));
    PANTILE_RETURN_IF_ERROR(run(connection,
                                "UPDATE " + std::string(table.table) + " SET name = ?2 WHERE " +
                                    std::string(table.idColumn) + " = ?1",
                                {id, newName}));
    return {};
}

Result<std::vector<std::string>> allNames(Connection& connection, const NamedTable& table) {
    return allTexts(connection, "SELECT name FROM " + std::string(table.table) +
                                    " ORDER BY name COLLATE NOCASE, name");
}

}  // namespace pantile::catalogue
