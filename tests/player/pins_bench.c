/* The board maker's side alone: the port's own pins and clock run, and the emulator presses the
 * trigger. Timer 3 tells the time, 15625 to the second. The lines are those of eight_bit_bench.c
 * with that time, and without cycles and stack. */

#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/sleep.h>

#include "player/ports/eight_bit/board.h"
#include "player/serial.h"

#define END_AFTER_TICKS 34375u /* 2.2 seconds. */

static void begin(void) __attribute__((constructor));

static void begin(void) {
    begin_serial();
    OCR3A = END_AFTER_TICKS;
    TIMSK3 = 1u << OCIE3A;
    TCCR3B = 1u << CS32 | 1u << CS30;
    sei();
}

ISR(TIMER3_COMPA_vect) {
    cli();
    sleep_mode(); /* Asleep without interrupts: the emulator ends. */
}

void board_send(uint8_t buttons, int8_t dx, int8_t dy) {
    write_report(TCNT3, buttons, dx, dy, 0);
}
