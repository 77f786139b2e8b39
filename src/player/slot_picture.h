#ifndef PANTILE_SLOT_PICTURE_H
#define PANTILE_SLOT_PICTURE_H

/* A slot's small picture, for a board with a screen: read row by row, so that no memory is needed
 * but for one row. Its title comes from load_player_describe. */

#include "player/load_player.h"

#ifdef __cplusplus
extern "C" {
#endif

#define SLOT_PICTURE_MAX_SIDE 128

struct slot_picture {
    uint8_t width, height; /* Both 0 if the slot has no picture. */
    uint16_t colours;
    /* Private. */
    uint32_t palette;
};

/* Finds the picture of slot `index`. To be used on a slot that load_player_choose took: that has
 * checked the bytes which the other two read. */
enum load_player_status slot_picture_find(const struct load_player* player, uint8_t index,
                                          struct slot_picture* picture);

/* Reads the palette indices of row `row` into `indices`, which holds `width` bytes. */
enum load_player_status slot_picture_row(const struct load_player* player,
                                         const struct slot_picture* picture, uint8_t row,
                                         uint8_t* indices);

/* Reads the colour that an index means: red, green, blue in 8-bit sRGB. */
enum load_player_status slot_picture_colour(const struct load_player* player,
                                            const struct slot_picture* picture, uint8_t index,
                                            uint8_t rgb[3]);

#ifdef __cplusplus
}
#endif

#endif
