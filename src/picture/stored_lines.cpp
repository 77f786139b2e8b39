#include "picture/stored_lines.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "picture/cell_estimate.h"
#include "picture/coefficient_fit.h"

namespace pantile::picture {
namespace {

// Fitted to open art and to photographs (docs/measurements.md). Smaller cells are left out:
// photographs of low quality look so, up to cells of four pixels.
constexpr int kLeastStoredPitch = 5;
constexpr int kLeastStoredSide = 16;
constexpr double kLeastStored = 100;        // coefficients that say anything
constexpr double kMostStepsSquared = 0.25;  // that they may be off, in the mean

CellLines wholeCells(core::Size size, int pitch) {
    return {{{0, pitch, 1}, size.width / pitch}, {{0, pitch, 1}, size.height / pitch}, false};
}

// Coefficients that are 0 and that cells would bring about as 0 say nothing.
bool isStoredSo(const CellEquations& luma, const CellEstimates& cells) {
    double count = luma.strays;
    double squares = luma.strays;
    for (const CellCoefficient& coefficient : luma.coefficients) {
        if (coefficient.isMean) continue;
        double shown = 0;
        for (const CellShare& share : coefficient.shares)
            shown += share.weight * cells.colours[share.cell].values[0];
        if (coefficient.value == 0 && std::abs(shown) <= coefficient.step / 2) continue;
        const double steps = (shown - coefficient.value) / coefficient.step;
        squares += steps * steps;
        ++count;
    }
    return count >= kLeastStored && squares <= kMostStepsSquared * count;
}

bool isOfWholeBlocks(const CellSide& side) {
    return side.span.denominator == 1 && side.span.start % core::kBlockSide == 0 &&
           side.span.step % core::kBlockSide == 0;
}

}  // namespace

std::optional<CellLines> findStoredLines(const core::Picture& picture) {
    const core::Size size = picture.pixels.size;
    if (!picture.planes || std::int64_t{size.width} * size.height > kMostBoundedPixels)
        return std::nullopt;
    const int sides = std::gcd(size.width, size.height);
    const int most = std::min(size.width, size.height) / kLeastStoredSide;
    for (int pitch = most; pitch >= kLeastStoredPitch; --pitch) {
        if (sides % pitch != 0) continue;
        const CellLines lines = wholeCells(size, pitch);
        const auto equations = cellEquations(*picture.planes, size, lines);
        if (equations && isStoredSo((*equations)[0], estimateCells(picture.pixels, lines)))
            return lines;
    }
    return std::nullopt;
}

bool areOwnBlocks(const core::CoefficientPlanes& planes, const CellLines& lines) {
    constexpr std::size_t kBlocksAStray = 50;  // what editing in between may leave
    if (!isOfWholeBlocks(lines.columns) || !isOfWholeBlocks(lines.rows)) return false;
    const std::vector<std::int16_t>& stored = planes.channels[0].coefficients;
    std::size_t strays = 0;
    for (std::size_t i = 0; i < stored.size(); ++i) {
        if (i % core::kBlockCoefficients != 0 && stored[i] != 0) ++strays;
    }
    return strays * kBlocksAStray * core::kBlockCoefficients > stored.size();
}

}  // namespace pantile::picture
