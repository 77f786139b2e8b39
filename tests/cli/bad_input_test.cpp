// Bad input through the command line: exit code 1 or 2, one clear sentence with a hint, and the
// library as it was.

#include <filesystem>
#include <fstream>

#include <zlib.h>

#include "catalogue/library.h"
#include "support/cli_runner.h"
#include "tasks/library_place.h"

namespace pantile::cli {
namespace {

using tests::CliAnswer;

class BadInput : public ::testing::Test {
protected:
    BadInput() {
        EXPECT_EQ(m_cli.run({"add", m_cli.writeGrid("good.csv", 1, 8), "--title", "Good"}).exitCode,
                  0);
        m_before = listing();
    }

    std::string listing() const { return m_cli.runJson({"find", "all | is:removed"}).out; }

    /// The command fails with `exitCode`, says `words` and a hint, and changes nothing.
    void expectRefused(const std::vector<std::string>& words, int exitCode,
                       const std::string& sentence, const std::string& input = {}) const {
        const CliAnswer answer = m_cli.run(words, input);
        EXPECT_EQ(answer.exitCode, exitCode) << answer.out << answer.err;
        EXPECT_NE((answer.out + answer.err).find(sentence), std::string::npos)
            << answer.out << answer.err;
        EXPECT_EQ(listing(), m_before);
    }

    std::string file(const std::string& name, const std::string& bytes) const {
        m_cli.writeText(name, bytes);
        return m_cli.path(name);
    }

    std::string goodCode() const {
        return m_cli.runJson({"code", "1"})
            .json()["codes"]
            .toArray()[0]
            .toObject()["code"]
            .toString()
            .toStdString();
    }

    tests::CliRunner m_cli;
    std::string m_before;
};

std::string chunk(const std::string& type, const std::string& data) {
    const std::string body = type + data;
    const uLong crc =
        crc32(0, reinterpret_cast<const Bytef*>(body.data()), static_cast<uInt>(body.size()));
    const auto bigEndian = [](unsigned long number) {
        std::string bytes;
        for (int shift = 24; shift >= 0; shift -= 8)
            bytes += static_cast<char>((number >> static_cast<unsigned>(shift)) & 255U);
        return bytes;
    };
    return bigEndian(data.size()) + body + bigEndian(crc);
}

/// A PNG header of 60000x60000 true-colour pixels, with next to nothing behind it.
std::string hugePng() {
    std::string header("\x00\x00\xEA\x60\x00\x00\xEA\x60\x08\x02\x00\x00\x00", 13);
    return "\x89PNG\r\n\x1a\n" + chunk("IHDR", header) + chunk("IDAT", "x") + chunk("IEND", "");
}

TEST_F(BadInput, FilesThatAreNoPictures) {
    expectRefused({"add", file("a.png", "this is no picture")}, 1, "no picture, grid or code");
    expectRefused({"add", file("b.png", "\x89PNG\r\n\x1a\nrubbish")}, 1, "b.png");
    expectRefused({"add", file("c.png", "")}, 1, "no picture, grid or code");
    expectRefused({"add", m_cli.path("missing.png")}, 1, "is not there");
}

TEST_F(BadInput, ATruncatedPng) {
    ASSERT_EQ(
        m_cli.run({"export", "1", "--as", "png", "--enlarge", "8", "--into", m_cli.path("out")})
            .exitCode,
        0);
    const std::string whole = m_cli.readText(m_cli.path("out/1-Good.png"));
    expectRefused({"add", file("half.png", whole.substr(0, whole.size() / 2))}, 1, "half.png");
}

TEST_F(BadInput, AHugePngIsRefusedBeforeItIsDecoded) {
    expectRefused({"add", file("huge.png", hugePng())}, 1, "60000");
}

TEST_F(BadInput, GridsThatAreNone) {
    const std::string palette = "# palette #000000 #ffffff\n";
    expectRefused({"add", file("ragged.csv", palette + "0,1\n0\n")}, 1,
                  "row 2 has 1 entry, and row 1 has 2");
    expectRefused({"add", file("letters.csv", palette + "0,kelp\n")}, 1, "row 1, column 2: 'kelp'");
    expectRefused({"add", file("negative.csv", palette + "0,-1\n")}, 1, "'-1'");
    expectRefused({"add", file("large.csv", palette + "0,256\n")}, 1, "'256'");
    expectRefused({"add", file("outside.csv", palette + "0,2\n")}, 1, "index 2");
    expectRefused({"add", file("bare.csv", "0,1\n")}, 1, "no palette");
}

TEST_F(BadInput, DamagedCodes) {
    const std::string code = goodCode();
    std::string wrong = code;
    wrong[8] = wrong[8] == 'x' ? 'y' : 'x';
    wrong[14] = wrong[14] == 'x' ? 'y' : 'x';
    expectRefused({"add", "-"}, 1, "line 1", wrong);
    expectRefused({"add", "-"}, 1, "line 1", code.substr(0, 14) + code.substr(17));
    expectRefused({"add", "-"}, 1, "line 1", code.substr(0, 14) + "q7" + code.substr(14));
    expectRefused({"add", "-"}, 1, "of the text", code.substr(0, code.size() / 2));
}

TEST_F(BadInput, UnknownNames) {
    expectRefused({"fit", "all", "--board", "flash-33k"}, 1, "flash-33k");
    expectRefused({"plan", "1", "--canvas", "nowhere"}, 1, "nowhere");
    expectRefused({"show", "999"}, 1, "999");
    expectRefused({"set", "1", "999", "--title", "x"}, 1, "999");
    expectRefused({"load", "write", "none", "--into", m_cli.path("out")}, 1, "none");
    expectRefused({"load", "verify", m_cli.path("none")}, 1, "is not there");
}

TEST_F(BadInput, ALoadThatDoesNotFit) {
    ASSERT_EQ(m_cli.run({"board", "add", "tiny", "--slots", "1", "--bytes", "64"}).exitCode, 0);
    expectRefused({"load", "make", "evening", "1", "--board", "tiny"}, 1, "bytes");
    expectRefused({"load", "make", "evening", "1", "--board", "tiny"}, 1,
                  "--best takes the best that fits, --loads spreads all over several loads");
    const CliAnswer best = m_cli.run({"fit", "1", "--board", "tiny", "--must", "1"});
    EXPECT_EQ(best.err.find("--best"), std::string::npos) << best.err;
}

/// Each command that takes a word first names all of them, the nearest, or how one is used.
TEST_F(BadInput, WordsBehindACommand) {
    expectRefused({"canvas", "ad", "x"}, 2, "there is no 'canvas ad'\n  did you mean canvas add?");
    expectRefused({"board", "lst"}, 2, "did you mean board list?");
    expectRefused({"load", "verfy", "x"}, 2, "did you mean load verify?");
    expectRefused({"tags", "unlias", "x"}, 2, "did you mean tags unalias?");
    expectRefused({"shelf", "renmae", "x", "y"}, 2, "did you mean shelf rename?");
    expectRefused({"search", "sav", "x", "y"}, 2, "did you mean search save?");
    expectRefused({"palette", "form-picture", "x"}, 2, "did you mean palette from-picture?");
    expectRefused({"canvas"}, 2,
                  "canvas list, canvas show, canvas add, canvas set, canvas remove or canvas "
                  "calibrate; 'pantile help canvas' says more");
    expectRefused({"load", "whatever"}, 2, "load history, load remove, load write");
    expectRefused({"canvas", "remove"}, 2,
                  "this is no way to use canvas remove\n  write canvas remove NAME\n");
    expectRefused({"canvas", "calibrate"}, 2,
                  "write canvas calibrate NAME --board B --into DIR or canvas calibrate NAME "
                  "--near X,Y");
}

TEST_F(BadInput, WordsThatNoTextureMayHave) {
    expectRefused({"set", "1", "--title", "red\u202efig"}, 1, "\\u202e");
    expectRefused({"set", "1", "--title", "a\x1b[2Jb"}, 1, "\\x1b");
    expectRefused({"set", "1", "--title", std::string(10000, 'k')}, 1, "10000 characters");
    expectRefused({"set", "1", "--author", "a\nb"}, 1, "\\x0a");
    expectRefused({"set", "1", "--title", "\xff\xfe"}, 1, "not UTF-8");
    expectRefused({"tag", "1", "+wet sand"}, 2, "cannot be a tag");
    expectRefused(
        {"add", file("new.csv", "# palette #000000 #ffffff\n0,1\n"), "--title", "x\u2066y"}, 1,
        "\\u2066");
}

// Quotes and comment marks are ordinary text: they are kept, and stay harmless on every way out.
TEST_F(BadInput, QuotesAndCommentMarksAreKeptAndHarmless) {
    const std::string title =
        "\"rope\" */ int main(){} /* 'net' ?"
        "?/";
    ASSERT_EQ(m_cli.run({"set", "1", "--title", title}).exitCode, 0);
    EXPECT_EQ(m_cli.runJson({"show", "1"}).json()["title"].toString().toStdString(), title);
    ASSERT_EQ(m_cli.run({"load", "make", title, "1", "--board", "flash-32k"}).exitCode, 0);
    ASSERT_EQ(m_cli.run({"load", "write", title, "--into", m_cli.path("out")}).exitCode, 0);
    for (const auto& entry : std::filesystem::directory_iterator(m_cli.path("out"))) {
        const std::string command =
            "cc -std=c99 -Wall -Wextra -Werror -fsyntax-only -x c '" + entry.path().string() + "'";
        EXPECT_EQ(std::system(command.c_str()), 0)
            << m_cli.readText(entry.path().string()).substr(0, 600);
        EXPECT_EQ(m_cli.run({"load", "verify", entry.path().string()}).exitCode, 0);
    }
}

TEST_F(BadInput, WrongUsage) {
    expectRefused({}, 2, "no command was given");
    expectRefused({"fnd"}, 2, "did you mean find?");
    expectRefused({"add"}, 2, "missing");
    expectRefused({"add", "x", "--cavnas", "y"}, 2, "did you mean --canvas?");
    expectRefused({"add", "x", "--fit", "squash"}, 2, "cover, contain, stretch, exact");
    expectRefused({"add", "x", "--colours", "1"}, 2, "from 2 to 256");
    expectRefused({"add", "x", "--pin", "red"}, 2,
                  "write a colour as #rrggbb, in quotes: --pin '#2f6f5e'");
    expectRefused({"add", "x", "--background", "red"}, 2, "--background: 'red' is not a colour");
    expectRefused({"add", "x", "--merge", "-1"}, 2, "from 0 to 10000");
    expectRefused({"canvas", "set", "cells-16", "--pen-turns", "maybe"}, 2, "yes, no");
    expectRefused({"canvas", "set", "cells-16", "--pen-leaving", "lost"}, 2, "refused, undone");
    expectRefused({"canvas", "set", "cells-16", "--pen-turn", "no"}, 2, "mean --pen-turns?");
    expectRefused({"canvas", "set", "cells-16", "--fill-at", "here"}, 2, "needs two numbers");
    expectRefused({"canvas", "set", "cells-16", "--fill-at", "9,9"}, 1, "lies on the grid");
    expectRefused({"plan", "1", "--budget-ms", "-1"}, 2, "from 0 to 3600000");
    expectRefused({"plan", "1", "--frame-seconds", "1"}, 2, "without --frames");
    expectRefused({"plan", "1", "--frames", m_cli.path("f"), "--frame-seconds", "0"}, 2, "0.01");
    expectRefused({"plan", "1", "--frame", "x"}, 2, "did you mean --frames?");
    expectRefused({"plan", "1", "--svg", m_cli.path("no/such/plan.svg")}, 1, "there is no folder");
    expectRefused({"find", "tga:kelp"}, 2, "tga");
    expectRefused({"find", "(kelp"}, 2, "column");
    expectRefused({"find", "--sort", "colour-of-the-sea"}, 2, "colour-of-the-sea");
    expectRefused({"show", "kelp"}, 2, "an id cannot be 'kelp'");
    expectRefused({"set", "1"}, 2, "nothing to set");
    expectRefused({"tag", "1"}, 2, "no tag was given");
    expectRefused({"fit", "all"}, 2, "no board was named");
    expectRefused({"export", "1"}, 2, "form or the folder");
    expectRefused({"help", "fnd"}, 2, "did you mean find?");
}

// What a shell hands over for a variable that is not set.
TEST_F(BadInput, AnEmptyWordMeansNothing) {
    for (const char* command : {"remove", "tag", "set", "code", "plan", "fit", "export", "similar",
                                "show", "history", "restore", "add", "read"}) {
        expectRefused({command, ""}, 2, "one of the words is empty");
    }
    expectRefused({"find", "--sort", ""}, 2, "--sort needs a value");
    EXPECT_EQ(m_cli.runBare({"--library", "", "find"}).exitCode, 2);
    EXPECT_EQ(m_cli.run({"find", ""}).exitCode, 0);
}

TEST_F(BadInput, ATextWithoutCodesIsSaidToHoldNone) {
    const CliAnswer answer = m_cli.run({"read", file("tide.txt", "the tide is out")});
    EXPECT_EQ(answer.exitCode, 0);
    EXPECT_NE(answer.err.find("No code stands in it"), std::string::npos) << answer.err;
}

TEST_F(BadInput, TheLibraryIsNotReplacedByAPicture) {
    expectRefused({"plan", "1", "--svg", m_cli.libraryPath(), "--replace"}, 2, "library itself");
    expectRefused({"seams", "1", "--picture", m_cli.libraryPath(), "--replace"}, 2,
                  "library itself");
}

TEST_F(BadInput, TheMarkStandsBelowTheMistake) {
    const CliAnswer answer = m_cli.run({"find", "kelp tgas:shore"});
    EXPECT_NE(answer.err.find("\n  kelp tgas:shore\n       ^\n"), std::string::npos) << answer.err;
}

TEST_F(BadInput, FailuresAreJsonDocumentsToo) {
    const CliAnswer answer = m_cli.runJson({"show", "999"});
    EXPECT_EQ(answer.exitCode, 1);
    const QJsonObject error = answer.json()["error"].toObject();
    EXPECT_EQ(error["kind"].toString(), QStringLiteral("not-found"));
    EXPECT_TRUE(error["message"].toString().contains(QStringLiteral("999")));
    EXPECT_TRUE(error.contains(QStringLiteral("hint")));
    EXPECT_EQ(m_cli.runJson({"show"}).json()["error"].toObject()["kind"].toString(),
              QStringLiteral("usage"));
}

TEST_F(BadInput, LibrariesThatAreNone) {
    const std::string text =
        file("text.db",
             "this is no library, and a good deal longer than a header of one hundred bytes: "
             "it goes on and on, so that nobody takes it for an empty file.");
    const CliAnswer answer = m_cli.runBare({"--library", text, "find"});
    EXPECT_EQ(answer.exitCode, 1);
    EXPECT_NE(answer.err.find("text.db"), std::string::npos) << answer.err;
    EXPECT_NE(m_cli.readText(text).find("on and on"), std::string::npos);
    EXPECT_EQ(m_cli.runBare({"--library", "/dev/null/x.db", "find"}).exitCode, 1);
}

TEST_F(BadInput, ANewerLibraryIsLeftAlone) {
    std::string bytes = m_cli.readText(m_cli.libraryPath());
    bytes[63] = static_cast<char>(200);  // the last byte of user_version in the file's header
    const std::string newer = file("newer.db", bytes);
    const CliAnswer answer = m_cli.runBare({"--library", newer, "set", "1", "--title", "x"});
    EXPECT_EQ(answer.exitCode, 1);
    EXPECT_NE(answer.err.find("newer"), std::string::npos) << answer.err;
    EXPECT_EQ(m_cli.readText(newer), bytes);
}

TEST_F(BadInput, ALibraryLockedByAnotherWriterSaysSo) {
    auto other = tasks::openLibrary(m_cli.libraryPath(), tasks::Purpose::Change);
    ASSERT_TRUE(other.has_value());
    const auto writing = other->begin();
    ASSERT_TRUE(writing.has_value());
    expectRefused({"set", "1", "--title", "x"}, 1, "another program");
    EXPECT_EQ(m_cli.runJson({"show", "1"}).exitCode, 0) << "reading does not wait";
}

TEST_F(BadInput, TitlesFromOutsideCannotActOnTheTerminal) {
    const CliAnswer answer = m_cli.run({"add", file("a\x1b[31m.txt", "x")});
    EXPECT_EQ(answer.exitCode, 1);
    EXPECT_EQ(answer.err.find('\x1b'), std::string::npos) << answer.err;
}

}  // namespace
}  // namespace pantile::cli
