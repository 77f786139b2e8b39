#pragma once

// Finds textures by a query, with look-alikes: only here both queries and pictures are known.

#include <optional>
#include <string>
#include <vector>

#include "catalogue/library.h"
#include "catalogue/query.h"
#include "catalogue/reader.h"
#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::tasks {

/// Errors: as catalogue::findTextures; NotFound for a `like:` of no texture; as similarTo.
core::Result<catalogue::FoundTextures> findTextures(catalogue::Library& library,
                                                    catalogue::Query query,
                                                    const catalogue::FindOptions& options = {},
                                                    const core::Progress& progress = {});

/// The ids that findTextures gives, without reading the rows.
core::Result<std::vector<core::TextureId>> findIds(catalogue::Library& library,
                                                   catalogue::Query query,
                                                   const catalogue::FindOptions& options = {},
                                                   const core::Progress& progress = {});

/// Which shelf the query asks for beside all else: of `shelf:` filters that must match, the only
/// one.
std::optional<std::string> shelfAsked(const catalogue::Query& query);

/// All ids that the query finds, in the order of the shelf that it asks for, else by their number.
/// Errors: as findTextures.
core::Result<std::vector<core::TextureId>> findInOrder(catalogue::Library& library,
                                                       const catalogue::Query& query,
                                                       const core::Progress& progress = {});

}  // namespace pantile::tasks
