#include "picture/pixel_scale.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include "picture/alike_colours.h"
#include "picture/cell_estimate.h"
#include "picture/coefficient_fit.h"
#include "picture/solved_cells.h"
#include "picture/stored_lines.h"

namespace pantile::picture {
namespace {

core::Size sizeOf(const CellLines& lines) {
    return {lines.columns.cells, lines.rows.cells};
}

// The pixel in the middle of each cell, as it is.
core::Picture takenOut(const core::Picture& picture, const CellLines& lines) {
    const core::Size all = picture.pixels.size;
    core::Picture small{{sizeOf(lines), {}}, std::nullopt};
    if (picture.indexed) small.indexed = core::IndexedPixels{picture.indexed->table, {}};
    for (int row = 0; row < lines.rows.cells; ++row) {
        const int y = lines.rows.centrePixel(row, all.height);
        for (int column = 0; column < lines.columns.cells; ++column) {
            const int x = lines.columns.centrePixel(column, all.width);
            small.pixels.pixels.push_back(picture.pixels.at(x, y));
            if (!picture.indexed) continue;
            const auto at = static_cast<std::size_t>(y) * static_cast<std::size_t>(all.width) +
                            static_cast<std::size_t>(x);
            small.indexed->indices.push_back(picture.indexed->indices[at]);
        }
    }
    return small;
}

// How far estimates of a cell's channels are off, in levels: fitted to open art of 16x16 cells,
// enlarged 2 to 16 times and saved as JPEG at quality 85 (docs/measurements.md).
std::array<double, 3> expectedErrors(double lumaResidual, double pixelsACell) {
    const double luma = std::max(0.6, lumaResidual * (0.25 + 0.8 / pixelsACell));
    const double chroma = luma * (0.6 + 3.2 / pixelsACell);
    return {luma, chroma, chroma};
}

std::uint8_t alphaOf(double estimate) {
    constexpr double kNearlyAll = 16;  // levels off either end that are noise
    if (estimate < kNearlyAll) return 0;
    if (estimate > 255 - kNearlyAll) return 255;
    return static_cast<std::uint8_t>(std::floor(estimate + 0.5));
}

double lumaSpread(const core::Pixels& pixels) {
    double sum = 0;
    double squares = 0;
    for (const core::Rgba8& pixel : pixels.pixels) {
        const double luma = toYcc(pixel.rgb()).values[0];
        sum += luma;
        squares += luma * luma;
    }
    const auto count = static_cast<double>(pixels.pixels.size());
    return std::sqrt(std::max(0.0, squares / count - sum / count * (sum / count)));
}

// Whether flat cells are nearly all there is to see. Of open art saved at quality 85, 98 in 100
// pictures leave less than a quarter of their spread unexplained, and all less than 5 levels; of
// photographs that happen to have steps where cells would, nearly all leave more.
bool explains(const CellEstimates& cells, const core::Pixels& pixels) {
    constexpr double kMostLevels = 8;
    constexpr double kMostOfSpread = 0.25;
    return cells.lumaResidual <= kMostLevels &&
           cells.lumaResidual <= kMostOfSpread * lumaSpread(pixels);
}

core::Pixels coloured(const CellEstimates& cells, const CellLines& lines) {
    const double pixelsACell = static_cast<double>(lines.columns.span.step) /
                               static_cast<double>(lines.columns.span.denominator);
    const std::array<double, 3> errors = expectedErrors(cells.lumaResidual, pixelsACell);
    std::vector<NoisyColour> noisy;
    noisy.reserve(cells.colours.size());
    for (const Ycc& colour : cells.colours) {
        NoisyColour& scaled = noisy.emplace_back();
        for (std::size_t i = 0; i < errors.size(); ++i)
            scaled.at(i) = colour.values.at(i) / errors.at(i);
    }
    core::Pixels small{cells.size, {}};
    small.pixels.reserve(noisy.size());
    for (const NoisyColour& mean : gatherAlike(noisy)) {
        Ycc colour;
        for (std::size_t i = 0; i < errors.size(); ++i)
            colour.values.at(i) = mean.at(i) * errors.at(i);
        const core::Rgb8 rgb = toRgb8(colour);
        small.pixels.push_back({rgb.r, rgb.g, rgb.b, alphaOf(cells.alphas[small.pixels.size()])});
    }
    return small;
}

// From what a JPEG file says itself, if it was read.
std::optional<core::Pixels> solved(const core::Picture& picture, const CellLines& lines) {
    if (!picture.planes) return std::nullopt;
    const auto equations = cellEquations(*picture.planes, picture.pixels.size, lines);
    if (!equations) return std::nullopt;
    core::Pixels small{sizeOf(lines), {}};
    for (const Ycc& colour : solveCells(*equations)) {
        const core::Rgb8 rgb = toRgb8(colour);
        small.pixels.push_back({rgb.r, rgb.g, rgb.b, 255});
    }
    return small;
}

// By the steps between its pixels.
std::optional<EnlargedArt> seenArt(const core::Picture& picture) {
    const std::optional<CellLines> lines = findCellLines(picture.pixels);
    if (!lines) return std::nullopt;
    if (lines->exact) return EnlargedArt{takenOut(picture, *lines), *lines};
    if (picture.planes && areOwnBlocks(*picture.planes, *lines)) return std::nullopt;
    const CellEstimates cells = estimateCells(picture.pixels, *lines);
    if (!explains(cells, picture.pixels)) return std::nullopt;
    std::optional<core::Pixels> small = solved(picture, *lines);
    if (!small) small = coloured(cells, *lines);
    return EnlargedArt{{*std::move(small), std::nullopt}, *lines};
}

// By what a JPEG file stores.
std::optional<EnlargedArt> storedArt(const core::Picture& picture) {
    const std::optional<CellLines> lines = findStoredLines(picture);
    if (!lines) return std::nullopt;
    std::optional<core::Pixels> small = solved(picture, *lines);
    if (!small) return std::nullopt;
    return EnlargedArt{{*std::move(small), std::nullopt}, *lines};
}

}  // namespace

std::optional<EnlargedArt> findEnlargedArt(const core::Picture& picture) {
    std::optional<EnlargedArt> art = seenArt(picture);
    return art ? art : storedArt(picture);
}

}  // namespace pantile::picture
