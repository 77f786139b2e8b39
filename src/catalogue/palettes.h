#pragma once

// Palettes that have a name. A palette may have several; textures keep theirs without one.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/library.h"
#include "core/palette.h"
#include "core/result.h"

namespace pantile::catalogue {

struct NamedPalette {
    std::string name;
    core::Palette palette;

    bool operator==(const NamedPalette&) const = default;
};

/// Sorted by name. Errors: Corrupt.
core::Result<std::vector<NamedPalette>> listPalettes(const Library& library);

/// Errors: NotFound with the nearest name; Corrupt.
core::Result<NamedPalette> readPalette(const Library& library, std::string_view name);

/// Errors: AlreadyExists; as core::checkName.
core::Result<void> addPalette(Library& library, std::string_view name,
                              const core::Palette& palette);

/// Gives the name other colours, and is itself called `palette.name` then; textures and canvases
/// keep the colours that they have. Errors: NotFound; AlreadyExists; as core::checkName.
core::Result<void> changePalette(Library& library, std::string_view name,
                                 const NamedPalette& palette);

/// Takes the name away; textures and canvases keep the colours. Errors: NotFound.
core::Result<void> removePalette(Library& library, std::string_view name);

/// Any palette that the library knows, with a name or without; the first of several that have the
/// same fingerprint. Errors: Corrupt.
core::Result<std::optional<core::Palette>> findPalette(const Library& library,
                                                       core::Fingerprint fingerprint);

}  // namespace pantile::catalogue
