#include "desktop/jobs/profiles_job.h"

#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/reader.h"
#include "tasks/drawing_estimate.h"
#include "tasks/keep_estimates.h"
#include "tasks/library_place.h"

namespace pantile::desktop {

using core::Result;

Result<Profiles> readProfiles(const std::filesystem::path& libraryPath) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(auto canvases, catalogue::listCanvases(library));
    PANTILE_ASSIGN_OR_RETURN(auto boards, catalogue::listBoards(library));
    PANTILE_ASSIGN_OR_RETURN(auto palettes, catalogue::listPalettes(library));
    Profiles profiles;
    profiles.all.insert(profiles.all.end(), canvases.begin(), canvases.end());
    profiles.all.insert(profiles.all.end(), boards.begin(), boards.end());
    profiles.all.insert(profiles.all.end(), palettes.begin(), palettes.end());
    return profiles;
}

Result<std::int64_t> workOutCosts(const std::filesystem::path& libraryPath,
                                  const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Change));
    return tasks::refreshEstimates(library, progress);
}

Result<TrialCost> tryOut(const TrialRequest& request) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Library library,
                             tasks::openLibrary(request.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto record, catalogue::readTexture(library, request.id));
    PANTILE_ASSIGN_OR_RETURN(tasks::DrawingDefaults under, tasks::drawingDefaults(library));
    if (const auto* const canvas = std::get_if<core::Canvas>(&request.profile))
        under.canvases = {*canvas};
    if (const auto* const board = std::get_if<core::Board>(&request.profile)) under.board = *board;
    return TrialCost{request.profile, record.row.title,
                     tasks::estimateDrawing(record.texture, under)};
}

}  // namespace pantile::desktop
