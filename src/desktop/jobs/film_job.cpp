#include "desktop/jobs/film_job.h"

#include "tasks/library_place.h"

namespace pantile::desktop {

core::Result<tasks::FilmedDrawing> makeFilm(const FilmRequest& request,
                                            const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             tasks::openLibrary(request.libraryPath, tasks::Purpose::Look));
    tasks::PlanOptions options;
    options.board = request.board;
    options.canvas = request.canvas;
    return tasks::filmStored(library, request.id, options, progress);
}

}  // namespace pantile::desktop
