#pragma once

#include <cstdint>
#include <functional>
#include <iosfwd>
#include <string_view>

namespace pantile::cli {

/// A progress callback that draws a bar on the current line of `err` and clears it when all is
/// done.
std::function<void(std::int64_t done, std::int64_t total, std::string_view what)> progressBar(
    std::ostream& err, int columns);

}  // namespace pantile::cli
