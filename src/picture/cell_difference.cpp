#include "picture/cell_difference.h"

#include <cmath>

#include "core/colour_spaces.h"

namespace pantile::picture {
namespace {

constexpr std::int64_t kSteps = 10'000;

std::int64_t inSteps(double value) {
    return static_cast<std::int64_t>(std::floor(value * static_cast<double>(kSteps) + 0.5));
}

// IEEE 754 rounds the square root correctly, and squares are far below 2^53.
std::int64_t wholeRoot(std::int64_t square) {
    return static_cast<std::int64_t>(std::sqrt(static_cast<double>(square)));
}

struct StepLab {
    std::int64_t l = 0;
    std::int64_t a = 0;
    std::int64_t b = 0;
};

StepLab toSteps(core::Rgb8 colour) {
    const core::OkLab lab = core::toOkLab(colour);
    return {inSteps(lab.l), inSteps(lab.a), inSteps(lab.b)};
}

std::int64_t squaredDistance(const StepLab& p, const StepLab& q) {
    const std::int64_t dl = p.l - q.l;
    const std::int64_t da = p.a - q.a;
    const std::int64_t db = p.b - q.b;
    return dl * dl + da * da + db * db;
}

}  // namespace

CellDifference::CellDifference(const core::Palette& palette)
    : m_size(static_cast<std::size_t>(palette.size())) {
    std::vector<StepLab> labs;
    labs.reserve(m_size);
    for (const core::Rgb8 colour : palette.colours()) labs.push_back(toSteps(colour));
    m_squared.reserve(m_size * m_size);
    for (std::size_t p = 0; p < m_size; ++p) {
        for (std::size_t q = 0; q < m_size; ++q) {
            const bool oneUnpainted =
                p != q && (palette.transparent() == p || palette.transparent() == q);
            m_squared.push_back(oneUnpainted ? kSteps * kSteps : squaredDistance(labs[p], labs[q]));
        }
    }
    m_distances.reserve(m_squared.size());
    for (const std::int64_t square : m_squared) m_distances.push_back(wholeRoot(square));
}

}  // namespace pantile::picture
