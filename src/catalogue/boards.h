#pragma once

// The boards of a library. The name of a board is its key.

#include <string_view>
#include <vector>

#include "catalogue/library.h"
#include "core/board.h"
#include "core/result.h"

namespace pantile::catalogue {

/// Sorted by name. Errors: Corrupt.
core::Result<std::vector<core::Board>> listBoards(const Library& library);

/// Errors: NotFound with the nearest name; Corrupt.
core::Result<core::Board> readBoard(const Library& library, std::string_view name);

/// Errors: AlreadyExists; as core::checkBoard.
core::Result<void> addBoard(Library& library, const core::Board& board);

/// Replaces the board of the same name; loads stay with it. Errors: NotFound; as core::checkBoard.
core::Result<void> setBoard(Library& library, const core::Board& board);

/// Loads stay with it. Errors: NotFound; AlreadyExists; as core::checkName.
core::Result<void> renameBoard(Library& library, std::string_view name, std::string_view newName);

/// Errors: NotFound; InvalidInput, naming it, if a load is for this board.
core::Result<void> removeBoard(Library& library, std::string_view name);

}  // namespace pantile::catalogue
