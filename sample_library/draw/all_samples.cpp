#include <iterator>

#include "draw/sample.h"

namespace pantile::sample_art {

std::vector<Sample> allSamples() {
    std::vector<Sample> all;
    for (const auto family :
         {stoneSamples, buildingSamples, sandAndWaterSamples, plantSamples, woodAndRopeSamples,
          metalAndGlassSamples, clothAndNetSamples, creatureSamples, thingSamples}) {
        std::vector<Sample> samples = family();
        std::move(samples.begin(), samples.end(), std::back_inserter(all));
    }
    return all;
}

}  // namespace pantile::sample_art
