// Plans of a single row against the fewest strokes that paint it when later ones cover earlier
// ones. The recurrence is the classic one over intervals (method: T. Cormen et al., 'Introduction
// to Algorithms', dynamic programming), from memory; the table was verified by an exhaustive search
// over all rows.

#include <algorithm>
#include <map>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "drawing/planner.h"
#include "drawing/requests.h"

namespace pantile::drawing {
namespace {

/// Of the stretch from `first` to before `end`, none of it unpainted.
int fewestOf(const std::string& row, std::size_t first, std::size_t end) {
    if (first == end) return 0;
    int best = 1 + fewestOf(row, first + 1, end);
    for (std::size_t k = first + 1; k < end; ++k) {
        if (row[k] != row[first]) continue;
        best = std::min(best, fewestOf(row, first + 1, k) + fewestOf(row, k, end));
    }
    return best;
}

int fewestStrokes(const std::string& row) {
    int total = 0;
    std::size_t first = 0;
    while (first < row.size()) {
        const std::size_t end = std::min(row.find('.', first), row.size());
        total += fewestOf(row, first, end);
        first = end + 1;
    }
    return total;
}

/// Lifts are so dear, and picks so cheap beside them, that the quickest plan has the fewest.
int plannedStrokes(const std::string& row) {
    core::PointerTiming timing;
    timing.reportIntervalMs = 1;
    timing.pressMs = timing.releaseMs = 500;
    timing.settleMs = 0;
    const auto request = tests::requestFor({row}, core::PenModel::WholeCells, timing);
    return planDrawing(request, {}, {1, 100, 100, 1}).value().lifts;
}

TEST(OneRow, RecurrenceAgreesWithTheTable) {
    const std::map<std::string, int> table{
        {"a", 1},        {"aa", 1},       {"ab", 2},     {"aaabbb", 2},     {"aba", 2},
        {"abab", 3},     {"abba", 2},     {"abcba", 3},  {"abcab", 4},      {"abcabc", 5},
        {"abacaba", 4},  {"aabbaacc", 3}, {"ababab", 4}, {"abababa", 4},    {"abcdcba", 4},
        {"abcdabcd", 7}, {"a.a", 2},      {"aa.bb", 2},  {"ab.ba", 4},      {"aba.aba", 4},
        {"a..a", 2},     {"aba.a", 3},    {"...", 0},    {"abcba.abcba", 6}};
    for (const auto& [row, strokes] : table) EXPECT_EQ(fewestStrokes(row), strokes) << row;
}

/// How many rows need 1, 2, 3, ... strokes.
using Counts = std::vector<int>;

void countIn(Counts& counts, int strokes) {
    const auto needed = static_cast<std::size_t>(strokes);
    if (counts.size() < needed) counts.resize(needed);
    ++counts[needed - 1];
}

Counts countsOfAllRows(int length, int colours, int (*strokesOf)(const std::string&)) {
    Counts counts;
    std::string row(static_cast<std::size_t>(length), '0');
    for (;;) {
        countIn(counts, strokesOf(row));
        std::size_t place = 0;
        while (place < row.size() && row[place] == '0' + colours - 1) row[place++] = '0';
        if (place == row.size()) return counts;
        ++row[place];
    }
}

TEST(OneRow, RecurrenceAgreesWithTheCountsOfAllRows) {
    EXPECT_EQ(countsOfAllRows(5, 2, fewestStrokes), (Counts{2, 20, 10}));
    EXPECT_EQ(countsOfAllRows(8, 2, fewestStrokes), (Counts{2, 56, 140, 56, 2}));
    EXPECT_EQ(countsOfAllRows(5, 3, fewestStrokes), (Counts{3, 60, 150, 30}));
    EXPECT_EQ(countsOfAllRows(6, 3, fewestStrokes), (Counts{3, 90, 390, 240, 6}));
    EXPECT_EQ(countsOfAllRows(5, 4, fewestStrokes), (Counts{4, 120, 540, 360}));
}

/// For two colours to draw each once is as good as any plan; the counts are those of the table.
TEST(OneRow, IsDrawnWithTheFewestStrokesInTwoColours) {
    EXPECT_EQ(countsOfAllRows(7, 2, plannedStrokes), (Counts{2, 42, 70, 14}));
}

TEST(OneRow, IsDrawnWithTheFewestStrokesInThreeColoursAndGaps) {
    int more = 0;
    int tried = 0;
    tests::Random random(7);
    for (; tried < 200; ++tried) {
        std::string row;
        for (int i = random.between(1, 9); i > 0; --i) row += "001122."[random.between(0, 6)];
        if (row.find_first_not_of('.') == std::string::npos) continue;
        const int planned = plannedStrokes(row);
        ASSERT_GE(planned, fewestStrokes(row)) << row;
        ASSERT_LE(planned, fewestStrokes(row) + 1) << row;
        more += planned > fewestStrokes(row) ? 1 : 0;
    }
    EXPECT_LE(more * 20, tried) << "coming back to a colour is rarely worth a stroke";
}

}  // namespace
}  // namespace pantile::drawing
