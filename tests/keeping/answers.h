#pragma once

// All that can be asked of a library, as texts.

#include <optional>
#include <string>
#include <vector>

#include "catalogue/library.h"

namespace pantile::tests {

struct Answer {
    std::string question;
    std::optional<std::string> text;  ///< None where it was an error.
};

/// Always the same questions in the same order.
std::vector<Answer> answersOf(const catalogue::Library& library, std::int64_t lastId);

}  // namespace pantile::tests
