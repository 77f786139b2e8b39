#pragma once

// A mask without pattern or clumps: dots of every number lie as evenly as they can.

#include "picture/threshold_mask.h"

namespace pantile::picture {

/// Shape: 64 x 64.
/// Source: R. Ulichney, 'The void-and-cluster method for dither array generation', Proc. SPIE 1913,
/// 1993; made by tests/picture/void_and_cluster.h.
const ThresholdMask& blueNoise();

}  // namespace pantile::picture
