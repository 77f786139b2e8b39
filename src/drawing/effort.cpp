#include "drawing/effort.h"

#include <algorithm>

#include "drawing/pen_ways.h"
#include "drawing/timing.h"

namespace pantile::drawing {
namespace {

constexpr std::int64_t kTriesAMs = 120;
/// Where a report is short beside a click, drags go far round before a lift pays: more to look at.
constexpr std::int64_t kTriesAMsWithLongWays = 60;
constexpr int kLongReach = 9;
constexpr std::int64_t kLongestBudgetMs = 3'600'000;

}  // namespace

Effort effortFor(std::int64_t budgetMs, const DrawingRequest& request) {
    Effort effort;
    const PenWays ways(request, TimeModel(request.canvas, request.timing));
    const std::int64_t rate = ways.reach >= kLongReach ? kTriesAMsWithLongWays : kTriesAMs;
    const std::int64_t tries = std::clamp<std::int64_t>(budgetMs, 0, kLongestBudgetMs) * rate;
    effort.triesPerCell = tries > 0 ? 1 : 0;
    effort.leastTries = effort.mostTries = tries;
    return effort;
}

}  // namespace pantile::drawing
