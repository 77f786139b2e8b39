#pragma once

// The tags of one texture in the tables tags and texture_tags.

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "catalogue/connection.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::catalogue {

/// Sorted by their bytes.
core::Result<std::vector<std::string>> loadTags(Connection& connection, core::TextureId id);

/// The tags that these words stand for: an alias becomes its tag, and what is a tag of the library
/// but for its letters' case or accents becomes that tag; a new one stands below a tag in the
/// letters of that.
core::Result<std::vector<std::string>> meantTags(Connection& connection,
                                                 std::span<const std::string> words);

/// Makes `tags` the tags of the texture.
core::Result<void> storeTags(Connection& connection, core::TextureId id,
                             const std::vector<std::string>& tags);

/// The tags of a revision, which stand with blanks between.
std::vector<std::string> splitTags(const std::string& tags);

/// Deletes tags that no texture has.
core::Result<void> dropUnusedTags(Connection& connection);

}  // namespace pantile::catalogue
