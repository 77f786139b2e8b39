#include "desktop/jobs/edit_job.h"

#include "catalogue/reader.h"
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

Result<KeptWork> keepWork(const KeepRequest& request) {
    // Opening would make a new one, and the work would lie where nobody looks for it.
    if (std::error_code problem; !std::filesystem::exists(request.libraryPath, problem)) {
        return core::Error{core::ErrorKind::Io,
                           request.libraryPath.string() + " is not there any more",
                           "bring the library back to where it was, then keep your work"};
    }
    PANTILE_ASSIGN_OR_RETURN(catalogue::Library library,
                             tasks::openLibrary(request.libraryPath, tasks::Purpose::Change));
    const auto record = catalogue::readTexture(library, request.id);
    if (record && !record->row.removed) {
        const auto kept = tasks::keepTouched(library, request.id, request.before, request.after);
        if (kept) return KeptWork{request.id, false};
        if (kept.error().kind != core::ErrorKind::Busy) return kept.error();
    } else if (!record && record.error().kind != core::ErrorKind::NotFound) {
        return record.error();
    }
    PANTILE_ASSIGN_OR_RETURN(const auto beside, tasks::keepBeside(library, request.after));
    return KeptWork{beside, true};
}

}  // namespace pantile::desktop
