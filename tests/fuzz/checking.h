#pragma once

// What the fuzz targets share: a check that ends the process, and a watch over memory.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>

#include "core/error.h"

namespace pantile::fuzz {

using Bytes = std::span<const std::uint8_t>;

inline std::string_view asText(Bytes input) {
    return {reinterpret_cast<const char*>(input.data()), input.size()};
}

/// Ends the process, with `property` on standard error, unless it holds.
void require(bool holds, const char* property);

/// Requires one of the kinds that bytes from outside may lead to, with a message and a hint.
void requireDecodeError(const core::Error& error);

/// Watches `operator new`: how many bytes were in use at once since it began, beyond those that
/// were before. One at a time; what zlib takes for itself by malloc is not seen.
class MemoryWatch {
public:
    MemoryWatch();

    std::size_t most() const;
};

}  // namespace pantile::fuzz
