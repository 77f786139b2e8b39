// Our scripts read by a decoder in another language that was written from docs/load-format.md, not
// from our sources: tests/outside/script_decoder.py.

#include <fstream>
#include <string>

#include <gtest/gtest.h>

#include "board/load_writer.h"
#include "board/random_load.h"
#include "outside/run_program.h"
#include "support/matchers.h"
#include "support/temporary_folder.h"

namespace pantile::board {
namespace {

std::string strokesText(const Load& load) {
    std::string text;
    int number = 0;
    for (const LoadSlot& slot : load.slots) {
        text += "slot " + std::to_string(++number) + "\n";
        for (const drawing::Stroke& stroke : slot.plan.strokes) {
            text += std::to_string(stroke.colour);
            for (std::size_t i = 0; i < stroke.path.size(); ++i) {
                text += stroke.jumpsTo(i) ? " >" : " ";
                text += std::to_string(stroke.path[i].x) + "," + std::to_string(stroke.path[i].y);
            }
            text += "\n";
        }
    }
    return text;
}

TEST(ScriptDecoder, ReadsTheStrokesOfRandomLoads) {
    const tests::TemporaryFolder folder;
    std::string wanted;
    std::string arguments;
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
        const Load load = tests::randomLoad(seed, 4);
        wanted += strokesText(load);
        const auto path = folder.path() / (std::to_string(seed) + ".bin");
        const auto bytes = writeLoad(load, tests::roomyBoard());
        ASSERT_THAT(bytes, tests::isOk());
        std::ofstream file(path, std::ios::binary);
        file.write(reinterpret_cast<const char*>(bytes->data()), std::ssize(*bytes));
        arguments += " " + tests::inQuotes(path.string());
    }
    const tests::Outcome outcome =
        tests::run("python3 " + tests::script("script_decoder.py") + arguments);
    EXPECT_EQ(outcome.status, 0);
    EXPECT_EQ(outcome.output, wanted);
}

}  // namespace
}  // namespace pantile::board
