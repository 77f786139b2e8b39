#pragma once

// A drawing as it comes about, as numbered pictures, and the plan's picture as a file.

#include <cstdint>
#include <filesystem>
#include <vector>

#include "core/progress.h"
#include "core/result.h"
#include "tasks/files.h"
#include "tasks/plan_drawing.h"

namespace pantile::tasks {

inline constexpr std::int64_t kMostFrames = 1000;

struct FrameOptions {
    std::int64_t everyMs = 0;  ///< Of the drawing's time; 0 for a hundredth of it.
    IfExists ifExists = IfExists::Refuse;
};

/// Writes frame-0000.png, frame-0001.png … into `folder`, which is made if missing: first the
/// canvas before anything is painted, then one each `everyMs`, and last the finished texture. What
/// is not yet painted is transparent. Cells are enlarged so that small textures can be seen.
/// Returns the files written, in order.
/// Errors: TooLarge beyond kMostFrames; AlreadyExists before anything is written; Io; Cancelled,
/// with what was written before staying.
core::Result<std::vector<std::filesystem::path>> writeFrames(const PlannedDrawing& planned,
                                                             const std::filesystem::path& folder,
                                                             const FrameOptions& options,
                                                             const core::Progress& progress = {});

}  // namespace pantile::tasks
