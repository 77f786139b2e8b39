#include "picture/seen_difference.h"

#include <cmath>

namespace pantile::picture {
namespace {

using core::LinearRgb;

// With all the strength, a cell's own difference still counts a tenth: measured, it costs a tenth
// or two of what is gained at a distance and takes away an eighth of the grain or more.
constexpr double kLeastOwnWeight = 0.1;

// Squares over lengths sum up to lengths; differences below this one, which nobody sees, are
// smoothed so that none weighs without end.
constexpr double kUnseen = 0.3;

void addScaled(LinearRgb& sum, const LinearRgb& v, double by) {
    sum.r += by * v.r;
    sum.g += by * v.g;
    sum.b += by * v.b;
}

// A form scaled so that its square at `d` is the weighted length there.
struct Loss {
    LightForm form;
    double length = 0;
};

Loss weightedLength(const CurvedColour& wanted, const CurvedColour& shown, double weight) {
    const LightForm form = differenceForm(wanted, shown);
    const double squared = form.square(shown.light - wanted.light);
    Loss loss;
    loss.length = weight * std::sqrt(squared > 0 ? squared : 0);
    loss.form.add(form, weight / std::sqrt(squared + kUnseen * kUnseen));
    return loss;
}

}  // namespace

SeenDifference::SeenDifference(const CellColours& wanted, double strength)
    : m_neighbours(wanted),
      m_seenWeight(strength),
      m_ownWeight(1 - strength * (1 - kLeastOwnWeight)),
      m_seenForms(wanted.cells.size()),
      m_seenSlopes(wanted.cells.size()),
      m_own(wanted.cells.size()),
      m_stiffness(wanted.cells.size()) {
    std::vector<LinearRgb> colours;
    colours.reserve(wanted.cells.size());
    m_wanted.reserve(wanted.cells.size());
    for (const auto& cell : wanted.cells) {
        colours.push_back(cell.value_or(LinearRgb{}));
        m_wanted.push_back(cell ? std::optional(curved(*cell)) : std::nullopt);
    }
    m_seenWanted.reserve(wanted.cells.size());
    for (const LinearRgb& colour : seen(colours)) m_seenWanted.push_back(curved(colour));
}

std::vector<LinearRgb> SeenDifference::seen(const std::vector<LinearRgb>& shown) const {
    std::vector<LinearRgb> mixed(shown.size());
    for (std::size_t cell = 0; cell < shown.size(); ++cell) {
        if (!painted(cell)) continue;
        m_neighbours.forEachShare(cell, [&](std::size_t other, double share) {
            addScaled(mixed[other], shown[cell], share);
        });
    }
    return mixed;
}

double SeenDifference::refreshSeen(const std::vector<LinearRgb>& shown) {
    const std::vector<LinearRgb> mixed = seen(shown);
    double sum = 0;
    for (std::size_t cell = 0; cell < size(); ++cell) {
        if (!painted(cell)) continue;
        const Loss loss = weightedLength(m_seenWanted[cell], curved(mixed[cell]), m_seenWeight);
        m_seenForms[cell] = loss.form;
        m_seenSlopes[cell] = loss.form.times(mixed[cell] - m_seenWanted[cell].light);
        sum += loss.length;
    }
    return sum;
}

double SeenDifference::refreshOwn(const std::vector<LinearRgb>& shown) {
    double sum = 0;
    for (std::size_t cell = 0; cell < size(); ++cell) {
        if (!painted(cell)) continue;
        const Loss loss = weightedLength(*m_wanted[cell], curved(shown[cell]), m_ownWeight);
        m_own[cell] = {loss.form, loss.form.times(shown[cell] - m_wanted[cell]->light)};
        sum += loss.length;
    }
    return sum;
}

double SeenDifference::refresh(const std::vector<LinearRgb>& shown) {
    const double loss = refreshSeen(shown) + refreshOwn(shown);
    for (std::size_t cell = 0; cell < size(); ++cell) {
        LightForm stiffness = m_own[cell].form;
        m_neighbours.forEachShare(cell, [&](std::size_t other, double share) {
            stiffness.add(m_seenForms[other], share * share);
        });
        m_stiffness[cell] = stiffness;
    }
    return loss;
}

SeenDifference::Response SeenDifference::response(std::size_t cell) const {
    LinearRgb pull = m_own[cell].slope;
    m_neighbours.forEachShare(cell, [&](std::size_t other, double share) {
        addScaled(pull, m_seenSlopes[other], share);
    });
    return {pull, m_stiffness[cell]};
}

LightForm SeenDifference::stiffnessTogether(const std::vector<std::size_t>& cells) const {
    LightForm stiffness;
    std::vector<double> shares(size());
    for (const std::size_t cell : cells) {
        stiffness.add(m_own[cell].form, 1);
        m_neighbours.forEachShare(cell,
                                  [&](std::size_t other, double share) { shares[other] += share; });
    }
    for (std::size_t cell = 0; cell < size(); ++cell)
        stiffness.add(m_seenForms[cell], shares[cell] * shares[cell]);
    return stiffness;
}

void SeenDifference::change(std::size_t cell, const LinearRgb& d) {
    addScaled(m_own[cell].slope, m_own[cell].form.times(d), 1);
    m_neighbours.forEachShare(cell, [&](std::size_t other, double share) {
        addScaled(m_seenSlopes[other], m_seenForms[other].times(d), share);
    });
}

}  // namespace pantile::picture
