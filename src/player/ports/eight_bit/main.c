#include "player/ports/eight_bit/eight_bit.h"

int main(void) {
    eight_bit_begin();
    for (;;) eight_bit_step();
}
