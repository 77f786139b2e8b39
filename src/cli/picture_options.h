#pragma once

// The options that say how a picture becomes a texture.

#include <vector>

#include "cli/arguments.h"
#include "core/result.h"
#include "tasks/recognise.h"

namespace pantile::cli {

std::vector<OptionSpec> pictureOptions();

/// What --pin asks for. Errors: Usage.
core::Result<std::vector<core::Rgb8>> pinnedColours(const Arguments& arguments);

/// Errors: Usage naming the option.
core::Result<tasks::PictureSettings> readPictureOptions(const Arguments& arguments);

}  // namespace pantile::cli
