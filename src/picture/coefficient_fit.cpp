#include "picture/coefficient_fit.h"

#include <algorithm>
#include <utility>

namespace pantile::picture {
namespace {

constexpr auto kSide = static_cast<std::size_t>(core::kBlockSide);

// Halves of cos(k pi / 16).
constexpr std::array<double, 9> kHalfCosines{
    0.5,
    0.49039264020161522,
    0.46193976625564337,
    0.41573480615127262,
    0.35355339059327379,
    0.27778511650980109,
    0.19134171618254489,
    0.09754516100806413,
    0,
};

// T.81, A.3.3, along one side.
double basis(std::size_t frequency, std::size_t sample) {
    if (frequency == 0) return kHalfCosines[4];
    std::size_t angle = (2 * sample + 1) * frequency % 32;
    if (angle > 16) angle = 32 - angle;
    return angle > 8 ? -kHalfCosines.at(16 - angle) : kHalfCosines.at(angle);
}

// What each coefficient of one side's blocks shows of which cells.
using CellShares = std::vector<std::vector<CellShare>>;

std::vector<std::size_t> cellsOf(const CellSide& side, int pixels) {
    std::vector<std::size_t> cells;
    cells.reserve(static_cast<std::size_t>(pixels));
    for (int cell = 0; cell < side.cells; ++cell) {
        for (int x = side.firstPixel(cell, pixels); x < side.firstPixel(cell + 1, pixels); ++x)
            cells.push_back(static_cast<std::size_t>(cell));
    }
    return cells;
}

// The border's pixels go on beyond it, as encoders commonly have it (common practice, no standard).
CellShares sharesOf(const std::vector<std::size_t>& cells, int blocks, int pixelsASample) {
    const auto sample = static_cast<std::size_t>(pixelsASample);
    CellShares shares(static_cast<std::size_t>(blocks) * kSide);
    for (std::size_t at = 0; at < shares.size(); ++at) {
        std::vector<CellShare>& into = shares[at];
        for (std::size_t i = 0; i < kSide * sample; ++i) {
            const std::size_t pixel = at / kSide * kSide * sample + i;
            const std::size_t cell = cells[std::min(pixel, cells.size() - 1)];
            const double weight = basis(at % kSide, i / sample) / pixelsASample;
            if (into.empty() || into.back().cell != cell) into.push_back({cell, 0});
            into.back().weight += weight;
        }
    }
    return shares;
}

// A coefficient lies anywhere within its step; encoders round samples besides.
double certainty(double step) {
    constexpr double kRounding = 0.15;
    return 1 / (step * step / 12 + kRounding);
}

void addCoefficient(CellEquations& equations, const CellCoefficient& coefficient) {
    const std::size_t cells = equations.right.size();
    const double weight = certainty(coefficient.step);
    for (const CellShare& p : coefficient.shares) {
        equations.right[p.cell] += weight * p.weight * coefficient.value;
        for (const CellShare& q : coefficient.shares)
            equations.normal[p.cell * cells + q.cell] += weight * p.weight * q.weight;
    }
}

std::vector<CellShare> product(const std::vector<CellShare>& row,
                               const std::vector<CellShare>& column, std::size_t columns) {
    constexpr double kNothing = 1e-12;  // what rounding leaves of weights that cancel
    std::vector<CellShare> shares;
    shares.reserve(row.size() * column.size());
    for (const CellShare& y : row) {
        for (const CellShare& x : column) {
            const double weight = y.weight * x.weight;
            if (weight * weight > kNothing * kNothing)
                shares.push_back({y.cell * columns + x.cell, weight});
        }
    }
    return shares;
}

// Cells of which the file says nothing are taken for mid-grey, give or take 200 levels.
CellEquations unknownCells(std::size_t cells) {
    constexpr double kPrior = 1.0 / (200.0 * 200.0);
    CellEquations equations{
        std::vector<double>(cells * cells), std::vector<double>(cells, 128 * kPrior), {}, 0};
    for (std::size_t cell = 0; cell < cells; ++cell) equations.normal[cell * cells + cell] = kPrior;
    return equations;
}

CellEquations equationsOf(const core::CoefficientPlane& plane,
                          const std::vector<std::size_t>& columns,
                          const std::vector<std::size_t>& rows, bool keep) {
    constexpr double kMiddleLevel = 128;
    const CellShares across = sharesOf(columns, plane.blocks.width, plane.pixelsAcross);
    const CellShares down = sharesOf(rows, plane.blocks.height, plane.pixelsDown);
    const std::size_t width = columns.back() + 1;
    CellEquations equations = unknownCells(width * (rows.back() + 1));
    for (std::size_t y = 0; y < down.size(); ++y) {
        for (std::size_t x = 0; x < across.size(); ++x) {
            const std::size_t block =
                y / kSide * static_cast<std::size_t>(plane.blocks.width) + x / kSide;
            const std::size_t inBlock = y % kSide * kSide + x % kSide;
            const double step = plane.steps.at(inBlock);
            const double level = inBlock == 0 ? kMiddleLevel * core::kBlockSide : 0;
            const int stored = plane.coefficients[block * core::kBlockCoefficients + inBlock];
            CellCoefficient coefficient{product(down[y], across[x], width), stored * step + level,
                                        step, inBlock == 0};
            if (coefficient.shares.empty()) {
                if (stored != 0) ++equations.strays;
                continue;
            }
            addCoefficient(equations, coefficient);
            if (keep) equations.coefficients.push_back(std::move(coefficient));
        }
    }
    return equations;
}

}  // namespace

std::optional<std::array<CellEquations, 3>> cellEquations(const core::CoefficientPlanes& planes,
                                                          core::Size pixels,
                                                          const CellLines& lines) {
    if (planes.size != pixels) return std::nullopt;
    const std::vector<std::size_t> columns = cellsOf(lines.columns, pixels.width);
    const std::vector<std::size_t> rows = cellsOf(lines.rows, pixels.height);
    if (columns.size() != static_cast<std::size_t>(pixels.width) ||
        rows.size() != static_cast<std::size_t>(pixels.height))
        return std::nullopt;
    if ((columns.back() + 1) * (rows.back() + 1) > kMostSolvedCells) return std::nullopt;
    const bool keep = std::int64_t{pixels.width} * pixels.height <= kMostBoundedPixels;
    std::array<CellEquations, 3> equations;
    for (std::size_t i = 0; i < equations.size(); ++i)
        equations.at(i) = equationsOf(planes.channels.at(i), columns, rows, keep);
    return equations;
}

}  // namespace pantile::picture
