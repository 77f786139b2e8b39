#pragma once

// Sample: one demo texture with its words, and the families that make them.

#include <string>
#include <vector>

#include "draw/sheet.h"

namespace pantile::sample_art {

struct Sample {
    std::string title;
    std::string tags;  ///< Words with blanks between.
    Sheet sheet;
};

std::vector<Sample> stoneSamples();
std::vector<Sample> buildingSamples();
std::vector<Sample> sandAndWaterSamples();
std::vector<Sample> plantSamples();
std::vector<Sample> woodAndRopeSamples();
std::vector<Sample> metalAndGlassSamples();
std::vector<Sample> clothAndNetSamples();
std::vector<Sample> creatureSamples();
std::vector<Sample> thingSamples();

/// All families, in the order in which contents.csv lists them.
std::vector<Sample> allSamples();

}  // namespace pantile::sample_art
