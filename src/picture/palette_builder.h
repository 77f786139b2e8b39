#pragma once

// Chooses the colours of a palette from the colours of a picture. See docs/conversion.md section 5.

#include <span>
#include <vector>

#include "core/colour.h"

namespace pantile::picture {

/// The distinct colours of `colours` in order of first appearance, or one more than `most` of them
/// if there are more.
std::vector<core::Rgb8> distinctColours(std::span<const core::Rgb8> colours, int most);

/// At most `count` colours, `pinned` the first of them as they are, that stand for `colours`:
/// exactly those, in order of first appearance, if they are so few; otherwise `count`, from dark to
/// light behind the pinned ones. Pinned ones must differ, and be `count` at most. Cost: about 10 x
/// distinct colours x count. Source: variance cut and weighted k-means in OKLab, docs/conversion.md
/// section 5.
std::vector<core::Rgb8> chooseColours(std::span<const core::Rgb8> colours, int count,
                                      std::span<const core::Rgb8> pinned = {});

/// From dark to light in OKLab; of equally light ones, by their channels.
void sortByLightness(std::vector<core::Rgb8>& colours);

}  // namespace pantile::picture
