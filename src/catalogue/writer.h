#pragma once

// Adds textures, and what is worked out about them.

#include <cstdint>
#include <vector>

#include "catalogue/library.h"
#include "catalogue/texture_row.h"
#include "core/ids.h"
#include "core/result.h"
#include "core/texture.h"

namespace pantile::catalogue {

struct AddedTexture {
    enum class Outcome {
        Added,
        AlreadyThere,  ///< The same cells and palette were there; its words stay as they were.
        Recovered,     ///< The same, and it was removed: now it is back.
    };
    core::TextureId id;
    Outcome outcome = Outcome::Added;
};

/// Errors: Busy, Io, Corrupt.
core::Result<AddedTexture> addTexture(Library& library, const core::Texture& texture);

/// Notes what drawing and loading it would take; it is forgotten when the picture changes. No
/// revision. Errors: NotFound; InvalidInput if a number is negative or the key is not one line of
/// text of at most 200 characters.
core::Result<void> setEstimate(Library& library, core::TextureId id, const Estimate& estimate);

/// Forgets it, if there is one.
core::Result<void> dropEstimate(Library& library, core::TextureId id);

/// Notes how visible the worse seam of its picture is; the same picture keeps it. No revision.
/// Units: hundredths of picture::SeamDifference::ratio. Errors: NotFound; InvalidInput if negative.
core::Result<void> setSeam(Library& library, core::TextureId id, std::int64_t hundredths);

/// Textures, removed ones too, whose seams were never measured.
core::Result<std::vector<core::TextureId>> texturesWithoutSeam(const Library& library);

}  // namespace pantile::catalogue
