#include "picture/lanczos.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "core/exact_math.h"
#include "picture/light_sum.h"

namespace pantile::picture {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

constexpr int kLobes = 3;
constexpr double kPi = 3.14159265358979323846264338328;

double sinc(double x) {
    return x == 0 ? 1 : core::sinPi(x) / (kPi * x);
}

// C. E. Duchon, 'Lanczos filtering in one and two dimensions', J. Applied Meteorology 18, 1979.
double kernel(double x) {
    return std::abs(x) < kLobes ? sinc(x) * sinc(x / kLobes) : 0;
}

// What one cell takes of which pixels; the weights add up to 1.
struct Taps {
    int first = 0;
    std::vector<double> weights;
};

// The kernel is as wide as cells are, but never narrower than pixels. It is cut where the picture
// ends, and what is left counts for all.
Taps tapsOf(const AxisSpan& span, int cell, int pixels) {
    const double centre = static_cast<double>(span.edge(cell) + span.edge(cell + 1)) /
                          static_cast<double>(2 * span.denominator);
    const double width =
        std::max(1.0, static_cast<double>(span.step) / static_cast<double>(span.denominator));
    const double reach = kLobes * width;
    Taps taps{std::max(0, static_cast<int>(std::floor(centre - reach + 0.5))), {}};
    const int end = std::min(pixels, static_cast<int>(std::floor(centre + reach + 0.5)));
    double sum = 0;
    for (int x = taps.first; x < end; ++x) {
        taps.weights.push_back(kernel((x + 0.5 - centre) / width));
        sum += taps.weights.back();
    }
    for (double& weight : taps.weights) weight /= sum;
    return taps;
}

std::vector<Taps> allTapsOf(const AxisSpan& span, int cells, int pixels) {
    std::vector<Taps> taps;
    taps.reserve(static_cast<std::size_t>(cells));
    for (int cell = 0; cell < cells; ++cell) taps.push_back(tapsOf(span, cell, pixels));
    return taps;
}

LinearPixel withinLimits(LinearPixel pixel) {
    for (double* value : {&pixel.colour.r, &pixel.colour.g, &pixel.colour.b, &pixel.alpha})
        *value = std::clamp(*value, 0.0, 1.0);
    return pixel;
}

class Scaler {
public:
    Scaler(const core::Pixels& pixels, const Framing& framing)
        : m_pixels(pixels),
          m_columns(allTapsOf(framing.columns, framing.painted.width, pixels.size.width)),
          m_rows(allTapsOf(framing.rows, framing.painted.height, pixels.size.height)),
          m_row(m_columns.size()),
          m_sums(m_columns.size() * m_rows.size()) {}

    // Rows of pixels one after the other: each goes to the few rows of cells that it touches.
    void addRow(int y) {
        bool isScaled = false;
        for (std::size_t row = 0; row < m_rows.size(); ++row) {
            const int at = y - m_rows[row].first;
            if (at < 0 || static_cast<std::size_t>(at) >= m_rows[row].weights.size()) continue;
            if (!isScaled) scaleRow(y);
            isScaled = true;
            const double weight = m_rows[row].weights[static_cast<std::size_t>(at)];
            for (std::size_t cell = 0; cell < m_row.size(); ++cell)
                m_sums[row * m_row.size() + cell].add(m_row[cell], weight);
        }
    }

    LinearPicture picture(const Framing& framing) const {
        LinearPicture result{framing.target, {}};
        const auto width = static_cast<std::size_t>(framing.target.width);
        result.pixels.resize(width * static_cast<std::size_t>(framing.target.height));
        for (std::size_t i = 0; i < m_sums.size(); ++i) {
            const std::size_t x = i % m_row.size() + static_cast<std::size_t>(framing.offset.x);
            const std::size_t y = i / m_row.size() + static_cast<std::size_t>(framing.offset.y);
            result.pixels[y * width + x] = withinLimits(m_sums[i].mean(1));
        }
        return result;
    }

private:
    void scaleRow(int y) {
        for (std::size_t cell = 0; cell < m_row.size(); ++cell) {
            LightSum sum;
            int x = m_columns[cell].first;
            for (const double weight : m_columns[cell].weights)
                sum.add(m_light.weighted(m_pixels.at(x++, y)), weight);
            m_row[cell] = sum;
        }
    }

    const core::Pixels& m_pixels;
    LightTable m_light;
    std::vector<Taps> m_columns;
    std::vector<Taps> m_rows;
    std::vector<LightSum> m_row;
    std::vector<LightSum> m_sums;
};

}  // namespace

Result<LinearPicture> lanczosScaled(const core::Pixels& pixels, const Framing& framing,
                                    const core::Progress& progress) {
    Scaler scaler(pixels, framing);
    for (int y = 0; y < pixels.size.height; ++y) {
        if (progress.stopRequested())
            return Error{ErrorKind::Cancelled, "the conversion was stopped", ""};
        scaler.addRow(y);
        progress.tell(y + 1, pixels.size.height, "scaling");
    }
    return scaler.picture(framing);
}

}  // namespace pantile::picture
