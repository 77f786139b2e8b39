// Hostile words on a terminal: what the commands print of titles, names, tags and paths. The files
// that they write are tried in tests/tasks.

#include "support/hostile_texts.h"

#include <filesystem>

#include "core/text.h"
#include "support/cli_runner.h"

namespace pantile::cli {
namespace {

using tests::CliAnswer;
using tests::HostileText;

class HostileTexts : public ::testing::Test {
protected:
    CliAnswer expectHarmless(const std::vector<std::string>& words) const {
        const CliAnswer plain = m_cli.run(words);
        EXPECT_TRUE(tests::isHarmlessOnTerminal(plain.out + plain.err))
            << words.front() << plain.out << plain.err;
        const CliAnswer json = m_cli.runJson(words);
        EXPECT_TRUE(tests::isHarmlessOnTerminal(json.out + json.err)) << json.out << json.err;
        EXPECT_FALSE(json.document().isNull());
        return plain;
    }

    tests::CliRunner m_cli;
};

TEST_F(HostileTexts, AreEntriesOfTheirLines) {
    int seed = 0;
    for (const HostileText& hostile : tests::hostileTexts()) {
        const std::string id = std::to_string(++seed);
        const std::string name = core::cleanedText(hostile.text, {"name", 60});
        ASSERT_EQ(m_cli.run({"add", m_cli.writeGrid(id + ".csv", seed), "--title=" + hostile.text})
                      .exitCode,
                  0);
        EXPECT_EQ(m_cli.runJson({"show", id}).json()["title"].toString().toStdString(),
                  hostile.text);
    }
    const std::string table = expectHarmless({"find"}).out;
    for (const HostileText& hostile : tests::hostileTexts())
        EXPECT_NE(table.find("  " + hostile.text + " "), std::string::npos) << hostile.text;
    EXPECT_EQ(std::count(table.begin(), table.end(), '\n'), seed + 2) << table;
}

// Names that no library takes, and paths, which the system lets hold nearly everything.
TEST_F(HostileTexts, AreMadeVisibleInAnswersAndErrors) {
    ASSERT_EQ(m_cli.run({"add", m_cli.writeGrid("kelp.csv", 1)}).exitCode, 0);
    for (const auto& [name, text] : tests::refusedTexts()) {
        SCOPED_TRACE(name);
        EXPECT_EQ(expectHarmless({"set", "1", "--title", text}).exitCode, 1);
        EXPECT_NE(expectHarmless({"tag", "1", "+" + text}).exitCode, 0);
        for (const std::vector<std::string>& words :
             {std::vector<std::string>{"shelf", "put", text, "1"},
              {"shelf", "take", text, "1"},
              {"search", "save", text, "kelp"},
              {"find", text},
              {"find", "--saved", text},
              {"find", "--sort", text},
              {"find", "tag:" + text},
              {"load", "show", text},
              {"load", "make", text, "1", "--board", "flash-32k"},
              {"board", "show", text},
              {"canvas", "show", text},
              {"palette", "show", text},
              {"plan", "1", "--canvas", text},
              {"tags", "rename", text, "kelp"},
              {"show", text},
              {text},
              {"add", text},
              {"find", "--" + text},
              {"help", text},
              {"load", "verify", m_cli.path(text)},
              {"backup", m_cli.path("none/" + text)},
              {"add", "1", "--pin", text},
              {"read", m_cli.path(text)}}) {
            expectHarmless(words);
        }
        if (name == "Nul") continue;  // No path holds it.
        m_cli.writeText(text + ".csv", m_cli.readText(m_cli.path("kelp.csv")));
        m_cli.writeText(text + ".txt", "this is nothing");
        expectHarmless({"add", m_cli.path(text + ".csv"), m_cli.path(text + ".txt")});
        expectHarmless({"export", "1", "--as", "png", "--into", m_cli.path(text)});
        expectHarmless({"backup", m_cli.path(text + ".db")});
        expectHarmless({"check", "--repair", m_cli.path(text + "-2.db")});
        expectHarmless({"restore", m_cli.path(text + ".db")});
        expectHarmless({"seams", "1", "--picture", m_cli.path(text + ".png")});
    }
}

}  // namespace
}  // namespace pantile::cli
