#include "picture/resample.h"

#include <algorithm>
#include <cstddef>

#include "picture/lanczos.h"
#include "picture/light_sum.h"

namespace pantile::picture {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

// The pixels that touch cell `cell`, and how much of each lies in it, in units of 1/denominator.
template <typename Use>
void forEachPixelUnder(const AxisSpan& span, int cell, Use use) {
    const std::int64_t begin = span.edge(cell);
    const std::int64_t end = span.edge(cell + 1);
    for (std::int64_t at = begin; at < end;) {
        const std::int64_t pixel = at / span.denominator;
        const std::int64_t next = std::min(end, (pixel + 1) * span.denominator);
        use(static_cast<int>(pixel), static_cast<double>(next - at));
        at = next;
    }
}

int pixelUnderCentre(const AxisSpan& span, int cell) {
    return static_cast<int>((span.edge(cell) + span.edge(cell + 1)) / (2 * span.denominator));
}

// Averages rows one after the other and remembers the last one, which the next cell may share.
class AreaScaler {
public:
    AreaScaler(const core::Pixels& pixels, const Framing& framing)
        : m_pixels(pixels),
          m_framing(framing),
          m_row(static_cast<std::size_t>(framing.painted.width)) {}

    std::vector<LinearPixel> cellsOfRow(int row) {
        std::vector<LightSum> sums(m_row.size());
        forEachPixelUnder(m_framing.rows, row, [&](int y, double weight) {
            averageRow(y);
            for (std::size_t x = 0; x < sums.size(); ++x) sums[x].add(m_row[x], weight);
        });
        const auto weight =
            static_cast<double>(m_framing.rows.step) * static_cast<double>(m_framing.columns.step);
        std::vector<LinearPixel> cells;
        cells.reserve(sums.size());
        for (const LightSum& sum : sums) cells.push_back(sum.mean(weight));
        return cells;
    }

private:
    void averageRow(int y) {
        if (y == m_rowNumber) return;
        m_rowNumber = y;
        for (int cell = 0; cell < m_framing.painted.width; ++cell) {
            LightSum sum;
            forEachPixelUnder(m_framing.columns, cell, [&](int x, double weight) {
                sum.add(m_light.weighted(m_pixels.at(x, y)), weight);
            });
            m_row[static_cast<std::size_t>(cell)] = sum;
        }
    }

    const core::Pixels& m_pixels;
    const Framing& m_framing;
    LightTable m_light;
    std::vector<LightSum> m_row;
    int m_rowNumber = -1;
};

class NearestScaler {
public:
    NearestScaler(const core::Pixels& pixels, const Framing& framing)
        : m_pixels(pixels), m_framing(framing) {}

    std::vector<LinearPixel> cellsOfRow(int row) const {
        const int y = pixelUnderCentre(m_framing.rows, row);
        std::vector<LinearPixel> cells;
        for (int cell = 0; cell < m_framing.painted.width; ++cell) {
            const core::Rgba8& pixel = m_pixels.at(pixelUnderCentre(m_framing.columns, cell), y);
            cells.push_back({core::toLinear(pixel.rgb()), pixel.a / 255.0});
        }
        return cells;
    }

private:
    const core::Pixels& m_pixels;
    const Framing& m_framing;
};

template <typename Scaler>
Result<LinearPicture> scaled(Scaler scaler, const Framing& framing,
                             const core::Progress& progress) {
    const auto width = static_cast<std::size_t>(framing.target.width);
    LinearPicture picture{framing.target, {}};
    picture.pixels.resize(width * static_cast<std::size_t>(framing.target.height));
    for (int row = 0; row < framing.painted.height; ++row) {
        if (progress.stopRequested())
            return Error{ErrorKind::Cancelled, "the conversion was stopped", ""};
        const std::vector<LinearPixel> cells = scaler.cellsOfRow(row);
        const std::size_t begin = static_cast<std::size_t>(framing.offset.y + row) * width +
                                  static_cast<std::size_t>(framing.offset.x);
        std::copy(cells.begin(), cells.end(),
                  picture.pixels.begin() + static_cast<std::ptrdiff_t>(begin));
        progress.tell(row + 1, framing.painted.height, "scaling");
    }
    return picture;
}

}  // namespace

Result<LinearPicture> resample(const core::Pixels& pixels, const Framing& framing, Scale scale,
                               const core::Progress& progress) {
    switch (scale) {
        case Scale::Area:
            return scaled(AreaScaler(pixels, framing), framing, progress);
        case Scale::Lanczos:
            return lanczosScaled(pixels, framing, progress);
        case Scale::Nearest:
            break;
    }
    return scaled(NearestScaler(pixels, framing), framing, progress);
}

}  // namespace pantile::picture
