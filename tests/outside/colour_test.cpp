// Colour spaces against published tables. Each row of tests/data/references names its own source.

#include <sstream>

#include "core/colour_difference.h"
#include "core/colour_spaces.h"
#include "support/csv.h"

namespace pantile::core {
namespace {

std::string reference(const std::string& file) {
    return std::string(PANTILE_TEST_DATA) + "/references/" + file;
}

std::vector<tests::CsvRow> colourRows(const std::string& kind) {
    std::vector<tests::CsvRow> rows;
    for (const tests::CsvRow& row : tests::readCsv(reference("colour.csv"))) {
        if (row.at(0) == kind) rows.push_back(row);
    }
    EXPECT_FALSE(rows.empty()) << kind;
    return rows;
}

std::vector<double> numbers(const std::string& text) {
    std::istringstream in(text);
    std::vector<double> values;
    for (double value = 0; in >> value;) values.push_back(value);
    return values;
}

/// The three numbers behind a name, as in "red 255 0 0".
Rgb8 namedColour(const std::string& text) {
    const std::vector<double> channels = numbers(text.substr(text.find(' ')));
    return {static_cast<std::uint8_t>(channels.at(0)), static_cast<std::uint8_t>(channels.at(1)),
            static_cast<std::uint8_t>(channels.at(2))};
}

// Sharma, Wu and Dalal 2005, table 1: all 34 pairs, both ways round, to the four decimals printed.
TEST(PublishedColour, Ciede2000AgreesOnAllPairs) {
    const auto rows = tests::readCsv(reference("ciede2000_sharma.csv"));
    EXPECT_EQ(rows.size(), 34U);
    for (const tests::CsvRow& row : rows) {
        const Lab p{std::stod(row[1]), std::stod(row[2]), std::stod(row[3])};
        const Lab q{std::stod(row[4]), std::stod(row[5]), std::stod(row[6])};
        EXPECT_NEAR(ciede2000(p, q), std::stod(row[7]), 0.5e-4) << "pair " << row[0];
        EXPECT_NEAR(ciede2000(q, p), std::stod(row[7]), 0.5e-4) << "pair " << row[0] << " swapped";
    }
}

// IEC 61966-2-1.
TEST(PublishedColour, SrgbToLinearLight) {
    for (const tests::CsvRow& row : colourRows("srgb8_to_linear")) {
        EXPECT_NEAR(srgb8ToLinear(static_cast<std::uint8_t>(std::stoi(row[1]))), std::stod(row[2]),
                    1e-10);
    }
}

// IEC 61966-2-1.
TEST(PublishedColour, LinearLightToSrgb) {
    for (const tests::CsvRow& row : colourRows("linear_to_srgb8")) {
        EXPECT_NEAR(linearToSrgb(std::stod(row[1])), std::stod(row[2]), 1e-9) << row[1];
        const std::string byte = row[2].substr(row[2].rfind(';') + 1);
        EXPECT_EQ(linearToSrgb8(std::stod(row[1])), std::stoi(byte)) << row[1];
    }
}

// CIE 15 with the white 0.95047 1 1.08883, for the primaries (project's check values).
TEST(PublishedColour, CielabOfThePrimaries) {
    const std::vector<std::pair<std::string, Rgb8>> colours = {{"white", {255, 255, 255}},
                                                               {"red", {255, 0, 0}},
                                                               {"green_lime", {0, 255, 0}},
                                                               {"blue", {0, 0, 255}}};
    const auto rows = colourRows("srgb8_to_cielab_white_0.95047_1_1.08883");
    ASSERT_EQ(rows.size(), colours.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        ASSERT_EQ(rows[i][1], colours[i].first);
        const std::vector<double> expected = numbers(rows[i][2]);
        const Lab lab = toLab(colours[i].second);
        EXPECT_NEAR(lab.l, expected[0], 2e-3);
        EXPECT_NEAR(lab.a, expected[1], 2e-2);
        EXPECT_NEAR(lab.b, expected[2], 2e-2);
    }
}

// B. Ottosson 2020, table of XYZ pairs, printed to three decimals.
TEST(PublishedColour, OkLabOfXyzPoints) {
    for (const tests::CsvRow& row : colourRows("oklab_xyz_to_lab")) {
        const std::vector<double> xyz = numbers(row[1]);
        const std::vector<double> expected = numbers(row[2]);
        const OkLab lab = toOkLab(Xyz{xyz.at(0), xyz.at(1), xyz.at(2)});
        EXPECT_NEAR(lab.l, expected.at(0), 0.6e-3) << row[1];
        EXPECT_NEAR(lab.a, expected.at(1), 0.6e-3) << row[1];
        EXPECT_NEAR(lab.b, expected.at(2), 0.6e-3) << row[1];
    }
}

// B. Ottosson 2020, by the matrices of the paper.
TEST(PublishedColour, OkLabOfScreenColours) {
    for (const tests::CsvRow& row : colourRows("srgb8_to_oklab")) {
        const std::vector<double> expected = numbers(row[2]);
        const OkLab lab = toOkLab(namedColour(row[1]));
        EXPECT_NEAR(lab.l, expected.at(0), 2e-6) << row[1];
        EXPECT_NEAR(lab.a, expected.at(1), 2e-6) << row[1];
        EXPECT_NEAR(lab.b, expected.at(2), 2e-6) << row[1];
    }
}

}  // namespace
}  // namespace pantile::core
