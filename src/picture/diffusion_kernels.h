#pragma once

// How error diffusion shares out what a cell could not show. See docs/conversion.md section 7.1.

#include <array>
#include <span>

namespace pantile::picture {

/// One share of the error: `weight` over the kernel's divisor goes to the cell dx further in the
/// direction of the scan and dy rows below.
struct DiffusionShare {
    int dx = 0;
    int dy = 0;
    int weight = 0;
};

struct DiffusionKernel {
    std::span<const DiffusionShare> shares;
    int divisor = 1;
};

inline constexpr std::array<DiffusionShare, 4> kFloydSteinbergShares{
    {{1, 0, 7}, {-1, 1, 3}, {0, 1, 5}, {1, 1, 1}}};

/// Source: R. W. Floyd, L. Steinberg, 'An adaptive algorithm for spatial grey scale', Proc. SID
/// 17(2), 1976.
inline constexpr DiffusionKernel kFloydSteinberg{kFloydSteinbergShares, 16};

inline constexpr std::array<DiffusionShare, 12> kJarvisJudiceNinkeShares{{{1, 0, 7},
                                                                          {2, 0, 5},
                                                                          {-2, 1, 3},
                                                                          {-1, 1, 5},
                                                                          {0, 1, 7},
                                                                          {1, 1, 5},
                                                                          {2, 1, 3},
                                                                          {-2, 2, 1},
                                                                          {-1, 2, 3},
                                                                          {0, 2, 5},
                                                                          {1, 2, 3},
                                                                          {2, 2, 1}}};

/// Source: J. F. Jarvis, C. N. Judice, W. H. Ninke, 'A survey of techniques for the display of
/// continuous tone pictures on bilevel displays', Computer Graphics and Image Processing 5(1),
/// 1976.
inline constexpr DiffusionKernel kJarvisJudiceNinke{kJarvisJudiceNinkeShares, 48};

inline constexpr std::array<DiffusionShare, 12> kStuckiShares{{{1, 0, 8},
                                                               {2, 0, 4},
                                                               {-2, 1, 2},
                                                               {-1, 1, 4},
                                                               {0, 1, 8},
                                                               {1, 1, 4},
                                                               {2, 1, 2},
                                                               {-2, 2, 1},
                                                               {-1, 2, 2},
                                                               {0, 2, 4},
                                                               {1, 2, 2},
                                                               {2, 2, 1}}};

/// Source: P. Stucki, 'MECCA - a multiple-error correcting computation algorithm for bilevel image
/// hardcopy reproduction', IBM Research Report RZ1060, 1981.
inline constexpr DiffusionKernel kStucki{kStuckiShares, 42};

inline constexpr std::array<DiffusionShare, 6> kAtkinsonShares{
    {{1, 0, 1}, {2, 0, 1}, {-1, 1, 1}, {0, 1, 1}, {1, 1, 1}, {0, 2, 1}}};

/// Hands on 6/8 of the error: more contrast, less of the shades near black and white.
/// Source: B. Atkinson, unpublished, mid 1980s.
inline constexpr DiffusionKernel kAtkinson{kAtkinsonShares, 8};

inline constexpr std::array<DiffusionShare, 10> kSierraShares{{{1, 0, 5},
                                                               {2, 0, 3},
                                                               {-2, 1, 2},
                                                               {-1, 1, 4},
                                                               {0, 1, 5},
                                                               {1, 1, 4},
                                                               {2, 1, 2},
                                                               {-1, 2, 2},
                                                               {0, 2, 3},
                                                               {1, 2, 2}}};

/// The kernel of three rows. Source: F. Sierra, unpublished, 1989.
inline constexpr DiffusionKernel kSierra{kSierraShares, 32};

inline constexpr std::array<DiffusionShare, 7> kBurkesShares{
    {{1, 0, 8}, {2, 0, 4}, {-2, 1, 2}, {-1, 1, 4}, {0, 1, 8}, {1, 1, 4}, {2, 1, 2}}};

/// Source: D. Burkes, 'Presentation of the Burkes error filter for use in preparing continuous-tone
/// images for presentation on bi-level devices', unpublished, 1988.
inline constexpr DiffusionKernel kBurkes{kBurkesShares, 32};

}  // namespace pantile::picture
