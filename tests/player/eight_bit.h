#pragma once

// The program of the 8-bit board, compiled for its own instruction set with a load in its flash and
// run in an emulator.

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "board/header_export.h"
#include "outside/run_program.h"
#include "player/bench_run.h"
#include "support/temporary_folder.h"

namespace pantile::tests {

/// A chip of the 8-bit class with 32 KiB of flash and USB, at 16 MHz.
inline const std::string kChip = "atmega32u4";

inline constexpr const char* kNoEightBitTools =
    "of Debian's packages gcc-avr, avr-libc and simavr not all are installed";

inline bool hasEightBitTools() {
    return run("command -v avr-size && command -v simavr && echo '#include <avr/io.h>' | "
               "avr-gcc -mmcu=" +
               kChip + " -E -x c - 2>&1")
               .status == 0;
}

class EightBit {
public:
    /// Compiles the port with `load`. `bench` is the file in tests/player that gives what the board
    /// maker's library gives, and `pins` whether the port's own pins go in.
    Outcome build(const std::vector<std::uint8_t>& load, const TriggerHand& hand,
                  const std::string& bench, bool pins) {
        const std::vector<std::string> titles;
        std::ofstream(m_folder.path() / "load.h") << board::writeHeader(load, "samples", titles);
        std::ofstream trigger(m_folder.path() / "trigger.h");
        trigger << "static const uint32_t trigger_changes[] PROGMEM = {";
        for (const std::uint32_t change : hand.changes) trigger << change << "UL,";
        trigger << "};\n";
        trigger.close();
        const std::string source = PANTILE_SOURCE_DIR;
        const std::string port = source + "/src/player/ports/eight_bit/";
        return compile(source + "/src/player/load_player.c " + source +
                           "/src/player/slot_choice.c " + port + "eight_bit.c " + port + "main.c " +
                           (pins ? port + "pins.c " : "") + source + "/tests/player/" + bench,
                       "whole");
    }

    /// The bench without player and port: what is not theirs in the figures of the whole.
    Outcome buildBenchAlone(const std::string& bench) {
        std::ofstream(m_folder.path() / "alone.c")
            << "#include \"player/ports/eight_bit/board.h\"\n"
               "int main(void) { board_begin(); for (;;) { const uint16_t ms = board_elapsed_ms(); "
               "if (board_trigger()) board_send(1, (int8_t)ms, 0); } }\n";
        return compile((m_folder.path() / "alone.c").string() + " " + PANTILE_SOURCE_DIR +
                           "/tests/player/" + bench,
                       "alone");
    }

    struct Sizes {
        int flash = 0;
        int ram = 0;
    };

    /// Of "whole" or "alone".
    Sizes sizes(const std::string& program) const {
        const Outcome size = run("avr-size " + path(program) + " | tail -n 1");
        int text = 0;
        int data = 0;
        int bss = 0;
        if (std::sscanf(size.output.c_str(), "%d %d %d", &text, &data, &bss) != 3) return {};
        return {text + data, data + bss};
    }

    BenchRun play(const std::string& options = {}) const {
        return readBenchLines(run("timeout 120 simavr " + options + " -m " + kChip +
                                  " -f 16000000 " + path("whole") + " 2>&1")
                                  .output);
    }

    const std::filesystem::path& folder() const { return m_folder.path(); }

private:
    std::string path(const std::string& program) const {
        return inQuotes((m_folder.path() / (program + ".elf")).string());
    }

    Outcome compile(const std::string& sources, const std::string& program) const {
        return run("avr-gcc -std=c99 -mmcu=" + kChip +
                   " -DF_CPU=16000000UL -Os -mcall-prologues -mrelax -ffunction-sections"
                   " -fdata-sections -Wl,--gc-sections -Wall -Wextra -Werror -I" +
                   std::string(PANTILE_SOURCE_DIR) + "/src -I" + PANTILE_SOURCE_DIR + "/tests -I" +
                   m_folder.path().string() + " " + sources + " -o " + path(program) + " 2>&1");
    }

    TemporaryFolder m_folder;
};

}  // namespace pantile::tests
