#pragma once

// What runs off the window's thread to show a drawing: its plan, and the film of it and of the
// row-by-row way.

#include <filesystem>
#include <string>

#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"
#include "tasks/drawing_film.h"

namespace pantile::desktop {

struct FilmRequest {
    std::filesystem::path libraryPath;
    core::TextureId id;
    std::string board;   ///< Empty for the usual one.
    std::string canvas;  ///< Empty for what the texture is usually drawn on.

    bool operator==(const FilmRequest&) const = default;
};

/// Errors: as tasks::filmStored.
core::Result<tasks::FilmedDrawing> makeFilm(const FilmRequest& request,
                                            const core::Progress& progress);

}  // namespace pantile::desktop
