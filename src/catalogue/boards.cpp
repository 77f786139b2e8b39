#include "catalogue/boards.h"

#include "catalogue/actions.h"
#include "catalogue/names.h"
#include "catalogue/sqlite_error.h"
#include "catalogue/statement.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

using core::Board;
using core::Result;

Result<Board> loadBoard(Connection& connection, std::int64_t id) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection,
                           "SELECT name, description, memory, slots, bytes, report_interval_ms, "
                           "max_step_up, max_step_down, press_ms, release_ms, settle_ms, "
                           "display_width, display_height "
                           "FROM boards WHERE id = ?1",
                           {id}));
    PANTILE_ASSIGN_OR_RETURN(const bool found, row.step());
    if (!found) return corruptError("a board");
    Board board;
    board.name = row.text(0);
    board.description = row.text(1);
    const int memory = row.smallInteger(2);
    board.slots = row.smallInteger(3);
    board.bytes = row.integer(4);
    board.timing = {row.smallInteger(5), row.smallInteger(6), row.smallInteger(7),
                    row.smallInteger(8), row.smallInteger(9), row.smallInteger(10)};
    board.display = {row.smallInteger(11), row.smallInteger(12)};
    PANTILE_RETURN_IF_ERROR(row.columnCheck());
    const bool isKnownMemory = memory >= 0 && memory <= static_cast<int>(core::BoardMemory::Card);
    board.memory = static_cast<core::BoardMemory>(isKnownMemory ? memory : 0);
    if (!isKnownMemory || !core::checkBoard(board)) {
        return corruptError("the board '" + core::excerpt(board.name) + "'");
    }
    return board;
}

Result<void> storeBoard(Connection& connection, const Board& board) {
    const core::PointerTiming& t = board.timing;
    PANTILE_RETURN_IF_ERROR(
        run(connection,
            "INSERT INTO boards (name, description, memory, slots, bytes, report_interval_ms, "
            "max_step_up, max_step_down, press_ms, release_ms, settle_ms, display_width, "
            "display_height) "
            "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13) "
            "ON CONFLICT (name) DO UPDATE SET name = ?1, description = ?2, memory = ?3, "
            "slots = ?4, bytes = ?5, report_interval_ms = ?6, max_step_up = ?7, "
            "max_step_down = ?8, press_ms = ?9, release_ms = ?10, settle_ms = ?11, "
            "display_width = ?12, display_height = ?13",
            {board.name, board.description, static_cast<std::int64_t>(board.memory), board.slots,
             board.bytes, t.reportIntervalMs, t.maxStepUp, t.maxStepDown, t.pressMs, t.releaseMs,
             t.settleMs, board.display.width, board.display.height}));
    return {};
}

}  // namespace

Result<std::vector<Board>> listBoards(const Library& library) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(
        const auto ids,
        allNumbers(connection, "SELECT id FROM boards ORDER BY name COLLATE NOCASE"));
    std::vector<Board> boards;
    for (const std::int64_t id : ids) {
        PANTILE_ASSIGN_OR_RETURN(Board board, loadBoard(connection, id));
        boards.push_back(std::move(board));
    }
    return boards;
}

Result<Board> readBoard(const Library& library, std::string_view name) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t id, idOfName(connection, kBoards, name));
    return loadBoard(connection, id);
}

Result<void> addBoard(Library& library, const Board& board) {
    PANTILE_RETURN_IF_ERROR(core::checkBoard(board));
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Add board " + nameInWords(board.name));
    PANTILE_RETURN_IF_ERROR(checkNewName(library.connection(), kBoards, board.name));
    PANTILE_RETURN_IF_ERROR(storeBoard(library.connection(), board));
    return transaction.commit();
}

Result<void> setBoard(Library& library, const Board& board) {
    PANTILE_RETURN_IF_ERROR(core::checkBoard(board));
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Change board " + nameInWords(board.name));
    PANTILE_RETURN_IF_ERROR(idOfName(library.connection(), kBoards, board.name));
    PANTILE_RETURN_IF_ERROR(storeBoard(library.connection(), board));
    return transaction.commit();
}

Result<void> renameBoard(Library& library, std::string_view name, std::string_view newName) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Rename board " + nameInWords(name) + " to " + nameInWords(newName));
    PANTILE_RETURN_IF_ERROR(renameIn(library.connection(), kBoards, name, newName));
    return transaction.commit();
}

Result<void> removeBoard(Library& library, std::string_view name) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Remove board " + nameInWords(name));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t id, idOfName(connection, kBoards, name));
    PANTILE_ASSIGN_OR_RETURN(
        const auto loads,
        allTexts(connection, "SELECT name FROM loads WHERE board_id = ?1 ORDER BY name", {id}));
    if (!loads.empty()) {
        return core::Error{core::ErrorKind::InvalidInput,
                           "the load '" + core::excerpt(loads.front()) + "' is for the board '" +
                               core::excerpt(name) + "'",
                           "remove the load first"};
    }
    PANTILE_RETURN_IF_ERROR(run(connection, "DELETE FROM boards WHERE id = ?1", {id}));
    return transaction.commit();
}

}  // namespace pantile::catalogue
