#include "board/left_out.h"

#include <algorithm>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include <gtest/gtest.h>

#include "support/matchers.h"
#include "support/random.h"

namespace pantile::board {
namespace {

using tests::isOk;

FitItem item(const std::string& name, std::int64_t worth, std::vector<FitVariant> variants,
             bool must = false) {
    return {worth, std::move(variants), must, FitItem::kNoBundle, name};
}

/// What is said of each texture left out: item, reason, change.
using Said = std::vector<std::tuple<std::size_t, std::string, std::string>>;

Said saidOf(const std::vector<FitItem>& items, const FitLimits& limits) {
    Said said;
    const auto choice = chooseBest(items, limits);
    EXPECT_THAT(choice, isOk());
    if (!choice) return said;
    for (const LeftOut& left : choice->leftOut)
        said.emplace_back(left.item, left.reason, changeText(items, left));
    return said;
}

TEST(LeftOut, SaysWhyAndWhatWouldLetItIn) {
    const std::vector<FitItem> items = {
        item("11 Kelp bed", 9, {{700, 4000}}), item("12 Shingle", 5, {{1200, 10}}),
        item("13 Foam", 5, {{100, 99000}}),    item("14 Rope", 3, {{400, 10}}),
        item("15 Slate", 0, {{1, 1}}),         item("16 Buoy", 2, {{100, 7000}}),
    };
    const Said wanted = {
        {1,
         "alone larger than the board's bytes: it needs 1200 bytes, and the board has 1000 bytes",
         "It fits with 900 bytes more."},
        {2, "alone takes longer than the time allowed: 99 s of 9 s", "It fits with 94 s more."},
        {3, "needs 100 bytes more than the load has left",
         "It fits in place of 11 Kelp bed (worth 9), or with 100 bytes more."},
        {4, "worth nothing, so it would only take room", ""},
        {5, "needs 2 s more than the load has left",
         "It fits in place of 11 Kelp bed (worth 9), or with 2 s more."},
    };
    EXPECT_EQ(saidOf(items, {5, 1000, 9000}), wanted);
}

TEST(LeftOut, NamesFiveOfMany) {
    const auto change = [](int small) {
        std::vector<FitItem> items = {item("1 Net", 10, {{10 * small, 10}})};
        for (int i = 0; i < small; ++i)
            items.push_back(item(std::to_string(i + 2) + " Rope", 3, {{10, 10}}));
        return std::get<2>(saidOf(items, {20, 10 * small, 9000}).at(0));
    };
    EXPECT_NE(change(6).find("6 Rope (worth 3) and 7 Rope (worth 3)"), std::string::npos);
    EXPECT_NE(change(7).find("6 Rope (worth 3) and 2 others"), std::string::npos) << change(7);
}

TEST(LeftOut, SaysWhatWouldHaveToGoWhereSlotsAreFull) {
    const std::vector<FitItem> items = {
        item("1 Net", 9, {{500, 10}}),  item("2 Brass", 4, {{300, 10}}),
        item("3 Lamp", 5, {{900, 10}}), item("4 Sail", 4, {{300, 11}}),
        item("5 Foam", 3, {{300, 10}}),
    };
    const Said wanted = {
        {2, "worth less than the textures that would have to go",
         "It fits in place of 1 Net (worth 9) and 2 Brass (worth 4), or with 1 slot and 700 bytes "
         "more."},
        {3, "worth no more than what fills the slots",
         "It fits in place of 2 Brass (worth 4), or with 1 slot and 100 bytes more."},
        {4, "worth less than what fills the slots",
         "It fits in place of 2 Brass (worth 4), or with 1 slot and 100 bytes more."},
    };
    EXPECT_EQ(saidOf(items, {2, 1000, {}}), wanted);
}

TEST(LeftOut, SaysWhenOthersWouldHaveToLieInFewerBytes) {
    const std::vector<FitItem> items = {
        item("1 Net", 5, {{600, 10}, {300, 40}}),
        item("2 Brass", 3, {{200, 10}}),
        item("3 Lamp", 2, {{700, 10}}),
    };
    EXPECT_EQ(std::get<2>(saidOf(items, {5, 1000, {}}).at(0)),
              "It fits in place of 2 Brass (worth 3), if others are drawn in fewer bytes, or with "
              "200 bytes more.");
}

TEST(LeftOut, SaysWhenMustsStandInTheWay) {
    const std::vector<FitItem> full = {item("1 Net", 1, {{10, 10}}, true),
                                       item("2 Lamp", 5, {{10, 10}})};
    EXPECT_EQ(
        saidOf(full, {1, 1000, {}}),
        (Said{{1, "the slots are full of textures that must be in", "It fits with 1 slot more."}}));
    const std::vector<FitItem> heavy = {item("1 Net", 1, {{900, 10}}, true),
                                        item("2 Lamp", 5, {{50, 10}}),
                                        item("3 Rope", 9, {{200, 10}})};
    EXPECT_EQ(saidOf(heavy, {2, 1000, {}}),
              (Said{{2, "does not fit beside the textures that must be in",
                     "It fits with 1 slot and 150 bytes more."}}));
}

TEST(LeftOut, CountsABundleAsOne) {
    std::vector<FitItem> items = {item("1 Net", 9, {{500, 10}}), item("2 Lamp", 1, {{400, 10}}),
                                  item("3 Rope", 2, {{300, 10}}), item("4 Buoy", 1, {{90, 10}})};
    items[1].bundle = 0;
    items[2].bundle = 0;
    const std::string reason =
        "kept together with 1 other, needs 290 bytes more than the load has left";
    const std::string change = "It fits in place of 1 Net (worth 9), or with 290 bytes more.";
    EXPECT_EQ(saidOf(items, {5, 1000, {}}), (Said{{1, reason, change}, {2, reason, change}}));
}

/// Each item of `set` in each of its variants, or out where `mayGo` says so.
template <typename Visit>
void everyWay(const std::vector<FitItem>& items, const std::vector<std::size_t>& set,
              const std::vector<bool>& mayGo, const Visit& visit) {
    std::vector<int> way(set.size(), 0);
    for (;;) {
        visit(way);
        std::size_t i = 0;
        for (; i < set.size(); ++i) {
            const int last = static_cast<int>(items[set[i]].variants.size()) - 1;
            if (way[i] == -1) {
                way[i] = 0;
                continue;
            }
            if (way[i] < last) {
                ++way[i];
                break;
            }
            if (mayGo[i]) {
                way[i] = -1;
                break;
            }
            way[i] = 0;
        }
        if (i == set.size()) return;
    }
}

struct Sum {
    std::int64_t count = 0;
    std::int64_t bytes = 0;
    std::int64_t milliseconds = 0;
};

Sum sumOf(const std::vector<FitItem>& items, const std::vector<std::size_t>& set,
          const std::vector<int>& way) {
    Sum sum;
    for (std::size_t i = 0; i < set.size(); ++i) {
        if (way[i] < 0) continue;
        const FitVariant& variant = items[set[i]].variants[static_cast<std::size_t>(way[i])];
        ++sum.count;
        sum.bytes += variant.bytes;
        sum.milliseconds += variant.milliseconds;
    }
    return sum;
}

/// The chosen items, then the one that was left out.
std::vector<std::size_t> withLeftOut(const FitChoice& choice, std::size_t left) {
    std::vector<std::size_t> set;
    for (const FitPick& pick : choice.chosen) set.push_back(pick.item);
    set.push_back(left);
    return set;
}

/// Least worth that has to go, then the fewest textures, by trying all.
std::optional<std::pair<std::int64_t, std::size_t>> leastExchange(
    const std::vector<FitItem>& items, const FitLimits& limits,
    const std::vector<std::size_t>& set) {
    std::optional<std::pair<std::int64_t, std::size_t>> least;
    std::vector<bool> mayGo;
    for (const std::size_t i : set) mayGo.push_back(!items[i].must && i != set.back());
    everyWay(items, set, mayGo, [&](const std::vector<int>& way) {
        const Sum sum = sumOf(items, set, way);
        if (sum.count > limits.slots || sum.bytes > limits.bytes ||
            sum.milliseconds > limits.milliseconds.value_or(sum.milliseconds))
            return;
        std::pair<std::int64_t, std::size_t> gone{0, 0};
        for (std::size_t i = 0; i < set.size(); ++i) {
            if (way[i] >= 0) continue;
            gone.first += items[set[i]].worth;
            ++gone.second;
        }
        least = std::min(least.value_or(gone), gone);
    });
    return least;
}

Shortage leastShortage(const std::vector<FitItem>& items, const FitLimits& limits,
                       const std::vector<std::size_t>& set) {
    std::optional<Shortage> least;
    everyWay(items, set, std::vector<bool>(set.size(), false), [&](const std::vector<int>& way) {
        const Sum sum = sumOf(items, set, way);
        const auto over = [](std::int64_t used, std::int64_t room) {
            return std::max<std::int64_t>(used - room, 0);
        };
        const Shortage here{static_cast<int>(over(sum.count, limits.slots)),
                            over(sum.bytes, limits.bytes),
                            over(sum.milliseconds, limits.milliseconds.value_or(sum.milliseconds))};
        const auto rank = [](const Shortage& s) { return std::tuple(s.milliseconds, s.bytes); };
        if (!least || rank(here) < rank(*least)) least = here;
    });
    return *least;
}

TEST(LeftOut, FindsTheCheapestChangeOfAll) {
    int searched = 0;
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        tests::Random random(seed);
        std::vector<FitItem> items(static_cast<std::size_t>(random.between(3, 8)));
        for (FitItem& each : items) {
            each.worth = random.between(1, 6);
            each.variants.resize(static_cast<std::size_t>(random.between(1, 3)));
            for (FitVariant& variant : each.variants)
                variant = {random.between(50, 400), random.between(50, 400)};
            each.must = random.between(0, 9) == 0;
        }
        FitLimits limits{random.between(2, 5), random.between(400, 900), {}};
        if (random.between(0, 1) == 1) limits.milliseconds = random.between(400, 1000);
        const auto choice = chooseBest(items, limits);
        if (!choice) continue;
        for (const LeftOut& left : choice->leftOut) {
            const std::vector<std::size_t> set = withLeftOut(*choice, left.item);
            EXPECT_EQ(left.shortage, leastShortage(items, limits, set)) << "seed " << seed;
            const auto least = leastExchange(items, limits, set);
            ASSERT_EQ(left.exchange.has_value(), least.has_value()) << "seed " << seed;
            if (!least) continue;
            EXPECT_EQ(left.exchange->worth, least->first) << "seed " << seed;
            EXPECT_EQ(left.exchange->takeOut.size(), least->second) << "seed " << seed;
            EXPECT_TRUE(left.exchange->provenLeast);
            searched += least->second > 1 ? 1 : 0;
        }
    }
    EXPECT_GT(searched, 20);
}

TEST(LeftOut, GoesOnWithoutExchangesWhereThereAreTooMany) {
    // Each of the larger ones would need two out, and there are more of them than searches.
    std::vector<FitItem> items;
    for (int i = 0; i < 4; ++i) items.push_back(item("small", 5, {{250, 10}}));
    for (int i = 0; i < 600; ++i) items.push_back(item("large", 5, {{400, 10}}));
    const auto choice = chooseBest(items, {4, 1000, {}});
    ASSERT_THAT(choice, isOk());
    ASSERT_EQ(choice->leftOut.size(), 600U);
    EXPECT_EQ(choice->leftOut.front().exchange->takeOut.size(), 2U);
    EXPECT_FALSE(choice->leftOut.back().exchange.has_value());
    EXPECT_EQ(choice->leftOut.back().reason,
              "would push out textures that are worth no less together");
    EXPECT_EQ(choice->leftOut.back().shortage, (Shortage{1, 400, 0}));
}

}  // namespace
}  // namespace pantile::board
