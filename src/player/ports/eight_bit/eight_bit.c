/* The loop for a board whose load lies in its own flash: `load write --as header` makes load.h. */

#include "player/ports/eight_bit/eight_bit.h"

#include <avr/pgmspace.h>

#include "player/ports/eight_bit/board.h"
#include "player/slot_choice.h"

#define PANTILE_LOAD_PLACE PROGMEM
#include "load.h"

#if PANTILE_LOAD_BYTES > 32767UL
#error "This port reads loads of at most 32767 bytes"
#endif

static struct slot_choice choice;

static uint8_t read_flash(void* context, uint32_t offset, uint8_t* buffer, uint8_t length) {
    const uint8_t* from;
    (void)context;
    if (offset > PANTILE_LOAD_BYTES || length > PANTILE_LOAD_BYTES - offset) return 0;
    from = pantile_load + (uint16_t)offset;
    for (; length > 0; --length) *buffer++ = pgm_read_byte(from++);
    return 1;
}

void eight_bit_begin(void) {
    board_begin();
    /* A load that cannot be opened has no slots, and then nothing is ever sent. */
    (void)slot_choice_open(&choice, read_flash, 0, 0, 0);
}

void eight_bit_step(void) {
    struct load_player_report report;
    const uint16_t elapsed_ms = board_elapsed_ms();
    if (elapsed_ms == 0) return;
    if (slot_choice_tick(&choice, board_trigger(), elapsed_ms, &report)) {
        board_send(report.pressed, report.dx, report.dy);
    }
}
