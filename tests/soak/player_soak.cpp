// player_soak: every sample texture through the player on the emulated 8-bit board and on 32-bit
// x86, five to a load as on the shipped board, in careful and in quick timing. Fails if one cell is
// wrong or a time is off by more than 1 %. Needs the compilers and the emulator that tests/run
// installs.

#include <algorithm>
#include <filesystem>
#include <iostream>

#include <gtest/gtest.h>

#include "board/load_writer.h"
#include "board/profile.h"
#include "player/eight_bit.h"
#include "player/thirty_two_bits.h"

namespace pantile::tests {
namespace {

std::vector<std::string> allSamples() {
    const auto top = std::filesystem::path(PANTILE_SOURCE_DIR) / "sample_library" / "textures";
    std::vector<std::string> places;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(top)) {
        if (entry.path().extension() == ".png") {
            places.push_back(std::filesystem::relative(entry.path(), top).string());
        }
    }
    std::sort(places.begin(), places.end());
    return places;
}

struct Most {
    int cycles = 0;
    int stack = 0;
    int flash = 0;
    double offPercent = 0;
    std::size_t loadBytes = 0;
    int slots = 0;
};

void playLoad(const board::Load& load, const ThirtyTwoBits& bare, Most& most) {
    const auto bytes = board::writeLoad(load, board::shippedBoards()[0]);
    ASSERT_TRUE(bytes.has_value()) << "five samples do not fit the board";
    const TriggerHand hand = drawEverySlot(load);
    expectDrawsEverySlot(bare.play(*bytes, hand), load, hand);

    EightBit board;
    const Outcome built = board.build(*bytes, hand, "eight_bit_bench.c", false);
    ASSERT_EQ(built.status, 0) << built.output;
    const BenchRun run = board.play();
    expectDrawsEverySlot(run, load, hand);
    const auto parts = drawings(run.reports, hand);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const auto foretold = static_cast<double>(load.slots[i].plan.milliseconds);
        const auto took = static_cast<double>(drawingTime(parts[i], load.slots[i], load.timing));
        most.offPercent = std::max(most.offPercent, 100 * std::abs(took - foretold) / foretold);
    }
    most.cycles = std::max(most.cycles, run.mostCycles);
    most.stack = std::max(most.stack, run.stackBytes);
    most.flash = std::max(most.flash, board.sizes("whole").flash);
    most.loadBytes = std::max(most.loadBytes, bytes->size());
    most.slots += static_cast<int>(load.slots.size());
}

TEST(PlayerSoak, DrawsEverySample) {
    ASSERT_TRUE(hasEightBitTools());
    const ThirtyTwoBits bare;
    ASSERT_EQ(bare.missing(), "");
    const std::vector<std::string> places = allSamples();
    ASSERT_GT(places.size(), 50U);
    Most most;
    for (const auto& timing : {core::PointerTiming::careful(), core::PointerTiming::quick()}) {
        for (std::size_t i = 0; i < places.size(); i += 5) {
            std::vector<picture::Converted> five;
            for (std::size_t k = i; k < std::min(i + 5, places.size()); ++k) {
                five.push_back(sampleTexture(places[k]));
            }
            playLoad(loadOf(five, timing, core::PenModel::WholeCells), bare, most);
        }
    }
    std::cout << most.slots << " drawings; at most " << most.cycles << " cycles for a report, "
              << most.stack << " bytes of stack, " << most.offPercent << " % off the time, "
              << most.loadBytes << " bytes of load, " << most.flash
              << " bytes of flash with bench and load\n";
}

}  // namespace
}  // namespace pantile::tests
