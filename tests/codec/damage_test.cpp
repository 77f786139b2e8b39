#include "codec/damage.h"

#include <functional>
#include <set>

#include <gtest/gtest.h>

#include "code_support.h"
#include "codec/armour.h"
#include "codec/checksum.h"

namespace pantile::codec {
namespace {

using Lines = std::vector<std::string>;
using tests::joined;
using tests::linesOf;

/// A code of enough lines, and what is said of it once `damage` went over its lines.
DamagedCode told(const std::function<void(Lines&)>& damage, std::string_view before = "") {
    Lines lines = linesOf(tests::codeOf(tests::noisyTexture()));
    EXPECT_GE(lines.size(), 8U);
    damage(lines);
    const Harvest harvest = harvestCodes(std::string(before) + joined(lines, "\n"));
    EXPECT_TRUE(harvest.found.empty());
    EXPECT_EQ(harvest.damaged.size(), 1U);
    return harvest.damaged.empty() ? DamagedCode{} : harvest.damaged[0];
}

char another(char c) {
    const std::size_t value = kBase58Digits.find(c);
    return kBase58Digits[(value + 11) % kBase58Digits.size()];
}

/// Two letters wrong, which is beyond repair.
void ruin(std::string& line) {
    const std::size_t second = std::min<std::size_t>(20, line.size() - 2);
    line[second / 2] = another(line[second / 2]);
    line[second] = another(line[second]);
}

TEST(Damage, IsLocatedInTheTextAndInTheCode) {
    const DamagedCode damage = told([](Lines& lines) { ruin(lines[3]); }, "Hello,\n\nthis one:\n");
    EXPECT_EQ(damage.where, "line 7 of the text, line 4 of the code");
    EXPECT_EQ(damage.reason, "line 4 of the code does not check; ask for line 4 again");
}

TEST(Damage, NamesTheFirstLineToo) {
    const DamagedCode damage = told([](Lines& lines) { ruin(lines[0]); });
    EXPECT_EQ(damage.where, "line 1 of the text, line 1 of the code");
    EXPECT_EQ(damage.reason, "line 1 of the code does not check; ask for line 1 again");
}

TEST(Damage, NamesTheLastLineToo) {
    const std::size_t last = linesOf(tests::codeOf(tests::noisyTexture())).size();
    const DamagedCode damage = told([](Lines& lines) { ruin(lines.back()); });
    const std::string line = "line " + std::to_string(last);
    EXPECT_EQ(damage.reason, line + " of the code does not check; ask for " + line + " again");
}

TEST(Damage, NamesLinesThatLostOrGainedLetters) {
    EXPECT_EQ(told([](Lines& lines) { lines[2].erase(5, 2); }).reason,
              "line 3 of the code has 30 letters between its marks instead of 32; ask for line 3 "
              "again");
    EXPECT_EQ(told([](Lines& lines) { lines[4].insert(5, "7q"); }).reason,
              "line 5 of the code has 34 letters between its marks instead of 32; ask for line 5 "
              "again");
    EXPECT_EQ(told([](Lines& lines) { lines[0].erase(5, 2); }).reason,
              "line 1 of the code has 29 letters between its marks instead of 31; ask for line 1 "
              "again");
}

TEST(Damage, NamesALostLineByItsNumber) {
    EXPECT_EQ(told([](Lines& lines) { lines.erase(lines.begin() + 2); }).reason,
              "line 3 of the code is missing; ask for line 3 again");
    EXPECT_EQ(told([](Lines& lines) { lines.erase(lines.begin() + 2, lines.begin() + 5); }).reason,
              "lines 3 to 5 of the code are missing; ask for lines 3 to 5 again");
}

TEST(Damage, NamesSeveralLines) {
    const DamagedCode damage = told([](Lines& lines) {
        ruin(lines[1]);
        ruin(lines[4]);
    });
    EXPECT_EQ(damage.where, "line 2 of the text, line 2 of the code");
    EXPECT_EQ(
        damage.reason,
        "line 2 of the code does not check; line 5 of the code does not check; ask for lines 2 "
        "and 5 again");
}

TEST(Damage, SaysHowMuchOfACutCodeIsThere) {
    const std::size_t all = linesOf(tests::codeOf(tests::noisyTexture())).size();
    const DamagedCode damage = told([](Lines& lines) { lines.resize(4); });
    const std::string to = " to " + std::to_string(all) + " again";
    EXPECT_EQ(damage.reason, "the code is cut short: it has 4 of " + std::to_string(all) +
                                 " lines; ask for lines 5" + to);
    EXPECT_EQ(told([](Lines& lines) { lines.resize(4), lines[3].resize(20); }).reason,
              "the code is cut short: it has 3 of " + std::to_string(all) +
                  " lines; ask for lines 4" + to);
    EXPECT_EQ(told([](Lines& lines) { lines.resize(1), lines[0].resize(25); }).reason,
              "the code is cut short in its first line; ask for the code again");
}

TEST(Damage, IsLocatedWhereLinesAreJoinedOrInGroups) {
    for (const std::string_view between : {"", " "}) {
        Lines lines = linesOf(tests::codeOf(tests::noisyTexture()));
        ruin(lines[3]);
        const Harvest harvest = harvestCodes(joined(lines, between));
        ASSERT_EQ(harvest.damaged.size(), 1U);
        EXPECT_EQ(harvest.damaged[0].reason,
                  "line 4 of the code does not check; ask for line 4 again");
    }
    Lines lines = linesOf(tests::codeOf(tests::noisyTexture()));
    ruin(lines[3]);
    for (std::string& line : lines) line.insert(15, " ");
    const Harvest harvest = harvestCodes(joined(lines, " "));
    ASSERT_EQ(harvest.damaged.size(), 1U);
    EXPECT_EQ(harvest.damaged[0].reason, "line 4 of the code does not check; ask for line 4 again");
}

TEST(Damage, SuspectsChangedCase) {
    const auto lower = [](char c) {
        return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    };
    const auto upper = [](char c) {
        return static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    };
    std::string code = tests::codeOf(tests::noisyTexture());
    std::transform(code.begin(), code.end(), code.begin(), lower);
    Harvest harvest = harvestCodes(code);
    ASSERT_EQ(harvest.damaged.size(), 1U);
    EXPECT_NE(harvest.damaged[0].reason.find("have become small"), std::string::npos);
    code = tests::codeOf(tests::noisyTexture());
    std::transform(code.begin(), code.end(), code.begin(), upper);
    harvest = harvestCodes(code);
    ASSERT_EQ(harvest.damaged.size(), 1U);
    EXPECT_NE(harvest.damaged[0].reason.find("have become capital"), std::string::npos);
}

TEST(Damage, NamesLinesWithoutTheirFirst) {
    const DamagedCode damage =
        told([](Lines& lines) { lines.erase(lines.begin(), lines.begin() + 2); });
    EXPECT_EQ(damage.where, "line 1 of the text, line 3 of the code");
    EXPECT_EQ(
        damage.reason,
        "lines of a code stand here, from line 3 on, without its first line; ask for lines 1 to 2");
}

TEST(Damage, KeepsTheWholeCodesBesideADamagedOne) {
    const core::Texture first = tests::usualTexture(12);
    const core::Texture last = tests::usualTexture(13);
    Lines lines = linesOf(tests::codeOf(tests::noisyTexture()));
    ruin(lines[3]);
    const Harvest harvest = harvestCodes(tests::codeOf(first) + "\n" + joined(lines, "\n") + "\n" +
                                         tests::codeOf(last));
    ASSERT_EQ(harvest.found.size(), 2U);
    EXPECT_EQ(harvest.found[0].texture, first);
    EXPECT_EQ(harvest.found[1].texture, last);
    EXPECT_EQ(harvest.damaged.size(), 1U);
}

/// Bytes in a right armour.
Harvest harvestOf(const std::vector<std::uint8_t>& bytes) {
    return harvestCodes(*armoured(bytes));
}

TEST(Damage, TellsForgedContentsBehindRightCheckValues) {
    const std::vector<std::uint8_t> good = {1, 0, 1, 0, 1, 10, 20, 30, 40, 50, 60, 0, 0x01, 0x11};
    EXPECT_EQ(harvestOf(good).found.size(), 1U);
    for (const auto& [at, byte, words] :
         std::vector<std::tuple<std::size_t, std::uint8_t, std::string>>{
             {0, 3, "made by a newer Pantile: it holds form 3"},
             {0, 2, "the modelled runs of the code are damaged"},
             {2, 255, "a run is cut short"},
             {4, 200, "palette"},
             {11, 9, "packed by method 9"},
             {13, 0x71, "colour 7 of only 2"}}) {
        std::vector<std::uint8_t> bytes = good;
        bytes[at] = byte;
        const Harvest harvest = harvestOf(bytes);
        EXPECT_TRUE(harvest.found.empty());
        ASSERT_EQ(harvest.damaged.size(), 1U) << words;
        EXPECT_NE(harvest.damaged[0].reason.find(words), std::string::npos)
            << harvest.damaged[0].reason;
    }
    EXPECT_EQ(harvestOf({}).damaged.size(), 1U);
}

TEST(Damage, KeepsTheTextOfACodeWithNewerContents) {
    const std::string code = *armoured(std::vector<std::uint8_t>(40, 9));
    const Harvest harvest = harvestCodes("> " + code.substr(0, 33) + "\n> " + code.substr(34));
    ASSERT_EQ(harvest.damaged.size(), 1U);
    EXPECT_NE(harvest.damaged[0].reason.find("it holds form 9"), std::string::npos);
    EXPECT_EQ(harvest.damaged[0].text, code);
}

TEST(Damage, NamesANewerVersionOfTheArmour) {
    Lines lines = linesOf(tests::codeOf(tests::noisyTexture()));
    Symbols first;
    for (const char c : lines[0].substr(2, kFirstLineData)) {
        first.push_back(static_cast<std::uint8_t>(kBase58Digits.find(c)));
    }
    first[0] = 5;
    lines[0] = "0I" + toText(first) + kBase58Digits[lineCheck(first, 1)];
    const Harvest harvest = harvestCodes(joined(lines, "\n"));
    ASSERT_EQ(harvest.damaged.size(), 1U);
    EXPECT_NE(harvest.damaged[0].reason.find("made by a newer Pantile: the code is of form 5"),
              std::string::npos);
    EXPECT_EQ(harvest.damaged[0].text, joined(lines, "\n"));
}

}  // namespace
}  // namespace pantile::codec
