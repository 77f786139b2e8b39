#include "catalogue/fact_page.h"

#include <limits>

#include <gmock/gmock.h>

#include "support/random.h"

namespace pantile::catalogue {
namespace {

constexpr std::int64_t kLeast = std::numeric_limits<std::int64_t>::min();
constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();
constexpr std::size_t kHead = 9;

FactValues backFrom(const std::vector<std::uint8_t>& bytes) {
    FactValues values{};
    EXPECT_TRUE(unpackFacts(bytes, values));
    return values;
}

TEST(FactPage, HoldsNumbersOfEveryWidth) {
    tests::Random random(5);
    for (unsigned bits = 0; bits <= 64; ++bits) {
        FactValues values{};
        for (std::int64_t& value : values) {
            const std::uint64_t drawn = bits == 0 ? 0 : random.next() >> (64 - bits);
            value = static_cast<std::int64_t>(drawn) - (bits < 64 ? 1000 : 0);
        }
        EXPECT_EQ(backFrom(packFacts(values)), values) << bits << " bits";
    }
    FactValues ends{};
    ends.front() = kLeast;
    ends.back() = kMost;
    EXPECT_EQ(backFrom(packFacts(ends)), ends);
}

TEST(FactPage, TakesTheRoomThatTheNumbersNeed) {
    FactValues values;
    values.fill(1'700'000'000);
    EXPECT_EQ(packFacts(values).size(), kHead);
    values[7] += 255;
    EXPECT_EQ(packFacts(values).size(), kHead + values.size());
    values[7] += 1;
    EXPECT_EQ(packFacts(values).size(), kHead + 2 * values.size());
}

// Worked by hand from the page of the format.
TEST(FactPage, StandsAsTheFormatSays) {
    FactValues values;
    values.fill(-1);
    values[1] = 2;
    std::vector<std::uint8_t> expected = {1, 255, 255, 255, 255, 255, 255, 255, 255};
    expected.resize(kHead + values.size());
    expected[kHead + 1] = 3;
    EXPECT_EQ(packFacts(values), expected);
}

TEST(FactPage, ThatIsForgedIsRefused) {
    FactValues values{};
    values[3] = 70000;
    const std::vector<std::uint8_t> bytes = packFacts(values);
    for (std::size_t length = 0; length < bytes.size(); ++length) {
        FactValues untouched{};
        EXPECT_FALSE(unpackFacts(std::span(bytes).first(length), untouched)) << length;
        EXPECT_EQ(untouched, FactValues{});
    }
    for (int width = 0; width < 256; ++width) {
        std::vector<std::uint8_t> forged = bytes;
        forged[0] = static_cast<std::uint8_t>(width);
        EXPECT_EQ(unpackFacts(forged, values), width == 3) << width;
    }
}

}  // namespace
}  // namespace pantile::catalogue
