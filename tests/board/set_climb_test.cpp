#include "board/set_climb.h"

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::board {
namespace {

/// Pieces of one way each under one limit.
SetProblem oneLimit(const std::vector<std::int64_t>& values, const std::vector<std::int64_t>& uses,
                    std::int64_t room) {
    SetProblem problem;
    problem.value.assign(values.begin(), values.end());
    problem.limits = {{uses, room}};
    for (std::uint32_t piece = 0; piece < values.size(); ++piece) {
        problem.firstWay.push_back(piece);
        problem.bundles.push_back({{piece}});
    }
    problem.firstWay.push_back(static_cast<std::uint32_t>(values.size()));
    problem.start.assign(values.size(), kOut);
    return problem;
}

Selection climbedFrom(const SetProblem& problem, Selection chosen) {
    Selection preferred;
    for (std::size_t piece = 0; piece < problem.pieces(); ++piece)
        preferred.push_back(static_cast<std::int32_t>(problem.firstWay[piece]));
    return climbed(problem, preferred, std::move(chosen));
}

TEST(SetClimb, ExchangesForWhatIsWorthMorePastWhatHasToStayAndWhatIsOut) {
    SetProblem problem = oneLimit({1, 1, 2, 9}, {1, 9, 1, 1}, 2);
    problem.bundles[0].required = true;
    EXPECT_EQ(climbedFrom(problem, {0, kOut, 2, kOut}), (Selection{0, kOut, kOut, 3}));
}

TEST(SetClimb, TakesOutWhatIsWorthLessThanNothing) {
    SetProblem problem = oneLimit({-3, -3, 1}, {0, 0, 0}, 0);
    problem.bundles[0].required = true;
    EXPECT_EQ(climbedFrom(problem, {0, 1, kOut}), (Selection{0, kOut, 2}));
}

TEST(SetClimb, LetsOnePieceGiveTheRoomThatAnotherTakes) {
    // Two pieces of a small and a large way each: the second gains more by the large one.
    SetProblem problem;
    problem.value = {1, 3, 1, 9};
    problem.limits = {{{1, 3, 1, 3}, 4}};
    problem.firstWay = {0, 2, 4};
    problem.bundles = {{{0}}, {{1}}};
    EXPECT_EQ(climbedFrom(problem, {1, 2}), (Selection{0, 3}));
}

TEST(SetClimb, TakesABundleWholeOrNotAtAll) {
    SetProblem problem = oneLimit({5, 5, 8}, {2, 2, 3}, 4);
    problem.bundles = {{{2}}, {{0, 1}}};
    EXPECT_EQ(climbedFrom(problem, {kOut, kOut, 2}), (Selection{0, 1, kOut}));
}

TEST(SetClimb, KeepsTheLimitsAndNeverLosesValue) {
    tests::Random random(23);
    for (int i = 0; i < 200; ++i) {
        std::vector<std::int64_t> values, uses;
        for (int piece = 0; piece < 12; ++piece) {
            values.push_back(random.between(-2, 30));
            uses.push_back(random.between(0, 9));
        }
        const SetProblem problem = oneLimit(values, uses, random.between(0, 30));
        const Selection found = climbedFrom(problem, problem.start);
        EXPECT_TRUE(allKept(roomLeft(problem, found)));
        const Wide value = valueOf(problem, found);
        EXPECT_GE(value, 0);
        // None goes in, out, or in the place of another, that would make it better.
        for (std::size_t in = 0; in < found.size(); ++in) {
            for (std::size_t out = 0; out < found.size(); ++out) {
                Selection other = found;
                other[out] = kOut;
                EXPECT_LE(valueOf(problem, other), value);
                other[in] = static_cast<std::int32_t>(in);
                if (allKept(roomLeft(problem, other))) {
                    EXPECT_LE(valueOf(problem, other), value);
                }
            }
        }
    }
}

}  // namespace
}  // namespace pantile::board
