#include "desktop/jobs/filters_job.h"

#include "catalogue/actions.h"
#include "catalogue/query_parser.h"
#include "tasks/find_textures.h"
#include "tasks/library_place.h"

namespace pantile::desktop {

using core::Result;

namespace {

Result<std::int64_t> countOf(catalogue::Library& library, const std::string& text,
                             const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Query query, catalogue::parseQuery(text));
    catalogue::FindOptions options;
    options.limit = 0;
    PANTILE_ASSIGN_OR_RETURN(const catalogue::FoundTextures found,
                             tasks::findTextures(library, std::move(query), options, progress));
    return found.total;
}

}  // namespace

Result<LibraryFilters> readFilters(const std::filesystem::path& libraryPath,
                                   const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Look));
    LibraryFilters filters;
    PANTILE_ASSIGN_OR_RETURN(filters.shelves, catalogue::listShelves(library));
    PANTILE_ASSIGN_OR_RETURN(filters.tags, catalogue::listTags(library));
    std::erase_if(filters.tags, [](const catalogue::TagCount& tag) { return tag.textures == 0; });
    PANTILE_ASSIGN_OR_RETURN(const auto searches, catalogue::listSearches(library));
    for (const catalogue::SavedSearch& search : searches) {
        if (progress.stopRequested()) return core::stoppedError();
        // One that finds nothing any more, as its texture is gone, is shown all the same.
        const auto count = countOf(library, search.query, progress);
        filters.searches.push_back({search, count ? *count : 0});
    }
    PANTILE_ASSIGN_OR_RETURN(filters.all, countOf(library, "", progress));
    PANTILE_ASSIGN_OR_RETURN(filters.removed, countOf(library, "is:removed", progress));
    PANTILE_ASSIGN_OR_RETURN(const auto last, catalogue::lastAction(library));
    if (last) filters.undo = last->what;
    PANTILE_ASSIGN_OR_RETURN(const auto undone, catalogue::lastUndone(library));
    if (undone) filters.redo = undone->what;
    return filters;
}

}  // namespace pantile::desktop
