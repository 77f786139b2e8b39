#ifndef PANTILE_SLOT_CHOICE_H
#define PANTILE_SLOT_CHOICE_H

/* One trigger for everything: a short press goes on to the next slot, a long one draws it, and any
 * press while it draws stops it. The player's own arming stays in force below this. */

#include "player/load_player.h"

#ifdef __cplusplus
extern "C" {
#endif

/* A press of this length or more draws. */
#define SLOT_CHOICE_LONG_MS 600

/* Told of every slot that was chosen, the first one included: its index, and why it cannot be drawn
 * if `status` is not LOAD_PLAYER_OK. A port with a screen shows the slot here (slot_picture.h). */
typedef void (*slot_choice_told)(void* context, const struct load_player* player, uint8_t index,
                                 enum load_player_status status);

/* All of it is private. */
struct slot_choice {
    struct load_player player;
    slot_choice_told told;
    void* context;
    uint8_t slot, stage;
    uint16_t held_ms, released_ms;
};

/* Opens the load and chooses its first slot. `told` may be 0. What is returned is the load's own
 * status; a first slot that cannot be drawn is no fault of the load. */
enum load_player_status slot_choice_open(struct slot_choice* choice, load_player_read read,
                                         void* read_context, slot_choice_told told, void* context);

/* To be called all the time in place of load_player_tick, and gives reports as that does. Presses
 * count once the trigger was released for half a second after power-up or after a drawing; a long
 * press draws if the trigger was released for as long before it. */
uint8_t slot_choice_tick(struct slot_choice* choice, uint8_t trigger, uint16_t elapsed_ms,
                         struct load_player_report* report);

#ifdef __cplusplus
}
#endif

#endif
