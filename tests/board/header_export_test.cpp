#include "board/header_export.h"

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include <gtest/gtest.h>

#include "board/cautions.h"
#include "support/matchers.h"
#include "support/random.h"

namespace pantile::board {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;
using Bytes = std::vector<std::uint8_t>;

const std::vector<std::string> kHostileTitles = {
    "*/ int hostile = 1; /*",
    "\?\?/\n#error newline",
    "back\\",
    "line\n#error broke out",
    "\xe2\x80\xa8#error separator",
    "\xe2\x80\xae#error turned round",
    "quote\" and 'quote'",
    "//* /* */ *\\\n/",
    "\xff\xfe not UTF-8",
    std::string(10000, '*') + "/",
    std::string("zero\0byte", 9),
};

Bytes someBytes(std::size_t count) {
    tests::Random random(count);
    Bytes bytes(count);
    for (std::uint8_t& byte : bytes) byte = static_cast<std::uint8_t>(random.next());
    return bytes;
}

class TemporaryFolder {
public:
    TemporaryFolder() {
        std::string pattern = (std::filesystem::temp_directory_path() / "pantile-XXXXXX").string();
        m_path = mkdtemp(pattern.data());
    }

    ~TemporaryFolder() { std::filesystem::remove_all(m_path); }

    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    const std::filesystem::path& path() const { return m_path; }

private:
    std::filesystem::path m_path;
};

/// Whether the C compiler takes a program that includes the header and counts its bytes.
bool compiles(const std::string& header, std::size_t bytes) {
    const TemporaryFolder folder;
    std::ofstream(folder.path() / "load.h", std::ios::binary) << header;
    std::ofstream(folder.path() / "use.c")
        << "#include \"load.h\"\n#include \"load.h\"\n"
           "typedef char sizes_agree[sizeof pantile_load == PANTILE_LOAD_BYTES ? 1 : -1];\n"
           "typedef char size_is_right[PANTILE_LOAD_BYTES == "
        << bytes
        << " ? 1 : -1];\n"
           "uint8_t first(void);\nuint8_t first(void) { return pantile_load[0]; }\n";
    const std::string command =
        "cc -std=c99 -trigraphs -fsyntax-only -Wall -Wextra -Wpedantic "
        "-Wno-error=trigraphs -Werror '" +
        (folder.path() / "use.c").string() + "'";
    return std::system(command.c_str()) == 0;
}

TEST(HeaderExport, BringsTheBytesBack) {
    for (const std::size_t count : {1U, 15U, 16U, 17U, 255U, 4096U}) {
        const Bytes bytes = someBytes(count);
        const std::string header = writeHeader(bytes, "Low tide", kHostileTitles);
        const auto read = readHeader(header);
        ASSERT_THAT(read, isOk()) << count;
        EXPECT_EQ(*read, bytes);
    }
}

TEST(HeaderExport, CompilesAsC) {
    const Bytes bytes = someBytes(300);
    const std::vector<std::string> titles = {"Kelp", "Wet sand"};
    EXPECT_TRUE(compiles(writeHeader(bytes, "Low tide", titles), bytes.size()));
    EXPECT_FALSE(compiles("#error no header", bytes.size()));
}

TEST(HeaderExport, CompilesWithHostileTitles) {
    const Bytes bytes = someBytes(20);
    EXPECT_TRUE(compiles(writeHeader(bytes, "*/ #error name", kHostileTitles), bytes.size()));
}

TEST(HeaderExport, KeepsTitlesInsideTheirComment) {
    const std::string header = writeHeader(someBytes(20), "x", kHostileTitles);
    EXPECT_EQ(header.find("*/"), header.find(" */\n\n#ifndef") + 1);
    EXPECT_EQ(header.find('\\'), std::string::npos);
    EXPECT_EQ(header.find("\?\?"), std::string::npos);
    EXPECT_EQ(header.find('"'), std::string::npos);
    EXPECT_EQ(header.find('\0'), std::string::npos);
    const std::string comment = header.substr(0, header.find("*/"));
    EXPECT_EQ(std::count(comment.begin(), comment.end(), '\n'),
              static_cast<std::ptrdiff_t>(kHostileTitles.size() + cautions().size() + 3));
}

TEST(HeaderExport, CarriesTheCautions) {
    const std::string header = writeHeader(someBytes(20), "x", {});
    ASSERT_EQ(cautions().size(), 6U);
    for (const std::string_view caution : cautions()) {
        EXPECT_NE(header.find(caution), std::string::npos) << caution;
    }
}

TEST(HeaderExport, ReadsOtherLineEndsAndBlanks) {
    const Bytes bytes = someBytes(40);
    std::string text;
    for (const char c : writeHeader(bytes, "x", {})) {
        if (c == '\n') text += "\r\n\t";
        if (c != '\n') text += c;
    }
    const auto read = readHeader(text);
    ASSERT_THAT(read, isOk());
    EXPECT_EQ(*read, bytes);
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return text.replace(at, from.size(), to);
}

TEST(HeaderExport, RefusesTextThatIsSomethingElse) {
    const std::string good = writeHeader(someBytes(3), "x", {});
    EXPECT_THAT(readHeader(""), failsWith(ErrorKind::Corrupt, "line 1 of the header breaks off"));
    EXPECT_THAT(readHeader("int main(void) {}"), failsWith(ErrorKind::Corrupt, "'int' where"));
    EXPECT_THAT(readHeader("/* never closed"), failsWith(ErrorKind::Corrupt, "comment"));
    EXPECT_THAT(readHeader(good + "int x;"), failsWith(ErrorKind::Corrupt, "goes on"));
    EXPECT_THAT(readHeader(replaced(good, "[3]", "[4]")), failsWith(ErrorKind::Corrupt, "two"));
    EXPECT_THAT(readHeader(replaced(good, "[3]", "[3L]")), failsWith(ErrorKind::Corrupt, "'3L'"));
    EXPECT_THAT(readHeader(replaced(good, "0x", "0x1")), failsWith(ErrorKind::Corrupt, "a byte"));
    EXPECT_THAT(readHeader(replaced(good, "0x", "-")), failsWith(ErrorKind::Corrupt, "a byte"));
    EXPECT_THAT(readHeader(replaced(good, "    0x", "    0xg")),
                failsWith(ErrorKind::Corrupt, "a byte"));
    const std::string forged =
        replaced(replaced(good, "BYTES 3UL", "BYTES 99999999UL"), "[3]", "[99999999]");
    EXPECT_THAT(readHeader(forged), failsWith(ErrorKind::Corrupt, "more than it can hold"));
}

TEST(HeaderExport, RefusesEveryTruncation) {
    const std::string good = writeHeader(someBytes(5), "x", {});
    const std::size_t end = good.rfind("#endif") + 6;
    for (std::size_t size = 0; size < end; ++size) {
        ASSERT_FALSE(readHeader(good.substr(0, size)).has_value()) << size;
    }
}

TEST(HeaderExport, IsToldFromACard) {
    const std::string header = writeHeader(someBytes(3), "x", {});
    EXPECT_TRUE(looksLikeHeader(Bytes(header.begin(), header.end())));
    EXPECT_FALSE(looksLikeHeader(Bytes{0x50, 0x54, 0x4C, 0x44}));
    EXPECT_FALSE(looksLikeHeader({}));
}

}  // namespace
}  // namespace pantile::board
