#ifndef PANTILE_LOAD_PLAYER_H
#define PANTILE_LOAD_PLAYER_H

/* The player: reads a load and draws one of its slots as reports of a relative mouse.
 * Freestanding C99: no heap, no floating point, no library. Authority: docs/load-format.md. */

#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Reads `length` bytes of the load from `offset` into `buffer`. Returns 0 if it could not. */
typedef uint8_t (*load_player_read)(void* context, uint32_t offset, uint8_t* buffer,
                                    uint8_t length);

enum load_player_status {
    LOAD_PLAYER_OK = 0,
    LOAD_PLAYER_READ_FAILED = 1,
    LOAD_PLAYER_NO_LOAD = 2, /* Not a load at all. */
    LOAD_PLAYER_UNKNOWN = 3, /* A version or a script encoding that this player does not know. */
    LOAD_PLAYER_DAMAGED = 4, /* A checksum is wrong or a rule of the format is broken. */
    LOAD_PLAYER_NO_SLOT = 5, /* The load has no such slot. */
    LOAD_PLAYER_BUSY = 6     /* A drawing runs: stop it first, so that the button goes up. */
};

/* What the player is doing. It draws in MOVING_IN and DRAWING only. */
enum load_player_phase {
    LOAD_PLAYER_IDLE = 0,      /* No slot was chosen. */
    LOAD_PLAYER_DISARMED = 1,  /* Waits until the trigger was released for half a second. */
    LOAD_PLAYER_ARMED = 2,     /* Waits for the trigger. */
    LOAD_PLAYER_MOVING_IN = 3, /* Pushes into the corner and goes to cell (0, 0). */
    LOAD_PLAYER_DRAWING = 4    /* The time that the load foretells. */
};

#define LOAD_PLAYER_TITLE_BYTES 46
#define LOAD_PLAYER_ARMING_MS 500
#define LOAD_PLAYER_DEBOUNCE_MS 30

/* One mouse report. Its bytes in boot form are pressed, dx, dy. */
struct load_player_report {
    uint8_t pressed; /* 1 while the primary button is down, else 0. */
    int8_t dx;
    int8_t dy;
    uint8_t last; /* 1 for the report that ends a drawing, or that stops it. */
};

/* A slot as a screen may show it. */
struct load_player_slot {
    char title[LOAD_PLAYER_TITLE_BYTES + 1]; /* UTF-8, ends with a zero byte. */
    uint16_t width;
    uint16_t height;
    uint16_t colours;
    uint32_t milliseconds; /* Foretold. */
};

/* Counts from the screen's corner: origin and cells together stay below 65536. */
struct load_player_point {
    uint16_t x;
    uint16_t y;
};

/* The player's whole state. All of it is private. What each report needs comes first, where small
 * boards reach it with short instructions. */
struct load_player {
    /* Where the pointer is and what comes next. */
    struct load_player_point pointer, target;
    uint8_t step, fill_clicks_left;
    uint8_t task, after_move, after_press, after_release, pressed;
    uint8_t step_up, step_down;
    uint16_t corner_left;

    /* The trigger and the clock. */
    uint8_t phase, status, trigger_released;
    uint16_t released_ms;
    uint16_t wait_ms;

    /* Where the script is. */
    uint32_t next, script_end;
    uint8_t byte, bits; /* What is left of the byte before `next`: so many bits, from the top. */
    uint8_t place;
    uint16_t strokes_left; /* Of the visit, behind the one that is drawn. */
    uint16_t colour;       /* Picked. */
    uint8_t parameters;    /* Of the visit's runs. */
    uint8_t cell_x, cell_y, run_end;
    uint8_t direction, last_turn; /* In eighths of a turn clockwise, from east. */

    /* The chosen slot. */
    uint8_t last_x, last_y, last_colour, last_swatch;
    uint8_t pitch, swatch_pitch, pen; /* pen: its model and rules. */
    struct load_player_point grid_centre, swatch_centre;
    uint32_t script_start;

    /* The load. */
    load_player_read read;
    void* context;
    uint16_t interval_ms, press_ms, release_ms, settle_ms, corner_reports;
    uint8_t step_down_limit, slots;
    uint32_t load_bytes;
};

/* Sets up `player`, then reads and checks the load's header. To be called once, before all else;
 * nothing is drawn before a slot was chosen. */
enum load_player_status load_player_open(struct load_player* player, load_player_read read,
                                         void* context);

uint8_t load_player_slots(const struct load_player* player);

/* Fills `slot` with what the directory says of slot `index`, counted from 0. */
enum load_player_status load_player_describe(const struct load_player* player, uint8_t index,
                                             struct load_player_slot* slot);

/* Chooses the slot to draw. Reads all of it and refuses it unless every checksum and every step of
 * its script is right. The player is disarmed afterwards. Refused while a drawing runs. */
enum load_player_status load_player_choose(struct load_player* player, uint8_t index);

/* To be called all the time, such as every millisecond, with the trigger's state (not 0: pressed)
 * and the milliseconds since the last call. Returns 1 if `report` is to be sent now, else 0.
 * A press of the armed trigger begins the drawing; a second press ends it at once, and the report
 * then has the button up. At most one report comes of one call. */
uint8_t load_player_tick(struct load_player* player, uint8_t trigger, uint16_t elapsed_ms,
                         struct load_player_report* report);

enum load_player_phase load_player_phase_of(const struct load_player* player);

/* Why the last drawing ended: LOAD_PLAYER_OK unless the load could not be read on. */
enum load_player_status load_player_status_of(const struct load_player* player);

#ifdef __cplusplus
}
#endif

#endif
