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

/// Stores what was made of `before` elsewhere, by touched() step by step, as one new revision; all
/// or nothing, and no revision if it is the same. The texture's estimate is made anew.
/// Errors: NotFound; AlreadyExists as above; Busy if the texture is not `before` any more, as
/// another program has changed it; Io, Corrupt.
core::Result<TouchedUp> keepTouched(catalogue::Library& library, core::TextureId id,
                                    const core::Texture& before, const core::Texture& after);

/// Stores it as a texture of its own, whose title says that it was touched up; one that is there
/// already, removed or not, is that one. Errors: Busy, Io, Corrupt.
core::Result<core::TextureId> keepBeside(catalogue::Library& library, const core::Texture& texture);

/// The palettes of the library by their names; it must outlive what is given back.
PaletteLookup namedPalettes(const catalogue::Library& library);

}  // namespace pantile::tasks
