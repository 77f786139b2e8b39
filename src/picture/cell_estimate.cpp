#include "picture/cell_estimate.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace pantile::picture {
namespace {

// T.871's constants.
constexpr double kRed = 0.299;
constexpr double kGreen = 0.587;
constexpr double kBlue = 0.114;
constexpr double kBlueScale = 2 * (1 - kBlue);
constexpr double kRedScale = 2 * (1 - kRed);

// A matrix, row by row.
struct Matrix {
    std::size_t rows = 0;
    std::size_t columns = 0;
    std::vector<double> values;

    Matrix(std::size_t rowCount, std::size_t columnCount)
        : rows(rowCount), columns(columnCount), values(rowCount * columnCount) {}

    double& at(std::size_t row, std::size_t column) { return values[row * columns + column]; }

    double at(std::size_t row, std::size_t column) const { return values[row * columns + column]; }
};

// How much of a cell a pixel shows.
struct Share {
    std::size_t cell = 0;
    double weight = 0;
};

// What each pixel of one side shows of which cells.
using Shares = std::vector<std::vector<Share>>;

enum class Chroma { Whole, Halved };

void addShares(std::vector<Share>& into, const std::vector<Share>& from, double weight) {
    for (const Share& share : from) {
        const auto same = std::find_if(into.begin(), into.end(),
                                       [&](const Share& s) { return s.cell == share.cell; });
        if (same == into.end())
            into.push_back({share.cell, share.weight * weight});
        else
            same->weight += share.weight * weight;
    }
}

Shares plainShares(const CellSide& side, int pixels) {
    Shares shares(static_cast<std::size_t>(pixels));
    for (int cell = 0; cell < side.cells; ++cell) {
        const int end = side.firstPixel(cell + 1, pixels);
        for (int x = side.firstPixel(cell, pixels); x < end; ++x)
            shares[static_cast<std::size_t>(x)] = {{static_cast<std::size_t>(cell), 1}};
    }
    return shares;
}

// The mean of two pixels is kept, and each pixel is later made of 3/4 of its own pair and 1/4 of
// the pair next to it, as JPEG decoders commonly do (common practice, no standard).
Shares halvedShares(const Shares& plain) {
    const std::size_t pairs = (plain.size() + 1) / 2;
    Shares kept(pairs);
    for (std::size_t pair = 0; pair < pairs; ++pair) {
        addShares(kept[pair], plain[2 * pair], 0.5);
        addShares(kept[pair], plain[std::min(2 * pair + 1, plain.size() - 1)], 0.5);
    }
    Shares shares(plain.size());
    for (std::size_t x = 0; x < plain.size(); ++x) {
        const std::size_t own = x / 2;
        const std::size_t next =
            x % 2 == 0 ? (own == 0 ? 0 : own - 1) : std::min(own + 1, pairs - 1);
        addShares(shares[x], kept[own], 0.75);
        addShares(shares[x], kept[next], 0.25);
    }
    return shares;
}

// The normal equations of one side, with a little more on the diagonal for cells that the pixels
// hardly tell apart.
Matrix normalMatrix(const Shares& shares, std::size_t cells) {
    constexpr double kRidge = 0.02;
    Matrix matrix(cells, cells);
    for (const std::vector<Share>& pixel : shares) {
        for (const Share& p : pixel) {
            for (const Share& q : pixel) matrix.at(p.cell, q.cell) += p.weight * q.weight;
        }
    }
    for (std::size_t cell = 0; cell < cells; ++cell) matrix.at(cell, cell) *= 1 + kRidge;
    return matrix;
}

// Solves a symmetric positive definite system for every column of `right`: Gaussian elimination,
// which needs no exchange of rows for such.
void solve(Matrix left, Matrix& right) {
    const std::size_t n = left.rows;
    const auto subtract = [](Matrix& m, std::size_t to, std::size_t from, double factor) {
        for (std::size_t c = 0; c < m.columns; ++c) m.at(to, c) -= factor * m.at(from, c);
    };
    for (std::size_t pivot = 0; pivot < n; ++pivot) {
        for (std::size_t row = pivot + 1; row < n; ++row) {
            const double factor = left.at(row, pivot) / left.at(pivot, pivot);
            if (factor == 0) continue;
            subtract(left, row, pivot, factor);
            subtract(right, row, pivot, factor);
        }
    }
    for (std::size_t pivot = n; pivot-- > 0;) {
        for (std::size_t c = 0; c < right.columns; ++c) right.at(pivot, c) /= left.at(pivot, pivot);
        for (std::size_t row = 0; row < pivot; ++row) {
            const double factor = left.at(row, pivot);
            if (factor != 0) subtract(right, row, pivot, factor);
        }
    }
}

Matrix transposed(const Matrix& matrix) {
    Matrix result(matrix.columns, matrix.rows);
    for (std::size_t row = 0; row < matrix.rows; ++row) {
        for (std::size_t column = 0; column < matrix.columns; ++column)
            result.at(column, row) = matrix.at(row, column);
    }
    return result;
}

// One channel of a picture as its cells show it through what a format does to them.
class Channel {
public:
    Channel(const Shares& columns, const Shares& rows, core::Size cells)
        : m_columns(columns),
          m_rows(rows),
          m_width(static_cast<std::size_t>(cells.width)),
          m_height(static_cast<std::size_t>(cells.height)) {}

    // `valueAt(x, y)` is what the pixels show beyond `cells`, which is brought nearer to them.
    template <typename ValueAt>
    void improve(Matrix& cells, ValueAt valueAt) const {
        Matrix sums(m_height, m_width);
        for (std::size_t y = 0; y < m_rows.size(); ++y) {
            const std::vector<double> shown = rowShown(cells, y);
            std::vector<double> row(m_width);
            for (std::size_t x = 0; x < m_columns.size(); ++x) {
                double rest = valueAt(x, y);
                for (const Share& share : m_columns[x]) rest -= share.weight * shown[share.cell];
                for (const Share& share : m_columns[x]) row[share.cell] += share.weight * rest;
            }
            for (const Share& share : m_rows[y]) {
                for (std::size_t cell = 0; cell < m_width; ++cell)
                    sums.at(share.cell, cell) += share.weight * row[cell];
            }
        }
        solve(normalMatrix(m_rows, m_height), sums);
        sums = transposed(sums);
        solve(normalMatrix(m_columns, m_width), sums);
        for (std::size_t row = 0; row < m_height; ++row) {
            for (std::size_t cell = 0; cell < m_width; ++cell)
                cells.at(row, cell) += sums.at(cell, row);
        }
    }

    template <typename ValueAt>
    double meanSquareResidual(const Matrix& cells, ValueAt valueAt) const {
        double sum = 0;
        double count = 0;
        for (std::size_t y = 0; y < m_rows.size(); ++y) {
            if (m_rows[y].empty()) continue;
            const std::vector<double> shown = rowShown(cells, y);
            for (std::size_t x = 0; x < m_columns.size(); ++x) {
                if (m_columns[x].empty()) continue;
                double rest = valueAt(x, y);
                for (const Share& share : m_columns[x]) rest -= share.weight * shown[share.cell];
                sum += rest * rest;
                ++count;
            }
        }
        return sum / count;
    }

private:
    std::vector<double> rowShown(const Matrix& cells, std::size_t y) const {
        std::vector<double> row(m_width);
        for (const Share& share : m_rows[y]) {
            for (std::size_t cell = 0; cell < m_width; ++cell)
                row[cell] += share.weight * cells.at(share.cell, cell);
        }
        return row;
    }

    const Shares& m_columns;
    const Shares& m_rows;
    std::size_t m_width;
    std::size_t m_height;
};

// A channel's cells, and what remains unexplained.
struct Explained {
    Matrix cells;
    double residual = 0;
};

template <typename ValueAt>
Explained fitted(const Channel& channel, Matrix start, ValueAt valueAt) {
    constexpr int kPasses = 3;  // each takes back most of what the heavier diagonal holds off
    for (int pass = 0; pass < kPasses; ++pass) channel.improve(start, valueAt);
    const double residual = channel.meanSquareResidual(start, valueAt);
    return {std::move(start), residual};
}

}  // namespace

Ycc toYcc(core::Rgb8 colour) {
    const double luma = kRed * colour.r + kGreen * colour.g + kBlue * colour.b;
    return {{luma, (colour.b - luma) / kBlueScale, (colour.r - luma) / kRedScale}};
}

core::Rgb8 toRgb8(const Ycc& colour) {
    const double red = colour.values[0] + kRedScale * colour.values[2];
    const double blue = colour.values[0] + kBlueScale * colour.values[1];
    const double green = (colour.values[0] - kRed * red - kBlue * blue) / kGreen;
    const auto level = [](double value) {
        return static_cast<std::uint8_t>(std::floor(std::clamp(value, 0.0, 255.0) + 0.5));
    };
    return {level(red), level(green), level(blue)};
}

CellEstimates estimateCells(const core::Pixels& pixels, const CellLines& lines) {
    const core::Size size{lines.columns.cells, lines.rows.cells};
    const Shares columns = plainShares(lines.columns, pixels.size.width);
    const Shares rows = plainShares(lines.rows, pixels.size.height);
    const Shares halvedColumns = halvedShares(columns);
    const Shares halvedRows = halvedShares(rows);
    const Channel plain(columns, rows, size);
    const Channel halved(halvedColumns, halvedRows, size);
    const auto pixelAt = [&](std::size_t x, std::size_t y) -> const core::Rgba8& {
        return pixels.at(static_cast<int>(x), static_cast<int>(y));
    };

    CellEstimates estimates{size, {}, {}, 0};
    const Matrix none(static_cast<std::size_t>(size.height), static_cast<std::size_t>(size.width));
    estimates.colours.resize(none.values.size());
    for (std::size_t channel = 0; channel < 3; ++channel) {
        const auto valueAt = [&](std::size_t x, std::size_t y) {
            return toYcc(pixelAt(x, y).rgb()).values.at(channel);
        };
        Explained fit = fitted(plain, none, valueAt);
        if (channel == 0) {
            estimates.lumaResidual = std::sqrt(fit.residual);
        } else {
            Explained other = fitted(halved, fit.cells, valueAt);
            if (other.residual < fit.residual) fit = std::move(other);
        }
        for (std::size_t i = 0; i < estimates.colours.size(); ++i)
            estimates.colours[i].values.at(channel) = fit.cells.values[i];
    }
    const auto alphaAt = [&](std::size_t x, std::size_t y) { return double{1} * pixelAt(x, y).a; };
    estimates.alphas = fitted(plain, none, alphaAt).cells.values;
    return estimates;
}

}  // namespace pantile::picture
