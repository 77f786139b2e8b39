#pragma once

// Reads textures of a library: by id, by content, by query.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "catalogue/library.h"
#include "catalogue/query.h"
#include "catalogue/sort_key.h"
#include "catalogue/texture_row.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::catalogue {

/// The texture with the same cells and the same palette, removed or not.
core::Result<std::optional<core::TextureId>> findByContent(const Library& library,
                                                           const core::Grid& grid,
                                                           const core::Palette& palette);

/// Removed textures too. Errors: NotFound naming the id; Corrupt if what is stored does not unpack
/// or is not what its fingerprint says.
core::Result<TextureRecord> readTexture(const Library& library, core::TextureId id);

/// In the order of `ids`, without reading a picture. Errors: NotFound naming the id; Corrupt.
core::Result<std::vector<TextureRow>> readRows(const Library& library,
                                               std::span<const core::TextureId> ids);

/// Whose figures hold for what: none for a texture without.
struct EstimateKey {
    core::TextureId id;
    std::optional<std::string> profileKey;
};

/// Of every texture, removed ones too, by id. Errors: Corrupt.
core::Result<std::vector<EstimateKey>> estimateKeys(const Library& library);

struct FindOptions {
    SortKey sort;
    std::int64_t limit = -1;  ///< Rows at most; all if negative.
    std::int64_t offset = 0;
};

struct FoundTextures {
    std::int64_t total = 0;  ///< Without limit and offset.
    std::vector<TextureRow> rows;
};

/// Errors: InvalidInput for a negative offset; Internal for a `like:` without what it finds;
/// Corrupt, Io, Busy.
core::Result<FoundTextures> findTextures(const Library& library, const Query& query,
                                         const FindOptions& options = {});

/// The ids that findTextures gives, without reading the rows.
core::Result<std::vector<core::TextureId>> findIds(const Library& library, const Query& query,
                                                   const FindOptions& options = {});

}  // namespace pantile::catalogue
