#ifndef PANTILE_EIGHT_BIT_BOARD_H
#define PANTILE_EIGHT_BIT_BOARD_H

/* What the loop needs of the board. pins.c has the first three for the usual wiring; the fourth is
 * where the board maker's own USB mouse library goes in. */

#include <stdint.h>

/* Sets up trigger and clock. */
void board_begin(void);

/* Not 0 while the trigger is pressed. */
uint8_t board_trigger(void);

/* Whole milliseconds since the last call, or since board_begin. */
uint16_t board_elapsed_ms(void);

/* Sends one report in the boot protocol's form. Must not wait for longer than a millisecond. */
void board_send(uint8_t buttons, int8_t dx, int8_t dy);

#endif
