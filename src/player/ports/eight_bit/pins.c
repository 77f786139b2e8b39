/* The usual wiring: the trigger between a pin and ground, and timer 1 as the clock. No interrupts,
 * so that they stay with the mouse library. */

#include <avr/io.h>

#include "player/ports/eight_bit/board.h"

#ifndef TRIGGER_BIT
#define TRIGGER_BIT 4 /* Of port B. */
#endif
#ifndef F_CPU
#define F_CPU 16000000UL
#endif

#define CLOCK_DIVIDER 64UL
#define TICKS_PER_MS ((uint16_t)(F_CPU / CLOCK_DIVIDER / 1000UL))

static uint16_t counted;

void board_begin(void) {
    DDRB &= (uint8_t) ~(1u << TRIGGER_BIT);
    PORTB |= (uint8_t)(1u << TRIGGER_BIT); /* Pulled up: an open contact reads 1. */
    TCCR1A = 0;
    TCCR1B = 1u << CS11 | 1u << CS10;
    counted = TCNT1;
}

uint8_t board_trigger(void) {
    return (PINB & 1u << TRIGGER_BIT) == 0;
}

uint16_t board_elapsed_ms(void) {
    const uint16_t ticks = (uint16_t)(TCNT1 - counted);
    const uint16_t milliseconds = ticks / TICKS_PER_MS;
    counted = (uint16_t)(counted + milliseconds * TICKS_PER_MS);
    return milliseconds;
}
