#pragma once

// Textures and figures in answers for people.

#include <cstdint>
#include <iosfwd>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/texture_row.h"
#include "cli/table.h"
#include "core/counted.h"
#include "core/duration.h"

namespace pantile::cli {

Table textureTable(std::span<const catalogue::TextureRow> rows);

/// A line for each thing that was put right in a code.
void printRepairs(std::ostream& out, const std::vector<std::string>& repairs);

using core::spokenTime;

using core::counted;

}  // namespace pantile::cli
