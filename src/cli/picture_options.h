#pragma once

// The options that say how a picture is cut, laid and adjusted on its way to a texture.

#include <vector>

#include "cli/arguments.h"
#include "core/result.h"
#include "tasks/recognise.h"

namespace pantile::cli {

std::vector<OptionSpec> pictureOptions();

/// Puts what stands in `arguments` into `settings`. Errors: Usage naming the option.
core::Result<void> readPictureOptions(const Arguments& arguments, tasks::PictureSettings& settings);

}  // namespace pantile::cli
