#pragma once

// How one texture comes from another, if the two look alike. See docs/look-alikes.md.

#include <optional>
#include <string>

#include "core/grid.h"
#include "core/palette.h"

namespace pantile::picture {

struct Likeness {
    /// What `how` leaves unexplained: the mean over the cells of the distance in OKLab, black to
    /// white being 100, rounded up; an unpainted cell is 100 from a painted one. 0: nothing is
    /// left.
    int distance = 0;
    std::string how;  ///< A clause such as "mirrored left to right, recoloured".

    bool operator==(const Likeness&) const = default;
};

/// What made `other` from the texture: other colours, turning, mirroring, shifting with
/// wrap-around, a whole factor of size or all of them together. Nothing if it was something else,
/// or if a picture that repeats itself left too many places to try. Shape: all indices must be of
/// the palettes.
std::optional<Likeness> sameShape(const core::Grid& grid, const core::Palette& palette,
                                  const core::Grid& other, const core::Palette& otherPalette);

/// Whether nearlySame can compare textures of these sizes, one of them turned if need be.
bool sizesCompare(core::Size size, core::Size other);

/// The least distance over turning and mirroring, if it is at most `within`; of sizes that differ
/// by a whole factor the smaller is enlarged. Nothing if the sizes are others. Shifts and other
/// colours count as differences here.
std::optional<Likeness> nearlySame(const core::Grid& grid, const core::Palette& palette,
                                   const core::Grid& other, const core::Palette& otherPalette,
                                   int within);

}  // namespace pantile::picture
