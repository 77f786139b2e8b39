#include "picture/eye_neighbours.h"

namespace pantile::picture {

EyeNeighbours::EyeNeighbours(const CellColours& picture)
    : m_size(picture.size), m_scale(picture.cells.size()) {
    for (std::size_t cell = 0; cell < m_scale.size(); ++cell) {
        if (!picture.cells[cell]) continue;
        double sum = 0;
        forEachWeight(cell, [&](std::size_t other, double weight) {
            if (picture.cells[other]) sum += weight;
        });
        m_scale[cell] = 1 / sum;
    }
}

}  // namespace pantile::picture
