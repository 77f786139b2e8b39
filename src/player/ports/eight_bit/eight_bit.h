#ifndef PANTILE_EIGHT_BIT_H
#define PANTILE_EIGHT_BIT_H

/* A mouse library with a main program of its own calls the first once and the second all the time;
 * else main.c does. */

void eight_bit_begin(void);
void eight_bit_step(void);

#endif
