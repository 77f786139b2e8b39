#pragma once

// How much a proof does: a moment's worth in every run of the tests, all of it under
// `tests/keeping/run`, which sets PANTILE_KEEPING=full.

#include <cstdlib>
#include <string_view>

namespace pantile::tests {

inline bool isFullRun() {
    const char* const asked = std::getenv("PANTILE_KEEPING");
    return asked != nullptr && std::string_view(asked) == "full";
}

inline int rounds(int quick, int full) {
    return isFullRun() ? full : quick;
}

}  // namespace pantile::tests
