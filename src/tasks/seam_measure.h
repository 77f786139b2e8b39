#pragma once

// Keeps in the library how visible each texture's seams are, for is:seamless.

#include "catalogue/library.h"
#include "core/ids.h"
#include "core/result.h"
#include "core/texture.h"

namespace pantile::tasks {

/// Measures the texture, which is that of the id. Errors: as catalogue::setSeam.
core::Result<void> noteSeam(catalogue::Library& library, core::TextureId id,
                            const core::Texture& texture);

/// Measures those that an older program added, if any; damaged ones are passed over.
/// Errors: Busy, Io.
core::Result<void> measureMissingSeams(catalogue::Library& library);

}  // namespace pantile::tasks
