#include "catalogue/loads.h"

#include <algorithm>

#include "catalogue/actions.h"
#include "catalogue/boards.h"
#include "catalogue/id_list.h"
#include "catalogue/names.h"
#include "catalogue/sqlite_error.h"
#include "catalogue/statement.h"
#include "core/counted.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

Result<std::vector<LoadWriting>> loadWritings(Connection& connection, std::int64_t id) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(
            connection, "SELECT at, place, board FROM load_writings WHERE load_id = ?1 ORDER BY id",
            {id}));
    std::vector<LoadWriting> writings;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        if (!more) return writings;
        writings.push_back({row.integer(0), row.text(1), row.text(2)});
    }
}

Result<StoredLoad> loadLoad(Connection& connection, std::int64_t id) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection,
                           "SELECT loads.name, boards.name, made_at, ifnull((SELECT canvases.name "
                           "FROM load_canvases JOIN canvases ON canvases.id = canvas_id "
                           "WHERE load_id = ?1), '') FROM loads JOIN boards ON "
                           "boards.id = board_id WHERE loads.id = ?1",
                           {id}));
    PANTILE_ASSIGN_OR_RETURN(const bool found, row.step());
    if (!found) return corruptError("a load");
    StoredLoad load;
    load.name = row.text(0);
    load.board = row.text(1);
    load.madeAt = row.integer(2);
    load.canvas = row.text(3);
    PANTILE_RETURN_IF_ERROR(row.columnCheck());
    PANTILE_ASSIGN_OR_RETURN(
        const auto slots,
        allNumbers(connection, "SELECT texture_id FROM load_slots WHERE load_id = ?1 ORDER BY slot",
                   {id}));
    for (const std::int64_t texture : slots) load.slots.push_back({texture});
    PANTILE_ASSIGN_OR_RETURN(load.writings, loadWritings(connection, id));
    return load;
}

Result<void> checkSlots(Library& library, const std::vector<core::TextureId>& slots,
                        const core::Board& board) {
    std::vector<core::TextureId> sorted = slots;
    std::sort(sorted.begin(), sorted.end());
    const auto twice = std::adjacent_find(sorted.begin(), sorted.end());
    if (twice != sorted.end()) {
        return Error{ErrorKind::InvalidInput,
                     "texture " + std::to_string(twice->value) + " is in the load twice",
                     "name it once"};
    }
    if (slots.size() > static_cast<std::size_t>(board.slots)) {
        return Error{ErrorKind::DoesNotFit,
                     std::to_string(slots.size()) + " textures do not fit the " +
                         core::counted(board.slots, "slot", "slots") + " of '" +
                         core::excerpt(board.name) + "'",
                     "leave some out, or make several loads"};
    }
    PANTILE_RETURN_IF_ERROR(knownIds(library.connection(), slots));
    return {};
}

Result<void> insertSlots(Connection& connection, std::int64_t loadId,
                         const std::vector<core::TextureId>& slots) {
    std::int64_t slot = 0;
    for (const core::TextureId texture : slots) {
        PANTILE_RETURN_IF_ERROR(run(
            connection, "INSERT INTO load_slots (load_id, slot, texture_id) VALUES (?1, ?2, ?3)",
            {loadId, slot++, texture.value}));
    }
    return {};
}

Result<void> insertCanvas(Connection& connection, std::int64_t loadId, const std::string& canvas) {
    if (canvas.empty()) return {};
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t canvasId, idOfName(connection, kCanvases, canvas));
    PANTILE_RETURN_IF_ERROR(run(connection,
                                "INSERT INTO load_canvases (load_id, canvas_id) VALUES (?1, ?2)",
                                {loadId, canvasId}));
    return {};
}

}  // namespace

Result<std::vector<StoredLoad>> listLoads(const Library& library) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(
        const auto ids,
        allNumbers(connection, "SELECT id FROM loads ORDER BY name COLLATE NOCASE"));
    std::vector<StoredLoad> loads;
    for (const std::int64_t id : ids) {
        PANTILE_ASSIGN_OR_RETURN(StoredLoad load, loadLoad(connection, id));
        loads.push_back(std::move(load));
    }
    return loads;
}

Result<StoredLoad> readLoad(const Library& library, std::string_view name) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t id, idOfName(connection, kLoads, name));
    return loadLoad(connection, id);
}

Result<void> addLoad(Library& library, const StoredLoad& load) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Make load " + nameInWords(load.name));
    PANTILE_RETURN_IF_ERROR(checkNewName(connection, kLoads, load.name));
    PANTILE_ASSIGN_OR_RETURN(const core::Board board, readBoard(library, load.board));
    PANTILE_RETURN_IF_ERROR(checkSlots(library, load.slots, board));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t boardId, idOfName(connection, kBoards, load.board));
    PANTILE_RETURN_IF_ERROR(run(connection,
                                "INSERT INTO loads (name, board_id, made_at) VALUES (?1, ?2, ?3)",
                                {load.name, boardId, library.now()}));
    const std::int64_t id = connection.lastInsertedId();
    PANTILE_RETURN_IF_ERROR(insertSlots(connection, id, load.slots));
    PANTILE_RETURN_IF_ERROR(insertCanvas(connection, id, load.canvas));
    return transaction.commit();
}

Result<void> setLoadSlots(Library& library, std::string_view name,
                          const std::vector<core::TextureId>& slots) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Change load " + nameInWords(name));
    PANTILE_ASSIGN_OR_RETURN(const StoredLoad load, readLoad(library, name));
    PANTILE_ASSIGN_OR_RETURN(const core::Board board, readBoard(library, load.board));
    PANTILE_RETURN_IF_ERROR(checkSlots(library, slots, board));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t id, idOfName(connection, kLoads, name));
    PANTILE_RETURN_IF_ERROR(run(connection, "DELETE FROM load_slots WHERE load_id = ?1", {id}));
    PANTILE_RETURN_IF_ERROR(insertSlots(connection, id, slots));
    return transaction.commit();
}

Result<void> setLoadBoard(Library& library, std::string_view name, std::string_view board) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Set the board of load " + nameInWords(name));
    PANTILE_ASSIGN_OR_RETURN(const StoredLoad load, readLoad(library, name));
    PANTILE_ASSIGN_OR_RETURN(const core::Board wanted, readBoard(library, board));
    PANTILE_RETURN_IF_ERROR(checkSlots(library, load.slots, wanted));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t id, idOfName(connection, kLoads, name));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t boardId, idOfName(connection, kBoards, board));
    PANTILE_RETURN_IF_ERROR(
        run(connection, "UPDATE loads SET board_id = ?2 WHERE id = ?1", {id, boardId}));
    return transaction.commit();
}

Result<void> renameLoad(Library& library, std::string_view name, std::string_view newName) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Rename load " + nameInWords(name) + " to " + nameInWords(newName));
    PANTILE_RETURN_IF_ERROR(renameIn(library.connection(), kLoads, name, newName));
    return transaction.commit();
}

Result<void> removeLoad(Library& library, std::string_view name) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Remove load " + nameInWords(name));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t id, idOfName(connection, kLoads, name));
    PANTILE_RETURN_IF_ERROR(run(connection, "DELETE FROM loads WHERE id = ?1", {id}));
    return transaction.commit();
}

Result<void> noteLoadWritten(Library& library, std::string_view name, std::string_view place) {
    PANTILE_RETURN_IF_ERROR(core::checkText(place, {"place", kMaxPlaceCharacters}));
    // It is a fact about the board, which undoing would not change.
    const NoAction fact(library);
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t id, idOfName(connection, kLoads, name));
    PANTILE_RETURN_IF_ERROR(run(connection,
                                "INSERT INTO load_writings (load_id, at, place, board) SELECT ?1, "
                                "?2, ?3, boards.name FROM loads JOIN boards ON boards.id = "
                                "board_id WHERE loads.id = ?1",
                                {id, library.now(), place}));
    return transaction.commit();
}

}  // namespace pantile::catalogue
