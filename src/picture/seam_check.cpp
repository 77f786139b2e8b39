#include "picture/seam_check.h"

#include "core/colour_difference.h"
#include "core/range_check.h"
#include "picture/enlarge.h"

namespace pantile::picture {
namespace {

using core::Grid;
using core::Palette;
using core::PaletteIndex;
using core::Pixels;

// As black against white.
constexpr double kUnpaintedDifference = 100;
constexpr double kMarkedRatio = 2;
constexpr core::Rgba8 kMark{214, 40, 40, 255};
constexpr core::Rgba8 kNothing{0, 0, 0, 0};

class VisibleDifference {
public:
    explicit VisibleDifference(const Palette& palette) : m_transparent(palette.transparent()) {
        for (const core::Rgb8 colour : palette.colours()) m_labs.push_back(core::toLab(colour));
    }

    double operator()(PaletteIndex p, PaletteIndex q) const {
        if (p == q) return 0;
        if (p == m_transparent || q == m_transparent) return kUnpaintedDifference;
        return core::ciede2000(m_labs[p], m_labs[q]);
    }

private:
    std::vector<core::Lab> m_labs;
    std::optional<PaletteIndex> m_transparent;
};

SeamDifference differenceAt(Seam seam, const Grid& grid, const VisibleDifference& difference) {
    SeamDifference found;
    double inside = 0;
    int insidePairs = 0;
    const auto addAcross = [&](int /*place*/, PaletteIndex p, PaletteIndex q) {
        found.places.push_back(difference(p, q));
        found.across += found.places.back();
    };
    const auto addInside = [&](PaletteIndex p, PaletteIndex q) {
        inside += difference(p, q);
        ++insidePairs;
    };
    visitNeighbours(grid, seam, addAcross, addInside);
    found.across /= seamLength(grid, seam);
    if (insidePairs > 0) found.inside = inside / insidePairs;
    return found;
}

Grid shiftedByHalf(const Grid& grid) {
    Grid shifted = grid;
    for (int y = 0; y < grid.height(); ++y) {
        for (int x = 0; x < grid.width(); ++x) {
            shifted.set(x, y,
                        grid.at((x + grid.width() / 2) % grid.width(),
                                (y + grid.height() / 2) % grid.height()));
        }
    }
    return shifted;
}

void fillSquare(Pixels& pixels, core::Point cell, int factor, core::Rgba8 colour) {
    for (int y = cell.y * factor; y < (cell.y + 1) * factor; ++y) {
        for (int x = cell.x * factor; x < (cell.x + 1) * factor; ++x) pixels.at(x, y) = colour;
    }
}

Pixels withMargin(const Pixels& inner, int margin) {
    const core::Size size{inner.size.width + 2 * margin, inner.size.height + 2 * margin};
    Pixels outer{size, {}};
    outer.pixels.assign(
        static_cast<std::size_t>(size.width) * static_cast<std::size_t>(size.height), kNothing);
    for (int y = 0; y < inner.size.height; ++y) {
        for (int x = 0; x < inner.size.width; ++x)
            outer.at(x + margin, y + margin) = inner.at(x, y);
    }
    return outer;
}

}  // namespace

core::Result<SeamCheck> checkSeams(const Grid& grid, const Palette& palette) {
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the grid's largest index", grid.largestIndex(), 0, palette.size() - 1));
    const VisibleDifference difference(palette);
    return SeamCheck{differenceAt(Seam::Vertical, grid, difference),
                     differenceAt(Seam::Horizontal, grid, difference)};
}

core::Result<Pixels> seamPicture(const Grid& grid, const Palette& palette, int factor) {
    PANTILE_ASSIGN_OR_RETURN(const Pixels inner, enlarged(shiftedByHalf(grid), palette, factor));
    PANTILE_ASSIGN_OR_RETURN(const SeamCheck seams, checkSeams(grid, palette));
    Pixels pixels = withMargin(inner, factor);
    for (int y = 0; y < grid.height(); ++y) {
        if (seams.vertical.ratioAt((y + grid.height() / 2) % grid.height()) <= kMarkedRatio)
            continue;
        fillSquare(pixels, {0, y + 1}, factor, kMark);
        fillSquare(pixels, {grid.width() + 1, y + 1}, factor, kMark);
    }
    for (int x = 0; x < grid.width(); ++x) {
        if (seams.horizontal.ratioAt((x + grid.width() / 2) % grid.width()) <= kMarkedRatio)
            continue;
        fillSquare(pixels, {x + 1, 0}, factor, kMark);
        fillSquare(pixels, {x + 1, grid.height() + 1}, factor, kMark);
    }
    return pixels;
}

}  // namespace pantile::picture
