#pragma once

// Whether a texture keeps the structure of its picture. See docs/conversion.md section 10.

#include <optional>

#include "picture/linear_picture.h"

namespace pantile::picture {

/// SSIM of brightness (0..255): the mean over all windows of 11x11 cells that lie wholly inside and
/// are painted in both. 1 for equal pictures, symmetric; nothing if there is no such window, as in
/// pictures with a side below 11. Both must have the same size. For reports.
/// Source: Z. Wang, A. C. Bovik, H. R. Sheikh, E. P. Simoncelli, 'Image quality assessment: from
/// error visibility to structural similarity', IEEE Trans. Image Processing 13(4), 2004, section
/// III.B: a Gaussian window of sigma 1.5, K1 = 0.01, K2 = 0.03. Brightness is the luma of ITU-R
/// BT.601 of 8-bit sRGB.
std::optional<double> structuralSimilarity(const CellColours& wanted, const CellColours& shown);

}  // namespace pantile::picture
