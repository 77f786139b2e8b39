#pragma once

// What is visibly wrong with cells, kept up to date while a search changes one after another. See
// docs/conversion.md section 7.3.

#include <cstddef>
#include <optional>
#include <vector>

#include "core/colour_spaces.h"
#include "picture/eye_neighbours.h"
#include "picture/light_form.h"
#include "picture/linear_picture.h"

namespace pantile::picture {

/// The loss is the mean over painted cells of strength x the difference as an eye at a distance
/// sees it + (1 - 0.9 x strength) x the difference of the cell by itself, which keeps grain down;
/// both are about CIEDE2000. Between two calls of refresh it is taken for a sum of squares, so that
/// what a change does is known without trying it.
class SeenDifference {
public:
    /// Units: strength 0..1.
    SeenDifference(const CellColours& wanted, double strength);

    std::size_t size() const { return m_wanted.size(); }

    bool painted(std::size_t cell) const { return m_wanted[cell].has_value(); }

    /// The colours that painted cells show from now on. Shape: size(); those of unpainted cells
    /// are ignored. Returns the loss.
    double refresh(const std::vector<core::LinearRgb>& shown);

    /// What the loss becomes larger by if the cell's colour changes by d: 2 * pull . d + d' * stiff
    /// * d, in squares.
    struct Response {
        core::LinearRgb pull;
        LightForm stiffness;

        double to(const core::LinearRgb& d) const { return 2 * dot(pull, d) + stiffness.square(d); }
    };

    Response response(std::size_t cell) const;

    /// The cell's colour changes by d.
    void change(std::size_t cell, const core::LinearRgb& d);

    /// The stiffness of `cells` if their colours all change alike.
    LightForm stiffnessTogether(const std::vector<std::size_t>& cells) const;

private:
    struct OwnCell {
        LightForm form;
        core::LinearRgb slope;
    };

    double refreshSeen(const std::vector<core::LinearRgb>& shown);
    double refreshOwn(const std::vector<core::LinearRgb>& shown);
    std::vector<core::LinearRgb> seen(const std::vector<core::LinearRgb>& shown) const;

    EyeNeighbours m_neighbours;
    double m_seenWeight;
    double m_ownWeight;
    std::vector<std::optional<CurvedColour>> m_wanted;
    std::vector<CurvedColour> m_seenWanted;
    std::vector<LightForm> m_seenForms;
    std::vector<core::LinearRgb> m_seenSlopes;
    std::vector<OwnCell> m_own;
    std::vector<LightForm> m_stiffness;
};

}  // namespace pantile::picture
