#include "desktop/jobs/tray_job.h"

#include <algorithm>

#include "catalogue/boards.h"
#include "catalogue/reader.h"
#include "tasks/drawing_estimate.h"
#include "tasks/library_place.h"

namespace pantile::desktop {

using core::Result;

namespace {

template <typename Named>
const Named* named(const std::vector<Named>& all, const std::string& name) {
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Named& each) { return each.name == name; });
    return found == all.end() ? nullptr : &*found;
}

const catalogue::StoredLoad* newest(const std::vector<catalogue::StoredLoad>& loads) {
    const auto found = std::max_element(
        loads.begin(), loads.end(),
        [](const auto& one, const auto& other) { return one.madeAt < other.madeAt; });
    return found == loads.end() ? nullptr : &*found;
}

}  // namespace

Result<TrayContents> readTray(const TrayRequest& request) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             tasks::openLibrary(request.libraryPath, tasks::Purpose::Look));
    TrayContents contents;
    PANTILE_ASSIGN_OR_RETURN(contents.loads, catalogue::listLoads(library));
    PANTILE_ASSIGN_OR_RETURN(contents.boards, catalogue::listBoards(library));
    PANTILE_ASSIGN_OR_RETURN(const auto defaults, tasks::drawingDefaults(library));
    const catalogue::StoredLoad* load = named(contents.loads, request.load);
    if (load == nullptr) load = newest(contents.loads);
    const core::Board* const board =
        named(contents.boards, load == nullptr ? request.board : load->board);
    contents.board = board == nullptr ? defaults.board : *board;
    if (load == nullptr) return contents;
    contents.load = load->name;
    contents.canvas = load->canvas;
    PANTILE_ASSIGN_OR_RETURN(contents.slots, catalogue::readRows(library, load->slots));
    return contents;
}

Result<tasks::LoadCosts> readTrayCosts(const std::filesystem::path& libraryPath,
                                       const TrayContents& contents, tasks::KnownCosts& known,
                                       const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Look));
    std::vector<core::TextureId> ids;
    for (const catalogue::TextureRow& row : contents.slots) ids.push_back(row.id);
    return tasks::loadCosts(library, contents.board.name, contents.canvas, ids, known, progress);
}

}  // namespace pantile::desktop
