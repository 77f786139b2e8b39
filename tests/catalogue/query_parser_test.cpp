#include "catalogue/query_parser.h"

#include "support/matchers.h"
#include "support/random.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;
using NodeKind = QueryNode::Kind;

void expectError(const std::string& query, const std::string& message, const std::string& advice) {
    const auto parsed = parseQuery(query);
    EXPECT_THAT(parsed, failsWith(ErrorKind::InvalidInput, message)) << query;
    if (parsed) return;
    const std::string& hint = parsed.error().hint;
    EXPECT_NE(hint.find(advice), std::string::npos) << hint;
    EXPECT_NE(hint.find('^'), std::string::npos) << hint;
}

TEST(QueryParser, EmptyAndAllAskForEverything) {
    for (const char* query : {"", "   ", "all", " all "}) {
        const auto parsed = parseQuery(query);
        ASSERT_THAT(parsed, isOk());
        EXPECT_EQ(parsed->root.kind, NodeKind::AllOf);
        EXPECT_TRUE(parsed->root.parts.empty());
    }
    EXPECT_EQ(parseQuery("\"all\"")->root.kind, NodeKind::Match);
    EXPECT_EQ(parseQuery("all kelp")->root.parts.size(), 2U);
}

TEST(QueryParser, BindsMinusThenAndThenOr) {
    const auto parsed = parseQuery("a -b | c");
    ASSERT_THAT(parsed, isOk());
    const QueryNode& root = parsed->root;
    ASSERT_EQ(root.kind, NodeKind::AnyOf);
    ASSERT_EQ(root.parts.size(), 2U);
    ASSERT_EQ(root.parts[0].kind, NodeKind::AllOf);
    EXPECT_EQ(root.parts[0].parts[1].kind, NodeKind::Not);
    EXPECT_EQ(root.parts[1].kind, NodeKind::Match);
}

TEST(QueryParser, TwoMinusSignsCancelOut) {
    EXPECT_EQ(parseQuery("--a")->root.kind, NodeKind::Match);
    EXPECT_EQ(parseQuery("---a")->root.kind, NodeKind::Not);
    EXPECT_EQ(parseQuery("-(a b)")->root.parts.front().kind, NodeKind::AllOf);
}

TEST(QueryParser, NotesWhetherRemovedOnesAreAskedFor) {
    EXPECT_FALSE(parseQuery("removed")->namesRemoved);
    EXPECT_TRUE(parseQuery("kelp (a | -is:removed)")->namesRemoved);
}

TEST(QueryParser, PointsAtMistakes) {
    expectError("tagg:kelp", "column 1: there is no 'tagg:'", "did you mean 'tag:'");
    expectError("kelp heigth<=3", "column 6: there is no 'heigth<='", "did you mean 'height<='");
    expectError("zzzzzz:1", "column 1", "put quotes around");
    expectError("(kelp", "column 1: a bracket is opened", "close it");
    expectError("kelp)", "column 5: a bracket is closed", "leave it out");
    expectError("kelp |", "column 7", "write a word");
    expectError("| kelp", "column 1", "write a word");
    expectError("()", "column 2", "write a word");
    expectError("kelp -", "column 6: '-' stands", "right behind");
    expectError("\"\"", "column 1: the quotes are empty", "between them");
    expectError("tag:", "column 5: a word is missing", "tag:\"\"");
    expectError("tag<kelp", "column 1: 'tag' has no order", "write tag:");
    expectError("size<32x32", "column 1", "write size:");
    expectError("size:32", "column 6: 'size' takes a size, not '32'", "32x32");
    expectError("width<=wide", "column 8", "like 32");
    expectError("width:", "column 7: 'width' takes a whole number, not nothing", "like 32");
    expectError("draw<2min", "column 6", "90s, 2m or 1h");
    expectError("added>2026-13", "column 7", "2026-01");
    expectError("is:lost", "column 4: 'is:' does not know 'lost'", "is:removed");
    expectError("is:untagged", "column 4", "tag:\"\"");
    expectError("clour:red", "column 1: there is no 'clour:'", "did you mean 'colour:'");
}

TEST(QueryParser, DrawsTheCaretUnderTheMistake) {
    EXPECT_EQ(parseQuery("kelp tagg:x").error().hint.substr(0, 19), "kelp tagg:x\n     ^\n");
}

TEST(QueryParser, LimitsDepthAndLength) {
    const auto nested = [](int depth) {
        const auto count = static_cast<std::size_t>(depth);
        return std::string(count, '(') + "a" + std::string(count, ')');
    };
    EXPECT_THAT(parseQuery(nested(kMaxQueryDepth)), isOk());
    EXPECT_THAT(parseQuery(nested(kMaxQueryDepth + 1)), failsWith(ErrorKind::TooLarge, "deep"));
    EXPECT_THAT(parseQuery(std::string(3999, '(')), failsWith(ErrorKind::TooLarge, "deep"));
    EXPECT_THAT(parseQuery(std::string(3999, '-') + "a"), isOk());
    std::string words;
    for (int i = 0; i < kMaxQueryTerms; ++i) words += "a ";
    EXPECT_THAT(parseQuery(words), isOk());
    EXPECT_THAT(parseQuery(words + "a"), failsWith(ErrorKind::TooLarge, "200"));
}

TEST(QueryParser, AnswersAnyTextWithoutFalling) {
    const std::string letters = "ab:<>=-|()\"\\ 19tagwidth.x";
    tests::Random random(7);
    int parsed = 0;
    for (int round = 0; round < 20000; ++round) {
        std::string query;
        for (int length = random.between(0, 24); length > 0; --length) {
            query += letters[static_cast<std::size_t>(
                random.between(0, static_cast<int>(letters.size()) - 1))];
        }
        const auto result = parseQuery(query);
        if (result) {
            ++parsed;
        } else {
            EXPECT_FALSE(result.error().message.empty()) << query;
        }
    }
    EXPECT_GT(parsed, 100);
}

}  // namespace
}  // namespace pantile::catalogue
