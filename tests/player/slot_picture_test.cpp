// What a board with a screen shows of its slots, and that drawing does not mind the pictures.

#include "player/slot_picture.h"

#include <gtest/gtest.h>

#include "board/small_picture.h"
#include "player/bench_run.h"
#include "player/memory_load.h"
#include "player/slot_choice.h"

namespace pantile::tests {
namespace {

/// A screen: it keeps the title and the picture of the slot that was told last.
struct Screen {
    std::string title;
    std::vector<std::uint8_t> indices;
    std::vector<core::Rgb8> colours;
    int width = 0;
    int height = 0;
};

void show(void* context, const load_player* player, std::uint8_t index, load_player_status status) {
    Screen& screen = *static_cast<Screen*>(context);
    screen = {};
    if (status != LOAD_PLAYER_OK) return;
    load_player_slot slot = {};
    ASSERT_EQ(load_player_describe(player, index, &slot), LOAD_PLAYER_OK);
    screen.title = slot.title;
    slot_picture picture = {};
    ASSERT_EQ(slot_picture_find(player, index, &picture), LOAD_PLAYER_OK);
    screen.width = picture.width;
    screen.height = picture.height;
    for (int y = 0; y < picture.height; ++y) {
        std::uint8_t row[SLOT_PICTURE_MAX_SIDE] = {};
        ASSERT_EQ(slot_picture_row(player, &picture, static_cast<std::uint8_t>(y), row),
                  LOAD_PLAYER_OK);
        screen.indices.insert(screen.indices.end(), row, row + picture.width);
    }
    for (int i = 0; i < picture.colours; ++i) {
        std::uint8_t rgb[3] = {};
        ASSERT_EQ(slot_picture_colour(player, &picture, static_cast<std::uint8_t>(i), rgb),
                  LOAD_PLAYER_OK);
        screen.colours.push_back({rgb[0], rgb[1], rgb[2]});
    }
}

board::Load loadWithPictures() {
    board::Load load = loadOf({sampleTexture("16/starfish.png"), sampleTexture("32/brass-bell.png"),
                               sampleTexture("16/dry-sand.png")},
                              core::PointerTiming::quick(), core::PenModel::WholeCells);
    load.slots[0].picture = board::smallPicture(load.slots[0].grid, {16, 16});
    load.slots[1].picture = board::smallPicture(load.slots[1].grid, {20, 12});
    return load;
}

TEST(SlotPicture, IsShownWithItsTitle) {
    const board::Load load = loadWithPictures();
    Bytes bytes = written(load);
    Screen screen;
    slot_choice choice = {};
    ASSERT_EQ(slot_choice_open(&choice, readMemory, &bytes, show, &screen), LOAD_PLAYER_OK);
    load_player_report report = {};
    const auto hold = [&](std::uint8_t trigger, int milliseconds) {
        for (int i = 0; i < milliseconds; ++i) slot_choice_tick(&choice, trigger, 1, &report);
    };
    hold(0, 600);
    for (const board::LoadSlot& slot : load.slots) {
        EXPECT_EQ(screen.title, slot.title);
        if (slot.picture) {
            EXPECT_EQ(screen.width, slot.picture->width());
            EXPECT_EQ(screen.height, slot.picture->height());
            EXPECT_TRUE(std::equal(screen.indices.begin(), screen.indices.end(),
                                   slot.picture->cells().begin(), slot.picture->cells().end()));
        } else {
            EXPECT_EQ(screen.width, 0);
            EXPECT_EQ(screen.height, 0);
        }
        EXPECT_TRUE(std::equal(screen.colours.begin(), screen.colours.end(),
                               slot.palette.colours().begin(), slot.palette.colours().end()));
        hold(1, 100);
        hold(0, 100);
    }
    EXPECT_EQ(screen.title, load.slots[0].title) << "after the last comes the first";
}

TEST(SlotPicture, LeavesTheDrawingAsItIs) {
    const board::Load load = loadWithPictures();
    Bytes bytes = written(load);
    const TriggerHand hand = drawEverySlot(load);
    slot_choice choice = {};
    ASSERT_EQ(slot_choice_open(&choice, readMemory, &bytes, nullptr, nullptr), LOAD_PLAYER_OK);
    BenchRun run;
    std::int64_t now = 0;
    for (std::size_t change = 0; change < hand.changes.size();) {
        load_player_report report = {};
        if (++now >= hand.changes[change]) ++change;
        if (slot_choice_tick(&choice, change & 1U, 1, &report) == 0) continue;
        run.reports.push_back({now, report.pressed, report.dx, report.dy});
    }
    expectDrawsEverySlot(run, load, hand);
}

TEST(SlotPicture, IsNotLookedForBeyondTheSlots) {
    const board::Load load = loadWithPictures();
    Bytes bytes = written(load);
    load_player player = {};
    ASSERT_EQ(load_player_open(&player, readMemory, &bytes), LOAD_PLAYER_OK);
    slot_picture picture = {};
    EXPECT_EQ(slot_picture_find(&player, 3, &picture), LOAD_PLAYER_NO_SLOT);
    ASSERT_EQ(slot_picture_find(&player, 0, &picture), LOAD_PLAYER_OK);
    std::uint8_t row[SLOT_PICTURE_MAX_SIDE] = {};
    EXPECT_EQ(slot_picture_row(&player, &picture, picture.height, row), LOAD_PLAYER_NO_SLOT);
    bytes.clear();
    EXPECT_EQ(slot_picture_row(&player, &picture, 0, row), LOAD_PLAYER_READ_FAILED);
    EXPECT_EQ(slot_picture_find(&player, 0, &picture), LOAD_PLAYER_READ_FAILED);
}

}  // namespace
}  // namespace pantile::tests
