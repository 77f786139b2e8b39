#pragma once

// Lists of texture ids.

#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

#include "catalogue/connection.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::catalogue {

core::Error noSuchTexture(core::TextureId id);

/// Each id once, in the order in which they first stand.
/// Errors: NotFound naming the first that the library does not have, removed ones included.
core::Result<std::vector<core::TextureId>> knownIds(Connection& connection,
                                                    std::span<const core::TextureId> ids);

std::vector<core::TextureId> idsIn(std::span<const std::int64_t> numbers);

}  // namespace pantile::catalogue
