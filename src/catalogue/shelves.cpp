#include "catalogue/shelves.h"

#include <algorithm>

#include "catalogue/actions.h"
#include "catalogue/id_list.h"
#include "catalogue/names.h"
#include "catalogue/statement.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using core::Result;
using core::TextureId;

Result<void> insertShelf(Connection& connection, std::string_view name) {
    PANTILE_RETURN_IF_ERROR(checkNewName(connection, kShelves, name));
    PANTILE_RETURN_IF_ERROR(run(connection,
                                "INSERT INTO shelves (name, position) SELECT ?1, "
                                "ifnull(max(position), 0) + 1 FROM shelves",
                                {name}));
    return {};
}

Result<std::int64_t> shelfToPutOn(Connection& connection, std::string_view name) {
    Result<std::int64_t> id = idOfName(connection, kShelves, name);
    if (id || id.error().kind != ErrorKind::NotFound) return id;
    PANTILE_RETURN_IF_ERROR(insertShelf(connection, name));
    return connection.lastInsertedId();
}

/// `moved` put among the others so that the first of them comes to `place`, counted from 1.
std::vector<std::int64_t> withInserted(std::vector<std::int64_t> others,
                                       const std::vector<std::int64_t>& moved, std::int64_t place) {
    const auto count = static_cast<std::int64_t>(others.size());
    const auto at = std::clamp<std::int64_t>(place - 1, 0, count);
    others.insert(others.begin() + at, moved.begin(), moved.end());
    return others;
}

}  // namespace

Result<std::vector<Shelf>> listShelves(const Library& library) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(library.connection(),
                           "SELECT name, (SELECT count(*) FROM shelf_textures JOIN textures ON "
                           "textures.id = texture_id WHERE shelf_id = shelves.id AND removed_at "
                           "IS NULL) FROM shelves ORDER BY position, id"));
    std::vector<Shelf> shelves;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        if (!more) return shelves;
        shelves.push_back({row.text(0), row.integer(1)});
    }
}

Result<std::vector<TextureId>> texturesOnShelf(const Library& library, std::string_view name) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t shelf, idOfName(connection, kShelves, name));
    PANTILE_ASSIGN_OR_RETURN(
        const auto numbers,
        allNumbers(connection,
                   "SELECT texture_id FROM shelf_textures JOIN textures ON textures.id = "
                   "texture_id WHERE shelf_id = ?1 AND removed_at IS NULL "
                   "ORDER BY shelf_textures.position, texture_id",
                   {shelf}));
    std::vector<TextureId> ids;
    ids.reserve(numbers.size());
    for (const std::int64_t number : numbers) ids.push_back({number});
    return ids;
}

Result<void> createShelf(Library& library, std::string_view name) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Make shelf " + nameInWords(name));
    PANTILE_RETURN_IF_ERROR(insertShelf(library.connection(), name));
    return transaction.commit();
}

Result<void> deleteShelf(Library& library, std::string_view name) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Remove shelf " + nameInWords(name));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t shelf, idOfName(connection, kShelves, name));
    PANTILE_RETURN_IF_ERROR(run(connection, "DELETE FROM shelves WHERE id = ?1", {shelf}));
    return transaction.commit();
}

Result<void> renameShelf(Library& library, std::string_view name, std::string_view newName) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Rename shelf " + nameInWords(name) + " to " + nameInWords(newName));
    PANTILE_RETURN_IF_ERROR(renameIn(library.connection(), kShelves, name, newName));
    return transaction.commit();
}

Result<std::int64_t> putOnShelf(Library& library, std::span<const TextureId> ids,
                                std::string_view name) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    PANTILE_ASSIGN_OR_RETURN(const auto known, knownIds(connection, ids));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t shelf, shelfToPutOn(connection, name));
    std::vector<TextureId> put;
    for (const TextureId id : known) {
        PANTILE_ASSIGN_OR_RETURN(
            const std::int64_t added,
            run(connection,
                "INSERT INTO shelf_textures (shelf_id, texture_id, position) SELECT ?1, ?2, "
                "ifnull(max(position), 0) + 1 FROM shelf_textures WHERE shelf_id = ?1 "
                "ON CONFLICT DO NOTHING",
                {shelf, id.value}));
        if (added > 0) put.push_back(id);
    }
    nameAction(library, "Put " + texturesInWords(put) + " on shelf " + nameInWords(name));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return std::ssize(put);
}

Result<std::int64_t> takeFromShelf(Library& library, std::span<const TextureId> ids,
                                   std::string_view name) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t shelf, idOfName(connection, kShelves, name));
    PANTILE_ASSIGN_OR_RETURN(const auto known, knownIds(connection, ids));
    std::vector<TextureId> taken;
    for (const TextureId id : known) {
        PANTILE_ASSIGN_OR_RETURN(
            const std::int64_t gone,
            run(connection, "DELETE FROM shelf_textures WHERE shelf_id = ?1 AND texture_id = ?2",
                {shelf, id.value}));
        if (gone > 0) taken.push_back(id);
    }
    nameAction(library, "Take " + texturesInWords(taken) + " from shelf " + nameInWords(name));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return std::ssize(taken);
}

Result<void> placeShelf(Library& library, std::string_view name, std::int64_t place) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Move shelf " + nameInWords(name));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t shelf, idOfName(connection, kShelves, name));
    PANTILE_ASSIGN_OR_RETURN(
        const auto others,
        allNumbers(connection, "SELECT id FROM shelves WHERE id <> ?1 ORDER BY position, id",
                   {shelf}));
    std::int64_t position = 0;
    for (const std::int64_t id : withInserted(others, {shelf}, place)) {
        PANTILE_RETURN_IF_ERROR(
            run(connection, "UPDATE shelves SET position = ?2 WHERE id = ?1", {id, ++position}));
    }
    return transaction.commit();
}

Result<void> placeOnShelf(Library& library, std::span<const TextureId> ids, std::string_view name,
                          std::int64_t place) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Place " + texturesInWords(ids) + " on shelf " + nameInWords(name));
    PANTILE_RETURN_IF_ERROR(putOnShelf(library, ids, name));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t shelf, idOfName(connection, kShelves, name));
    PANTILE_ASSIGN_OR_RETURN(const auto known, knownIds(connection, ids));
    std::vector<std::int64_t> moved;
    for (const TextureId id : known) moved.push_back(id.value);
    // Removed ones keep their places among the others.
    PANTILE_ASSIGN_OR_RETURN(auto others,
                             allNumbers(connection,
                                        "SELECT texture_id FROM shelf_textures WHERE shelf_id = ?1 "
                                        "ORDER BY position, texture_id",
                                        {shelf}));
    std::erase_if(others, [&](std::int64_t id) {
        return std::find(moved.begin(), moved.end(), id) != moved.end();
    });
    std::int64_t position = 0;
    for (const std::int64_t id : withInserted(others, moved, place)) {
        PANTILE_RETURN_IF_ERROR(
            run(connection,
                "UPDATE shelf_textures SET position = ?3 WHERE shelf_id = ?1 AND texture_id = ?2",
                {shelf, id, ++position}));
    }
    return transaction.commit();
}

}  // namespace pantile::catalogue
