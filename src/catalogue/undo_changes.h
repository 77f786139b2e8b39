#pragma once

// Takes changes of rows back.

#include <span>
#include <vector>

#include "catalogue/connection.h"
#include "catalogue/row_changes.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::catalogue {

struct UndoneChanges {
    std::vector<core::TextureId> added;        ///< Textures that are new by them: left as they are.
    std::vector<core::TextureId> newPictures;  ///< Whose picture is another now.
    bool changedProfiles = false;              ///< Canvases or boards.
};

/// From the last change to the first. Textures that are new by the changes, with their words,
/// pictures and revisions, stay; they are told. Foreign keys have to be off; they are looked at in
/// the end. Errors: InvalidInput if a row is not as the changes left it, or others point to it;
/// Corrupt.
core::Result<UndoneChanges> undoChanges(Connection& connection, std::span<const RowChange> changes);

}  // namespace pantile::catalogue
