#pragma once

// The options of 'touch', read in the order in which they were given: some say how the following
// ones paint, the others are operations. Each is one row of a table in touch_options.cpp.

#include <span>
#include <vector>

#include "cli/arguments.h"
#include "core/result.h"
#include "tasks/touch_up.h"

namespace pantile::cli {

/// For the command's help and for Arguments::parse.
std::vector<OptionSpec> touchOptionSpecs();

/// Errors: Usage naming the option, or if there is no operation among them.
core::Result<std::vector<tasks::TouchStep>> touchSteps(std::span<const GivenOption> options);

}  // namespace pantile::cli
