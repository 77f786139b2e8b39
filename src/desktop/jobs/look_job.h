#pragma once

// Before something is added: which pictures are in it, and what the library offers for them.

#include <filesystem>
#include <string>
#include <vector>

#include "core/canvas.h"
#include "core/progress.h"
#include "core/result.h"
#include "desktop/jobs/gather_job.h"
#include "tasks/drawing_estimate.h"

namespace pantile::desktop {

enum class AskFor {
    LargePictures,  ///< Those that lose something on the way; small ones are taken cell by cell.
    EveryPicture,
};

/// What the person is to be asked about a request; without pictures there is nothing to ask.
struct RequestLook {
    std::vector<tasks::GatherInput> pictures;
    tasks::DrawingDefaults defaults;  ///< With the canvases.
    std::vector<std::string> shelves;
    std::vector<std::string> tags;
};

/// Whether there may be pictures in it.
bool mayHoldPictures(const GatherRequest& request);

/// Errors: those of the library; Cancelled. What cannot be read is left for the adding to refuse.
core::Result<RequestLook> lookAt(const std::filesystem::path& libraryPath, GatherRequest request,
                                 AskFor asked, const core::Progress& progress);

}  // namespace pantile::desktop
