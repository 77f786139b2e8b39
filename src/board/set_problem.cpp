#include "board/set_problem.h"

#include <algorithm>

namespace pantile::board {

bool Limit::isLeastSum() const {
    return std::any_of(use.begin(), use.end(), [](std::int64_t each) { return each < 0; });
}

std::vector<std::int64_t> roomLeft(const SetProblem& problem, const Selection& chosen) {
    std::vector<std::int64_t> room;
    for (const Limit& limit : problem.limits) {
        std::int64_t left = limit.room;
        for (const std::int32_t way : chosen) {
            if (way != kOut) left -= limit.use[static_cast<std::size_t>(way)];
        }
        room.push_back(left);
    }
    return room;
}

Wide valueOf(const SetProblem& problem, const Selection& chosen) {
    Wide value = 0;
    for (const std::int32_t way : chosen) {
        if (way != kOut) value += problem.value[static_cast<std::size_t>(way)];
    }
    return value;
}

bool allKept(const std::vector<std::int64_t>& room) {
    return std::all_of(room.begin(), room.end(), [](std::int64_t left) { return left >= 0; });
}

bool goesBefore(const Selection& a, const Selection& b) {
    const auto [inA, inB] = std::mismatch(a.begin(), a.end(), b.begin());
    return inA != a.end() && *inA != kOut && (*inB == kOut || *inA < *inB);
}

}  // namespace pantile::board
