/* The port for a small Linux board whose kernel makes it a USB mouse: reads a load from a file and
 * writes reports of three bytes to the mouse's device file.
 *
 *   linux_gadget LOAD DEVICE TRIGGER
 *
 * TRIGGER is the file in which the kernel shows the trigger's pin: its first character is 1 while
 * the trigger is pressed. */

#define _POSIX_C_SOURCE 200809L

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "player/slot_choice.h"

static volatile sig_atomic_t asked_to_end;

static void ask_to_end(int signal_number) {
    (void)signal_number;
    asked_to_end = 1;
}

static uint8_t read_file(void* context, uint32_t offset, uint8_t* buffer, uint8_t length) {
    const int file = *(const int*)context;
    return pread(file, buffer, length, (off_t)offset) == (ssize_t)length;
}

/* Not 0 while the trigger is pressed. A trigger that cannot be read counts as pressed: that arms
 * nothing, and stops what is being drawn. */
static uint8_t trigger_pressed(int file) {
    char first;
    return pread(file, &first, 1, 0) != 1 || first == '1';
}

/* Returns 0 if the report cannot be written any more. */
static int write_report(int device, uint8_t buttons, int8_t dx, int8_t dy) {
    const uint8_t report[3] = {buttons, (uint8_t)dx, (uint8_t)dy};
    ssize_t written;
    do {
        written = write(device, report, sizeof report);
    } while (written < 0 && errno == EINTR && !asked_to_end);
    return written == (ssize_t)sizeof report;
}

static void tell(void* context, const struct load_player* player, uint8_t index,
                 enum load_player_status status) {
    struct load_player_slot slot;
    (void)context;
    if (status != LOAD_PLAYER_OK) {
        printf("slot %d cannot be drawn: it is damaged or of a newer kind\n", index + 1);
    } else if (load_player_describe(player, index, &slot) == LOAD_PLAYER_OK) {
        printf("slot %d: %s, at most %lu s\n", index + 1, slot.title,
               (unsigned long)(slot.milliseconds / 1000 + 1));
    }
    fflush(stdout);
}

static uint64_t milliseconds_now(void) {
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (uint64_t)now.tv_sec * 1000u + (uint64_t)now.tv_nsec / 1000000u;
}

static void sleep_a_millisecond(void) {
    const struct timespec millisecond = {0, 1000000};
    nanosleep(&millisecond, NULL);
}

/* Draws as the trigger says until asked to end. Returns 0 if the device has gone. */
static int serve(struct slot_choice* choice, int device, int trigger) {
    uint64_t before = milliseconds_now();
    while (!asked_to_end) {
        struct load_player_report report;
        const uint64_t now = milliseconds_now();
        const uint16_t elapsed = now - before < 1000 ? (uint16_t)(now - before) : 1000;
        before = now;
        if (elapsed > 0 && slot_choice_tick(choice, trigger_pressed(trigger), elapsed, &report) &&
            !write_report(device, report.pressed, report.dx, report.dy)) {
            return 0;
        }
        sleep_a_millisecond();
    }
    /* Whatever was being drawn, the button does not stay down. */
    asked_to_end = 0;
    return write_report(device, 0, 0, 0);
}

static int open_or_say(const char* path, int how) {
    const int file = open(path, how);
    if (file < 0) fprintf(stderr, "cannot open %s: %s\n", path, strerror(errno));
    return file;
}

int main(int argc, char** argv) {
    static struct slot_choice choice;
    struct sigaction end;
    int load, device, trigger;
    if (argc != 4) {
        fprintf(stderr, "usage: %s LOAD DEVICE TRIGGER\n", argv[0]);
        return 2;
    }
    memset(&end, 0, sizeof end);
    end.sa_handler = ask_to_end;
    sigaction(SIGINT, &end, NULL);
    sigaction(SIGTERM, &end, NULL);
    /* A device that has gone is an error of write, not the end of the program. */
    signal(SIGPIPE, SIG_IGN);
    load = open_or_say(argv[1], O_RDONLY);
    trigger = load < 0 ? -1 : open_or_say(argv[3], O_RDONLY);
    device = trigger < 0 ? -1 : open_or_say(argv[2], O_WRONLY);
    if (device < 0) return 1;
    if (slot_choice_open(&choice, read_file, &load, tell, NULL) != LOAD_PLAYER_OK) {
        fprintf(stderr, "%s is no load, or damaged, or of a newer version\n", argv[1]);
        return 1;
    }
    if (!serve(&choice, device, trigger)) {
        fprintf(stderr, "cannot write to %s: %s\n", argv[2], strerror(errno));
        return 1;
    }
    return 0;
}
