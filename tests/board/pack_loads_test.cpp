#include "board/pack_loads.h"

#include <algorithm>
#include <numeric>
#include <set>
#include <sstream>
#include <stop_token>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "board/load_bins.h"
#include "board/load_groups.h"
#include "support/csv.h"
#include "support/matchers.h"
#include "support/random.h"

namespace pantile::board {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

std::vector<PackItem> itemsOf(const std::vector<std::int64_t>& sizes) {
    std::vector<PackItem> items;
    for (const std::int64_t size : sizes) items.push_back({size});
    return items;
}

/// In up to two groups; sometimes of two slots.
PackItem randomItem(tests::Random& random, int mostBytes, int mostGroup) {
    PackItem item;
    item.bytes = random.between(0, mostBytes);
    item.milliseconds = random.between(0, mostBytes);
    item.slots = random.between(0, 5) == 0 ? 2 : 1;
    for (const int group : {random.between(-1, mostGroup), random.between(-3, mostGroup)}) {
        if (group >= 0 && (item.groups.empty() || item.groups.front() != group))
            item.groups.push_back(group);
    }
    return item;
}

/// Whether each item lies in one load, and no load holds too much.
bool keepsLimits(const std::vector<PackItem>& items, const PackLimits& limits, const Loads& loads) {
    std::vector<int> seen(items.size(), 0);
    for (const auto& load : loads) {
        PackRoom sum;
        for (const std::size_t item : load) {
            sum += PackRoom::of(items[item]);
            ++seen[item];
        }
        if (load.empty() || sum.bytes > limits.bytes || sum.slots > limits.slots ||
            sum.milliseconds > limits.milliseconds.value_or(sum.milliseconds))
            return false;
    }
    return std::all_of(seen.begin(), seen.end(), [](int times) { return times == 1; });
}

/// Fewest loads by trying every way to give each item a load, no load before the one below it.
std::size_t byTryingAll(const std::vector<PackItem>& items, const PackLimits& limits,
                        std::size_t next, std::vector<PackRoom>& open) {
    if (next == items.size()) return open.size();
    std::size_t best = items.size() + 1;
    const PackRoom size = PackRoom::of(items[next]);
    for (std::size_t load = 0; load <= open.size(); ++load) {
        const bool isNew = load == open.size();
        if (isNew) open.push_back(PackRoom::of(limits));
        if (open[load].holds(size)) {
            open[load] -= size;
            best = std::min(best, byTryingAll(items, limits, next + 1, open));
            open[load] += size;
        }
        if (isNew) {
            open.pop_back();
            break;
        }
    }
    return best;
}

TEST(PackLoads, NeedsNoLoadForNothing) {
    const auto packing = packLoads({}, {5, 100});
    ASSERT_THAT(packing, isOk());
    EXPECT_TRUE(packing->loads.empty());
    EXPECT_TRUE(packing->provenFewest());
}

TEST(PackLoads, IsBoundBySlotsToo) {
    const auto packing = packLoads(itemsOf({1, 1, 1, 1, 1, 1, 1}), {3, 100});
    ASSERT_THAT(packing, isOk());
    EXPECT_EQ(packing->loads.size(), 3U);
    EXPECT_TRUE(packing->provenFewest());
}

TEST(PackLoads, CountsTheSlotsOfEachItemInItsBound) {
    std::vector<PackItem> items = itemsOf({1, 1, 1, 1});
    for (PackItem& item : items) item.slots = 2;
    EXPECT_EQ(fewestLoads(items, {3, 100}), 3U) << "8 slots in loads of 3";
}

// J. Burkardt, dataset collection BIN_PACKING; R. L. Graham's anomaly list; D. S. Johnson 1973. The
// table says where each row comes from, and that its optimum was verified by computing.
TEST(PackLoads, ReachesThePublishedOptima) {
    const auto rows =
        tests::readCsv(std::string(PANTILE_TEST_DATA) + "/references/bin_packing.csv");
    EXPECT_EQ(rows.size(), 11U);
    for (const tests::CsvRow& row : rows) {
        std::istringstream numbers(row[3]);
        std::vector<std::int64_t> sizes;
        for (std::int64_t size = 0; numbers >> size;) sizes.push_back(size);
        const std::vector<PackItem> items = itemsOf(sizes);
        ASSERT_EQ(items.size(), std::stoul(row[1])) << row[0];
        const PackLimits limits{255, std::stoll(row[2])};

        EXPECT_EQ(firstFitDecreasing(items, limits).size(), std::stoul(row[6])) << row[0];
        EXPECT_GE(fewestLoads(items, limits), std::stoul(row[4])) << row[0];
        const auto packing = packLoads(items, limits);
        ASSERT_THAT(packing, isOk()) << row[0];
        EXPECT_EQ(packing->loads.size(), std::stoul(row[7])) << row[0];
        EXPECT_TRUE(packing->provenFewest()) << row[0];
        EXPECT_TRUE(keepsLimits(items, limits, packing->loads)) << row[0];
    }
}

TEST(PackLoads, FindsTheFewestOfAllWays) {
    tests::Random random(20261126);
    int harderThanFirstFit = 0;
    for (int round = 0; round < 400; ++round) {
        std::vector<PackItem> items(static_cast<std::size_t>(random.between(1, 9)));
        for (PackItem& item : items) item = randomItem(random, 60, 2);
        PackLimits limits{random.between(2, 5), random.between(60, 110)};
        if (random.between(0, 1) == 1) limits.milliseconds = random.between(60, 110);
        std::vector<PackRoom> open;
        const std::size_t fewest = byTryingAll(items, limits, 0, open);

        const auto packing = packLoads(items, limits);
        ASSERT_THAT(packing, isOk());
        EXPECT_EQ(packing->loads.size(), fewest) << round;
        EXPECT_EQ(packing->fewest, fewest) << round;
        EXPECT_LE(fewestLoads(items, limits), fewest) << round;
        EXPECT_TRUE(keepsLimits(items, limits, packing->loads)) << round;
        harderThanFirstFit += firstFitDecreasing(items, limits).size() > fewest ? 1 : 0;
    }
    EXPECT_GT(harderThanFirstFit, 0);
}

// Shapes of the usual work: slots, not bytes, are what a load runs out of, or nearly.
TEST(PackLoads, ProvesAHundredTexturesOfABoard) {
    tests::Random random(7);
    std::vector<PackItem> items(100);
    for (PackItem& item : items) item = {random.between(200, 5200), {random.between(0, 9)}};
    const PackLimits limits{5, 22460};
    const auto packing = packLoads(items, limits);
    ASSERT_THAT(packing, isOk());
    EXPECT_TRUE(packing->provenFewest());
    EXPECT_TRUE(keepsLimits(items, limits, packing->loads));
}

TEST(PackLoads, KeepsGroupsTogetherWithoutAFurtherLoad) {
    std::vector<PackItem> items;
    for (int i = 0; i < 20; ++i) items.push_back({100, {i % 4}});
    const auto packing = packLoads(items, {5, 1000});
    ASSERT_THAT(packing, isOk());
    EXPECT_EQ(packing->loads.size(), 4U);
    EXPECT_EQ(groupParts(items, packing->loads), 4U);
}

TEST(PackLoads, PutsLoadsThatShareAGroupNextToEachOther) {
    // Seven of group 0 need two loads; the loads of group 1 and 2 do not come between.
    std::vector<PackItem> items;
    for (const int group : {0, 1, 2, 0, 1, 2, 0, 1, 2, 0, 1, 2, 0, 1, 2, 0, 0})
        items.push_back({10, {group}});
    const auto packing = packLoads(items, {5, 1000});
    ASSERT_THAT(packing, isOk());
    ASSERT_EQ(packing->loads.size(), 4U);
    std::vector<std::size_t> with;
    for (std::size_t load = 0; load < packing->loads.size(); ++load) {
        const auto& held = packing->loads[load];
        if (std::any_of(held.begin(), held.end(),
                        [&](auto i) { return items[i].groups.front() == 0; }))
            with.push_back(load);
    }
    EXPECT_EQ(with, (std::vector<std::size_t>{0, 1}));
}

TEST(PackLoads, GathersGroupsNoWorseThanItWasGiven) {
    tests::Random random(99);
    for (int round = 0; round < 100; ++round) {
        std::vector<PackItem> items(static_cast<std::size_t>(random.between(1, 30)));
        for (PackItem& item : items) item = randomItem(random, 50, 4);
        const PackLimits limits{random.between(2, 6), 100, 120};
        const Loads given = firstFitDecreasing(items, limits);
        const auto gathered = gatherGroups(items, limits, given, {});
        ASSERT_THAT(gathered, isOk());
        EXPECT_TRUE(keepsLimits(items, limits, *gathered)) << round;
        EXPECT_LE(gathered->size(), given.size()) << round;
        if (gathered->size() == given.size()) {
            EXPECT_LE(groupParts(items, *gathered), groupParts(items, given)) << round;
        }
    }
}

TEST(PackLoads, BeginsWithTheLoadWorthMost) {
    // Group 1 fills a load and begins another; the one worth most of the rest comes last, as it
    // shares nothing.
    std::vector<PackItem> items;
    for (const auto& [group, worth] :
         std::vector<std::pair<int, int>>{{0, 1}, {0, 1}, {1, 5}, {1, 5}, {1, 1}, {2, 3}, {2, 3}})
        items.push_back({10, {group}, 1, 0, worth});
    const auto packing = packLoads(items, {2, 1000});
    ASSERT_THAT(packing, isOk());
    EXPECT_EQ(packing->loads, (Loads{{2, 3}, {4}, {5, 6}, {0, 1}}));
}

TEST(PackLoads, KeepsWhatIsOneItemInOneLoad) {
    std::vector<PackItem> items = {{30, {}, 3}, {20, {}, 2}, {10}, {10}, {10}};
    const auto packing = packLoads(items, {4, 100});
    ASSERT_THAT(packing, isOk());
    EXPECT_EQ(packing->loads.size(), 2U);
    EXPECT_TRUE(packing->provenFewest());
    EXPECT_TRUE(keepsLimits(items, {4, 100}, packing->loads));
}

TEST(PackLoads, SaysWhenItCouldNotProve) {
    // Items of a third each, nearly: no bound is tight, and there are too many ways to try them
    // all.
    tests::Random random(3);
    std::vector<PackItem> items(600);
    for (PackItem& item : items) item.bytes = random.between(25'000'001, 49'999'999);
    const auto packing = packLoads(items, {255, 100'000'000});
    ASSERT_THAT(packing, isOk());
    EXPECT_TRUE(keepsLimits(items, {255, 100'000'000}, packing->loads));
    EXPECT_LE(packing->fewest, packing->loads.size());
    EXPECT_FALSE(packing->provenFewest());
}

TEST(PackLoads, RefusesWhatNoLoadHolds) {
    EXPECT_THAT(packLoads(itemsOf({5, 101}), {5, 100}),
                failsWith(ErrorKind::DoesNotFit, "item 1 needs 101 bytes, and a load has 100"));
    const std::vector<PackItem> wide = {{1, {}, 6, 9}};
    EXPECT_THAT(packLoads(wide, {5, 100}),
                failsWith(ErrorKind::DoesNotFit, "item 0 needs 6 slots, and a load has 5"));
    EXPECT_THAT(packLoads(wide, {6, 100, 8}),
                failsWith(ErrorKind::DoesNotFit, "item 0 needs 9 ms, and a load has 8"));
    EXPECT_THAT(packLoads(itemsOf({-1}), {5, 100}), failsWith(ErrorKind::InvalidInput, "bytes"));
    EXPECT_THAT(packLoads(itemsOf({1}), {0, 100}), failsWith(ErrorKind::InvalidInput, "slots"));
    EXPECT_THAT(packLoads(itemsOf({1}), {256, 100}), failsWith(ErrorKind::InvalidInput, "slots"));
    EXPECT_THAT(packLoads(std::vector<PackItem>(kMaxPackItems + 1), {5, 100}),
                failsWith(ErrorKind::TooLarge, "20001 textures"));
}

TEST(PackLoads, StopsWhenAsked) {
    std::stop_source source;
    source.request_stop();
    const std::vector<PackItem> items = {{60}, {60}};
    EXPECT_THAT(packLoads(items, {5, 100}, {source.get_token(), {}}),
                failsWith(ErrorKind::Cancelled, "stopped"));
}

}  // namespace
}  // namespace pantile::board
