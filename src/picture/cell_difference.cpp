#include "picture/cell_difference.h"

#include "picture/step_lab.h"

namespace pantile::picture {
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
            m_squared.push_back(oneUnpainted ? kLabSteps * kLabSteps
                                             : squaredDistance(labs[p], labs[q]));
        }
    }
    m_distances.reserve(m_squared.size());
    for (const std::int64_t square : m_squared) m_distances.push_back(wholeRoot(square));
}

}  // namespace pantile::picture
