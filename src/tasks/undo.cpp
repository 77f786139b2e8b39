#include "tasks/undo.h"

#include "tasks/keep_estimates.h"

namespace pantile::tasks {

using core::Result;

namespace {

Result<catalogue::UndoneAction> withoutStaleCosts(catalogue::Library& library,
                                                  Result<catalogue::UndoneAction> turned) {
    if (turned && turned->changedProfiles) PANTILE_RETURN_IF_ERROR(dropStaleEstimates(library));
    return turned;
}

}  // namespace

Result<catalogue::UndoneAction> undoLast(catalogue::Library& library) {
    return withoutStaleCosts(library, catalogue::undoLast(library));
}

Result<catalogue::UndoneAction> redoLast(catalogue::Library& library) {
    return withoutStaleCosts(library, catalogue::redoLast(library));
}

}  // namespace pantile::tasks
