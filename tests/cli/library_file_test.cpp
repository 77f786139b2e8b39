// The way out as plain text and back, on the real command line.

#include "support/cli_runner.h"
#include "support/matchers.h"

namespace pantile::tests {
namespace {

class LibraryFileCli : public ::testing::Test {
protected:
    CliAnswer onOther(std::vector<std::string> words) const {
        words.insert(words.begin(), {"--library", m_cli.path("other.db")});
        return m_cli.runBare(words);
    }

    void fill() const {
        for (int seed = 1; seed <= 3; ++seed) {
            const std::string name = "tile-" + std::to_string(seed) + ".csv";
            ASSERT_EQ(m_cli.run({"add", m_cli.writeGrid(name, seed)}).exitCode, 0);
        }
        ASSERT_EQ(m_cli.run({"tag", "1", "2", "+kelp", "+shore/wet"}).exitCode, 0);
        ASSERT_EQ(m_cli.run({"set", "1", "--stars", "4", "--note", "under\nthe pier"}).exitCode, 0);
        ASSERT_EQ(m_cli.run({"shelf", "put", "Pier", "2", "1"}).exitCode, 0);
        ASSERT_EQ(m_cli.run({"touch", "2", "--colour", "1", "--line", "0,0,3,3"}).exitCode, 0);
        ASSERT_EQ(m_cli.run({"search", "save", "wet", "tag:shore"}).exitCode, 0);
        ASSERT_EQ(m_cli.run({"tags", "alias", "tang", "kelp"}).exitCode, 0);
        ASSERT_EQ(m_cli.run({"remove", "3"}).exitCode, 0);
        const CliAnswer made =
            m_cli.run({"load", "make", "evening", "1", "2", "--board", "card-64"});
        ASSERT_EQ(made.exitCode, 0) << made.err;
    }

    std::string exported(const std::string& folder) const {
        const CliAnswer answer =
            m_cli.run({"export", "all", "--as", "json", "--into", m_cli.path(folder)});
        EXPECT_EQ(answer.exitCode, 0) << answer.err;
        return m_cli.path(folder + "/library.json");
    }

    CliRunner m_cli;
};

TEST_F(LibraryFileCli, ComesBackEqualInANewLibrary) {
    fill();
    const std::string file = exported("out");
    const CliAnswer taken = onOther({"add", file});
    EXPECT_EQ(taken.exitCode, 0) << taken.err;
    EXPECT_NE(taken.out.find("Took in all of the library"), std::string::npos) << taken.out;
    EXPECT_NE(taken.out.find("with 3 textures"), std::string::npos) << taken.out;
    ASSERT_EQ(onOther({"export", "all", "--as", "json", "--into", m_cli.path("back")}).exitCode, 0);
    EXPECT_EQ(m_cli.readText(file), m_cli.readText(m_cli.path("back/library.json")));
    EXPECT_EQ(onOther({"check"}).exitCode, 0);
    for (const char* command : {"find", "tags", "shelf", "search", "load", "board", "canvas"}) {
        std::vector<std::string> words = {command};
        if (command != std::string("find")) words.emplace_back("list");
        EXPECT_EQ(onOther(words).out, m_cli.run(words).out) << command;
    }
    EXPECT_EQ(onOther({"history", "2"}).out, m_cli.run({"history", "2"}).out);
}

// Frozen: what was once written stays readable.
TEST_F(LibraryFileCli, OfVersionOneStaysReadable) {
    const std::string file = PANTILE_TEST_DATA "/library_files/version-1.json";
    const CliAnswer taken = m_cli.run({"add", file});
    EXPECT_NE(taken.out.find("with 3 textures"), std::string::npos) << taken.out << taken.err;
    const QJsonArray found =
        m_cli.runJson({"find", "tag:strand on:evening"}).json()["textures"].toArray();
    ASSERT_EQ(found.size(), 1);
    EXPECT_EQ(found[0].toObject()["title"].toString(), QStringLiteral("Wet sand"));
    // The same, but for what came later.
    std::string text = m_cli.readText(file);
    const auto replace = [&](const std::string& part, const std::string& by) {
        text.replace(text.find(part), part.size(), by);
    };
    replace("\"pantile_library\":1", "\"pantile_library\":2");
    replace("\"tag_aliases\":", "\"load_canvases\":[],\n\"tag_aliases\":");
    EXPECT_EQ(m_cli.readText(exported("out")), text);
}

TEST_F(LibraryFileCli, GoesByStandardInputToo) {
    fill();
    const std::string text = m_cli.readText(exported("out"));
    const CliAnswer taken = m_cli.runBare({"--library", m_cli.path("other.db"), "add", "-"}, text);
    EXPECT_EQ(taken.exitCode, 0) << taken.err;
    ASSERT_EQ(onOther({"export", "all", "--as", "json", "--into", m_cli.path("back")}).exitCode, 0);
    EXPECT_EQ(text, m_cli.readText(m_cli.path("back/library.json")));
}

TEST_F(LibraryFileCli, AddsItsTexturesToALibraryThatHoldsOthers) {
    fill();
    const std::string file = exported("out");
    ASSERT_EQ(onOther({"add", m_cli.path("tile-2.csv"), "--title", "mine"}).exitCode, 0);
    const CliAnswer taken =
        m_cli.runBare({"--library", m_cli.path("other.db"), "--json", "add", file});
    EXPECT_EQ(taken.exitCode, 0) << taken.err;
    const QJsonObject report = taken.json();
    // The removed one stays out, and texture 2 was touched up, so that it is another.
    EXPECT_EQ(report["added"].toArray().size(), 2);
    const QJsonObject library = report["libraries"].toArray()[0].toObject();
    EXPECT_FALSE(library["whole"].toBool());
    EXPECT_EQ(library["textures"].toInt(), 2);
    const CliAnswer found =
        m_cli.runBare({"--library", m_cli.path("other.db"), "--json", "find", "tag:kelp stars:4"});
    const QJsonObject texture = found.json()["textures"].toArray()[0].toObject();
    EXPECT_EQ(texture["note"].toString(), QStringLiteral("under\nthe pier"));
    EXPECT_EQ(texture["shelves"].toArray()[0].toString(), QStringLiteral("Pier"));
    // Once more: all are known.
    const CliAnswer again = onOther({"add", file});
    EXPECT_NE(again.out.find("0 added, 2 known already"), std::string::npos) << again.out;
    EXPECT_EQ(onOther({"check"}).exitCode, 0);
}

TEST_F(LibraryFileCli, IsRefusedWithItsPlaceAndLeavesTheLibraryAsItWas) {
    fill();
    std::string text = m_cli.readText(exported("out"));
    text.replace(text.find("\"stars\":4"), 9, "\"stars\":9");
    m_cli.writeText("bad.json", text);
    for (const bool isNew : {true, false}) {
        if (!isNew) {
            ASSERT_EQ(onOther({"add", m_cli.path("tile-3.csv")}).exitCode, 0);
        }
        const std::string before = onOther({"find"}).out;
        const CliAnswer taken = onOther({"add", m_cli.path("bad.json")});
        EXPECT_EQ(taken.exitCode, 1);
        EXPECT_NE(taken.err.find("textures: the stars"), std::string::npos) << taken.err;
        EXPECT_NE(taken.err.find("line "), std::string::npos) << taken.err;
        EXPECT_EQ(onOther({"find"}).out, before);
    }
}

TEST_F(LibraryFileCli, IsOneFileThatIsNotReplacedUnasked) {
    fill();
    exported("out");
    const std::vector<std::string> words = {"export", "all",    "--as",
                                            "json",   "--into", m_cli.path("out")};
    const CliAnswer twice = m_cli.run(words);
    EXPECT_EQ(twice.exitCode, 1);
    EXPECT_NE(twice.err.find("is there already"), std::string::npos) << twice.err;
    std::vector<std::string> replacing = words;
    replacing.emplace_back("--replace");
    EXPECT_EQ(m_cli.run(replacing).exitCode, 0);
    EXPECT_EQ(m_cli.run({"export", "all", "--as", "jsonn", "--into", m_cli.path("out")}).exitCode,
              2);
}

}  // namespace
}  // namespace pantile::tests
