#pragma once

// Colours that look alike become one. See docs/conversion.md section 5.2.

#include <cstddef>
#include <span>
#include <vector>

#include "core/colour.h"

namespace pantile::picture {

/// Black and white are so far apart; about 200 is just visible.
inline constexpr int kMergeUnits = 10'000;

/// As long as two colours of `palette` are closer than `within`, the closest two become one: their
/// mean in OKLab, weighed by how many of `cells` are nearest to each, in the earlier one's place.
/// The first `pinned` colours take others in, and stay themselves.
/// Units: within in ten-thousandths of OKLab (kMergeUnits); 0 merges nothing.
std::vector<core::Rgb8> mergedAlike(std::span<const core::Rgb8> cells,
                                    std::vector<core::Rgb8> palette, std::size_t pinned,
                                    int within);

}  // namespace pantile::picture
