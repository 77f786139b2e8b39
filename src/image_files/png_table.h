#pragma once

// The palette of an indexed PNG as its chunks give it. Qt's table is not it: Qt gives a one-bit
// picture two colours even if the file has one.
// Source: W3C, 'Portable Network Graphics (PNG) Specification', third edition, 11.2.2 and 11.3.1.1.

#include <cstdint>
#include <span>
#include <vector>

#include "core/pixels.h"

namespace pantile::image_files {

/// The colours of PLTE with the alphas of tRNS, in order; at most 256. Empty if there is no PLTE.
std::vector<core::Rgba8> pngTable(std::span<const std::uint8_t> bytes);

}  // namespace pantile::image_files
