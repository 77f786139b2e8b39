#pragma once

// What runs off the window's thread for the load tray: which loads there are, what lies in one and
// what that takes of its board.

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "catalogue/loads.h"
#include "catalogue/texture_row.h"
#include "core/board.h"
#include "core/progress.h"
#include "core/result.h"
#include "tasks/load_costs.h"

namespace pantile::desktop {

struct TrayRequest {
    std::filesystem::path libraryPath;
    std::string load;   ///< The one that is shown; another is if there is none of that name.
    std::string board;  ///< For which one the next load is made; empty for the usual one.
};

struct TrayContents {
    std::vector<catalogue::StoredLoad> loads;
    std::vector<core::Board> boards;
    std::string load;    ///< The one asked for, or the one made last; empty if there is none.
    core::Board board;   ///< Its board, or the one for the next.
    std::string canvas;  ///< Of all of the load; empty for each texture's own.
    std::vector<catalogue::TextureRow> slots;  ///< From the first slot on.
};

/// Errors: NotFound if the library has no board; errors of the library.
core::Result<TrayContents> readTray(const TrayRequest& request);

/// Errors: as tasks::loadCosts.
core::Result<tasks::LoadCosts> readTrayCosts(const std::filesystem::path& libraryPath,
                                             const TrayContents& contents, tasks::KnownCosts& known,
                                             const core::Progress& progress);

}  // namespace pantile::desktop
