#pragma once

// The canvases of a library. The name of a canvas is its key.

#include <string_view>
#include <vector>

#include "catalogue/library.h"
#include "core/canvas.h"
#include "core/result.h"

namespace pantile::catalogue {

/// Sorted by name. Errors: Corrupt.
core::Result<std::vector<core::Canvas>> listCanvases(const Library& library);

/// Errors: NotFound with the nearest name; Corrupt.
core::Result<core::Canvas> readCanvas(const Library& library, std::string_view name);

/// Errors: AlreadyExists; as core::checkCanvas.
core::Result<void> addCanvas(Library& library, const core::Canvas& canvas);

/// Replaces the canvas of the same name. Errors: NotFound; as core::checkCanvas.
core::Result<void> setCanvas(Library& library, const core::Canvas& canvas);

/// Errors: NotFound; AlreadyExists; as core::checkName.
core::Result<void> renameCanvas(Library& library, std::string_view name, std::string_view newName);

/// Errors: NotFound.
core::Result<void> removeCanvas(Library& library, std::string_view name);

}  // namespace pantile::catalogue
