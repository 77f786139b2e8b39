#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

#include "core/result.h"

namespace pantile::cli {

/// What a list of numbers must be: how many, and each in least..most.
struct NumberListRule {
    std::size_t fewest = 1;
    std::size_t most = 1;
    int leastValue = 0;
    int mostValue = 0;
    std::string_view form;  ///< What to write, for the hint: "X,Y".
};

/// Whole numbers with commas between them: "3,-4". Errors: Usage naming `what` and the number at
/// fault, or how many there are.
core::Result<std::vector<int>> parseNumberList(std::string_view what, std::string_view text,
                                               const NumberListRule& rule);

}  // namespace pantile::cli
