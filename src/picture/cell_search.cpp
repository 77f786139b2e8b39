#include "picture/cell_search.h"

#include <algorithm>
#include <cassert>
#include <utility>

namespace pantile::picture {
namespace {

using core::LinearRgb;
using core::PaletteIndex;

// Less than that is what rounding left over; without a bound two entries could swap for ever.
constexpr double kLeastGain = 1e-12;

// The d with form * d = -pull, by Cramer's rule; nothing if the form is all but flat somewhere.
LinearRgb lowestPoint(const LightForm& f, const LinearRgb& pull) {
    const double rr = f.gg * f.bb - f.gb * f.gb;
    const double rg = f.gb * f.rb - f.rg * f.bb;
    const double rb = f.rg * f.gb - f.gg * f.rb;
    const double gg = f.rr * f.bb - f.rb * f.rb;
    const double gb = f.rg * f.rb - f.rr * f.gb;
    const double bb = f.rr * f.gg - f.rg * f.rg;
    const double determinant = f.rr * rr + f.rg * rg + f.rb * rb;
    if (!(determinant > 0)) return {};
    return {-(rr * pull.r + rg * pull.g + rb * pull.b) / determinant,
            -(rg * pull.r + gg * pull.g + gb * pull.b) / determinant,
            -(rb * pull.r + gb * pull.g + bb * pull.b) / determinant};
}

double onScreen(double light) {
    return std::clamp(light, 0.0, 1.0);
}

}  // namespace

CellSearch::CellSearch(const CellColours& wanted, const core::Palette& palette,
                       std::vector<PaletteIndex> start, double strength)
    : m_difference(wanted, strength),
      m_cells(std::move(start)),
      m_rowLength(static_cast<std::size_t>(wanted.size.width)) {
    assert(m_cells.size() == m_difference.size());
    for (int i = 0; i < palette.size(); ++i) {
        const auto index = static_cast<PaletteIndex>(i);
        m_colours.push_back(core::toLinear(palette[index]));
        if (palette.transparent() != index) m_choices.push_back(index);
    }
}

double CellSearch::refresh() {
    std::vector<LinearRgb> shown;
    shown.reserve(m_cells.size());
    for (const PaletteIndex index : m_cells) shown.push_back(m_colours[index]);
    return m_difference.refresh(shown);
}

bool CellSearch::improveCell(std::size_t cell) {
    const SeenDifference::Response response = m_difference.response(cell);
    const LinearRgb& current = m_colours[m_cells[cell]];
    PaletteIndex best = m_cells[cell];
    double least = -kLeastGain;
    for (const PaletteIndex choice : m_choices) {
        const double rise = response.to(m_colours[choice] - current);
        if (rise < least) {
            least = rise;
            best = choice;
        }
    }
    if (best == m_cells[cell]) return false;
    m_difference.change(cell, m_colours[best] - current);
    m_cells[cell] = best;
    return true;
}

core::Result<int> CellSearch::improveCells(const core::Progress& progress) {
    int changed = 0;
    for (std::size_t cell = 0; cell < m_cells.size(); ++cell) {
        if (cell % m_rowLength == 0 && progress.stopRequested()) return core::stoppedError();
        if (m_difference.painted(cell) && improveCell(cell)) ++changed;
    }
    return changed;
}

void CellSearch::improveColour(PaletteIndex entry) {
    std::vector<std::size_t> showing;
    LinearRgb pull;
    for (std::size_t cell = 0; cell < m_cells.size(); ++cell) {
        if (m_cells[cell] != entry || !m_difference.painted(cell)) continue;
        showing.push_back(cell);
        const LinearRgb own = m_difference.response(cell).pull;
        pull = {pull.r + own.r, pull.g + own.g, pull.b + own.b};
    }
    if (showing.empty()) return;
    LinearRgb& colour = m_colours[entry];
    const LinearRgb step = lowestPoint(m_difference.stiffnessTogether(showing), pull);
    const LinearRgb moved{onScreen(colour.r + step.r), onScreen(colour.g + step.g),
                          onScreen(colour.b + step.b)};
    for (const std::size_t cell : showing) m_difference.change(cell, moved - colour);
    colour = moved;
}

}  // namespace pantile::picture
