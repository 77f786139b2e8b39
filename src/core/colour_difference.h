#pragma once

// CIEDE2000: how different two colours look. About 1 is just visible side by side.
// Source: G. Sharma, W. Wu, E. N. Dalal, 'The CIEDE2000 Color-Difference Formula: Implementation
// Notes, Supplementary Test Data, and Mathematical Observations', Color Research & Application
// 30(1), 2005.

#include "core/colour_spaces.h"

namespace pantile::core {

/// With kL = kC = kH = 1; 0 for equal colours, symmetric. For reports: it uses the C library's
/// trigonometry, so nothing that is stored may hang on its last bits.
double ciede2000(const Lab& p, const Lab& q);

/// sqrt(C^7 / (C^7 + 25^7)) of equations 4 and 18; rises from 0 to 1.
double chromaWeight(double c);

/// Of two colours: chroma after the formula has stretched their red-green axes alike.
struct StretchedChromas {
    double a1 = 0;
    double a2 = 0;
    double c1 = 0;
    double c2 = 0;
};

/// A part of ciede2000, equations 2 to 6, for quick bounds.
StretchedChromas stretchedChromas(const Lab& p, const Lab& q);

}  // namespace pantile::core
