#pragma once

// The player compiled for 32-bit x86, without a library, and run by the processor itself.

#include <fstream>
#include <string>
#include <vector>

#include "outside/run_program.h"
#include "player/bench_run.h"
#include "support/temporary_folder.h"

namespace pantile::tests {

class ThirtyTwoBits {
public:
    ThirtyTwoBits() {
        const std::string source = PANTILE_SOURCE_DIR;
        const Outcome built =
            run("gcc -m32 -std=gnu99 -O2 -ffreestanding -nostdlib -static -fno-pic -no-pie"
                " -fno-stack-protector -Wall -Wextra -Werror -I" +
                source + "/src " + source + "/src/player/load_player.c " + source +
                "/src/player/slot_choice.c " + source + "/tests/player/bare_bench.c -o " +
                program() + " 2>&1");
        if (built.status != 0) {
            m_missing = "no compiler for 32-bit x86: " + built.output;
        } else if (ranWith({}, {}).status != kNoLoad << 8) {
            m_missing = "this machine runs no 32-bit programs";
        }
    }

    /// Empty, or why nothing can be played here.
    const std::string& missing() const { return m_missing; }

    BenchRun play(const std::vector<std::uint8_t>& load, const TriggerHand& hand) const {
        return readBenchLines(ranWith(load, hand).output);
    }

private:
    static constexpr int kNoLoad =
        1;  ///< What bare_bench.c ends with if the load cannot be opened.

    std::string program() const { return inQuotes((m_folder.path() / "bench").string()); }

    Outcome ranWith(const std::vector<std::uint8_t>& load, const TriggerHand& hand) const {
        const std::string name = (m_folder.path() / "input").string();
        std::ofstream input(name, std::ios::binary);
        const auto put = [&](std::uint64_t value) {
            for (int i = 0; i < 4; ++i) input.put(static_cast<char>(value >> 8 * i));
        };
        put(load.size());
        put(hand.changes.size());
        input.write(reinterpret_cast<const char*>(load.data()),
                    static_cast<std::streamsize>(load.size()));
        for (const std::uint32_t change : hand.changes) put(change);
        input.close();
        return run(program() + " <" + inQuotes(name) + " 2>&1");
    }

    TemporaryFolder m_folder;
    std::string m_missing;
};

}  // namespace pantile::tests
