#pragma once

// The demo textures that come with the program.

#include <filesystem>
#include <optional>

#include "tasks/gather.h"

namespace pantile::tasks {

/// $PANTILE_SAMPLES, else beside the program's own folder, else in the system's data folders.
/// Nothing where they were not installed.
std::optional<std::filesystem::path> samplesFolder();

/// How they are added: whose they are, their licence, and a tag to find them again by.
GatherOptions sampleOptions();

}  // namespace pantile::tasks
