#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "code_support.h"
#include "codec/start_values.h"

namespace pantile::codec {
namespace {

std::string page() {
    std::ifstream file(PANTILE_SOURCE_DIR "/docs/code-format.md");
    return {std::istreambuf_iterator<char>(file), {}};
}

TEST(CodeFormatPage, PrintsTheCodeOfEveryVector) {
    const std::string text = page();
    for (const tests::CodeVector& vector : tests::readCodeVectors()) {
        EXPECT_NE(text.find(vector.name + ".txt"), std::string::npos) << vector.name;
        EXPECT_NE(text.find("\n" + vector.code + "\n"), std::string::npos) << vector.name;
        EXPECT_NE(text.find("\n" + vector.parts + "\n"), std::string::npos) << vector.name;
    }
}

TEST(CodeFormatPage, PrintsTheCodeOfTheSet) {
    const auto set = tests::readFields(tests::vectorFiles("set_codes").at(0));
    EXPECT_NE(page().find("\n" + set.at("code") + "\n"), std::string::npos);
}

TEST(CodeFormatPage, HoldsNoOtherCodeThanThoseOfTheVectors) {
    const std::vector<tests::CodeVector> vectors = tests::readCodeVectors();
    std::vector<core::Palette> palettes;
    for (const tests::CodeVector& vector : vectors) palettes.push_back(vector.texture.palette());
    const Harvest harvest = harvestCodes(page(), [&](core::Fingerprint asked) {
        const auto found = std::find_if(
            palettes.begin(), palettes.end(),
            [&](const core::Palette& palette) { return palette.fingerprint() == asked; });
        return found == palettes.end() ? std::nullopt : std::optional(*found);
    });
    EXPECT_TRUE(harvest.damaged.empty());
    EXPECT_EQ(harvest.found.size(), vectors.size());
    for (const FoundCode& found : harvest.found) {
        EXPECT_TRUE(std::any_of(
            vectors.begin(), vectors.end(),
            [&](const tests::CodeVector& vector) { return vector.texture == found.texture; }))
            << found.textLine;
    }
}

/// The numbers of the lines that are set in behind `words` in section 15.
std::vector<int> numbersBehind(const std::string& text, const std::string& words) {
    const std::size_t begin = text.find("    ", text.find(words, text.find("## 15.")));
    std::istringstream lines(text.substr(begin));
    std::vector<int> numbers;
    for (std::string line; std::getline(lines, line) && line.starts_with("    ");) {
        std::istringstream row(line);
        for (int number = 0; row >> number;) numbers.push_back(number);
    }
    return numbers;
}

template <typename Values>
std::vector<int> asNumbers(const Values& values) {
    return {values.begin(), values.end()};
}

TEST(CodeFormatPage, PrintsTheStartValuesThatAreFrozen) {
    EXPECT_EQ(numbersBehind(page(), "Weights of 14.7"), asNumbers(kGridStart));
}

}  // namespace
}  // namespace pantile::codec
