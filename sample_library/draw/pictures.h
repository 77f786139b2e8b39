#pragma once

// The four larger pictures, to be converted: true colours, 512x384.

#include "core/pixels.h"

namespace pantile::sample_art {

core::Pixels lighthouseAtDusk();
core::Pixels rockPool();
core::Pixels stormWave();
core::Pixels harbourWall();

}  // namespace pantile::sample_art
