// table.h, texture_answer.h, terminal_picture.h, progress_bar.h: what answers look like.

#include <clocale>
#include <sstream>
#include <string>

#include <gtest/gtest.h>

#include "cli/choice_answer.h"
#include "cli/column_width.h"
#include "cli/progress_bar.h"
#include "cli/table.h"
#include "cli/terminal_picture.h"
#include "cli/texture_answer.h"
#include "tasks/texture_json.h"

namespace pantile::cli {
namespace {

TEST(Table, AlignsByCharactersAndDefusesEntries) {
    Table table({{"id", Align::Right}, {"title"}});
    table.addRow({"7", "blåstång"});
    table.addRow({"12", "a\x1b[2J"});
    std::ostringstream out;
    table.print(out);
    EXPECT_EQ(out.str(), "id  title\n 7  blåstång\n12  a\\x1b[2J\n");
}

// The Unicode Standard, annex 11: ideographs and most emoji take two columns, combining marks none.
TEST(Table, AlignsWideAndCombiningCharactersToo) {
    const std::string before = std::setlocale(LC_CTYPE, nullptr);
    ASSERT_NE(std::setlocale(LC_CTYPE, "C.UTF-8"), nullptr);
    EXPECT_EQ(columnWidth("帆 🪸"), 5U);
    EXPECT_EQ(columnWidth("a\u0301\u0323o"), 2U);
    Table table({{"title"}, {"cells"}});
    table.addRow({"帆", "4"});
    table.addRow({"a\u0301", "4"});
    table.addRow({"sand", "4"});
    std::ostringstream out;
    table.print(out);
    EXPECT_EQ(out.str(), "title  cells\n帆     4\na\u0301      4\nsand   4\n");
    std::setlocale(LC_CTYPE, before.c_str());
}

TEST(Table, PrintsNothingWithoutRows) {
    std::ostringstream out;
    Table({{"id"}}).print(out);
    EXPECT_EQ(out.str(), "");
}

TEST(Answer, SpeaksNumbersAndDates) {
    EXPECT_EQ(counted(1, "texture", "textures"), "1 texture");
    EXPECT_EQ(counted(0, "texture", "textures"), "0 textures");
    EXPECT_EQ(tasks::utcTime(0), "1970-01-01T00:00:00Z");
    EXPECT_EQ(tasks::utcTime(1795599600), "2026-11-25T09:40:00Z");
}

TEST(Answer, NamesTheFirstOfManyThatWereLeftOut) {
    std::vector<tasks::NotChosen> leftOut;
    for (int id = 1; id <= 22; ++id) leftOut.push_back({{id}, "worth less"});
    leftOut.push_back({{23}, "too large"});
    std::ostringstream out;
    printLeftOut(out, leftOut);
    EXPECT_EQ(
        out.str(),
        "Left out 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20 and 2 "
        "more: worth less\nLeft out 23: too large\n");
}

TEST(TerminalPicture, PutsTwoRowsIntoOneLine) {
    const core::Grid grid = *core::Grid::create(2, 3, {0, 1, 1, 2, 2, 0});
    const core::Palette palette = *core::Palette::create({{1, 2, 3}, {4, 5, 6}, {7, 8, 9}}, 2);
    EXPECT_EQ(terminalPicture(grid, palette),
              "\x1b[38;2;1;2;3m\x1b[48;2;4;5;6m▀\x1b[0m\x1b[38;2;4;5;6m▀\x1b[0m\n"
              "\x1b[0m \x1b[0m\x1b[38;2;1;2;3m▀\x1b[0m\n");
}

TEST(ProgressBar, FillsAndClearsItself) {
    std::ostringstream err;
    const auto report = progressBar(err, 80);
    report(1, 2, "kelp.png");
    EXPECT_NE(err.str().find("1 of 2  kelp.png"), std::string::npos);
    err.str("");
    report(2, 2, "");
    EXPECT_EQ(err.str(), "\r\x1b[K");
    err.str("");
    report(0, 0, "");
    EXPECT_EQ(err.str(), "");
}

TEST(Choice, SaysEachReasonOnce) {
    const std::vector<tasks::NotChosen> leftOut = {
        {core::TextureId{3}, "worth less"},
        {core::TextureId{5}, "needs 4 bytes more", "It fits in place of 7 Net\x1b (worth 2)."},
        {core::TextureId{9}, "worth less"}};
    std::ostringstream out;
    printLeftOut(out, leftOut);
    EXPECT_EQ(out.str(),
              "Left out 3, 9: worth less\nLeft out 5: needs 4 bytes more. It fits in place of 7 "
              "Net\\x1b (worth 2).\n");
}

TEST(ProgressBar, StaysWithinANarrowTerminal) {
    std::ostringstream err;
    progressBar(err, 20)(1, 2, "kelp.png");
    EXPECT_EQ(err.str(), "\r\x1b[K");
}

}  // namespace
}  // namespace pantile::cli
