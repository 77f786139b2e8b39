#pragma once

// Touches up a texture of the library: a list of operations, one revision. See docs/touch-up.md.

#include <cstdint>
#include <span>
#include <string>

#include "catalogue/library.h"
#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"
#include "tasks/touch_operations.h"

namespace pantile::tasks {

struct TouchStep {
    TouchOperation operation;
    std::string name;  ///< What the user calls it: leads its errors.
};

struct TouchedUp {
    int revision = 0;  ///< The texture's latest; it was there before if nothing changed.
    /// Cells whose index or colour is another, and those that only one of the two sizes has.
    std::int64_t changed = 0;
    core::Size size;  ///< After the touch-up.
};

/// The texture after all steps in order. Progress counts steps. Errors: as touched(), the
/// step's name in front; Cancelled.
core::Result<core::Texture> touchedUp(const core::Texture& texture,
                                      std::span<const TouchStep> steps, const PaletteLookup& lookUp,
                                      const core::Progress& progress = {});

/// The same with a texture of the library, as one new revision, which revertTexture takes back; all
/// or nothing, and no revision if nothing changed. Names are those of the library's palettes. The
/// texture's estimate is made anew. Other programs may write while it computes; if they change this
/// texture, it computes again.
/// Errors: NotFound; AlreadyExists, naming it, if another texture has the picture that comes out;
/// as touchedUp; Busy, also if others change the texture again and again; Io, Corrupt.
core::Result<TouchedUp> touchUp(catalogue::Library& library, core::TextureId id,
                                std::span<const TouchStep> steps,
                                const core::Progress& progress = {});

}  // namespace pantile::tasks
