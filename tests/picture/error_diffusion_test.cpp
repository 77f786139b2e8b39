#include "picture/error_diffusion.h"

#include <string>

#include <gtest/gtest.h>

namespace pantile::picture {
namespace {

// Two levels: 1 when the value is at least 1/2, otherwise 0. Rows joined by " / ".
std::string twoLevels(core::Size size, const std::vector<double>& field, Scan scan,
                      const DiffusionKernel& kernel = kFloydSteinberg) {
    std::string shown(field.size(), '?');
    diffuseError(size, field, kernel, scan,
                 [&shown](std::size_t cell, double value) -> std::optional<double> {
                     const double level = value >= 0.5 ? 1 : 0;
                     shown[cell] = level > 0 ? '1' : '0';
                     return value - level;
                 });
    std::string rows;
    for (int y = 0; y < size.height; ++y) {
        if (y > 0) rows += " / ";
        rows += shown.substr(static_cast<std::size_t>(y * size.width),
                             static_cast<std::size_t>(size.width));
    }
    return rows;
}

std::vector<double> constant(core::Size size, double value) {
    return std::vector<double>(static_cast<std::size_t>(size.width * size.height), value);
}

std::vector<double> ramp(core::Size size) {
    std::vector<double> field;
    for (int i = 0; i < size.width * size.height; ++i)
        field.push_back(static_cast<double>(i % size.width) / (size.width - 1));
    return field;
}

// Worked in exact fractions by two implementations, push and pull, with the weights of Floyd and
// Steinberg 1976 (from memory) and this rule: no clamping, error outside the grid is lost.
constexpr core::Size kSize{8, 4};

TEST(ErrorDiffusion, GivesTheWorkedFloydSteinbergOutputsInRasterOrder) {
    EXPECT_EQ(twoLevels(kSize, constant(kSize, 0.5), Scan::Raster),
              "10101010 / 01010101 / 10101010 / 01010101");
    EXPECT_EQ(twoLevels(kSize, constant(kSize, 0.25), Scan::Raster),
              "00000000 / 01010101 / 00000000 / 01010101");
    EXPECT_EQ(twoLevels(kSize, ramp(kSize), Scan::Raster),
              "00010111 / 00010111 / 00101111 / 00010101");
}

TEST(ErrorDiffusion, GivesTheWorkedFloydSteinbergOutputsInSerpentineOrder) {
    EXPECT_EQ(twoLevels(kSize, constant(kSize, 0.5), Scan::Serpentine),
              "10101010 / 01010101 / 10101010 / 01010101");
    EXPECT_EQ(twoLevels(kSize, constant(kSize, 0.25), Scan::Serpentine),
              "00000000 / 10101010 / 00000001 / 01010100");
    EXPECT_EQ(twoLevels(kSize, ramp(kSize), Scan::Serpentine),
              "00010111 / 00010111 / 00101101 / 00000111");
}

struct WorkedKernel {
    const DiffusionKernel* kernel;
    std::string half;     // the constant 1/2
    std::string quarter;  // the constant 1/4
    std::string ramp;     // x/7
};

// As above, with the weights of each kernel's source (from memory).
TEST(ErrorDiffusion, GivesTheWorkedOutputsOfEveryKernelInRasterOrder) {
    const std::vector<WorkedKernel> worked = {
        {&kJarvisJudiceNinke, "10101010 / 01010101 / 10101010 / 01010101",
         "00000000 / 00010000 / 01001010 / 00000001", "00001111 / 00011111 / 00001011 / 00010111"},
        {&kStucki, "10101010 / 01010101 / 10101010 / 01010101",
         "00000000 / 00100100 / 00010010 / 01000000", "00011111 / 00000111 / 00011011 / 00011111"},
        {&kAtkinson, "10011001 / 01100110 / 01100110 / 10011001",
         "00000000 / 00000000 / 00100100 / 00000100", "00001111 / 00011111 / 00010111 / 00001111"},
        {&kBurkes, "10101010 / 01010101 / 10101010 / 01010101",
         "00000000 / 01010100 / 00000010 / 01010000", "00010111 / 00011111 / 00000111 / 00111011"},
        {&kSierra, "10101010 / 01010101 / 10101010 / 01010101",
         "00000000 / 00100100 / 00000100 / 01010000", "00001111 / 00011111 / 00000111 / 00110111"},
    };
    for (const WorkedKernel& expected : worked) {
        const DiffusionKernel& kernel = *expected.kernel;
        EXPECT_EQ(twoLevels(kSize, constant(kSize, 0.5), Scan::Raster, kernel), expected.half);
        EXPECT_EQ(twoLevels(kSize, constant(kSize, 0.25), Scan::Raster, kernel), expected.quarter);
        EXPECT_EQ(twoLevels(kSize, ramp(kSize), Scan::Raster, kernel), expected.ramp);
    }
}

TEST(ErrorDiffusion, HandsOnTheWholeErrorButForAtkinsonsQuarter) {
    for (const DiffusionKernel* kernel :
         {&kFloydSteinberg, &kJarvisJudiceNinke, &kStucki, &kAtkinson, &kSierra, &kBurkes}) {
        int weights = 0;
        for (const DiffusionShare& share : kernel->shares) {
            weights += share.weight;
            EXPECT_TRUE(share.dy > 0 || (share.dy == 0 && share.dx > 0)) << "cells still to come";
        }
        EXPECT_EQ(weights, kernel == &kAtkinson ? 6 : kernel->divisor);
    }
}

TEST(ErrorDiffusion, HandsOnTheSharesWorkedByHand) {
    // 3x2, all 1/2: cell (0,0) shows 1, its error is -1/2; cell (1,0) then is 9/32 and shows 0.
    std::vector<double> seen;
    diffuseError({3, 2}, constant({3, 2}, 0.5), kFloydSteinberg, Scan::Raster,
                 [&seen](std::size_t, double value) -> std::optional<double> {
                     seen.push_back(value);
                     return value - (value >= 0.5 ? 1 : 0);
                 });
    EXPECT_EQ(seen[1], 9.0 / 32);
    EXPECT_EQ(seen[2], 319.0 / 512);
    EXPECT_EQ(twoLevels({3, 2}, constant({3, 2}, 0.5), Scan::Raster), "101 / 010");
}

TEST(ErrorDiffusion, HandsOnTheWholeErrorWithinTheGrid) {
    // A single error in the middle: all of it arrives, in both directions of the scan.
    for (const int row : {0, 1}) {
        double handedOn = 0;
        const std::size_t middle = static_cast<std::size_t>(row) * 3 + 1;
        diffuseError({3, 3}, constant({3, 3}, 0.0), kFloydSteinberg, Scan::Serpentine,
                     [&](std::size_t cell, double value) -> std::optional<double> {
                         handedOn += value;
                         if (cell == middle) return 1.0;
                         return std::nullopt;
                     });
        EXPECT_DOUBLE_EQ(handedOn, 1) << "row " << row;
    }
}

TEST(ErrorDiffusion, MirrorsTheKernelOnOddRows) {
    std::vector<double> seen(9);
    diffuseError({3, 3}, constant({3, 3}, 0.0), kFloydSteinberg, Scan::Serpentine,
                 [&](std::size_t cell, double value) -> std::optional<double> {
                     seen[cell] = value;
                     if (cell == 4) return 16.0;
                     return std::nullopt;
                 });
    EXPECT_EQ(seen, (std::vector<double>{0, 0, 0, 7, 0, 0, 1, 5, 3}));
}

}  // namespace
}  // namespace pantile::picture
