#pragma once

// Deeds: what people do to a library, each one action, chosen by numbers alone, so that the same
// deeds on another library make it equal.

#include <cstdint>
#include <filesystem>
#include <span>
#include <string_view>

#include "catalogue/library.h"
#include "core/result.h"
#include "support/random.h"

namespace pantile::tests {

struct Deed {
    std::string_view name;
    /// Refused where there is nothing to do it to; the library is then as before.
    core::Result<void> (*act)(catalogue::Library& library, Random& random);
};

std::span<const Deed> deeds();

/// How libraries are opened for the deed of that number: the number is the time.
catalogue::OpenOptions deedOptions(const std::int64_t& number);

/// Does the deed that the seed and the number choose.
core::Result<void> doDeed(catalogue::Library& library, std::uint64_t seed, std::int64_t number);

/// Whether the deed could not be done there, rather than failed.
bool isRefusal(const core::Error& error);

/// A new library with boards, a canvas, and the first hundred deeds done.
void makeUsedLibrary(const std::filesystem::path& path);

/// Only what deeds need to begin with.
core::Result<void> prepareForDeeds(catalogue::Library& library);

}  // namespace pantile::tests
