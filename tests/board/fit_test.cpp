#include "board/fit.h"

#include <algorithm>
#include <map>
#include <optional>
#include <sstream>
#include <stop_token>
#include <string>
#include <tuple>
#include <vector>

#include <gtest/gtest.h>

#include "support/csv.h"
#include "support/matchers.h"
#include "support/random.h"

namespace pantile::board {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

const std::string kReferences = std::string(PANTILE_TEST_DATA) + "/references/";

/// The best set by trying all, and the tie rule of fit.h written out once more.
std::optional<FitChoice> bruteForce(const std::vector<FitItem>& items, const FitLimits& limits) {
    std::optional<FitChoice> best;
    for (unsigned mask = 0; mask < (1U << items.size()); ++mask) {
        FitChoice choice;
        bool allowed = true;
        for (std::size_t i = 0; i < items.size(); ++i) {
            if ((mask >> i & 1U) == 0) {
                allowed = allowed && !items[i].must;
                continue;
            }
            allowed = allowed && (items[i].must || items[i].worth > 0);
            choice.chosen.push_back(i);
            choice.worth += items[i].worth;
            choice.bytes += items[i].bytes;
            choice.milliseconds += items[i].milliseconds;
        }
        if (!allowed || choice.chosen.size() > static_cast<std::size_t>(limits.slots) ||
            choice.bytes > limits.bytes ||
            (limits.milliseconds && choice.milliseconds > *limits.milliseconds)) {
            continue;
        }
        const auto rank = [](const FitChoice& c) {
            return std::tuple(-c.worth, c.milliseconds, c.bytes);
        };
        const bool better = !best || rank(choice) < rank(*best) ||
                            (rank(choice) == rank(*best) && choice.chosen < best->chosen);
        if (better) best = choice;
    }
    return best;
}

struct Ranges {
    int worth;
    int bytes;
    int milliseconds;
    int slots;
    int room;
};

void compareWithBruteForce(std::uint64_t seed, const Ranges& ranges) {
    tests::Random random(seed);
    std::vector<FitItem> items(static_cast<std::size_t>(random.between(0, 11)));
    for (FitItem& item : items) {
        item = {random.between(0, ranges.worth), random.between(1, ranges.bytes),
                random.between(1, ranges.milliseconds), random.between(0, 14) == 0};
    }
    FitLimits limits{random.between(0, ranges.slots), random.between(0, ranges.room), {}};
    if (random.between(0, 1) == 1) limits.milliseconds = random.between(0, ranges.milliseconds * 5);

    const auto wanted = bruteForce(items, limits);
    const auto choice = chooseBest(items, limits);
    if (!wanted) {
        EXPECT_THAT(choice, failsWith(ErrorKind::DoesNotFit, "must be in")) << "seed " << seed;
        return;
    }
    ASSERT_THAT(choice, isOk()) << "seed " << seed;
    EXPECT_EQ(choice->chosen, wanted->chosen) << "seed " << seed;
    EXPECT_EQ(choice->worth, wanted->worth);
    EXPECT_EQ(choice->bytes, wanted->bytes);
    EXPECT_EQ(choice->milliseconds, wanted->milliseconds);
    EXPECT_TRUE(choice->provenBest);
    EXPECT_EQ(choice->chosen.size() + choice->leftOut.size(), items.size());
}

TEST(Fit, AgreesWithBruteForceOnVariedItems) {
    for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
        compareWithBruteForce(seed, {100, 400, 300, 9, 1600});
    }
}

TEST(Fit, AgreesWithBruteForceWhereAlmostEverythingTies) {
    for (std::uint64_t seed = 1; seed <= 3000; ++seed) {
        compareWithBruteForce(seed, {2, 3, 3, 6, 14});
    }
}

TEST(Fit, AgreesWithBruteForceOnStarsWithVariedSizes) {
    for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
        compareWithBruteForce(seed, {5, 4000, 30000, 7, 14000});
    }
}

std::vector<std::int64_t> numbers(const std::string& text) {
    std::vector<std::int64_t> values;
    std::istringstream stream(text);
    for (std::int64_t value = 0; stream >> value;) values.push_back(value);
    return values;
}

// J. Burkardt, dataset collection KNAPSACK_01 (Florida State University), P01-P08; of these P03 and
// P04 are examples 2.3 and 2.7 of S. Martello, P. Toth, 'Knapsack Problems', Wiley 1990. Each has
// one optimal selection. A weight stands for bytes, and the slots never bind.
TEST(Fit, ReachesThePublishedOptimaOfOneConstraint) {
    for (const tests::CsvRow& row : tests::readCsv(kReferences + "knapsack_01.csv")) {
        ASSERT_GE(row.size(), 8U);
        const auto weights = numbers(row[3]);
        const auto profits = numbers(row[4]);
        std::vector<FitItem> items;
        std::vector<std::size_t> wanted;
        for (std::size_t i = 0; i < weights.size(); ++i) {
            items.push_back({profits[i], weights[i], 1});
            if (row[5][i] == '1') wanted.push_back(i);
        }
        const auto choice = chooseBest(items, {255, std::stoll(row[2]), {}});
        ASSERT_THAT(choice, isOk()) << row[0];
        EXPECT_TRUE(choice->provenBest) << row[0];
        EXPECT_EQ(choice->worth, std::stoll(row[7])) << row[0];
        EXPECT_EQ(choice->bytes, std::stoll(row[6])) << row[0];
        EXPECT_EQ(choice->chosen, wanted) << row[0];
    }
}

// J. E. Beasley, OR-Library, file mknap2: WEING1-8 of H. M. Weingartner, D. N. Ness, Operations
// Research 15, 1967; PB4 of A. Freville, G. Plateau, Investigation Operativa 1, 1990. The first
// weight stands for bytes, the second for milliseconds.
TEST(Fit, ReachesThePublishedOptimaOfTwoConstraints) {
    struct Instance {
        std::vector<FitItem> items;
        std::int64_t optimum = 0;
        FitLimits limits;
    };

    std::map<std::string, Instance> instances;
    for (const tests::CsvRow& row : tests::readCsv(kReferences + "knapsack_two_constraints.csv")) {
        Instance& instance = instances[row[0]];
        instance.optimum = std::stoll(row[2]);
        instance.limits = {255, std::stoll(row[3]), std::stoll(row[4])};
        instance.items.push_back({std::stoll(row[6]), std::stoll(row[7]), std::stoll(row[8])});
    }
    EXPECT_EQ(instances.size(), 9U);
    for (const auto& [name, instance] : instances) {
        const auto choice = chooseBest(instance.items, instance.limits);
        ASSERT_THAT(choice, isOk()) << name;
        EXPECT_TRUE(choice->provenBest) << name;
        EXPECT_EQ(choice->worth, instance.optimum) << name;
        EXPECT_LE(choice->bytes, instance.limits.bytes) << name;
        EXPECT_LE(choice->milliseconds, *instance.limits.milliseconds) << name;
    }
}

struct Large {
    int worth;
    int slots;
    std::int64_t bytes;
    std::optional<std::int64_t> milliseconds;
};

std::vector<FitItem> manyItems(std::uint64_t seed, const Large& large) {
    tests::Random random(seed);
    std::vector<FitItem> items(200);
    for (FitItem& item : items) {
        item.bytes = random.between(500, 6000);
        item.milliseconds = item.bytes * 12 + random.between(0, 20000);
        item.worth = random.between(1, large.worth);
    }
    return items;
}

TEST(Fit, ProvesTheBestOfTwoHundredTextures) {
    const std::vector<Large> cases = {
        {5, 64, 1'000'000, {}},    {5, 64, 120'000, {}},           {5, 5, 22'528, {}},
        {1000, 64, 120'000, {}},   {1000, 64, 120'000, 1'400'000}, {5, 64, 120'000, 1'400'000},
        {1000, 5, 9'000, 120'000},
    };
    for (std::size_t c = 0; c < cases.size(); ++c) {
        for (std::uint64_t seed = 1; seed <= 3; ++seed) {
            const std::vector<FitItem> items = manyItems(seed, cases[c]);
            const FitLimits limits{cases[c].slots, cases[c].bytes, cases[c].milliseconds};
            const auto choice = chooseBest(items, limits);
            ASSERT_THAT(choice, isOk());
            EXPECT_TRUE(choice->provenBest) << "case " << c << ", seed " << seed;
        }
    }
}

TEST(Fit, SaysSoWhenItCouldNotProveTheBest) {
    // Even sizes never fill an odd room, and no bound sees that: only trying all sets would prove
    // it.
    tests::Random random(7);
    std::vector<FitItem> items(150);
    for (FitItem& item : items) {
        item.bytes = 2 * random.between(500, 60000);
        item.worth = item.bytes;
        item.milliseconds = random.between(1000, 60000);
    }
    const FitLimits limits{60, 1'000'001, {}};
    const auto choice = chooseBest(items, limits);
    ASSERT_THAT(choice, isOk());
    EXPECT_LE(choice->bytes, limits.bytes);
    EXPECT_LE(choice->chosen.size(), 60U);
    EXPECT_GE(choice->worth, 990'000);
    EXPECT_FALSE(choice->provenBest);
}

TEST(Fit, GivesTheSameAnswerAgain) {
    const Large large{1000, 64, 120'000, {}};
    const std::vector<FitItem> items = manyItems(2, large);
    const auto first = chooseBest(items, {large.slots, large.bytes, {}});
    const auto second = chooseBest(items, {large.slots, large.bytes, {}});
    ASSERT_THAT(first, isOk());
    ASSERT_THAT(second, isOk());
    EXPECT_EQ(first->chosen, second->chosen);
}

TEST(Fit, TakesTheMustsWhateverTheyAreWorth) {
    const std::vector<FitItem> items = {{9, 100, 10}, {0, 100, 10, true}, {8, 100, 10}};
    const auto choice = chooseBest(items, {2, 1000, {}});
    ASSERT_THAT(choice, isOk());
    EXPECT_EQ(choice->chosen, (std::vector<std::size_t>{0, 1}));
    EXPECT_EQ(choice->worth, 9);
    ASSERT_EQ(choice->leftOut.size(), 1U);
    EXPECT_EQ(choice->leftOut[0], (LeftOut{2, "worth less than what fills the slots"}));
}

TEST(Fit, NamesTheMustsThatDoNotFit) {
    const std::vector<FitItem> items = {{1, 600, 10, true}, {1, 5, 10}, {1, 600, 10, true}};
    EXPECT_THAT(chooseBest(items, {5, 1000, {}}),
                failsWith(ErrorKind::DoesNotFit,
                          "(number 1, 3 of the selection) need 1200 bytes, "
                          "and the board has 1000"));
    EXPECT_THAT(chooseBest(items, {1, 9000, {}}),
                failsWith(ErrorKind::DoesNotFit, "need 2 slots, and there are 1"));
    EXPECT_THAT(chooseBest(items, {5, 9000, 19}),
                failsWith(ErrorKind::DoesNotFit, "need 20 ms to draw, and 19 ms are allowed"));
}

TEST(Fit, SaysWhyEachTextureIsLeftOut) {
    const std::vector<FitItem> items = {
        {9, 700, 4000}, {5, 1200, 10}, {5, 100, 99000}, {3, 400, 10}, {0, 1, 1}, {2, 100, 7000},
    };
    const auto choice = chooseBest(items, {5, 1000, 9000});
    ASSERT_THAT(choice, isOk());
    EXPECT_EQ(choice->chosen, (std::vector<std::size_t>{0}));
    const std::vector<LeftOut> wanted = {
        {1,
         "alone larger than the board's bytes: it needs 1200 bytes, and the board has 1000 bytes"},
        {2, "alone takes longer than the time allowed: 99 s of 9 s"},
        {3, "needs 100 bytes more than the load has left"},
        {4, "worth nothing, so it would only take room"},
        {5, "needs 2 s more than the time has left"},
    };
    EXPECT_EQ(choice->leftOut, wanted);
}

TEST(Fit, SaysWhyATextureDoesNotReplaceOneWorthLess) {
    const std::vector<FitItem> items = {{9, 500, 10}, {4, 300, 10}, {5, 900, 10}, {4, 300, 11}};
    const auto choice = chooseBest(items, {2, 1000, {}});
    ASSERT_THAT(choice, isOk());
    EXPECT_EQ(choice->chosen, (std::vector<std::size_t>{0, 1}));
    const std::vector<LeftOut> wanted = {
        {2, "needs 400 bytes more than the load has left, even in place of a texture worth less"},
        {3, "worth no more than what fills the slots"},
    };
    EXPECT_EQ(choice->leftOut, wanted);
}

TEST(Fit, RefusesFiguresOutOfRange) {
    const std::vector<FitItem> negative = {{1, -1, 1}};
    const std::vector<FitItem> huge = {{kMaxFitFigure + 1, 1, 1}};
    const std::vector<FitItem> fine = {{1, 1, 1}};
    EXPECT_THAT(chooseBest(negative, {5, 100, {}}),
                failsWith(ErrorKind::InvalidInput, "size in bytes"));
    EXPECT_THAT(chooseBest(huge, {5, 100, {}}), failsWith(ErrorKind::InvalidInput, "worth"));
    EXPECT_THAT(chooseBest(fine, {-1, 100, {}}), failsWith(ErrorKind::InvalidInput, "slots"));
    EXPECT_THAT(chooseBest(fine, {5, -1, {}}), failsWith(ErrorKind::InvalidInput, "bytes"));
    EXPECT_THAT(chooseBest(fine, {5, 1, -1}), failsWith(ErrorKind::InvalidInput, "time"));
    EXPECT_THAT(chooseBest(std::vector<FitItem>(kMaxFitItems + 1), {5, 1, {}}),
                failsWith(ErrorKind::TooLarge, "65537"));
}

TEST(Fit, DoesNotOverflowAtTheLargestFigures) {
    std::vector<FitItem> items(300, {kMaxFitFigure, kMaxFitFigure, kMaxFitFigure});
    items[17].milliseconds = kMaxFitFigure - 1;
    const auto choice = chooseBest(items, {255, kMaxFitFigure * 100, kMaxFitFigure * 40});
    ASSERT_THAT(choice, isOk());
    EXPECT_TRUE(choice->provenBest);
    EXPECT_EQ(choice->worth, kMaxFitFigure * 40);
    EXPECT_EQ(choice->milliseconds, kMaxFitFigure * 40 - 1);
    EXPECT_TRUE(std::binary_search(choice->chosen.begin(), choice->chosen.end(), 17U));
}

TEST(Fit, WeighsTensOfThousandsForAFewSlots) {
    tests::Random random(11);
    std::vector<FitItem> items(30000);
    for (FitItem& item : items) {
        item = {random.between(1, 5), random.between(400, 6000), random.between(4000, 90000)};
    }
    const auto choice = chooseBest(items, {5, 22528 - 68, {}});
    ASSERT_THAT(choice, isOk());
    EXPECT_TRUE(choice->provenBest);
    EXPECT_EQ(choice->worth, 25);
}

TEST(Fit, StopsWhenAsked) {
    std::stop_source source;
    source.request_stop();
    const Large large{1, 64, 120'000, {}};
    const auto choice =
        chooseBest(manyItems(3, large), {64, 120'000, {}}, {source.get_token(), {}});
    EXPECT_THAT(choice, failsWith(ErrorKind::Cancelled, "stopped"));
}

TEST(Fit, GivesAnEmptyChoiceForNothing) {
    const auto choice = chooseBest({}, {5, 1000, {}});
    ASSERT_THAT(choice, isOk());
    EXPECT_TRUE(choice->chosen.empty());
    EXPECT_TRUE(choice->provenBest);
}

}  // namespace
}  // namespace pantile::board
