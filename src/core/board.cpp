#include "core/board.h"

#include "core/canvas.h"
#include "core/range_check.h"
#include "core/text.h"

namespace pantile::core {

Result<void> checkBoard(const Board& board) {
    PANTILE_RETURN_IF_ERROR(checkName("board name", board.name));
    PANTILE_RETURN_IF_ERROR(checkText(board.description, {"board description", 300}));
    PANTILE_RETURN_IF_ERROR(checkRange("the number of slots", board.slots, 1, kMaxBoardSlots));
    PANTILE_RETURN_IF_ERROR(checkRange("the number of bytes", board.bytes, 64, kMaxBoardBytes));
    if (board.display != Size{}) {
        PANTILE_RETURN_IF_ERROR(
            checkRange("the display's width", board.display.width, 1, kMaxDisplaySide));
        PANTILE_RETURN_IF_ERROR(
            checkRange("the display's height", board.display.height, 1, kMaxDisplaySide));
    }
    return checkTiming(board.timing);
}

}  // namespace pantile::core
