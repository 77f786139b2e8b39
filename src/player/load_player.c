#include "load_player.h"

/* The numbers of docs/load-format.md, version 1. */
#define HEADER_BYTES 64u
#define ENTRY_BYTES 96u
#define CHECKSUM_BYTES 4u
#define BASE_BYTES (HEADER_BYTES + CHECKSUM_BYTES)
#define TITLE_OFFSET 46u
#define VERSION 1u
#define ENCODING 2u
#define MAX_SCRIPT_BYTES 262144ul
#define MAX_ORIGIN 32767u
#define MAX_PITCH 127u
#define MAX_PICTURE_SIDE 128u
#define MAX_CORNER_REPORTS 8192u
#define PEN_LINES 2u
#define PEN_SAMPLED 3u
#define PEN_MODELS 4u

#define PEN_MODEL_BITS 15u
#define RULE_NO_TURNS 16u
#define RULE_FILLS 128u
#define FILL_BYTES 5u

#define STROKES_PARAMETER 2u
#define MOVE_PARAMETER 3u
#define JUMP_PARAMETER 2u
#define LONG_PARAMETER 0u
#define MOST_NUMBER_BITS 15u
#define UNARY_LENGTH 4u
#define NO_COLOUR 256u
#define MOST_CELLS 256u /* On an axis. */

#define RIGHT 2u
#define BACK 4u
#define LEFT 6u

/* What comes next in the script. */
enum place {
    AT_START = 0,
    AT_VISIT,       /* A visit's form, colour and number of strokes. */
    AT_STROKE,      /* Where a stroke begins. */
    AT_FIRST_PIECE, /* A stroke's first piece or its end. */
    AT_PIECE,       /* Another one. */
    AT_FIRST_RUN,   /* A visit's first run. */
    AT_RUN,         /* Another one. */
    AT_RUN_DRAG,    /* The way to its last cell, which is known. */
    AT_RUN_END,
    AT_END
};

/* What the next report is for. */
enum task {
    TASK_NEXT_STEP = 0, /* The script's next step. */
    TASK_CORNER,
    TASK_MOVE,
    TASK_PRESS,
    TASK_RELEASE,
    TASK_SETTLE,
    TASK_DONE
};

/* One step of a script, as read_step finds it. */
enum step { STEP_END, STEP_PICK, STEP_BEGIN, STEP_DRAG, STEP_JUMP, STEP_LIFT };

static uint16_t get_u16(const uint8_t* bytes) {
    return (uint16_t)(bytes[0] | (uint16_t)((uint16_t)bytes[1] << 8));
}

static uint32_t get_u32(const uint8_t* bytes) {
    return (uint32_t)get_u16(bytes) | (uint32_t)get_u16(bytes + 2) << 16;
}

/* CRC-32 of RFC 1952, bit by bit: a table would take a kibibyte of a small board. */
static uint32_t checksum_add(uint32_t checksum, const uint8_t* bytes, uint8_t count) {
    uint8_t i;
    uint8_t bit;
    for (i = 0; i < count; ++i) {
        checksum ^= bytes[i];
        for (bit = 0; bit < 8; ++bit) {
            checksum = (checksum >> 1) ^ ((checksum & 1u) != 0 ? 0xEDB88320ul : 0ul);
        }
    }
    return checksum;
}

/* Whether the `count` bytes at `offset` have the checksum `wanted`. */
static enum load_player_status check_sum(const struct load_player* player, uint32_t offset,
                                         uint32_t count, uint32_t wanted) {
    uint8_t part[8];
    uint32_t checksum = 0xFFFFFFFFul;
    while (count > 0) {
        const uint8_t length = count < sizeof part ? (uint8_t)count : (uint8_t)sizeof part;
        if (!player->read(player->context, offset, part, length)) return LOAD_PLAYER_READ_FAILED;
        checksum = checksum_add(checksum, part, length);
        offset += length;
        count -= length;
    }
    checksum ^= 0xFFFFFFFFul;
    return checksum == wanted ? LOAD_PLAYER_OK : LOAD_PLAYER_DAMAGED;
}

/* The same for a part whose last four bytes hold its checksum. */
static enum load_player_status check_tail(const struct load_player* player, uint32_t offset,
                                          uint32_t count) {
    uint8_t tail[CHECKSUM_BYTES];
    const uint32_t body = count - CHECKSUM_BYTES;
    if (!player->read(player->context, offset + body, tail, sizeof tail)) {
        return LOAD_PLAYER_READ_FAILED;
    }
    return check_sum(player, offset, body, get_u32(tail));
}

static uint8_t timing_is_right(const struct load_player* player) {
    return player->interval_ms >= 1 && player->interval_ms <= 1000 && player->step_up >= 1 &&
           player->step_up <= 127 && player->step_down_limit >= 1 &&
           player->step_down_limit <= 127 && player->press_ms >= 1 && player->press_ms <= 1000 &&
           player->release_ms >= 1 && player->release_ms <= 1000 && player->settle_ms <= 5000 &&
           player->corner_reports >= 1 && player->corner_reports <= MAX_CORNER_REPORTS;
}

static enum load_player_status read_header(struct load_player* player) {
    uint8_t bytes[24];
    enum load_player_status status;
    if (!player->read(player->context, 0, bytes, sizeof bytes)) return LOAD_PLAYER_READ_FAILED;
    if (bytes[0] != 0x50 || bytes[1] != 0x54 || bytes[2] != 0x4C || bytes[3] != 0x44) {
        return LOAD_PLAYER_NO_LOAD;
    }
    if (bytes[4] != VERSION) return LOAD_PLAYER_UNKNOWN;
    status = check_tail(player, 0, HEADER_BYTES);
    if (status != LOAD_PLAYER_OK) return status;
    if (bytes[5] != HEADER_BYTES || bytes[6] == 0 || bytes[7] != ENTRY_BYTES) {
        return LOAD_PLAYER_DAMAGED;
    }
    player->load_bytes = get_u32(bytes + 8);
    player->interval_ms = get_u16(bytes + 12);
    player->step_up = bytes[14];
    player->step_down_limit = bytes[15];
    player->press_ms = get_u16(bytes + 16);
    player->release_ms = get_u16(bytes + 18);
    player->settle_ms = get_u16(bytes + 20);
    player->corner_reports = get_u16(bytes + 22);
    if (player->load_bytes < BASE_BYTES + (uint32_t)ENTRY_BYTES * bytes[6] ||
        !timing_is_right(player)) {
        return LOAD_PLAYER_DAMAGED;
    }
    player->slots = bytes[6];
    return LOAD_PLAYER_OK;
}

enum load_player_status load_player_open(struct load_player* player, load_player_read read,
                                         void* context) {
    enum load_player_status status;
    player->read = read;
    player->context = context;
    player->slots = 0;
    player->phase = LOAD_PLAYER_IDLE;
    player->status = LOAD_PLAYER_OK;
    player->pressed = 0;
    player->wait_ms = 0;
    player->released_ms = 0;
    player->trigger_released = 0;
    status = read_header(player);
    if (status != LOAD_PLAYER_OK) player->slots = 0;
    return status;
}

uint8_t load_player_slots(const struct load_player* player) {
    return player->slots;
}

static uint32_t entry_offset(uint8_t index) {
    return HEADER_BYTES + (uint32_t)ENTRY_BYTES * index;
}

enum load_player_status load_player_describe(const struct load_player* player, uint8_t index,
                                             struct load_player_slot* slot) {
    uint8_t bytes[29];
    enum load_player_status status;
    if (index >= player->slots) return LOAD_PLAYER_NO_SLOT;
    status = check_tail(player, entry_offset(index), ENTRY_BYTES);
    if (status != LOAD_PLAYER_OK) return status;
    if (!player->read(player->context, entry_offset(index), bytes, sizeof bytes) ||
        !player->read(player->context, entry_offset(index) + TITLE_OFFSET, (uint8_t*)slot->title,
                      LOAD_PLAYER_TITLE_BYTES)) {
        return LOAD_PLAYER_READ_FAILED;
    }
    slot->title[LOAD_PLAYER_TITLE_BYTES] = 0;
    slot->milliseconds = get_u32(bytes + 12);
    slot->width = (uint16_t)(bytes[24] + 1u);
    slot->height = (uint16_t)(bytes[25] + 1u);
    slot->colours = (uint16_t)(bytes[28] + 1u);
    return LOAD_PLAYER_OK;
}

/* Takes over what a directory entry says of the canvas: its bytes 24..45. */
static enum load_player_status take_canvas(struct load_player* player, uint32_t entry) {
    uint8_t bytes[22];
    uint8_t model;
    if (!player->read(player->context, entry + 24, bytes, sizeof bytes)) {
        return LOAD_PLAYER_READ_FAILED;
    }
    model = bytes[7] & PEN_MODEL_BITS;
    player->last_x = bytes[0];
    player->last_y = bytes[1];
    player->last_colour = bytes[4];
    player->grid_centre.x = get_u16(bytes + 8);
    player->grid_centre.y = get_u16(bytes + 10);
    player->swatch_centre.x = get_u16(bytes + 12);
    player->swatch_centre.y = get_u16(bytes + 14);
    player->pitch = bytes[16];
    player->swatch_pitch = bytes[17];
    player->last_swatch = bytes[18];
    player->pen = bytes[7];
    /* What stands before the script: palette, small picture and fill. */
    player->script_start = 3u * (bytes[4] + 1u) + (uint16_t)bytes[20] * bytes[21];
    if (player->pen & RULE_FILLS) player->script_start += FILL_BYTES;
    player->step_down = player->step_down_limit;
    if (model != PEN_LINES && player->step_down > player->pitch) {
        player->step_down = player->pitch;
    }
    if (bytes[19] != ENCODING) return LOAD_PLAYER_UNKNOWN;
    if (bytes[0] > bytes[2] || bytes[1] > bytes[3] || bytes[4] == 0 || model >= PEN_MODELS ||
        player->pitch == 0 || player->pitch > MAX_PITCH || player->swatch_pitch == 0 ||
        player->swatch_pitch > MAX_PITCH || player->grid_centre.x > MAX_ORIGIN ||
        player->grid_centre.y > MAX_ORIGIN || player->swatch_centre.x > MAX_ORIGIN ||
        player->swatch_centre.y > MAX_ORIGIN || bytes[20] > MAX_PICTURE_SIDE ||
        bytes[21] > MAX_PICTURE_SIDE || (bytes[20] == 0) != (bytes[21] == 0)) {
        return LOAD_PLAYER_DAMAGED;
    }
    return LOAD_PLAYER_OK;
}

/* The same of the slot's data, its bytes 0..11, and reads that once for its checksum. */
static enum load_player_status take_data(struct load_player* player, uint32_t entry) {
    uint8_t bytes[12];
    const uint32_t limit = player->load_bytes - CHECKSUM_BYTES;
    uint32_t start, count;
    if (!player->read(player->context, entry, bytes, sizeof bytes)) return LOAD_PLAYER_READ_FAILED;
    start = get_u32(bytes);
    count = get_u32(bytes + 4);
    player->script_start += start;
    player->script_end = start + count;
    if (start < entry_offset(player->slots) || start > limit || count > limit - start ||
        player->script_end <= player->script_start ||
        player->script_end - player->script_start > MAX_SCRIPT_BYTES) {
        return LOAD_PLAYER_DAMAGED;
    }
    return check_sum(player, start, count, get_u32(bytes + 8));
}

static void rewind_script(struct load_player* player) {
    player->next = player->script_start;
    player->bits = 0;
    player->place = AT_START;
    player->colour = NO_COLOUR;
    player->cell_x = 0;
    player->cell_y = 0;
}

/* Marks the script as one that breaks a rule, unless it could not even be read; read_step tells. */
static void refuse(struct load_player* player) {
    if (player->status == LOAD_PLAYER_OK) player->status = LOAD_PLAYER_DAMAGED;
}

/* The script's next bit; 0 where there is none. */
static uint8_t take_bit(struct load_player* player) {
    uint8_t bit;
    if (player->bits == 0) {
        if (player->next >= player->script_end) {
            refuse(player);
            return 0;
        }
        if (!player->read(player->context, player->next, &player->byte, 1)) {
            player->status = LOAD_PLAYER_READ_FAILED;
            return 0;
        }
        ++player->next;
        player->bits = 8;
    }
    --player->bits;
    bit = (uint8_t)(player->byte >> 7);
    player->byte = (uint8_t)(player->byte << 1);
    return bit;
}

static uint16_t take_bits(struct load_player* player, uint8_t count) {
    uint16_t value = 0;
    for (; count > 0; --count) value = (uint16_t)(value << 1 | take_bit(player));
    return value;
}

static uint16_t take_number(struct load_player* player, uint8_t parameter) {
    uint8_t behind = parameter;
    while (!take_bit(player)) {
        if (++behind > MOST_NUMBER_BITS) {
            refuse(player);
            return 0;
        }
    }
    return (uint16_t)((1u << behind | take_bits(player, behind)) - (1u << parameter));
}

/* `cells` further on or back on an axis whose last cell is `last`. */
static uint8_t along(struct load_player* player, uint8_t from, uint8_t last, uint8_t back,
                     uint16_t cells) {
    if (cells > (back ? from : (uint8_t)(last - from))) refuse(player);
    return (uint8_t)(back ? from - cells : from + cells);
}

/* A way on an axis: 0, 1 on, 1 back, 2 on, .. */
static uint8_t take_way(struct load_player* player, uint8_t from, uint8_t last, uint8_t parameter) {
    const uint16_t number = take_number(player, parameter);
    return along(player, from, last, !(number & 1u), (uint16_t)((number + 1u) >> 1));
}

static void take_move(struct load_player* player, uint8_t parameter) {
    player->cell_x = take_way(player, player->cell_x, player->last_x, parameter);
    player->cell_y = take_way(player, player->cell_y, player->last_y, parameter);
}

static uint8_t goes_aslant(const struct load_player* player) {
    return player->pen & 1u; /* Diagonals or sampled. */
}

/* Whether the pen may jump and so says each piece by its direction alone. */
static uint8_t jumps(const struct load_player* player) {
    return (player->pen & (PEN_MODEL_BITS | RULE_NO_TURNS)) == PEN_SAMPLED;
}

static uint8_t between(uint8_t a, uint8_t b) {
    return (uint8_t)(a > b ? a - b : b - a);
}

/* The end of a stroke, with what comes behind it: then its last report can be told from others. */
static enum step lift(struct load_player* player) {
    if (player->strokes_left > 0) {
        --player->strokes_left;
        player->place = player->place == AT_RUN_END ? AT_RUN : AT_STROKE;
    } else {
        player->place = take_bit(player) ? AT_VISIT : AT_END;
    }
    return STEP_LIFT;
}

/* A jump within the reach of one report; to the pen's own cell for a stroke's end. */
static enum step take_jump(struct load_player* player) {
    const uint8_t x = player->cell_x;
    const uint8_t y = player->cell_y;
    const uint8_t most = (uint8_t)(player->step_down_limit / player->pitch);
    take_move(player, JUMP_PARAMETER);
    if (player->cell_x == x && player->cell_y == y) return lift(player);
    if (between(x, player->cell_x) > most || between(y, player->cell_y) > most) refuse(player);
    return STEP_JUMP;
}

/* Of a pen that goes in four directions, behind a piece: the turn in eighths, 0 for the end. */
static uint8_t take_corner(struct load_player* player) {
    if (take_bit(player)) {
        player->last_turn = (uint8_t)(LEFT + RIGHT - player->last_turn);
        return player->last_turn;
    }
    if (take_bit(player)) return player->last_turn;
    return take_bit(player) ? BACK : 0;
}

/* Finds the direction of the next piece, or returns 0 if the stroke ends. */
static uint8_t take_direction(struct load_player* player) {
    const uint8_t aslant = goes_aslant(player);
    uint8_t turn;
    if (player->place == AT_FIRST_PIECE || jumps(player)) {
        if (!jumps(player) && take_bit(player)) return 0;
        player->direction =
            (uint8_t)(aslant ? take_bits(player, 3) : (uint16_t)(take_bits(player, 2) << 1));
        return 1;
    }
    if (player->pen & RULE_NO_TURNS) return 0;
    turn = aslant ? (uint8_t)take_bits(player, 3) : take_corner(player);
    player->direction = (uint8_t)((player->direction + turn) & 7u);
    return turn;
}

static uint16_t take_length(struct load_player* player) {
    uint16_t more;
    uint8_t cells = 1;
    while (cells <= UNARY_LENGTH && take_bit(player)) ++cells;
    if (cells <= UNARY_LENGTH) return cells;
    more = take_number(player, LONG_PARAMETER);
    if (more > MOST_CELLS) refuse(player); /* The sum could go round. */
    return (uint16_t)(cells + more);
}

/* Goes on along the column axis for direction 0; turned by a quarter, the same for rows. */
static uint8_t go_on(struct load_player* player, uint8_t from, uint8_t last, uint8_t direction,
                     uint16_t cells) {
    if ((direction & 3u) == RIGHT) return from;
    return along(player, from, last, (uint8_t)((direction + 1u) & 4u), cells);
}

static enum step take_piece(struct load_player* player) {
    uint16_t cells;
    if (jumps(player) && take_bit(player)) return take_jump(player);
    if (!take_direction(player)) return lift(player);
    cells = take_length(player);
    player->cell_x = go_on(player, player->cell_x, player->last_x, player->direction, cells);
    player->cell_y = go_on(player, player->cell_y, player->last_y,
                           (uint8_t)((player->direction - 2u) & 7u), cells);
    player->place = AT_PIECE;
    return STEP_DRAG;
}

/* Begins the next run: so many cells further on, row by row. */
static enum step take_run(struct load_player* player) {
    const uint16_t width = (uint16_t)(player->last_x + 1u);
    uint16_t gap = take_number(player, (uint8_t)(player->parameters >> 2));
    uint16_t x = 0;
    if (player->place == AT_FIRST_RUN) {
        player->cell_y = 0;
    } else {
        x = (uint16_t)(player->cell_x + (player->cell_x < player->last_x ? 2u : 1u));
    }
    for (; gap >= width - x; x = 0) {
        gap = (uint16_t)(gap - (width - x));
        if (player->cell_y == player->last_y) {
            refuse(player);
            break;
        }
        ++player->cell_y;
    }
    player->cell_x = (uint8_t)(x + gap);
    player->run_end = along(player, player->cell_x, player->last_x, 0,
                            take_number(player, player->parameters & 3u));
    player->place = player->run_end == player->cell_x ? AT_RUN_END : AT_RUN_DRAG;
    return STEP_BEGIN;
}

static enum step take_visit(struct load_player* player) {
    const uint8_t as_runs = take_bit(player);
    uint8_t bits = 1;
    uint16_t colour;
    while (bits < 8 && player->last_colour >> bits) ++bits;
    colour = take_bits(player, bits);
    if (colour > player->last_colour || colour == player->colour) refuse(player);
    player->colour = colour;
    player->strokes_left = take_number(player, STROKES_PARAMETER);
    player->place = as_runs ? AT_FIRST_RUN : AT_STROKE;
    if (as_runs) player->parameters = (uint8_t)take_bits(player, 4);
    return STEP_PICK;
}

static enum step take_step(struct load_player* player) {
    if (player->place == AT_START) player->place = take_bit(player) ? AT_VISIT : AT_END;
    switch (player->place) {
        case AT_VISIT:
            return take_visit(player);
        case AT_STROKE:
            take_move(player, MOVE_PARAMETER);
            player->last_turn = LEFT;
            player->place = AT_FIRST_PIECE;
            return STEP_BEGIN;
        case AT_FIRST_PIECE:
        case AT_PIECE:
            return take_piece(player);
        case AT_FIRST_RUN:
        case AT_RUN:
            return take_run(player);
        case AT_RUN_DRAG:
            player->cell_x = player->run_end;
            player->place = AT_RUN_END;
            return STEP_DRAG;
        case AT_RUN_END:
            return lift(player);
        default:
            if (player->byte != 0 || player->next != player->script_end) refuse(player);
            return STEP_END;
    }
}

/* The script's next step, if it keeps every rule. */
static enum load_player_status read_step(struct load_player* player, enum step* step) {
    player->status = LOAD_PLAYER_OK;
    *step = take_step(player);
    return (enum load_player_status)player->status;
}

/* What the canvas is filled with, before the script: the colour, and as the target the button. */
static enum load_player_status read_fill(struct load_player* player, uint8_t* colour) {
    uint8_t bytes[FILL_BYTES];
    if (!player->read(player->context, player->script_start - FILL_BYTES, bytes, sizeof bytes)) {
        return LOAD_PLAYER_READ_FAILED;
    }
    *colour = bytes[0];
    player->target.x = get_u16(bytes + 1);
    player->target.y = get_u16(bytes + 3);
    return *colour <= player->last_colour && player->target.x <= MAX_ORIGIN &&
                   player->target.y <= MAX_ORIGIN
               ? LOAD_PLAYER_OK
               : LOAD_PLAYER_DAMAGED;
}

static enum load_player_status check_script(struct load_player* player) {
    enum step step;
    if (player->pen & RULE_FILLS) {
        uint8_t colour;
        const enum load_player_status status = read_fill(player, &colour);
        if (status != LOAD_PLAYER_OK) return status;
    }
    rewind_script(player);
    do {
        const enum load_player_status status = read_step(player, &step);
        if (status != LOAD_PLAYER_OK) return status;
    } while (step != STEP_END);
    return LOAD_PLAYER_OK;
}

static void disarm(struct load_player* player) {
    player->phase = LOAD_PLAYER_DISARMED;
    player->released_ms = 0;
    player->wait_ms = 0;
}

/* Reads a directory entry and then all of the slot. */
static enum load_player_status take_slot(struct load_player* player, uint32_t entry) {
    enum load_player_status status = check_tail(player, entry, ENTRY_BYTES);
    if (status == LOAD_PLAYER_OK) status = take_canvas(player, entry);
    if (status == LOAD_PLAYER_OK) status = take_data(player, entry);
    return status;
}

enum load_player_status load_player_choose(struct load_player* player, uint8_t index) {
    enum load_player_status status;
    if (player->phase >= LOAD_PLAYER_MOVING_IN) return LOAD_PLAYER_BUSY;
    player->phase = LOAD_PLAYER_IDLE;
    if (index >= player->slots) return LOAD_PLAYER_NO_SLOT;
    status = take_slot(player, entry_offset(index));
    if (status == LOAD_PLAYER_OK) status = check_script(player);
    player->status = LOAD_PLAYER_OK;
    if (status == LOAD_PLAYER_OK) disarm(player);
    return status;
}

/* Aims at the pen's cell. */
static void aim(struct load_player* player) {
    player->target.x = (uint16_t)(player->grid_centre.x + (uint16_t)player->cell_x * player->pitch);
    player->target.y = (uint16_t)(player->grid_centre.y + (uint16_t)player->cell_y * player->pitch);
}

static struct load_player_point swatch_centre(const struct load_player* player, uint8_t colour) {
    struct load_player_point point;
    point.x = (uint16_t)(player->swatch_centre.x +
                         colour / (player->last_swatch + 1u) * player->swatch_pitch);
    point.y = (uint16_t)(player->swatch_centre.y +
                         colour % (player->last_swatch + 1u) * player->swatch_pitch);
    return point;
}

static void begin_drawing(struct load_player* player) {
    rewind_script(player);
    player->status = LOAD_PLAYER_OK;
    player->phase = LOAD_PLAYER_MOVING_IN;
    player->trigger_released = 0;
    player->released_ms = 0;
    player->wait_ms = 0;
    player->pressed = 0;
    player->pointer.x = 0;
    player->pointer.y = 0;
    aim(player);
    player->step = player->step_up;
    player->fill_clicks_left = player->pen & RULE_FILLS ? 2 : 0;
    player->corner_left = player->corner_reports;
    player->task = TASK_CORNER;
    player->after_move = TASK_NEXT_STEP;
}

static void send(struct load_player* player, struct load_player_report* report, int8_t dx,
                 int8_t dy, uint16_t wait_ms) {
    report->pressed = player->pressed;
    report->dx = dx;
    report->dy = dy;
    report->last = 0;
    player->wait_ms = wait_ms;
}

/* The way from one place to another on an axis, at most `step`. */
static int8_t cut(uint16_t from, uint16_t to, uint8_t step) {
    const uint8_t back = to < from;
    const uint16_t way = (uint16_t)(back ? from - to : to - from);
    const int8_t part = (int8_t)(way < step ? way : step);
    return (int8_t)(back ? -part : part);
}

/* Moves once towards the target, or returns 0 if the pointer is there. */
static uint8_t send_move(struct load_player* player, struct load_player_report* report) {
    const int8_t dx = cut(player->pointer.x, player->target.x, player->step);
    const int8_t dy = cut(player->pointer.y, player->target.y, player->step);
    if (dx == 0 && dy == 0) return 0;
    player->pointer.x = (uint16_t)(player->pointer.x + dx);
    player->pointer.y = (uint16_t)(player->pointer.y + dy);
    send(player, report, dx, dy, player->interval_ms);
    return 1;
}

static void stop(struct load_player* player, struct load_player_report* report) {
    player->pressed = 0;
    send(player, report, 0, 0, 0);
    report->last = 1;
    disarm(player);
}

/* Goes to the target and clicks there. */
static void go_and_click(struct load_player* player) {
    player->step = player->step_up;
    player->task = TASK_MOVE;
    player->after_move = TASK_PRESS;
    player->after_press = TASK_RELEASE;
    player->after_release = TASK_SETTLE;
}

/* Turns the next click of the fill into tasks: first on the swatch, then on the button. */
static enum load_player_status plan_fill(struct load_player* player) {
    uint8_t colour;
    const enum load_player_status status = read_fill(player, &colour);
    if (status != LOAD_PLAYER_OK) return status;
    --player->fill_clicks_left;
    if (player->fill_clicks_left > 0) player->target = swatch_centre(player, colour);
    go_and_click(player);
    return LOAD_PLAYER_OK;
}

/* Turns the script's next step into tasks. */
static enum load_player_status plan_step(struct load_player* player) {
    enum step step;
    const enum load_player_status status = read_step(player, &step);
    if (status != LOAD_PLAYER_OK) return status;
    player->task = TASK_MOVE;
    player->after_move = TASK_NEXT_STEP;
    aim(player);
    switch (step) {
        case STEP_END:
            player->task = TASK_DONE;
            break;
        case STEP_LIFT:
            player->task = TASK_RELEASE;
            player->after_release = player->place == AT_END ? TASK_DONE : TASK_NEXT_STEP;
            break;
        case STEP_PICK:
            player->target = swatch_centre(player, (uint8_t)player->colour);
            go_and_click(player);
            break;
        case STEP_BEGIN:
            player->step = player->step_up;
            player->after_move = TASK_PRESS;
            player->after_press = TASK_NEXT_STEP;
            break;
        case STEP_DRAG:
            player->step = player->step_down;
            break;
        case STEP_JUMP:
            player->step = player->step_down_limit;
            break;
    }
    return LOAD_PLAYER_OK;
}

/* Carries the tasks on up to the next report. Returns 0 if the drawing has ended without one. */
static uint8_t next_report(struct load_player* player, struct load_player_report* report) {
    for (;;) {
        switch (player->task) {
            case TASK_CORNER:
                if (player->corner_left == 0) {
                    player->task = TASK_MOVE;
                    break;
                }
                --player->corner_left;
                send(player, report, (int8_t)-player->step_up, (int8_t)-player->step_up,
                     player->interval_ms);
                return 1;
            case TASK_MOVE:
                if (send_move(player, report)) return 1;
                player->task = player->after_move;
                break;
            case TASK_PRESS:
                player->pressed = 1;
                player->task = player->after_press;
                send(player, report, 0, 0, player->press_ms);
                return 1;
            case TASK_RELEASE:
                player->pressed = 0;
                player->task = player->after_release;
                send(player, report, 0, 0, player->release_ms);
                report->last = player->task == TASK_DONE;
                return 1;
            case TASK_SETTLE:
                player->task = TASK_NEXT_STEP;
                if (player->settle_ms == 0) break;
                send(player, report, 0, 0, player->settle_ms);
                return 1;
            case TASK_NEXT_STEP:
                player->phase = LOAD_PLAYER_DRAWING;
                player->status =
                    (uint8_t)(player->fill_clicks_left > 0 ? plan_fill(player) : plan_step(player));
                if (player->status == LOAD_PLAYER_OK) break;
                stop(player, report);
                return 1;
            default:
                disarm(player);
                return 0;
        }
    }
}

static void count_released(struct load_player* player, uint16_t elapsed_ms) {
    /* A long pause between two looks at the trigger proves nothing about the time between. */
    const uint16_t most_for_one_look = 50;
    if (elapsed_ms > most_for_one_look) elapsed_ms = most_for_one_look;
    if (player->released_ms < LOAD_PLAYER_ARMING_MS) {
        player->released_ms = (uint16_t)(player->released_ms + elapsed_ms);
    }
}

/* Follows the trigger while a drawing runs. Returns 1 for a second press. */
static uint8_t pressed_again(struct load_player* player, uint8_t trigger, uint16_t elapsed_ms) {
    if (trigger) {
        player->released_ms = 0;
        return player->trigger_released;
    }
    count_released(player, elapsed_ms);
    /* The contact of the first press bounces; a finger does not let go for less than this. */
    if (player->released_ms >= LOAD_PLAYER_DEBOUNCE_MS) player->trigger_released = 1;
    return 0;
}

uint8_t load_player_tick(struct load_player* player, uint8_t trigger, uint16_t elapsed_ms,
                         struct load_player_report* report) {
    switch (player->phase) {
        case LOAD_PLAYER_DISARMED:
            if (trigger) {
                player->released_ms = 0;
            } else {
                count_released(player, elapsed_ms);
            }
            if (player->released_ms >= LOAD_PLAYER_ARMING_MS) player->phase = LOAD_PLAYER_ARMED;
            return 0;
        case LOAD_PLAYER_ARMED:
            if (!trigger) return 0;
            begin_drawing(player);
            return next_report(player, report);
        case LOAD_PLAYER_MOVING_IN:
        case LOAD_PLAYER_DRAWING:
            if (pressed_again(player, trigger, elapsed_ms)) {
                stop(player, report);
                return 1;
            }
            if (elapsed_ms < player->wait_ms) {
                player->wait_ms = (uint16_t)(player->wait_ms - elapsed_ms);
                return 0;
            }
            return next_report(player, report);
        default:
            return 0;
    }
}

enum load_player_phase load_player_phase_of(const struct load_player* player) {
    return (enum load_player_phase)player->phase;
}

enum load_player_status load_player_status_of(const struct load_player* player) {
    return (enum load_player_status)player->status;
}
