#include "catalogue/json_reader.h"

#include <algorithm>
#include <string>

#include <gtest/gtest.h>

#include "catalogue/json_text.h"
#include "support/matchers.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

/// Hands over a byte at a time, so that nothing depends on where a buffer ends.
JsonReader readerOf(std::string text) {
    return JsonReader([text = std::move(text), at = std::size_t{0}](
                          char* into, std::size_t most) mutable -> core::Result<std::size_t> {
        const std::size_t count = std::min<std::size_t>({1, most, text.size() - at});
        text.copy(into, count, at);
        at += count;
        return count;
    });
}

core::Result<JsonValue> valueOf(const std::string& text) {
    JsonReader json = readerOf(text);
    PANTILE_ASSIGN_OR_RETURN(JsonValue value, json.value());
    PANTILE_RETURN_IF_ERROR(json.end());
    return value;
}

std::string textOf(const std::string& json) {
    const auto value = valueOf(json);
    EXPECT_THAT(value, isOk()) << json;
    return value ? std::get<std::string>(*value) : "";
}

TEST(JsonReader, ReadsNumbersNullAndTexts) {
    EXPECT_EQ(std::get<std::int64_t>(*valueOf(" 0 ")), 0);
    EXPECT_EQ(std::get<std::int64_t>(*valueOf("-17\r\n")), -17);
    EXPECT_EQ(std::get<std::int64_t>(*valueOf("9007199254740991")), kMaxJsonNumber);
    EXPECT_TRUE(std::holds_alternative<std::monostate>(*valueOf("null")));
    EXPECT_EQ(textOf(R"("wet sand")"), "wet sand");
    EXPECT_EQ(textOf(R"("")"), "");
}

// RFC 8259, section 7: its examples of escapes, and the G clef as two halves.
TEST(JsonReader, ReadsEveryEscape) {
    EXPECT_EQ(textOf(R"("\"\\\/\b\f\n\r\t")"), "\"\\/\b\f\n\r\t");
    EXPECT_EQ(textOf(R"("\u005C\u005c")"), "\\\\");
    EXPECT_EQ(textOf(R"("\u00fc \u20AC \uD834\uDD1E")"), "ü € \xF0\x9D\x84\x9E");
}

TEST(JsonReader, GoesThroughListsAndObjects) {
    JsonReader json = readerOf("\xEF\xBB\xBF{ \"a\" : [ 1 , 2 ] ,\n\"b\":[] }");
    ASSERT_THAT(json.openObject(), isOk());
    EXPECT_EQ(json.nextMember()->value(), "a");
    ASSERT_THAT(json.openList(), isOk());
    EXPECT_TRUE(*json.nextElement());
    EXPECT_EQ(*json.number(), 1);
    EXPECT_TRUE(*json.nextElement());
    EXPECT_EQ(*json.number(), 2);
    EXPECT_FALSE(*json.nextElement());
    EXPECT_EQ(json.nextMember()->value(), "b");
    EXPECT_EQ(json.line(), 2);
    ASSERT_THAT(json.openList(), isOk());
    EXPECT_FALSE(*json.nextElement());
    EXPECT_FALSE(json.nextMember()->has_value());
    EXPECT_THAT(json.end(), isOk());
}

struct BadValue {
    std::string text;
    std::string message;
};

TEST(JsonReader, SaysWhereAValueIsWrong) {
    const std::vector<BadValue> bad = {
        {"", "line 1, column 1: the file ends where a text, a whole number or null"},
        {"tru", "line 1, column 1: 't' stands where"},
        {"nul", "column 4: the file ends where 'null'"},
        {"-", "the file ends where a whole number"},
        {"01", "a number begins with 0"},
        {"1.5", "no whole one"},
        {"1e3", "no whole one"},
        {"\n\n  +1", "line 3, column 3: '+' stands"},
        {"[]", "'[' stands where a text"},
        {"1 2", "column 3: '2' stands where the end of the file"},
        {"\"wet", "the file ends where a closing quote"},
        {"\"a\nb\"", "line 1, column 3: a text has a line break"},
        {"\"\\x\"", "column 3: 'x' stands where a letter that follows a backslash"},
        {"\"\\u12g4\"", "a hexadecimal digit"},
        {"\"\\ud800\"", "where '\\u' has to stand"},
        {"\"\\ud800\\u0041\"", "half a character"},
        {"\"\\udc00\"", "half a character"},
        {"\"\xC3(\"", "no UTF-8"},
        {"\"\xED\xA0\x80\"", "no UTF-8"},
    };
    for (const BadValue& each : bad) {
        EXPECT_THAT(valueOf(each.text), failsWith(ErrorKind::InvalidInput, each.message))
            << each.text;
    }
}

TEST(JsonReader, BoundsNumbersAndTexts) {
    EXPECT_THAT(valueOf("9007199254740992"), failsWith(ErrorKind::TooLarge, "2^53"));
    EXPECT_THAT(valueOf("-99999999999999999999999"), failsWith(ErrorKind::TooLarge, "2^53"));
    const std::string longest(kMaxJsonTextBytes, 'a');
    EXPECT_EQ(textOf('"' + longest + '"'), longest);
    EXPECT_THAT(valueOf('"' + longest + "a\""), failsWith(ErrorKind::TooLarge, "longer than"));
}

TEST(JsonReader, SaysWhatTheSourceSays) {
    const core::Error gone{ErrorKind::Io, "the disk is gone", ""};
    JsonReader json([gone](char*, std::size_t) -> core::Result<std::size_t> { return gone; });
    EXPECT_THAT(json.openObject(), failsWith(ErrorKind::Io, "the disk is gone"));
}

TEST(JsonText, ComesBackWhateverItIs) {
    std::string all;
    for (char c = 1; c < 0x7F; ++c) all += c;
    all += "ü€\xF0\x9D\x84\x9E";
    std::string written;
    appendJsonText(written, all);
    EXPECT_EQ(textOf(written), all);
    EXPECT_EQ(written.find('\n'), std::string::npos);
}

}  // namespace
}  // namespace pantile::catalogue
