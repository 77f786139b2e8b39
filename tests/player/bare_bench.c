/* The player on another instruction set, without a library or an operating system's headers: what
 * comes in is a load and a list of trigger changes, what goes out the same lines as those of
 * eight_bit_bench.c. Linux's own calls for 32-bit x86 read and write. */

#include "player/slot_choice.h"

#define MOST_LOAD_BYTES 1048576u
#define MOST_CHANGES 1024u

static int system_call(int number, int first, void* second, unsigned third) {
    int result;
    __asm__ volatile("int $0x80"
                     : "=a"(result)
                     : "a"(number), "b"(first), "c"(second), "d"(third)
                     : "memory");
    return result;
}

static uint8_t load[MOST_LOAD_BYTES];
static uint32_t load_bytes, changes, trigger_changes[MOST_CHANGES];

static void leave(int status) {
    for (;;) system_call(1, status, 0, 0);
}

static void read_all(void* to, uint32_t bytes) {
    uint8_t* place = to;
    while (bytes > 0) {
        const int count = system_call(3, 0, place, bytes);
        if (count <= 0) leave(2);
        place += count;
        bytes -= (uint32_t)count;
    }
}

static uint8_t read_load(void* context, uint32_t offset, uint8_t* buffer, uint8_t length) {
    (void)context;
    if (offset > load_bytes || length > load_bytes - offset) return 0;
    while (length-- > 0) *buffer++ = load[offset++];
    return 1;
}

static char* put_hex(char* place, uint32_t value, int digits) {
    while (digits-- > 0) {
        const uint32_t digit = value >> 4 * digits & 15u;
        *place++ = (char)(digit < 10 ? '0' + digit : 'A' + digit - 10);
    }
    return place;
}

static void say(uint32_t now, const struct load_player_report* report) {
    char line[24];
    char* place = put_hex(line, now, 8);
    *place++ = ' ';
    place = put_hex(place, report->pressed, 2);
    place = put_hex(place, (uint8_t)report->dx, 2);
    place = put_hex(place, (uint8_t)report->dy, 2);
    *place++ = ' ';
    place = put_hex(place, 0, 4); /* No cycles are counted here. */
    *place++ = '\n';
    system_call(4, 1, line, (unsigned)(place - line));
}

/* Not the usual start of a program: the stack is not aligned as a function expects it. */
__attribute__((force_align_arg_pointer)) void _start(void) {
    static struct slot_choice choice;
    struct load_player_report report;
    uint32_t now = 0;
    uint32_t change = 0;
    read_all(&load_bytes, sizeof load_bytes);
    read_all(&changes, sizeof changes);
    if (load_bytes > MOST_LOAD_BYTES || changes > MOST_CHANGES) leave(2);
    read_all(load, load_bytes);
    read_all(trigger_changes, changes * (uint32_t)sizeof *trigger_changes);
    if (slot_choice_open(&choice, read_load, 0, 0, 0) != LOAD_PLAYER_OK) leave(1);
    while (change < changes) {
        ++now;
        if (now >= trigger_changes[change]) ++change;
        if (slot_choice_tick(&choice, change & 1u, 1, &report)) say(now, &report);
    }
    leave(0);
}
