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
#include "core/duration.h"

namespace pantile::cli {

Table textureTable(std::span<const catalogue::TextureRow> rows);

/// A line for each thing that was put right in a code.
void printRepairs(std::ostream& out, const std::vector<std::string>& repairs);

using core::spokenTime;

/// "1 texture", "3 textures".
std::string counted(std::int64_t number, std::string_view one, std::string_view many);

}  // namespace pantile::cli
