/* The board that the emulator stands for: a trigger that follows a list, a clock on which every
 * look takes a millisecond, and in place of a mouse library a serial line that says which report
 * went out when, and how many cycles the player took for it.
 *   time BBXXYY cycles            in hexadecimal, two's complement
 *   end stack                     deepest use of the stack, the bench's own included */

#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/pgmspace.h>
#include <avr/sleep.h>

#include "player/ports/eight_bit/board.h"
#include "player/serial.h"
#include "trigger.h"

#define STACK_MARK 0xA5u

extern uint8_t __heap_start;

static uint32_t now, next_change;
static uint16_t change;

/* Before anything else uses the stack. */
void mark_stack(void) __attribute__((naked, used, section(".init3")));

void mark_stack(void) {
    uint8_t* place = &__heap_start;
    while (place < (uint8_t*)SP) *place++ = STACK_MARK;
}

static void finish(void) {
    const uint8_t* place = &__heap_start;
    while (*place == STACK_MARK) ++place;
    write_letter('e');
    write_letter('n');
    write_letter('d');
    write_letter(' ');
    write_hex((uint16_t)(RAMEND + 1 - (uint16_t)place), 4);
    write_letter('\n');
    cli();
    sleep_mode(); /* Asleep without interrupts: the emulator ends. */
}

void board_begin(void) {
    begin_serial();
    TCCR1A = 0;
    TCCR1B = 1u << CS10;
    next_change = pgm_read_dword(trigger_changes);
}

uint8_t board_trigger(void) {
    return change & 1u;
}

uint16_t board_elapsed_ms(void) {
    ++now;
    if (now >= next_change) {
        if (++change == sizeof trigger_changes / sizeof *trigger_changes) finish();
        next_change = pgm_read_dword(trigger_changes + change);
    }
    TCNT1 = 0;
    TIFR1 = 1u << TOV1;
    return 1;
}

void board_send(uint8_t buttons, int8_t dx, int8_t dy) {
    const uint16_t cycles = TCNT1;
    const uint8_t too_many = TIFR1 & 1u << TOV1;
    write_report(now, buttons, dx, dy, too_many ? 0xFFFFu : cycles);
}
