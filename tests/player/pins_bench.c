/* The board maker's side alone: the port's own pins and clock run, and the emulator presses the
 * trigger. Timer 3 tells the time, 15625 to the second. The lines are those of eight_bit_bench.c
 * with that time, and without cycles and stack. */

#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/sleep.h>

#include "player/ports/eight_bit/board.h"

#define END_AFTER_TICKS 34375u /* 2.2 seconds. */

static void begin(void) __attribute__((constructor));

static void begin(void) {
    UCSR1A = 1u << U2X1;
    UCSR1B = 1u << TXEN1;
    UBRR1 = 0;
    OCR3A = END_AFTER_TICKS;
    TIMSK3 = 1u << OCIE3A;
    TCCR3B = 1u << CS32 | 1u << CS30;
    sei();
}

ISR(TIMER3_COMPA_vect) {
    cli();
    sleep_mode(); /* Asleep without interrupts: the emulator ends. */
}

static void write_hex(uint16_t value, uint8_t digits) {
    while (digits-- > 0) {
        const uint8_t digit = (uint8_t)(value >> 4 * digits & 15u);
        while ((UCSR1A & 1u << UDRE1) == 0) continue;
        UDR1 = (uint8_t)(digit < 10 ? '0' + digit : 'A' + digit - 10);
    }
}

static void write_letter(char letter) {
    while ((UCSR1A & 1u << UDRE1) == 0) continue;
    UDR1 = (uint8_t)letter;
}

void board_send(uint8_t buttons, int8_t dx, int8_t dy) {
    write_hex(0, 4);
    write_hex(TCNT3, 4);
    write_letter(' ');
    write_hex(buttons, 2);
    write_hex((uint8_t)dx, 2);
    write_hex((uint8_t)dy, 2);
    write_letter(' ');
    write_hex(0, 4);
    write_letter('\n');
}
