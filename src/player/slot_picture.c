#include "player/slot_picture.h"

/* The numbers of docs/load-format.md, section 2. */
#define HEADER_BYTES 64u
#define ENTRY_BYTES 96u
#define COLOURS_OFFSET 28u
#define PICTURE_OFFSET 44u
#define COLOUR_BYTES 3u

static enum load_player_status read_part(const struct load_player* player, uint32_t offset,
                                         uint8_t* bytes, uint8_t count) {
    return player->read(player->context, offset, bytes, count) ? LOAD_PLAYER_OK
                                                               : LOAD_PLAYER_READ_FAILED;
}

enum load_player_status slot_picture_find(const struct load_player* player, uint8_t index,
                                          struct slot_picture* picture) {
    const uint32_t entry = HEADER_BYTES + (uint32_t)ENTRY_BYTES * index;
    uint8_t bytes[4];
    enum load_player_status status;
    picture->width = 0;
    picture->height = 0;
    if (index >= load_player_slots(player)) return LOAD_PLAYER_NO_SLOT;
    status = read_part(player, entry, bytes, 4);
    if (status != LOAD_PLAYER_OK) return status;
    picture->palette = (uint32_t)bytes[0] | (uint32_t)bytes[1] << 8 | (uint32_t)bytes[2] << 16 |
                       (uint32_t)bytes[3] << 24;
    status = read_part(player, entry + COLOURS_OFFSET, bytes, 1);
    if (status != LOAD_PLAYER_OK) return status;
    picture->colours = (uint16_t)(bytes[0] + 1u);
    status = read_part(player, entry + PICTURE_OFFSET, bytes, 2);
    if (status != LOAD_PLAYER_OK) return status;
    if (bytes[0] > SLOT_PICTURE_MAX_SIDE || bytes[1] > SLOT_PICTURE_MAX_SIDE) {
        return LOAD_PLAYER_DAMAGED;
    }
    picture->width = bytes[0];
    picture->height = bytes[1];
    return LOAD_PLAYER_OK;
}

enum load_player_status slot_picture_row(const struct load_player* player,
                                         const struct slot_picture* picture, uint8_t row,
                                         uint8_t* indices) {
    const uint32_t cells = picture->palette + (uint32_t)COLOUR_BYTES * picture->colours;
    if (row >= picture->height) return LOAD_PLAYER_NO_SLOT;
    return read_part(player, cells + (uint32_t)row * picture->width, indices, picture->width);
}

enum load_player_status slot_picture_colour(const struct load_player* player,
                                            const struct slot_picture* picture, uint8_t index,
                                            uint8_t rgb[3]) {
    if (index >= picture->colours) return LOAD_PLAYER_DAMAGED;
    return read_part(player, picture->palette + (uint32_t)COLOUR_BYTES * index, rgb, 3);
}
