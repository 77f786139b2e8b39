#include "catalogue/searches.h"

#include "catalogue/actions.h"
#include "catalogue/names.h"
#include "catalogue/query_parser.h"
#include "catalogue/sort_key.h"
#include "catalogue/statement.h"

namespace pantile::catalogue {

using core::Result;

Result<std::vector<SavedSearch>> listSearches(const Library& library) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(library.connection(),
                           "SELECT name, query, sort FROM searches ORDER BY position, id"));
    std::vector<SavedSearch> searches;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        if (!more) return searches;
        searches.push_back({row.text(0), row.text(1), row.text(2)});
    }
}

Result<SavedSearch> readSearch(const Library& library, std::string_view name) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t id, idOfName(connection, kSearches, name));
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection, "SELECT name, query, sort FROM searches WHERE id = ?1",
                           {id}));
    PANTILE_RETURN_IF_ERROR(row.step());
    SavedSearch search{row.text(0), row.text(1), row.text(2)};
    PANTILE_RETURN_IF_ERROR(row.columnCheck());
    return search;
}

Result<void> saveSearch(Library& library, const SavedSearch& search) {
    PANTILE_RETURN_IF_ERROR(parseQuery(search.query));
    PANTILE_RETURN_IF_ERROR(parseSortKey(search.sort));
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Save search " + nameInWords(search.name));
    PANTILE_RETURN_IF_ERROR(checkNewName(connection, kSearches, search.name));
    PANTILE_RETURN_IF_ERROR(run(connection,
                                "INSERT INTO searches (name, query, sort, position) SELECT ?1, ?2, "
                                "?3, ifnull(max(position), 0) + 1 FROM searches",
                                {search.name, search.query, search.sort}));
    return transaction.commit();
}

Result<void> renameSearch(Library& library, std::string_view name, std::string_view newName) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Rename search " + nameInWords(name) + " to " + nameInWords(newName));
    PANTILE_RETURN_IF_ERROR(renameIn(connection, kSearches, name, newName));
    return transaction.commit();
}

Result<void> removeSearch(Library& library, std::string_view name) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Remove search " + nameInWords(name));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t id, idOfName(connection, kSearches, name));
    PANTILE_RETURN_IF_ERROR(run(connection, "DELETE FROM searches WHERE id = ?1", {id}));
    return transaction.commit();
}

}  // namespace pantile::catalogue
