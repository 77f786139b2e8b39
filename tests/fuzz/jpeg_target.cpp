// JPEG files from anywhere: the coefficients that they say, and cells solved from those.

#include <algorithm>
#include <cmath>

#include "fuzz/targets.h"
#include "image_files/jpeg_planes.h"
#include "picture/coefficient_fit.h"
#include "picture/solved_cells.h"

namespace pantile::fuzz {
namespace {

constexpr int kPitch = 4;
constexpr int kMostSolvedSide = 48;  // larger ones take long

int blocksFor(int pixels, int pixelsASample) {
    const int side = core::kBlockSide * pixelsASample;
    return (pixels + side - 1) / side;
}

void requireWhole(const core::CoefficientPlanes& planes) {
    require(planes.size.width >= 1 && planes.size.height >= 1 &&
                planes.size.width <= image_files::kMaxPlanesSide &&
                planes.size.height <= image_files::kMaxPlanesSide,
            "sides are within their limit");
    for (const core::CoefficientPlane& plane : planes.channels) {
        require(plane.pixelsAcross >= 1 && plane.pixelsAcross <= 2 && plane.pixelsDown >= 1 &&
                    plane.pixelsDown <= 2,
                "a sample is the mean of one pixel or two either way");
        require(plane.blocks.width == blocksFor(planes.size.width, plane.pixelsAcross) &&
                    plane.blocks.height == blocksFor(planes.size.height, plane.pixelsDown),
                "blocks cover the picture and no more");
        require(plane.coefficients.size() == static_cast<std::size_t>(plane.blocks.width) *
                                                 static_cast<std::size_t>(plane.blocks.height) *
                                                 core::kBlockCoefficients,
                "every block is there");
    }
}

picture::CellSide cellsAlong(int pixels) {
    return {{0, kPitch, 1}, (pixels + kPitch - 1) / kPitch};
}

void trySolving(const core::CoefficientPlanes& planes) {
    if (std::max(planes.size.width, planes.size.height) > kMostSolvedSide) return;
    const picture::CellLines lines{cellsAlong(planes.size.width), cellsAlong(planes.size.height),
                                   false};
    const auto equations = picture::cellEquations(planes, planes.size, lines);
    require(equations.has_value(), "cells that hold every pixel have equations");
    const auto colours = picture::solveCells(*equations);
    require(colours.size() == static_cast<std::size_t>(lines.columns.cells * lines.rows.cells),
            "every cell has a colour");
    for (const picture::Ycc& colour : colours) {
        require(std::all_of(colour.values.begin(), colour.values.end(),
                            [](double value) { return std::isfinite(value); }),
                "colours are numbers");
    }
}

}  // namespace

void tryJpeg(Bytes input) {
    const auto planes = image_files::readJpegPlanes(input);
    if (!planes) return;
    requireWhole(*planes);
    trySolving(*planes);
}

}  // namespace pantile::fuzz
