#ifndef PANTILE_TESTS_SERIAL_H
#define PANTILE_TESTS_SERIAL_H

/* The benches' side of the emulator's serial line. */

#include <avr/io.h>
#include <stdint.h>

static void begin_serial(void) {
    UCSR1A = 1u << U2X1;
    UCSR1B = 1u << TXEN1;
    UBRR1 = 0;
}

static void write_letter(char letter) {
    while ((UCSR1A & 1u << UDRE1) == 0) continue;
    UDR1 = (uint8_t)letter;
}

static void write_hex(uint32_t value, uint8_t digits) {
    while (digits-- > 0) {
        const uint8_t digit = (uint8_t)(value >> 4 * digits & 15u);
        write_letter((char)(digit < 10 ? '0' + digit : 'A' + digit - 10));
    }
}

/* One line of a bench: when a report went out, what it said, and how many cycles it took. */
static void write_report(uint32_t now, uint8_t buttons, int8_t dx, int8_t dy, uint16_t cycles) {
    write_hex(now, 8);
    write_letter(' ');
    write_hex(buttons, 2);
    write_hex((uint8_t)dx, 2);
    write_hex((uint8_t)dy, 2);
    write_letter(' ');
    write_hex(cycles, 4);
    write_letter('\n');
}

#endif
