#pragma once

// Palette: an ordered list of colours; one index may mean 'leave unpainted'.

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "core/colour.h"
#include "core/fingerprint.h"
#include "core/grid.h"
#include "core/result.h"

namespace pantile::core {

inline constexpr int kMinPaletteColours = 2;
inline constexpr int kMaxPaletteColours = 256;

/// Shape: 2..256 colours; order matters, equal colours may stand twice.
class Palette {
public:
    /// Errors: InvalidInput if there are fewer than 2 or more than 256 colours, or if `transparent`
    /// is no index of them.
    static Result<Palette> create(std::vector<Rgb8> colours,
                                  std::optional<PaletteIndex> transparent = std::nullopt);

    int size() const { return static_cast<int>(m_colours.size()); }

    std::span<const Rgb8> colours() const { return m_colours; }

    Rgb8 operator[](PaletteIndex index) const { return m_colours[index]; }

    std::optional<PaletteIndex> transparent() const { return m_transparent; }

    /// Over the colours in order and the transparent index; equal palettes have equal fingerprints.
    Fingerprint fingerprint() const;

    bool operator==(const Palette&) const = default;

private:
    Palette(std::vector<Rgb8> colours, std::optional<PaletteIndex> transparent)
        : m_colours(std::move(colours)), m_transparent(transparent) {}

    std::vector<Rgb8> m_colours;
    std::optional<PaletteIndex> m_transparent;
};

}  // namespace pantile::core
