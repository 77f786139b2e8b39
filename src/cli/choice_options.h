#pragma once

#include <vector>

#include "cli/arguments.h"
#include "core/result.h"
#include "tasks/choose_for_board.h"

namespace pantile::cli {

/// The options by which `fit` and `load make` choose.
std::vector<OptionSpec> chooseOptionSpecs();

/// Errors: Usage.
core::Result<tasks::ChooseOptions> chooseOptions(const Arguments& arguments);

}  // namespace pantile::cli
