#include "player/slot_choice.h"

/* What is known of the trigger while nothing is drawn. */
enum stage {
    STAGE_ASLEEP = 0, /* It was not yet released for half a second. */
    STAGE_UP,
    STAGE_DOWN
};

static void go_to(struct slot_choice* choice, uint8_t slot) {
    const enum load_player_status status = load_player_choose(&choice->player, slot);
    choice->slot = slot;
    if (choice->told) choice->told(choice->context, &choice->player, slot, status);
}

enum load_player_status slot_choice_open(struct slot_choice* choice, load_player_read read,
                                         void* read_context, slot_choice_told told, void* context) {
    const enum load_player_status status = load_player_open(&choice->player, read, read_context);
    choice->told = told;
    choice->context = context;
    choice->stage = STAGE_ASLEEP;
    choice->released_ms = 0;
    choice->held_ms = 0;
    if (status == LOAD_PLAYER_OK) go_to(choice, 0);
    return status;
}

static void count(uint16_t* counter, uint16_t elapsed_ms) {
    /* What happened in a long pause between two looks, nobody has seen. */
    const uint16_t most_for_one_look = 50;
    const uint16_t enough = 1000;
    if (*counter < enough) {
        *counter = (uint16_t)(*counter +
                              (elapsed_ms < most_for_one_look ? elapsed_ms : most_for_one_look));
    }
}

/* Follows the trigger. Returns 1 when a short press has ended. Contacts bounce: neither a press nor
 * a release counts before it has lasted a little. */
static uint8_t pressed_shortly(struct slot_choice* choice, uint8_t trigger, uint16_t elapsed_ms) {
    if (trigger) {
        choice->released_ms = 0;
        if (choice->stage == STAGE_UP) {
            choice->stage = STAGE_DOWN;
            choice->held_ms = 0;
        }
        count(&choice->held_ms, elapsed_ms);
        return 0;
    }
    count(&choice->released_ms, elapsed_ms);
    if (choice->stage == STAGE_ASLEEP) {
        if (choice->released_ms >= LOAD_PLAYER_ARMING_MS) choice->stage = STAGE_UP;
        return 0;
    }
    if (choice->stage == STAGE_UP || choice->released_ms < LOAD_PLAYER_DEBOUNCE_MS) return 0;
    choice->stage = STAGE_UP;
    return choice->held_ms >= LOAD_PLAYER_DEBOUNCE_MS && choice->held_ms < SLOT_CHOICE_LONG_MS;
}

uint8_t slot_choice_tick(struct slot_choice* choice, uint8_t trigger, uint16_t elapsed_ms,
                         struct load_player_report* report) {
    struct load_player* const player = &choice->player;
    if (load_player_slots(player) == 0) return 0;
    if (load_player_phase_of(player) < LOAD_PLAYER_MOVING_IN) {
        if (pressed_shortly(choice, trigger, elapsed_ms)) {
            const uint8_t next = (uint8_t)(choice->slot + 1);
            go_to(choice, next < load_player_slots(player) ? next : 0);
            return 0;
        }
        /* An armed player begins at once: it hears of a press when that has become a long one. */
        if (load_player_phase_of(player) == LOAD_PLAYER_ARMED) {
            trigger =
                choice->stage == STAGE_DOWN && trigger && choice->held_ms >= SLOT_CHOICE_LONG_MS;
        }
    } else {
        /* The press that stops a drawing chooses nothing. */
        choice->stage = STAGE_ASLEEP;
        choice->released_ms = 0;
    }
    return load_player_tick(player, trigger, elapsed_ms, report);
}
