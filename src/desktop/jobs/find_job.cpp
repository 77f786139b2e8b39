#include "desktop/jobs/find_job.h"

#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "tasks/find_textures.h"
#include "tasks/library_place.h"

namespace pantile::desktop {

core::Result<FindAnswer> runFind(const FindRequest& request) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Library library,
                             tasks::openLibrary(request.libraryPath, tasks::Purpose::Look));
    catalogue::FindOptions options;
    options.sort = request.sort;
    FindAnswer answer;
    PANTILE_ASSIGN_OR_RETURN(answer.ids, tasks::findIds(library, request.query, options));
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Query everything, catalogue::parseQuery(""));
    options.limit = 0;
    PANTILE_ASSIGN_OR_RETURN(const catalogue::FoundTextures counted,
                             catalogue::findTextures(library, everything, options));
    answer.all = counted.total;
    return answer;
}

}  // namespace pantile::desktop
