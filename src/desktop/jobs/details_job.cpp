#include "desktop/jobs/details_job.h"

#include <QStringList>

#include "catalogue/reader.h"
#include "core/text.h"
#include "desktop/texts.h"
#include "tasks/drawing_estimate.h"
#include "tasks/library_place.h"
#include "tasks/share_codes.h"

namespace pantile::desktop {

using core::Result;

Result<TextureDetails> readDetails(const std::filesystem::path& libraryPath, core::TextureId id,
                                   const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(catalogue::TextureRecord record, catalogue::readTexture(library, id));
    PANTILE_ASSIGN_OR_RETURN(const auto codes, tasks::makeCodes(library, {id}, {}, progress));
    const auto characters =
        static_cast<std::int64_t>(core::codePointCount(codes.front().code.text));
    if (!record.row.estimate) {
        PANTILE_ASSIGN_OR_RETURN(const auto defaults, tasks::drawingDefaults(library));
        // One that fits no canvas has no costs, and the window says so.
        record.row.estimate = tasks::estimateDrawing(record.texture, defaults);
    }
    PANTILE_ASSIGN_OR_RETURN(auto revisions, catalogue::history(library, id));
    return TextureDetails{std::move(record), characters, std::move(revisions)};
}

Result<QString> codesToPaste(const std::filesystem::path& libraryPath,
                             const std::vector<core::TextureId>& ids,
                             const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto codes, tasks::makeCodes(library, ids, {}, progress));
    QStringList texts;
    for (const tasks::SharedCode& each : codes) texts.append(fromUtf8(each.code.text));
    return texts.join(QStringLiteral("\n\n"));
}

}  // namespace pantile::desktop
