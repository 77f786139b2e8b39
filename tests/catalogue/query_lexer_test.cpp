#include "catalogue/query_lexer.h"

#include "support/matchers.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using tests::failsWith;
using Kind = QueryToken::Kind;

std::vector<QueryToken> lexed(const std::string& query) {
    auto tokens = lexQuery(query);
    EXPECT_TRUE(tokens) << query;
    return tokens ? *std::move(tokens) : std::vector<QueryToken>{};
}

TEST(QueryLexer, SplitsWordsBracketsBarsAndMinusSigns) {
    const auto tokens = lexed("wet-sand|(-kelp )");
    const std::vector<Kind> expected = {Kind::Text,  Kind::Bar,  Kind::Open,
                                        Kind::Minus, Kind::Text, Kind::Close};
    ASSERT_EQ(tokens.size(), expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) EXPECT_EQ(tokens[i].kind, expected[i]) << i;
    EXPECT_EQ(tokens[0].value, "wet-sand");
    EXPECT_EQ(tokens[4].value, "kelp");
    EXPECT_EQ(tokens[4].place, 11U);
}

TEST(QueryLexer, TakesKeySignAndValueApart) {
    const auto tokens = lexed("Tag:kelp width<=32 draw>1m shelf:\"North shore\"");
    ASSERT_EQ(tokens.size(), 4U);
    EXPECT_EQ(tokens[0].key, "tag");
    EXPECT_EQ(tokens[0].sign, ":");
    EXPECT_EQ(tokens[0].value, "kelp");
    EXPECT_EQ(tokens[1].sign, "<=");
    EXPECT_EQ(tokens[1].value, "32");
    EXPECT_EQ(tokens[1].valuePlace, 16U);
    EXPECT_EQ(tokens[3].value, "North shore");
    EXPECT_TRUE(tokens[3].quoted);
}

TEST(QueryLexer, TakesQuotesAndBackslashesInPhrases) {
    const auto tokens = lexed(R"("say \"ahoy\" \\ \n | (")");
    ASSERT_EQ(tokens.size(), 1U);
    EXPECT_EQ(tokens[0].kind, Kind::Text);
    EXPECT_EQ(tokens[0].value, R"(say "ahoy" \ \n | ()");
}

TEST(QueryLexer, LeavesOtherWordsWithSignsAlone) {
    for (const std::string word : {"3:4", "#a1b2c3", "a-b:c", "海藻:x", "50%"}) {
        const auto tokens = lexed(word);
        ASSERT_EQ(tokens.size(), 1U) << word;
        EXPECT_EQ(tokens[0].kind, Kind::Text) << word;
        EXPECT_EQ(tokens[0].value, word);
    }
}

TEST(QueryLexer, RefusesAnOpenQuoteAndBadText) {
    EXPECT_THAT(lexQuery("kelp \"wet"), failsWith(ErrorKind::InvalidInput, "column 6"));
    EXPECT_THAT(lexQuery("\"wet\\\""), failsWith(ErrorKind::InvalidInput, "column 1"));
    EXPECT_THAT(lexQuery("a\x1b"), failsWith(ErrorKind::InvalidInput, "query"));
    EXPECT_THAT(lexQuery("a\xff"), failsWith(ErrorKind::InvalidInput, "UTF-8"));
    EXPECT_THAT(lexQuery(std::string(4001, 'a')), failsWith(ErrorKind::TooLarge, "4001"));
}

TEST(QueryError, PointsAtThePlaceByCharacters) {
    const core::Error error = queryError("grève tagg:x", 7, "wrong", "write tag:");
    EXPECT_EQ(error.message, "column 7: wrong");
    EXPECT_EQ(error.hint, "grève tagg:x\n      ^\nwrite tag:");
}

TEST(QueryError, ShowsALongQueryAroundThePlace) {
    std::string query;
    for (int i = 0; i < 200; ++i) query += "é";
    const core::Error error = queryError(query, 300, "wrong", "advice");
    EXPECT_EQ(error.message, "column 151: wrong");
    EXPECT_EQ(error.hint.find('^'), error.hint.find('\n') + 1 + 20);
    EXPECT_LT(error.hint.size(), 130U);
}

}  // namespace
}  // namespace pantile::catalogue
