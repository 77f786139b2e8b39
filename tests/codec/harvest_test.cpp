#include "codec/harvest.h"

#include <algorithm>
#include <chrono>
#include <functional>
#include <stop_token>
#include <utility>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "code_support.h"
#include "codec/armour.h"
#include "support/random.h"

namespace pantile::codec {
namespace {

using Lines = std::vector<std::string>;
using tests::joined;
using tests::linesOf;

/// Ways in which a code stands in a text, each of which must be read.
struct Placement {
    std::string_view name;
    std::function<std::string(const std::string& code)> place;
};

std::string replaced(std::string text, std::string_view what, std::string_view by) {
    for (std::size_t at = 0; (at = text.find(what, at)) != std::string::npos; at += by.size()) {
        text.replace(at, what.size(), by);
    }
    return text;
}

std::string prefixed(const std::string& code,
                     const std::function<std::string(std::size_t)>& prefix) {
    Lines lines = linesOf(code);
    for (std::size_t i = 0; i < lines.size(); ++i) lines[i] = prefix(i + 1) + lines[i];
    return joined(lines, "\n");
}

/// All letters in one row, cut every `width` of them.
std::string recut(const std::string& code, std::size_t width, std::string_view between) {
    const std::string row = replaced(code, "\n", "");
    Lines pieces;
    for (std::size_t at = 0; at < row.size(); at += width) pieces.push_back(row.substr(at, width));
    return joined(pieces, between);
}

std::string fullWidth(const std::string& code) {
    std::string text;
    for (const char c : code) {
        if (c == '\n') {
            text += c;
            continue;
        }
        const unsigned point = 0xFF01U + static_cast<unsigned>(c - '!');
        text += static_cast<char>(0xE0U | point >> 12U);
        text += static_cast<char>(0x80U | (point >> 6U & 0x3FU));
        text += static_cast<char>(0x80U | (point & 0x3FU));
    }
    return text;
}

std::string between(const std::string& code, std::size_t every, std::string_view what) {
    std::string text;
    for (std::size_t i = 0; i < code.size(); ++i) {
        const bool insideCharacter = (static_cast<unsigned char>(code[i]) & 0xC0U) == 0x80U;
        if (i > 0 && i % every == 0 && !insideCharacter) text += what;
        text += code[i];
    }
    return text;
}

std::function<std::string(const std::string&)> breaks(std::string_view by) {
    return [by](const std::string& code) { return replaced(code, "\n", by); };
}

std::function<std::string(const std::string&)> prefix(std::string_view what) {
    return [what](const std::string& code) {
        return prefixed(code, [&](std::size_t) { return std::string(what); });
    };
}

std::vector<Placement> placements() {
    const auto number = [](std::string_view behind) {
        return [behind](const std::string& code) {
            return prefixed(code,
                            [&](std::size_t n) { return std::to_string(n) + std::string(behind); });
        };
    };
    return {
        {"bare", breaks("\n")},
        {"carriage returns", breaks("\r")},
        {"both", breaks("\r\n")},
        {"next line", breaks("\xC2\x85")},
        {"line separators", breaks("\xE2\x80\xA8")},
        {"paragraph separators", breaks("\xE2\x80\xA9")},
        {"empty lines between", breaks("\n\n")},
        {"one line with blanks", breaks(" ")},
        {"one line", breaks("")},
        {"written breaks", breaks("\\n")},
        {"percent breaks", breaks("%0A")},
        {"JSON",
         [](const std::string& code) {
             return R"({"from":"kelp","text":"here:\n)" + replaced(code, "\n", "\\n") +
                    R"(\nbye"})";
         }},
        {"prose around",
         [](const std::string& code) {
             return "Old Ida, look at this 0I lovely texture:\n\n" + code +
                    "\n\nAll of Ireland likes it. 0I!";
         }},
        {"inside a sentence",
         [](const std::string& code) {
             return "Take " + replaced(code, "\n", " ") + ", it is good.";
         }},
        {"quoted", prefix("> ")},
        {"quoted twice", prefix(">> ")},
        {"quoted in a quote", prefix("> > ")},
        {"barred", prefix("| ")},
        {"named quotes", prefix("kelp> ")},
        {"bullets", prefix("- ")},
        {"indented by tabs", prefix("\t\t")},
        {"chat stamps", prefix("[12:34] ida: ")},
        {"numbers and blanks", number(" ")},
        {"numbers and colons", number(": ")},
        {"numbers and dots", number(". ")},
        {"numbers and bars", number("|")},
        {"glued numbers", number("")},
        {"byte order marks", prefix("\xEF\xBB\xBF")},
        {"no-break spaces", breaks("\xC2\xA0\n\xC2\xA0")},
        {"zero-width spaces",
         [](const std::string& code) { return between(code, 5, "\xE2\x80\x8B"); }},
        {"soft hyphens", [](const std::string& code) { return between(code, 7, "\xC2\xAD"); }},
        {"direction marks",
         [](const std::string& code) {
             return "\xE2\x80\xAA" + between(code, 9, "\xE2\x80\x8F") + "\xE2\x80\xAC";
         }},
        {"variation selectors",
         [](const std::string& code) { return between(code, 4, "\xEF\xB8\x8F"); }},
        {"quote marks",
         [](const std::string& code) { return "\xE2\x80\x9C" + code + "\xE2\x80\x9D"; }},
        {"each line quoted",
         [](const std::string& code) { return "\"" + replaced(code, "\n", "\"\n\"") + "\""; }},
        {"code fence", [](const std::string& code) { return "```\n" + code + "\n```"; }},
        {"bold", [](const std::string& code) { return "**" + code + "**"; }},
        {"full width", fullWidth},
        {"multiplication signs",
         [](const std::string& code) { return replaced(code, "x", "\xC3\x97"); }},
        {"letters for marks",
         [](const std::string& code) { return replaced(replaced(code, "0", "O"), "I", "l"); }},
        {"HTML breaks", breaks("<br>\n")},
        {"HTML breaks alone", breaks("<br/>")},
        {"HTML breaks that were escaped",
         [](const std::string& code) {
             std::string rows;
             for (const std::string& line : linesOf(code)) rows += recut(line, 20, "\n") + "\n";
             return replaced(rows, "\n", "&lt;br&gt;");
         }},
        {"HTML breaks alone that were escaped", breaks("&lt;br /&gt;")},
        {"HTML paragraphs",
         [](const std::string& code) {
             return "<html><body><p class=\"msg\">" +
                    replaced(code, "\n", "</p><p class=\"msg\">") + "</p></body></html>";
         }},
        {"HTML quotes",
         [](const std::string& code) {
             return "<blockquote>&gt; " + replaced(code, "\n", "<br>&gt;&nbsp;") + "</blockquote>";
         }},
        {"word break tags",
         [](const std::string& code) { return between(replaced(code, "\n", ""), 10, "<wbr>"); }},
        {"entities for letters",
         [](const std::string& code) {
             return replaced(replaced(code, "x", "&#120;"), "A", "&#x41;");
         }},
        {"groups of five", [](const std::string& code) { return recut(code, 5, " "); }},
        {"groups of eleven", [](const std::string& code) { return recut(code, 11, " "); }},
        {"lines of 20", [](const std::string& code) { return recut(code, 20, "\n"); }},
        {"lines of 44", [](const std::string& code) { return recut(code, 44, "\n"); }},
        {"lines of 76 with hyphens",
         [](const std::string& code) { return recut(code, 76, "-\n"); }},
        {"lines of 25 with backslashes",
         [](const std::string& code) { return recut(code, 25, "\\\n"); }},
        {"soft breaks of mail", [](const std::string& code) { return recut(code, 75, "=\r\n"); }},
        {"cut and quoted", [](const std::string& code) { return "> " + recut(code, 24, "\n> "); }},
        {"cut behind names",
         [](const std::string& code) { return "ida: " + recut(code, 24, "\nida: "); }},
        {"cut behind numbers",
         [](const std::string& code) {
             std::size_t n = 0;
             std::string text = "1: ";
             for (const char c : recut(code, 24, "\n")) {
                 text += c;
                 if (c == '\n') text += std::to_string(++n + 1) + ": ";
             }
             return text;
         }},
        {"foreign lines between",
         [](const std::string& code) {
             return replaced(code, "\n", "\nOld Lil said so at 10:01\nkelp 0Il\n");
         }},
        {"words behind each line",
         [](const std::string& code) { return replaced(code, "\n", "  (as Ida wrote)\n"); }},
        {"end mark lost", [](const std::string& code) { return code.substr(0, code.size() - 1); }},
        {"marks lost but the first",
         [](const std::string& code) {
             return "0I" + replaced(replaced(code.substr(2), "0", ""), "\n", " ");
         }},
    };
}

TEST(Harvest, ReadsACodeInEveryPlacement) {
    for (std::uint64_t seed = 1; seed <= 6; ++seed) {
        const core::Texture texture = tests::usualTexture(seed);
        const std::string code = tests::codeOf(texture);
        for (const Placement& placement : placements()) {
            const std::string text = placement.place(code);
            const Harvest harvest = harvestCodes(text);
            ASSERT_EQ(harvest.found.size(), 1U) << placement.name << ", seed " << seed << ":\n"
                                                << text;
            EXPECT_EQ(harvest.found[0].texture, texture) << placement.name;
            EXPECT_EQ(harvest.found[0].repaired, 0);
            EXPECT_TRUE(harvest.damaged.empty())
                << placement.name << ": " << harvest.damaged[0].where << ": "
                << harvest.damaged[0].reason;
        }
    }
}

TEST(Harvest, ReadsEveryPairOfQuotingAndCutting) {
    const core::Texture texture = tests::usualTexture(9);
    const std::string code = tests::codeOf(texture);
    const std::vector<Placement> outer = {
        {"quoted", prefix("> ")},
        {"spaced", prefix("   ")},
        {"returns", breaks("\r\n")},
        {"html", breaks("<br>\n")},
        {"zero width", [](const std::string& text) { return between(text, 6, "\xE2\x81\xA0"); }}};
    for (const Placement& first : placements()) {
        for (const Placement& second : outer) {
            // An entity with an invisible character inside is none any more.
            const bool entities = first.name == "entities for letters" ||
                                  first.name.find("that were escaped") != std::string::npos;
            if (entities && second.name == "zero width") continue;
            const Harvest harvest = harvestCodes(second.place(first.place(code)));
            ASSERT_EQ(harvest.found.size(), 1U) << first.name << ", then " << second.name;
            EXPECT_EQ(harvest.found[0].texture, texture);
        }
    }
}

TEST(Harvest, ReadsLinesInAnyOrder) {
    const core::Texture texture = tests::usualTexture(3);
    Lines lines = linesOf(tests::codeOf(texture));
    ASSERT_GT(lines.size(), 4U);
    std::swap(lines[1], lines[3]);
    const Harvest harvest = harvestCodes(joined(lines, "\n"));
    ASSERT_EQ(harvest.found.size(), 1U);
    EXPECT_EQ(harvest.found[0].texture, texture);
}

TEST(Harvest, FindsSeveralCodesInTheirOrderWithTheirLines) {
    std::string text = "A thread.\n";
    std::vector<core::Texture> textures;
    std::vector<std::size_t> places;
    for (std::uint64_t seed = 20; seed < 32; ++seed) {
        textures.push_back(tests::usualTexture(seed));
        text += "\nIda wrote:\n";
        places.push_back(linesOf(text).size() + 1);
        text += tests::codeOf(textures.back()) + "\n";
    }
    const Harvest harvest = harvestCodes(text);
    ASSERT_EQ(harvest.found.size(), textures.size());
    for (std::size_t i = 0; i < textures.size(); ++i) {
        EXPECT_EQ(harvest.found[i].texture, textures[i]);
        EXPECT_EQ(harvest.found[i].textLine, places[i]);
    }
    EXPECT_TRUE(harvest.damaged.empty());
}

TEST(Harvest, GivesATextureOnceThatStandsTwice) {
    const core::Texture texture = tests::usualTexture(4);
    const std::string code = tests::codeOf(texture);
    const std::string plain = tests::codeOf(texture, {MethodChoice::PlainRunsOnly});
    const Harvest harvest =
        harvestCodes(code + "\n\n> " + replaced(code, "\n", "\n> ") + "\n" + plain);
    ASSERT_EQ(harvest.found.size(), 1U);
    EXPECT_EQ(harvest.found[0].textLine, 1U);
    EXPECT_TRUE(harvest.damaged.empty());
}

// As when a line is copied, and then all from that line on.
TEST(Harvest, PassesOverAFirstLineThatStandsTwice) {
    const core::Texture texture = tests::usualTexture(4);
    const std::string code = tests::codeOf(texture);
    const std::string first = code.substr(0, code.find('\n') + 1);
    for (const std::string& text : {first + code, "> " + first + "> " + first + code}) {
        const Harvest harvest = harvestCodes(text);
        ASSERT_EQ(harvest.found.size(), 1U);
        EXPECT_EQ(harvest.found[0].texture, texture);
        EXPECT_TRUE(harvest.damaged.empty());
    }
    // What is missing is still told, once; and a first line of another code is not passed over.
    EXPECT_EQ(harvestCodes(first + first).damaged.size(), 1U);
    const std::string other = tests::codeOf(tests::usualTexture(5));
    EXPECT_EQ(harvestCodes(other.substr(0, other.find('\n') + 1) + code).damaged.size(), 1U);
}

// As where the newest stands above, or two halves were pasted the wrong way round.
TEST(Harvest, ReadsACodeWhoseLinesStandAboveItsFirst) {
    const core::Texture texture = tests::usualTexture(4);
    const Lines lines = linesOf(tests::codeOf(texture));
    Lines turned = lines;
    for (std::size_t i = 1; i < lines.size(); ++i) {
        std::rotate(turned.begin(), turned.begin() + 1, turned.end());
        const Harvest harvest =
            harvestCodes("Ida wrote:\n\n" + joined(turned, "\n") + "\n\nThat is all.");
        ASSERT_EQ(harvest.found.size(), 1U) << i;
        EXPECT_EQ(harvest.found[0].texture, texture);
        EXPECT_EQ(harvest.found[0].textLine, 2 + lines.size() - i + 1);
        EXPECT_TRUE(harvest.damaged.empty()) << i;
        ASSERT_EQ(harvest.marks.size(), 1U);
        EXPECT_EQ(harvest.marks[0].mark, CodeMark::Read);
    }
    tests::Random random(7);
    Lines mixed = lines;
    for (int i = 0; i < 20; ++i) {
        for (std::size_t n = mixed.size() - 1; n > 0; --n)
            std::swap(mixed[n],
                      mixed[static_cast<std::size_t>(random.between(0, static_cast<int>(n)))]);
        const Harvest harvest = harvestCodes(joined(mixed, "\n"));
        ASSERT_EQ(harvest.found.size(), 1U) << joined(mixed, "\n");
        EXPECT_EQ(harvest.found[0].texture, texture);
        EXPECT_TRUE(harvest.damaged.empty());
    }
}

TEST(Harvest, TellsOfLinesAboveThatAreOfNoCodeBelow) {
    const Lines other = linesOf(tests::codeOf(tests::usualTexture(5)));
    const std::string loose = joined(Lines(other.begin() + 2, other.end()), "\n");
    const std::string code = tests::codeOf(tests::usualTexture(4));
    const Harvest both = harvestCodes(loose + "\n\n" + code);
    EXPECT_EQ(both.found.size(), 1U);
    ASSERT_EQ(both.damaged.size(), 1U);
    EXPECT_THAT(both.damaged[0].reason, testing::HasSubstr("without its first line"));
    // Nor do they mend one that lacks its end.
    const std::string cut = code.substr(0, code.rfind('\n'));
    EXPECT_EQ(harvestCodes(loose + "\n\n" + cut).damaged.size(), 2U);
}

TEST(Harvest, MarksWhereCodesStand) {
    const std::string one = tests::codeOf(tests::usualTexture(4));
    const std::string two = replaced(tests::codeOf(tests::usualTexture(5)), "\n", "\r\n> ");
    std::string slip = tests::codeOf(tests::usualTexture(6));
    slip[slip.size() / 2] = slip[slip.size() / 2] == 'x' ? 'y' : 'x';
    Lines ruined = linesOf(tests::codeOf(tests::usualTexture(7)));
    for (std::size_t i = 2; i < 7; ++i) ruined[i][8] = ruined[i][8] == 'x' ? 'y' : 'x';
    std::string text = "Näss, look: ";
    std::vector<MarkedText> marks;
    const auto add = [&](const std::string& code, CodeMark mark) {
        marks.push_back({text.size(), text.size() + code.size(), mark});
        text += code + " \xE2\x80\x94 so says Ida.\n\n";
    };
    add(one, CodeMark::Read);
    add(two, CodeMark::Read);
    add(slip, CodeMark::Repaired);
    const std::size_t behind = text.size();
    add(joined(ruined, "\n"), CodeMark::Damaged);
    add(one, CodeMark::Read);  // Once more: it is given once, and marked each time.

    const Harvest harvest = harvestCodes(text);
    ASSERT_EQ(harvest.found.size(), 3U);
    ASSERT_EQ(harvest.damaged.size(), 1U);
    ASSERT_EQ(harvest.marks.size(), marks.size());
    for (std::size_t i = 0; i < 3; ++i) EXPECT_EQ(harvest.found[i].textByte, marks[i].begin);
    EXPECT_EQ(harvest.damaged[0].textByte, harvest.marks[3].begin);
    for (std::size_t i = 0; i < marks.size(); ++i) {
        if (marks[i].mark == CodeMark::Damaged) {
            EXPECT_EQ(harvest.marks[i].mark, CodeMark::Damaged);
            EXPECT_GE(harvest.marks[i].begin, behind);
            EXPECT_LE(harvest.marks[i].end, marks[i].end);
        } else {
            EXPECT_EQ(harvest.marks[i], marks[i]) << i;
        }
    }
}

TEST(Harvest, MarksAllOfACodeInEveryPlacement) {
    const core::Texture texture = tests::usualTexture(2);
    const std::string code = tests::codeOf(texture);
    for (const Placement& placement : placements()) {
        std::string text = placement.place(code);
        const Harvest harvest = harvestCodes(text);
        ASSERT_EQ(harvest.marks.size(), 1U) << placement.name;
        const MarkedText& mark = harvest.marks[0];
        ASSERT_LE(mark.end, text.size());
        const std::string marked = text.substr(mark.begin, mark.end - mark.begin);
        const Harvest again = harvestCodes(marked);
        ASSERT_EQ(again.found.size(), 1U) << placement.name << ":\n" << marked;
        EXPECT_EQ(again.found[0].texture, texture);
        text.erase(mark.begin, mark.end - mark.begin);
        const Harvest rest = harvestCodes(text);
        EXPECT_TRUE(rest.found.empty() && rest.damaged.empty()) << placement.name << ":\n" << text;
    }
}

TEST(Harvest, TellsTexturesApartThatDifferInTheirWords) {
    const core::Texture texture = tests::usualTexture(4);
    const core::Texture renamed = *texture.withText({"Another title", "", "", "", "", {}});
    EXPECT_EQ(harvestCodes(tests::codeOf(texture) + "\n" + tests::codeOf(renamed)).found.size(),
              2U);
}

TEST(Harvest, AsksTheLookupForPalettes) {
    const core::Texture texture = tests::usualTexture(5);
    const std::string code =
        tests::codeOf(texture, {MethodChoice::Shortest, PaletteForm::ByFingerprint});
    const Harvest without = harvestCodes(code);
    EXPECT_TRUE(without.found.empty());
    ASSERT_EQ(without.damaged.size(), 1U);
    EXPECT_NE(without.damaged[0].reason.find(core::toHex(texture.palette().fingerprint())),
              std::string::npos);
    EXPECT_NE(without.damaged[0].reason.find("ask for that palette"), std::string::npos);
    const Harvest with =
        harvestCodes(code, [&](core::Fingerprint) { return std::optional(texture.palette()); });
    ASSERT_EQ(with.found.size(), 1U);
    EXPECT_EQ(with.found[0].texture, texture);
}

TEST(Harvest, SaysNothingOfTextsWithoutCodes) {
    for (const std::string_view text :
         {"", "0I", "O I", "Old Ida", "Only 0I2 and no more", "model 0I2X, 0I2Y",
          "OI2 hello there, Ida", "0I2\n0I2\n0I2", "ol2 0l2abc", "0I2abcdefgh ijk",
          "<p>Old</p><p>0I</p>", "Ol' man 0ld", "1234567890I2345678901234567890",
          "0123456789abcdef0123456789abcdef", "\xFF\xFE 0I \x80"}) {
        const Harvest harvest = harvestCodes(text);
        EXPECT_TRUE(harvest.found.empty()) << text;
        EXPECT_TRUE(harvest.damaged.empty()) << text << ": " << harvest.damaged[0].reason;
    }
}

TEST(Harvest, SaysNothingOfRandomProseAndRandomLetters) {
    constexpr std::string_view kLetters =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    constexpr std::array<std::string_view, 8> kWords = {"Old", "Ida", "0I",   "OI2",
                                                        "l0l", "I0I", "kelp", "0I2ab"};
    tests::Random random(71);
    std::string letters;
    std::string prose;
    for (int i = 0; i < 3000000; ++i) {
        letters += kLetters[static_cast<std::size_t>(random.between(0, 63))];
        if (i % 76 == 75) letters += '\n';
    }
    for (int i = 0; i < 300000; ++i) {
        prose += kWords[static_cast<std::size_t>(random.between(0, 7))];
        prose += random.between(0, 9) == 0 ? '\n' : ' ';
    }
    for (const std::string& text : {letters, prose}) {
        const Harvest harvest = harvestCodes(text);
        EXPECT_TRUE(harvest.found.empty());
        EXPECT_TRUE(harvest.damaged.empty())
            << harvest.damaged[0].where << ": " << harvest.damaged[0].reason;
    }
}

std::string filledWith(std::string_view unit, std::size_t bytes) {
    std::string text;
    while (text.size() < bytes) text += unit;
    return text;
}

// The bound is loose for the sake of slow machines and sanitizers; a reader that goes over the text
// again for every start mark would take hours.
TEST(Harvest, IsLinearInHostileTexts) {
    constexpr std::size_t kBytes = 1000000;
    constexpr double kMostSeconds = 30;
    const std::string greedy = linesOf(*armoured(std::vector<std::uint8_t>(190000, 0x5A))).front();
    const std::string code = tests::codeOf(tests::usualTexture(8));
    const std::string codeWithoutEnd = code.substr(0, code.size() - 40);
    const std::string line = linesOf(code)[2];
    for (const std::string& unit :
         {std::string("0I2"), std::string("0I"), std::string("0"), std::string("I"),
          std::string("\n"), std::string("<a"), std::string("&#"), std::string("0I2z1111"), greedy,
          greedy + "\n", greedy + "\n" + line + "\n", line + "\n", codeWithoutEnd,
          std::string("<br>"), std::string("0i2"), std::string("%0"), std::string("\\u00"),
          std::string("0\n")}) {
        const std::string text = filledWith(unit, kBytes);
        const auto begin = std::chrono::steady_clock::now();
        const Harvest harvest = harvestCodes(text);
        const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - begin;
        EXPECT_TRUE(harvest.found.empty()) << unit;
        EXPECT_LT(taken.count(), kMostSeconds) << unit;
    }
    const Harvest harvest = harvestCodes(greedy + "\n" + filledWith(line + "\n", kBytes));
    EXPECT_TRUE(harvest.found.empty());
    EXPECT_EQ(harvest.damaged.size(), 1U);
}

TEST(Harvest, StopsWhenAsked) {
    std::stop_source source;
    source.request_stop();
    const std::string code = tests::codeOf(tests::usualTexture(4));
    EXPECT_TRUE(harvestCodes(code, {}, {source.get_token(), {}}).found.empty());
}

TEST(Harvest, TellsHowFarItIs) {
    const std::string code = tests::codeOf(tests::usualTexture(4)) + "\n";
    std::vector<std::int64_t> done;
    harvestCodes(code + code + code, {},
                 {{}, [&](std::int64_t now, std::int64_t total, std::string_view) {
                      done.push_back(now);
                      EXPECT_EQ(total, 3);
                  }});
    EXPECT_EQ(done, (std::vector<std::int64_t>{1, 2, 3}));
}

/// Different 16x16 textures of the given method, one code behind the other.
std::string codesOf(int count, MethodChoice method) {
    tests::Random random(707);
    std::string text;
    for (int i = 0; i < count; ++i) {
        text += tests::codeOf(tests::randomTexture(random, {16, 16}, 4), {method}) + "\n\n";
    }
    return text;
}

TEST(Harvest, HoldsTextsToTheirLimits) {
    const auto foundWithin = [](const std::string& text, const HarvestLimits& limits) {
        const Harvest harvest = harvestCodes(text, {}, {}, limits);
        EXPECT_EQ(harvest.found.size() + harvest.damaged.size(), 12U);
        for (const DamagedCode& one : harvest.damaged) {
            EXPECT_EQ(one.reason, "too many textures for one text; read the rest by itself");
        }
        return harvest.found.size();
    };
    const std::string plain = codesOf(12, MethodChoice::PlainRunsOnly);
    EXPECT_EQ(foundWithin(plain, {}), 12U);
    EXPECT_EQ(foundWithin(plain, {.cells = 5 * 256 - 1}), 5U);
    EXPECT_EQ(foundWithin(plain, {.decisions = 0}), 12U);
    const std::string modelled = codesOf(12, MethodChoice::Shortest);
    EXPECT_EQ(foundWithin(modelled, {}), 12U);
    EXPECT_EQ(foundWithin(modelled, {.decisions = 0}), 1U);
    // A cell of four colours takes one to three decisions.
    const std::size_t some = foundWithin(modelled, {.decisions = 5 * 256});
    EXPECT_GE(some, 1U);
    EXPECT_LE(some, 6U);
}

}  // namespace
}  // namespace pantile::codec
