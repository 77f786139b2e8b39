#include "tasks/undo.h"

#include "catalogue/reader.h"
#include "tasks/keep_estimates.h"

namespace pantile::tasks {

using core::Result;

namespace {

Result<catalogue::Action> withCosts(catalogue::Library& library,
                                    const Result<catalogue::UndoneAction>& turned) {
    PANTILE_RETURN_IF_ERROR(turned);
    if (turned->changedProfiles) PANTILE_RETURN_IF_ERROR(dropStaleEstimates(library));
    for (const core::TextureId id : turned->newPictures) {
        if (const auto record = catalogue::readTexture(library, id))
            knownEstimate(library, *record);
    }
    return turned->action;
}

}  // namespace

Result<catalogue::Action> undoLast(catalogue::Library& library) {
    return withCosts(library, catalogue::undoLast(library));
}

Result<catalogue::Action> redoLast(catalogue::Library& library) {
    return withCosts(library, catalogue::redoLast(library));
}

}  // namespace pantile::tasks
