#pragma once

// Noisy colours gathered into the few that they must have been. See docs/conversion.md section 11.

#include <array>
#include <cstddef>
#include <vector>

namespace pantile::picture {

/// A colour in units of its expected error, one for each channel.
using NoisyColour = std::array<double, 3>;

/// Shape: for each of the given colours, the mean of those it belongs with.
/// Two groups become one if they are no further apart than the error explains: the one whose
/// joining costs least first (J. H. Ward, 'Hierarchical grouping to optimize an objective
/// function', J. American Statistical Association 58, 1963), until every joining would cost more
/// than a colour is worth (G. Schwarz, 'Estimating the dimension of a model', Annals of Statistics
/// 6(2), 1978).
/// Cost: colours times groups, and the third power of the groups, which are at most 256.
std::vector<NoisyColour> gatherAlike(const std::vector<NoisyColour>& colours);

}  // namespace pantile::picture
