#include "catalogue/query_values.h"

#include <string>

#include <gtest/gtest.h>

namespace pantile::catalogue {
namespace {

TEST(QueryValues, ReadsCounts) {
    EXPECT_EQ(parseCount("0"), 0);
    EXPECT_EQ(parseCount("123456789012345"), 123456789012345);
    for (const char* bad : {"", "-1", "1a", "1.5", " 1", "1234567890123456", "0x10"}) {
        EXPECT_EQ(parseCount(bad), std::nullopt) << bad;
    }
}

TEST(QueryValues, ReadsSizes) {
    EXPECT_EQ(parseSize("32x16"), (core::Size{32, 16}));
    EXPECT_EQ(parseSize("1X256"), (core::Size{1, 256}));
    for (const char* bad : {"", "32", "32x", "x32", "32x16x1", "32*16", "9999999x1"}) {
        EXPECT_EQ(parseSize(bad), std::nullopt) << bad;
    }
}

TEST(QueryValues, ReadsTimes) {
    EXPECT_EQ(parseDuration("90"), 90000);
    EXPECT_EQ(parseDuration("90s"), 90000);
    EXPECT_EQ(parseDuration("2m"), 120000);
    EXPECT_EQ(parseDuration("1.5m"), 90000);
    EXPECT_EQ(parseDuration("0.25"), 250);
    EXPECT_EQ(parseDuration("1m30s"), 90000);
    EXPECT_EQ(parseDuration("1m30.5"), 90500);
    EXPECT_EQ(parseDuration("1h"), 3600000);
    EXPECT_EQ(parseDuration("1h30m"), 5400000);
    EXPECT_EQ(parseDuration("1.5h0m1s"), 5401000);
    EXPECT_EQ(parseDuration("1h30m10"), 5410000);
    EXPECT_EQ(parseDuration("2h5s"), 7205000);
    for (const char* bad : {"", "m", "h", "1h30", "2min", "1s2m", "1m1h", "1m2m", "1s1", "1.m",
                            "1.2345", ".5", "1m30x", "-1", "9999999999s"}) {
        EXPECT_EQ(parseDuration(bad), std::nullopt) << bad;
    }
}

// The seconds are those of `date -u -d ... +%s` of GNU coreutils.
TEST(QueryValues, ReadsPeriods) {
    const auto expectPeriod = [](const char* text, std::int64_t begin, std::int64_t end) {
        const auto period = parsePeriod(text);
        ASSERT_TRUE(period) << text;
        EXPECT_EQ(period->begin, begin) << text;
        EXPECT_EQ(period->end, end) << text;
    };
    expectPeriod("1970", 0, 31536000);
    expectPeriod("2026", 1767225600, 1798761600);
    expectPeriod("2026-12", 1796083200, 1798761600);
    expectPeriod("2024-02", 1706745600, 1709251200);
    expectPeriod("2024-02-29", 1709164800, 1709251200);
    for (const char* bad : {"", "0", "2026-13", "2026-00", "2026-02-29", "2026-1-", "2026-01-32",
                            "2026/01", "20260", "2026-01-01-01", "yesterday"}) {
        EXPECT_FALSE(parsePeriod(bad)) << bad;
    }
}

}  // namespace
}  // namespace pantile::catalogue
