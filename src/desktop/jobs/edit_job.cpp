#include "desktop/jobs/edit_job.h"

#include "codec/text_code.h"
#include "core/text.h"
#include "tasks/drawing_estimate.h"
#include "tasks/library_place.h"
#include "tasks/touch_up.h"

namespace pantile::desktop {

using core::Result;
using core::Texture;

Result<WorkFigures> workFigures(const std::filesystem::path& libraryPath, const Texture& texture,
                                const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(auto seams, picture::checkSeams(texture.grid(), texture.palette()));
    PANTILE_ASSIGN_OR_RETURN(const auto code, codec::encodeTextCode(texture));
    if (progress.stopRequested()) return core::stoppedError();
    PANTILE_ASSIGN_OR_RETURN(const auto defaults, tasks::drawingDefaults(library));
    const auto characters = static_cast<std::int64_t>(core::codePointCount(code.text));
    return WorkFigures{tasks::estimateDrawing(texture, defaults), characters, std::move(seams)};
}

Result<Texture> tryOperation(const std::filesystem::path& libraryPath, const Texture& texture,
                             const tasks::TouchOperation& operation) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Look));
    return tasks::touched(texture, operation, tasks::namedPalettes(library));
}

Result<tasks::KeptWork> keepInLibrary(const std::filesystem::path& libraryPath,
                                      const tasks::UnkeptWork& work) {
    // Opening would make a new one, and the work would lie where nobody looks for it.
    if (std::error_code problem; !std::filesystem::exists(libraryPath, problem)) {
        return core::Error{core::ErrorKind::Io, libraryPath.string() + " is not there any more",
                           "bring the library back to where it was, then keep your work"};
    }
    PANTILE_ASSIGN_OR_RETURN(catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Change));
    return tasks::keepWork(library, work);
}

Result<std::vector<tasks::RecoveredWork>> recoverInLibrary(
    const std::filesystem::path& libraryPath) {
    if (!tasks::isWorkBeside(libraryPath)) return std::vector<tasks::RecoveredWork>();
    PANTILE_ASSIGN_OR_RETURN(catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Change));
    return tasks::recoverWork(library);
}

}  // namespace pantile::desktop
