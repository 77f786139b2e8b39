#include "board/set_search.h"

#include <cmath>
#include <sstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "support/csv.h"

namespace pantile::board {
namespace {

std::vector<std::int64_t> numbersIn(const std::string& text) {
    std::istringstream stream(text);
    std::vector<std::int64_t> numbers;
    for (std::int64_t number = 0; stream >> number;) numbers.push_back(number);
    return numbers;
}

/// One problem has profits with tenths, so all are counted in tenths.
std::vector<std::int64_t> tenthsIn(const std::string& text) {
    std::istringstream stream(text);
    std::vector<std::int64_t> tenths;
    for (double number = 0; stream >> number;) tenths.push_back(std::llround(number * 10));
    return tenths;
}

std::vector<std::string> partsOf(const std::string& text) {
    std::vector<std::string> parts;
    std::istringstream stream(text);
    for (std::string part; std::getline(stream, part, '|');) parts.push_back(part);
    return parts;
}

SetProblem problemOf(const tests::CsvRow& row) {
    SetProblem problem;
    for (const std::int64_t profit : tenthsIn(row[3])) problem.value.push_back(profit);
    const std::vector<std::int64_t> rooms = numbersIn(row[5]);
    for (const std::string& uses : partsOf(row[4]))
        problem.limits.push_back({numbersIn(uses), rooms.at(problem.limits.size())});
    for (std::uint32_t piece = 0; piece < problem.value.size(); ++piece) {
        problem.firstWay.push_back(piece);
        problem.bundles.push_back({{piece}});
    }
    problem.firstWay.push_back(static_cast<std::uint32_t>(problem.value.size()));
    problem.start.assign(problem.value.size(), kOut);
    return problem;
}

// J. E. Beasley, OR-Library, files mknap1 and mknap2 (data of C. C. Petersen, Management Science
// 13(9), 1967, and others): optimum by the table, which says how each was verified.
TEST(SetSearch, ReachesThePublishedOptimaUnderManyLimits) {
    const auto rows =
        tests::readCsv(std::string(PANTILE_TEST_DATA) + "/references/multi_knapsack.csv");
    EXPECT_EQ(rows.size(), 8U);
    for (const tests::CsvRow& row : rows) {
        const SetProblem problem = problemOf(row);
        ASSERT_EQ(problem.value.size(), std::stoul(row[1])) << row[0];
        ASSERT_EQ(problem.limits.size(), std::stoul(row[2])) << row[0];
        std::int64_t steps = 20'000'000;
        const SetAnswer answer = searchBestSet(problem, steps, {});
        EXPECT_TRUE(answer.proven) << row[0];
        std::int64_t profit = 0;
        for (std::size_t i = 0; i < answer.chosen.size(); ++i)
            profit += answer.chosen[i] != kOut ? static_cast<std::int64_t>(problem.value[i]) : 0;
        EXPECT_EQ(profit, tenthsIn(row[7]).at(0)) << row[0];
        for (const Limit& limit : problem.limits) {
            std::int64_t used = 0;
            for (std::size_t i = 0; i < answer.chosen.size(); ++i)
                used += answer.chosen[i] != kOut ? limit.use[i] : 0;
            EXPECT_LE(used, limit.room) << row[0];
        }
    }
}

}  // namespace
}  // namespace pantile::board
