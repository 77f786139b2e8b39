#include "load_player.h"

/* The numbers of docs/load-format.md, version 1. */
#define HEADER_BYTES 64u
#define ENTRY_BYTES 96u
#define CHECKSUM_BYTES 4u
#define BASE_BYTES (HEADER_BYTES + CHECKSUM_BYTES)
#define TITLE_OFFSET 46u
#define VERSION 1u
#define ENCODING 1u
#define MAX_SCRIPT_BYTES 1048576ul
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

#define OP_END 0x00u
#define OP_PICK 0x01u
#define OP_BEGIN_AT 0x02u
#define OP_DRAG_TO 0x03u
#define OP_JUMP_TO 0x04u
#define OP_JUMP_NEAR 0x08u
#define OP_JUMP_NEAR_LAST 0x38u
#define OP_BEGIN_NEAR 0x40u
#define OP_DRAG 0x80u
#define DRAG_GOES_ON 15u

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
enum step_kind { STEP_END, STEP_PICK, STEP_BEGIN, STEP_DRAG, STEP_JUMP };

struct step {
    enum step_kind kind;
    uint8_t x, y; /* The cell, or x the colour of a pick. */
};

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
    player->width = (uint16_t)(bytes[0] + 1u);
    player->height = (uint16_t)(bytes[1] + 1u);
    player->colours = (uint16_t)(bytes[4] + 1u);
    player->grid_centre.x = get_u16(bytes + 8);
    player->grid_centre.y = get_u16(bytes + 10);
    player->swatch_centre.x = get_u16(bytes + 12);
    player->swatch_centre.y = get_u16(bytes + 14);
    player->pitch = bytes[16];
    player->swatch_pitch = bytes[17];
    player->swatches_per_column = (uint16_t)(bytes[18] + 1u);
    player->pen = bytes[7];
    /* What stands before the script: palette, small picture and fill. */
    player->script_start = 3u * player->colours + (uint16_t)bytes[20] * bytes[21];
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
    player->cell_x = 0;
    player->cell_y = 0;
    player->in_stroke = 0;
    player->has_colour = 0;
    player->colour = 0;
}

static enum load_player_status read_bytes(struct load_player* player, uint8_t* bytes,
                                          uint8_t count) {
    if (count > player->script_end - player->next) return LOAD_PLAYER_DAMAGED;
    if (!player->read(player->context, player->next, bytes, count)) return LOAD_PLAYER_READ_FAILED;
    player->next += count;
    return LOAD_PLAYER_OK;
}

/* The cell `cells` further on in a direction, if it lies on the grid. */
static uint8_t cell_along(const struct load_player* player, uint8_t direction, uint16_t cells,
                          struct step* step) {
    static const int8_t across[8] = {1, 1, 0, -1, -1, -1, 0, 1};
    static const int8_t down[8] = {0, 1, 1, 1, 0, -1, -1, -1};
    const int16_t x = (int16_t)(player->cell_x + across[direction] * (int16_t)cells);
    const int16_t y = (int16_t)(player->cell_y + down[direction] * (int16_t)cells);
    if (x < 0 || y < 0 || x >= (int16_t)player->width || y >= (int16_t)player->height) return 0;
    step->x = (uint8_t)x;
    step->y = (uint8_t)y;
    return 1;
}

static enum load_player_status read_drag(struct load_player* player, uint8_t op,
                                         struct step* step) {
    const uint8_t direction = (uint8_t)(op >> 4 & 7u);
    uint16_t cells = 0;
    while ((op & 15u) == DRAG_GOES_ON) {
        const uint8_t base = (uint8_t)(op & 0xF0u);
        enum load_player_status status;
        cells = (uint16_t)(cells + 15u);
        if (cells > 256) return LOAD_PLAYER_DAMAGED;
        status = read_bytes(player, &op, 1);
        if (status != LOAD_PLAYER_OK) return status;
        if ((op & 0xF0u) != base) return LOAD_PLAYER_DAMAGED;
    }
    cells = (uint16_t)(cells + (op & 15u) + 1u);
    step->kind = STEP_DRAG;
    if (!player->in_stroke || !cell_along(player, direction, cells, step)) {
        return LOAD_PLAYER_DAMAGED;
    }
    return LOAD_PLAYER_OK;
}

/* How far the pen jumps without painting what lies between: 0 if it cannot. */
static uint8_t jump_cells(const struct load_player* player) {
    if ((player->pen & (PEN_MODEL_BITS | RULE_NO_TURNS)) != PEN_SAMPLED) return 0;
    return (uint8_t)(player->step_down_limit / player->pitch);
}

static uint8_t between(uint8_t a, uint8_t b) {
    return (uint8_t)(a > b ? a - b : b - a);
}

/* Whether the cell lies on the grid and no further from the pen than it can jump. A way over the
 * edge comes out at the other one, where it is too far for any jump. */
static enum load_player_status check_jump(const struct load_player* player, uint8_t x, uint8_t y,
                                          struct step* step) {
    const uint8_t most = jump_cells(player);
    if (!player->in_stroke || x >= player->width || y >= player->height ||
        between(x, player->cell_x) > most || between(y, player->cell_y) > most ||
        (x == player->cell_x && y == player->cell_y)) {
        return LOAD_PLAYER_DAMAGED;
    }
    step->kind = STEP_JUMP;
    step->x = x;
    step->y = y;
    return LOAD_PLAYER_OK;
}

static enum load_player_status read_jump_near(const struct load_player* player, uint8_t op,
                                              struct step* step) {
    const uint8_t place = (uint8_t)(op - OP_JUMP_NEAR);
    return check_jump(player, (uint8_t)(player->cell_x + place % 7u - 3u),
                      (uint8_t)(player->cell_y + place / 7u - 3u), step);
}

static enum load_player_status read_near(const struct load_player* player, uint8_t op,
                                         struct step* step) {
    const int16_t x = (int16_t)(player->cell_x + (int16_t)(op >> 3 & 7u) - 4);
    const int16_t y = (int16_t)(player->cell_y + (int16_t)(op & 7u) - 4);
    step->kind = STEP_BEGIN;
    if (!player->has_colour || x < 0 || y < 0 || x >= (int16_t)player->width ||
        y >= (int16_t)player->height) {
        return LOAD_PLAYER_DAMAGED;
    }
    step->x = (uint8_t)x;
    step->y = (uint8_t)y;
    return LOAD_PLAYER_OK;
}

/* A step that names its cell or colour in bytes of their own. */
static enum load_player_status read_long_step(struct load_player* player, uint8_t op,
                                              struct step* step) {
    uint8_t bytes[2] = {0, 0};
    enum load_player_status status;
    if (op > OP_JUMP_TO) return LOAD_PLAYER_DAMAGED;
    status = read_bytes(player, bytes, op == OP_PICK ? 1 : 2);
    if (status != LOAD_PLAYER_OK) return status;
    step->x = bytes[0];
    step->y = bytes[1];
    if (op == OP_PICK) {
        const uint8_t again = player->has_colour && player->colour == step->x;
        step->kind = STEP_PICK;
        return step->x < player->colours && !again ? LOAD_PLAYER_OK : LOAD_PLAYER_DAMAGED;
    }
    if (op == OP_JUMP_TO) return check_jump(player, step->x, step->y, step);
    if (step->x >= player->width || step->y >= player->height) return LOAD_PLAYER_DAMAGED;
    if (op == OP_BEGIN_AT) {
        step->kind = STEP_BEGIN;
        return player->has_colour ? LOAD_PLAYER_OK : LOAD_PLAYER_DAMAGED;
    }
    step->kind = STEP_DRAG;
    return player->in_stroke && (step->x != player->cell_x || step->y != player->cell_y)
               ? LOAD_PLAYER_OK
               : LOAD_PLAYER_DAMAGED;
}

/* Reads the script's next step, checks it against every rule, and keeps the script's state. */
static enum load_player_status read_step(struct load_player* player, struct step* step) {
    uint8_t op;
    enum load_player_status status = read_bytes(player, &op, 1);
    if (status != LOAD_PLAYER_OK) return status;
    if (op == OP_END) {
        step->kind = STEP_END;
        return player->next == player->script_end ? LOAD_PLAYER_OK : LOAD_PLAYER_DAMAGED;
    }
    if (op >= OP_DRAG) {
        status = read_drag(player, op, step);
    } else if (op >= OP_BEGIN_NEAR) {
        status = read_near(player, op, step);
    } else if (op >= OP_JUMP_NEAR && op <= OP_JUMP_NEAR_LAST) {
        status = read_jump_near(player, op, step);
    } else {
        status = read_long_step(player, op, step);
    }
    if (status != LOAD_PLAYER_OK) return status;
    if (step->kind == STEP_PICK) {
        player->has_colour = 1;
        player->colour = step->x;
        player->in_stroke = 0;
    } else {
        player->in_stroke = 1;
        player->cell_x = step->x;
        player->cell_y = step->y;
    }
    return LOAD_PLAYER_OK;
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
    return *colour < player->colours && player->target.x <= MAX_ORIGIN &&
                   player->target.y <= MAX_ORIGIN
               ? LOAD_PLAYER_OK
               : LOAD_PLAYER_DAMAGED;
}

static enum load_player_status check_script(struct load_player* player) {
    struct step step;
    if (player->pen & RULE_FILLS) {
        uint8_t colour;
        const enum load_player_status status = read_fill(player, &colour);
        if (status != LOAD_PLAYER_OK) return status;
    }
    rewind_script(player);
    do {
        const enum load_player_status status = read_step(player, &step);
        if (status != LOAD_PLAYER_OK) return status;
    } while (step.kind != STEP_END);
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
    if (status == LOAD_PLAYER_OK) disarm(player);
    return status;
}

static struct load_player_point cell_centre(const struct load_player* player, uint8_t x,
                                            uint8_t y) {
    struct load_player_point point;
    point.x = (uint16_t)(player->grid_centre.x + (uint16_t)x * player->pitch);
    point.y = (uint16_t)(player->grid_centre.y + (uint16_t)y * player->pitch);
    return point;
}

static struct load_player_point swatch_centre(const struct load_player* player, uint8_t colour) {
    struct load_player_point point;
    point.x = (uint16_t)(player->swatch_centre.x +
                         colour / player->swatches_per_column * player->swatch_pitch);
    point.y = (uint16_t)(player->swatch_centre.y +
                         colour % player->swatches_per_column * player->swatch_pitch);
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
    player->target = cell_centre(player, 0, 0);
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

/* The script's bytes that go on with a stroke. */
static uint8_t keeps_pressed(uint8_t op) {
    return op >= OP_DRAG || op == OP_DRAG_TO || op == OP_JUMP_TO ||
           (op >= OP_JUMP_NEAR && op <= OP_JUMP_NEAR_LAST);
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

/* Turns the script's next step into tasks. The button goes up before anything but a drag or a
 * jump. */
static enum load_player_status plan_step(struct load_player* player) {
    struct step step;
    uint8_t op;
    enum load_player_status status = read_bytes(player, &op, 1);
    if (status != LOAD_PLAYER_OK) return status;
    --player->next;
    if (player->pressed && !keeps_pressed(op)) {
        player->task = TASK_RELEASE;
        player->after_release = op == OP_END ? TASK_DONE : TASK_NEXT_STEP;
        return LOAD_PLAYER_OK;
    }
    status = read_step(player, &step);
    if (status != LOAD_PLAYER_OK) return status;
    player->task = TASK_MOVE;
    switch (step.kind) {
        case STEP_END:
            player->task = TASK_DONE;
            break;
        case STEP_PICK:
            player->target = swatch_centre(player, step.x);
            go_and_click(player);
            break;
        case STEP_BEGIN:
            player->target = cell_centre(player, step.x, step.y);
            player->step = player->step_up;
            player->after_move = TASK_PRESS;
            player->after_press = TASK_NEXT_STEP;
            break;
        case STEP_DRAG:
        case STEP_JUMP:
            player->target = cell_centre(player, step.x, step.y);
            player->step = step.kind == STEP_JUMP ? player->step_down_limit : player->step_down;
            player->after_move = TASK_NEXT_STEP;
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
