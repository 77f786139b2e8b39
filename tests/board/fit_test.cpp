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

/// A texture of one variant.
FitItem one(std::int64_t worth, std::int64_t bytes, std::int64_t milliseconds, bool must = false) {
    return {worth, {{bytes, milliseconds}}, must};
}

/// As FitItem with a name.
FitItem named(const std::string& name, FitItem item) {
    item.name = name;
    return item;
}

std::vector<std::size_t> itemsIn(const FitChoice& choice) {
    std::vector<std::size_t> items;
    for (const FitPick& pick : choice.chosen) items.push_back(pick.item);
    return items;
}

/// By item: -1 for out, else the variant.
using Way = std::vector<int>;

bool bundlesAreWhole(const std::vector<FitItem>& items, const Way& way) {
    for (std::size_t i = 0; i < items.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
            if (items[i].bundle != FitItem::kNoBundle && items[i].bundle == items[k].bundle &&
                (way[i] < 0) != (way[k] < 0)) {
                return false;
            }
        }
    }
    return true;
}

/// Whether each texture that is in without having to be is worth something, with its bundle.
bool nothingWorthless(const std::vector<FitItem>& items, const Way& way) {
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (way[i] < 0) continue;
        std::int64_t worth = items[i].worth;
        bool must = items[i].must;
        for (std::size_t k = 0; k < items.size(); ++k) {
            if (k == i || items[i].bundle == FitItem::kNoBundle) continue;
            if (items[k].bundle != items[i].bundle) continue;
            worth += items[k].worth;
            must = must || items[k].must;
        }
        if (worth == 0 && !must) return false;
    }
    return true;
}

std::optional<FitChoice> choiceOf(const std::vector<FitItem>& items, const FitLimits& limits,
                                  const Way& way) {
    FitChoice choice;
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (way[i] < 0) {
            if (items[i].must) return std::nullopt;
            continue;
        }
        const auto variant = static_cast<std::size_t>(way[i]);
        choice.chosen.push_back({i, variant});
        choice.worth += items[i].worth;
        choice.bytes += items[i].variants[variant].bytes;
        choice.milliseconds += items[i].variants[variant].milliseconds;
    }
    const bool allowed = choice.chosen.size() <= static_cast<std::size_t>(limits.slots) &&
                         choice.bytes <= limits.bytes &&
                         (!limits.milliseconds || choice.milliseconds <= *limits.milliseconds);
    if (!allowed || !bundlesAreWhole(items, way) || !nothingWorthless(items, way))
        return std::nullopt;
    return choice;
}

/// Whether `a` goes before `b` by the first item in which they differ: in before out, the quicker
/// variant before the slower.
bool goesFirst(const std::vector<FitItem>& items, const Way& a, const Way& b) {
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (a[i] == b[i]) continue;
        if (a[i] < 0 || b[i] < 0) return b[i] < 0;
        const FitVariant& ofA = items[i].variants[static_cast<std::size_t>(a[i])];
        const FitVariant& ofB = items[i].variants[static_cast<std::size_t>(b[i])];
        return std::tuple(ofA.milliseconds, ofA.bytes, a[i]) <
               std::tuple(ofB.milliseconds, ofB.bytes, b[i]);
    }
    return false;
}

/// Goes on to the next way, as a counter does; false after the last.
bool advance(const std::vector<FitItem>& items, Way& way) {
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (++way[i] < std::ssize(items[i].variants)) return true;
        way[i] = -1;
    }
    return false;
}

/// The best set by trying all, and the tie rule of fit.h written out once more.
std::optional<FitChoice> bruteForce(const std::vector<FitItem>& items, const FitLimits& limits) {
    std::optional<FitChoice> best;
    Way bestWay;
    Way way(items.size(), -1);
    const auto rank = [](const FitChoice& c) {
        return std::tuple(-c.worth, c.milliseconds, c.bytes);
    };
    do {
        const auto choice = choiceOf(items, limits, way);
        if (!choice) continue;
        if (!best || rank(*choice) < rank(*best) ||
            (rank(*choice) == rank(*best) && goesFirst(items, way, bestWay))) {
            best = choice;
            bestWay = way;
        }
    } while (advance(items, way));
    return best;
}

struct Ranges {
    int worth;
    int bytes;
    int milliseconds;
    int slots;
    int room;
    int items = 11;
    int variants = 1;
    int bundles = 0;
};

std::vector<FitItem> randomItems(tests::Random& random, const Ranges& ranges) {
    std::vector<FitItem> items(static_cast<std::size_t>(random.between(0, ranges.items)));
    for (FitItem& item : items) {
        item.worth = random.between(0, ranges.worth);
        item.variants.resize(static_cast<std::size_t>(random.between(1, ranges.variants)));
        for (FitVariant& variant : item.variants)
            variant = {random.between(1, ranges.bytes), random.between(1, ranges.milliseconds)};
        item.must = random.between(0, 14) == 0;
        if (random.between(0, 2) == 0) item.bundle = random.between(-1, ranges.bundles - 1);
    }
    return items;
}

void compareWithBruteForce(std::uint64_t seed, const Ranges& ranges) {
    tests::Random random(seed);
    const std::vector<FitItem> items = randomItems(random, ranges);
    FitLimits limits{random.between(0, ranges.slots), random.between(0, ranges.room), {}};
    if (random.between(0, 1) == 1) limits.milliseconds = random.between(0, ranges.milliseconds * 5);

    const auto wanted = bruteForce(items, limits);
    const auto choice = chooseBest(items, limits);
    if (!wanted) {
        EXPECT_THAT(choice, failsWith(ErrorKind::DoesNotFit, ") need ")) << "seed " << seed;
        return;
    }
    ASSERT_THAT(choice, isOk()) << "seed " << seed;
    EXPECT_EQ(choice->chosen, wanted->chosen) << "seed " << seed;
    EXPECT_EQ(choice->worth, wanted->worth) << "seed " << seed;
    EXPECT_EQ(choice->bytes, wanted->bytes) << "seed " << seed;
    EXPECT_EQ(choice->milliseconds, wanted->milliseconds) << "seed " << seed;
    EXPECT_TRUE(choice->provenBest) << "seed " << seed;
    EXPECT_EQ(choice->worthBound, choice->worth) << "seed " << seed;
    EXPECT_EQ(choice->chosen.size() + choice->leftOut.size(), items.size());
}

TEST(Fit, AgreesWithBruteForceOnVariedItems) {
    for (std::uint64_t seed = 1; seed <= 500; ++seed) {
        compareWithBruteForce(seed, {100, 400, 300, 9, 1600});
    }
}

TEST(Fit, AgreesWithBruteForceWhereAlmostEverythingTies) {
    for (std::uint64_t seed = 1; seed <= 800; ++seed) {
        compareWithBruteForce(seed, {2, 3, 3, 6, 14});
    }
}

TEST(Fit, AgreesWithBruteForceOnStarsWithVariedSizes) {
    for (std::uint64_t seed = 1; seed <= 500; ++seed) {
        compareWithBruteForce(seed, {5, 4000, 30000, 7, 14000});
    }
}

TEST(Fit, AgreesWithBruteForceOnVariants) {
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        compareWithBruteForce(seed, {5, 400, 300, 5, 900, 6, 3});
    }
}

TEST(Fit, AgreesWithBruteForceOnVariantsWhereAlmostEverythingTies) {
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        compareWithBruteForce(seed, {2, 4, 4, 5, 14, 6, 3});
    }
}

TEST(Fit, AgreesWithBruteForceOnBundles) {
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        compareWithBruteForce(seed, {5, 400, 300, 6, 1200, 7, 2, 2});
        compareWithBruteForce(seed, {2, 3, 3, 6, 10, 7, 2, 2});
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
            items.push_back(one(profits[i], weights[i], 1));
            if (row[5][i] == '1') wanted.push_back(i);
        }
        const auto choice = chooseBest(items, {255, std::stoll(row[2]), {}});
        ASSERT_THAT(choice, isOk()) << row[0];
        EXPECT_TRUE(choice->provenBest) << row[0];
        EXPECT_EQ(choice->worth, std::stoll(row[7])) << row[0];
        EXPECT_EQ(choice->bytes, std::stoll(row[6])) << row[0];
        EXPECT_EQ(itemsIn(*choice), wanted) << row[0];
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
        instance.items.push_back(one(std::stoll(row[6]), std::stoll(row[7]), std::stoll(row[8])));
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

/// Shapes as the planner's: a compact variant saves a third of the bytes and takes longer, plain
/// runs save half and take twice the time.
std::vector<FitItem> manyItems(std::uint64_t seed, const Large& large, int variants = 1) {
    tests::Random random(seed);
    std::vector<FitItem> items(200);
    for (FitItem& item : items) {
        const std::int64_t bytes = random.between(500, 6000);
        const std::int64_t milliseconds = bytes * 12 + random.between(0, 20000);
        item.worth = random.between(1, large.worth);
        item.variants = {{bytes, milliseconds}};
        if (variants > 1)
            item.variants.push_back({bytes * random.between(55, 80) / 100,
                                     milliseconds * random.between(105, 140) / 100});
        if (variants > 2)
            item.variants.push_back({bytes * random.between(35, 55) / 100,
                                     milliseconds * random.between(150, 250) / 100});
    }
    return items;
}

const std::vector<Large> kLargeCases = {
    {5, 64, 1'000'000, {}},    {5, 64, 120'000, {}},           {5, 5, 22'528, {}},
    {1000, 64, 120'000, {}},   {1000, 64, 120'000, 1'400'000}, {5, 64, 120'000, 1'400'000},
    {1000, 5, 9'000, 120'000},
};

TEST(Fit, ProvesTheBestOfTwoHundredTextures) {
    for (std::size_t c = 0; c < kLargeCases.size(); ++c) {
        const Large& large = kLargeCases[c];
        for (const int variants : {1, 3}) {
            const std::vector<FitItem> items = manyItems(1, large, variants);
            const auto choice = chooseBest(items, {large.slots, large.bytes, large.milliseconds});
            ASSERT_THAT(choice, isOk());
            EXPECT_TRUE(choice->provenBest) << "case " << c << ", " << variants << " variants";
        }
    }
}

TEST(Fit, SaysSoWhenItCouldNotProveTheBest) {
    // Even sizes never fill an odd room, and no bound sees that: only trying all sets would prove
    // it.
    tests::Random random(7);
    std::vector<FitItem> items(150);
    for (FitItem& item : items) {
        const std::int64_t bytes = 2 * random.between(500, 60000);
        item = one(bytes, bytes, random.between(1000, 60000));
    }
    const FitLimits limits{60, 1'000'001, {}};
    const auto choice = chooseBest(items, limits);
    ASSERT_THAT(choice, isOk());
    EXPECT_LE(choice->bytes, limits.bytes);
    EXPECT_LE(choice->chosen.size(), 60U);
    EXPECT_GE(choice->worth, 990'000);
    EXPECT_FALSE(choice->provenBest);
    EXPECT_GE(choice->worthBound, choice->worth);
    EXPECT_LE(choice->worthBound, 1'000'001);
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
    const std::vector<FitItem> items = {one(9, 100, 10), one(0, 100, 10, true), one(8, 100, 10)};
    const auto choice = chooseBest(items, {2, 1000, {}});
    ASSERT_THAT(choice, isOk());
    EXPECT_EQ(itemsIn(*choice), (std::vector<std::size_t>{0, 1}));
    EXPECT_EQ(choice->worth, 9);
    ASSERT_EQ(choice->leftOut.size(), 1U);
    EXPECT_EQ(choice->leftOut[0].item, 2U);
    EXPECT_EQ(choice->leftOut[0].reason, "worth less than what fills the slots");
}

TEST(Fit, NamesTheMustsThatDoNotFit) {
    const std::vector<FitItem> items = {named("17 Kelp bed", one(1, 600, 10'000, true)),
                                        named("18 Buoy", one(1, 5, 10)),
                                        named("21 Shingle", one(1, 600, 10'000, true))};
    EXPECT_THAT(chooseBest(items, {5, 1000, {}}),
                failsWith(ErrorKind::DoesNotFit,
                          "(17 Kelp bed, 21 Shingle) need 1200 bytes, and there is room for 1000"));
    EXPECT_THAT(chooseBest(items, {1, 9000, {}}),
                failsWith(ErrorKind::DoesNotFit, "need 2 slots, and there is 1"));
    EXPECT_THAT(chooseBest(items, {5, 9000, 19'999}),
                failsWith(ErrorKind::DoesNotFit, "need 20 s of drawing, and 19 s are allowed"));
}

TEST(Fit, FindsVariantsInWhichTheMustsFit) {
    // Both in few bytes take too long, both quick are too large; the one way round is the only one.
    const FitItem rope{1, {{600, 10}, {300, 60}}, true};
    const FitItem slate{1, {{500, 10}, {400, 30}}, true};
    const auto choice = chooseBest(std::vector<FitItem>{rope, slate}, {2, 1000, 45});
    ASSERT_THAT(choice, isOk());
    EXPECT_EQ(choice->chosen, (std::vector<FitPick>{{0, 0}, {1, 1}}));
    EXPECT_THAT(chooseBest(std::vector<FitItem>{rope, slate}, {2, 1000, 39}),
                failsWith(ErrorKind::DoesNotFit, "need 1 s of drawing"));
}

TEST(Fit, TakesACompactVariantToHoldMore) {
    const std::vector<FitItem> items = {{3, {{600, 10}, {400, 15}}}, {3, {{700, 10}, {500, 12}}}};
    const auto choice = chooseBest(items, {5, 1100, {}});
    ASSERT_THAT(choice, isOk());
    EXPECT_EQ(choice->chosen, (std::vector<FitPick>{{0, 0}, {1, 1}}));
    const auto quick = chooseBest(items, {5, 1300, {}});
    ASSERT_THAT(quick, isOk());
    EXPECT_EQ(quick->chosen, (std::vector<FitPick>{{0, 0}, {1, 0}}));
}

TEST(Fit, KeepsABundleTogether) {
    std::vector<FitItem> items = {one(5, 400, 10), one(1, 400, 10), one(4, 400, 10)};
    items[0].bundle = 7;
    items[1].bundle = 7;
    const auto both = chooseBest(items, {2, 1000, {}});
    ASSERT_THAT(both, isOk());
    EXPECT_EQ(itemsIn(*both), (std::vector<std::size_t>{0, 1}));
    const auto neither = chooseBest(items, {1, 1000, {}});
    ASSERT_THAT(neither, isOk());
    EXPECT_EQ(itemsIn(*neither), (std::vector<std::size_t>{2}));
    EXPECT_EQ(neither->leftOut[0].reason,
              "kept together with 1 other, alone more than the slots: 2 of 1");
}

TEST(Fit, RefusesFiguresOutOfRange) {
    const std::vector<FitItem> negative = {one(1, -1, 1)};
    const std::vector<FitItem> huge = {one(kMaxFitFigure + 1, 1, 1)};
    const std::vector<FitItem> fine = {one(1, 1, 1)};
    const std::vector<FitItem> noVariant = {{1, {}}};
    const std::vector<FitItem> many = {{1, std::vector<FitVariant>(kMaxFitVariants + 1)}};
    EXPECT_THAT(chooseBest(negative, {5, 100, {}}),
                failsWith(ErrorKind::InvalidInput, "size in bytes"));
    EXPECT_THAT(chooseBest(huge, {5, 100, {}}), failsWith(ErrorKind::InvalidInput, "worth"));
    EXPECT_THAT(chooseBest(noVariant, {5, 100, {}}),
                failsWith(ErrorKind::InvalidInput, "variants"));
    EXPECT_THAT(chooseBest(many, {5, 100, {}}), failsWith(ErrorKind::InvalidInput, "variants"));
    EXPECT_THAT(chooseBest(fine, {-1, 100, {}}), failsWith(ErrorKind::InvalidInput, "slots"));
    EXPECT_THAT(chooseBest(fine, {5, -1, {}}), failsWith(ErrorKind::InvalidInput, "bytes"));
    EXPECT_THAT(chooseBest(fine, {5, 1, -1}), failsWith(ErrorKind::InvalidInput, "time"));
    EXPECT_THAT(chooseBest(std::vector<FitItem>(kMaxFitItems + 1), {5, 1, {}}),
                failsWith(ErrorKind::TooLarge, "65537"));
}

TEST(Fit, DoesNotOverflowAtTheLargestFigures) {
    std::vector<FitItem> items(300, one(kMaxFitFigure, kMaxFitFigure, kMaxFitFigure));
    items[17].variants[0].milliseconds = kMaxFitFigure - 1;
    const auto choice = chooseBest(items, {255, kMaxFitFigure * 100, kMaxFitFigure * 40});
    ASSERT_THAT(choice, isOk());
    EXPECT_TRUE(choice->provenBest);
    EXPECT_EQ(choice->worth, kMaxFitFigure * 40);
    EXPECT_EQ(choice->milliseconds, kMaxFitFigure * 40 - 1);
    const std::vector<std::size_t> chosen = itemsIn(*choice);
    EXPECT_TRUE(std::binary_search(chosen.begin(), chosen.end(), 17U));
}

TEST(Fit, WeighsTensOfThousandsForAFewSlots) {
    tests::Random random(11);
    std::vector<FitItem> items(30000);
    for (FitItem& item : items) {
        const int worth = random.between(1, 5);
        const int bytes = random.between(400, 6000);
        item = one(worth, bytes, random.between(4000, 90000));
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
