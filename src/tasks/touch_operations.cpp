#include "tasks/touch_operations.h"

#include <array>
#include <span>
#include <string>
#include <utility>

#include "core/range_check.h"
#include "picture/colour_reduction.h"
#include "picture/curve.h"
#include "picture/ellipse.h"
#include "picture/fill.h"
#include "picture/outline.h"
#include "picture/path.h"
#include "picture/recolour.h"

namespace pantile::tasks {
namespace {

using core::Error;
using core::ErrorKind;
using core::Grid;
using core::PaletteIndex;
using core::Point;
using core::Result;
using core::Texture;

Result<Texture> withGrid(const Texture& texture, Grid grid) {
    return Texture::create(std::move(grid), texture.palette(), texture.text());
}

Result<Texture> withGrid(const Texture& texture, const Result<Grid>& grid) {
    if (!grid) return grid.error();
    return withGrid(texture, *grid);
}

Result<void> checkColours(const Texture& texture, std::span<const PaletteIndex> colours) {
    const int last = texture.palette().size() - 1;
    for (const PaletteIndex colour : colours) {
        if (colour <= last) continue;
        return Error{ErrorKind::InvalidInput,
                     "colour " + std::to_string(colour) + " is not in the palette, which ends at " +
                         std::to_string(last),
                     "'pantile show' lists the palette; its first colour is 0"};
    }
    return {};
}

Result<void> checkPlaces(std::span<const Point> places) {
    for (const Point place : places) PANTILE_RETURN_IF_ERROR(picture::checkPlace(place));
    return {};
}

std::array<PaletteIndex, 2> colours(PaletteIndex one, std::optional<PaletteIndex> other) {
    return {one, other.value_or(one)};
}

Result<Texture> painted(const Texture& texture, const picture::CellSet& cells, const Pen& pen) {
    PANTILE_RETURN_IF_ERROR(checkColours(texture, colours(pen.colour, pen.only)));
    PANTILE_ASSIGN_OR_RETURN(const auto all, picture::repeated(cells, pen.symmetry));
    return withGrid(texture, picture::painted(texture.grid(), all, pen.colour, pen.only));
}

Result<Texture> painted(const Texture& texture, const Result<picture::CellSet>& cells,
                        const Pen& pen) {
    if (!cells) return cells.error();
    return painted(texture, *cells, pen);
}

Result<Texture> paintedAlong(const Texture& texture, std::span<const Point> path, const Pen& pen) {
    PANTILE_RETURN_IF_ERROR(picture::checkBrush(pen.brush));
    return painted(texture, picture::stamped(texture.grid().size(), path, pen.brush), pen);
}

Result<Texture> apply(const Texture& texture, const DrawLine& line) {
    PANTILE_RETURN_IF_ERROR(core::checkRange("the number of the line's places",
                                             static_cast<std::int64_t>(line.corners.size()), 1,
                                             std::int64_t{kMaxCorners}));
    PANTILE_RETURN_IF_ERROR(checkPlaces(line.corners));
    return paintedAlong(texture, picture::polylinePath(line.corners), line.pen);
}

Result<Texture> apply(const Texture& texture, const DrawCurve& curve) {
    PANTILE_RETURN_IF_ERROR(checkPlaces(std::array{curve.from, curve.through, curve.to}));
    return paintedAlong(texture, picture::curvePath(curve.from, curve.through, curve.to),
                        curve.pen);
}

Result<Texture> apply(const Texture& texture, const DrawRectangle& rectangle) {
    PANTILE_RETURN_IF_ERROR(checkPlaces(std::array{rectangle.corner, rectangle.opposite}));
    const picture::CellBox box = picture::boxBetween(rectangle.corner, rectangle.opposite);
    if (rectangle.interior == Interior::Empty)
        return paintedAlong(texture, picture::rectanglePath(box), rectangle.pen);
    return painted(texture, picture::filledRectangle(texture.grid().size(), box), rectangle.pen);
}

Result<Texture> apply(const Texture& texture, const DrawEllipse& ellipse) {
    PANTILE_RETURN_IF_ERROR(checkPlaces(std::array{ellipse.corner, ellipse.opposite}));
    const picture::CellBox box = picture::boxBetween(ellipse.corner, ellipse.opposite);
    if (ellipse.interior == Interior::Empty)
        return paintedAlong(texture, picture::ellipseOutline(box), ellipse.pen);
    return painted(texture, picture::filledEllipse(texture.grid().size(), box), ellipse.pen);
}

Result<Texture> apply(const Texture& texture, const DrawOutline& outline) {
    PANTILE_RETURN_IF_ERROR(checkColours(texture, std::array{outline.background}));
    return painted(texture,
                   picture::outlineOn(texture.grid(), outline.background, outline.neighbours),
                   outline.pen);
}

Result<Texture> apply(const Texture& texture, const Fill& fill) {
    return painted(texture, picture::connectedCells(texture.grid(), fill.at, fill.neighbours),
                   fill.pen);
}

Result<Texture> apply(const Texture& texture, const FillAlike& fill) {
    return painted(texture, picture::likeColouredCells(texture.grid(), fill.at), fill.pen);
}

Result<Texture> apply(const Texture& texture, const DrawGradient& draw) {
    PANTILE_RETURN_IF_ERROR(checkColours(texture, draw.gradient.colours));
    const Grid& grid = texture.grid();
    picture::CellSet cells =
        picture::filledRectangle(grid.size(), {0, 0, grid.width() - 1, grid.height() - 1});
    if (draw.only) {
        PANTILE_RETURN_IF_ERROR(checkColours(texture, std::array{*draw.only}));
        cells = picture::cellsOfColour(grid, *draw.only);
    }
    return withGrid(texture, picture::withGradient(grid, cells, draw.gradient));
}

Result<Texture> apply(const Texture& texture, const ReplaceColour& replace) {
    PANTILE_RETURN_IF_ERROR(checkColours(texture, std::array{replace.from, replace.to}));
    return withGrid(texture, picture::replaced(texture.grid(), replace.from, replace.to));
}

Result<Texture> apply(const Texture& texture, const SwapColours& swap) {
    PANTILE_RETURN_IF_ERROR(checkColours(texture, std::array{swap.one, swap.other}));
    return withGrid(texture, picture::swapped(texture.grid(), swap.one, swap.other));
}

Result<Texture> apply(const Texture& texture, const MirrorCells& mirror) {
    return withGrid(texture, picture::mirrored(texture.grid(), mirror.mirror));
}

Result<Texture> apply(const Texture& texture, const TurnCells& turn) {
    return withGrid(texture, picture::turned(texture.grid(), turn.turn));
}

Result<Texture> apply(const Texture& texture, const ShiftCells& shift) {
    return withGrid(texture, picture::shifted(texture.grid(), shift.by));
}

Result<Texture> apply(const Texture& texture, const Crop& crop) {
    return withGrid(
        texture, picture::cropped(texture.grid(), picture::boxBetween(crop.corner, crop.opposite)));
}

Result<Texture> apply(const Texture& texture, const Extend& extend) {
    PANTILE_RETURN_IF_ERROR(checkColours(texture, std::array{extend.colour}));
    return withGrid(texture, picture::extended(texture.grid(), extend.margins, extend.colour));
}

Result<Texture> apply(const Texture& texture, const Enlarge& enlarge) {
    return withGrid(texture, picture::scaledUp(texture.grid(), enlarge.factor));
}

Result<Texture> apply(const Texture& texture, const Shrink& shrink) {
    return withGrid(texture, picture::scaledDown(texture.grid(), shrink.factor));
}

Result<Texture> apply(const Texture& texture, const AddNoise& noise) {
    PANTILE_RETURN_IF_ERROR(checkColours(texture, noise.options.colours));
    return withGrid(texture,
                    picture::withCellNoise(texture.grid(), texture.palette(), noise.options));
}

Result<Texture> apply(const Texture& texture, const HealSeams& heal) {
    return withGrid(texture, picture::healSeams(texture.grid(), texture.palette(), heal.options));
}

Result<Texture> apply(const Texture& texture, const RemoveStrays& remove) {
    return withGrid(texture, picture::removeStrays(texture.grid(), remove.options));
}

Result<Texture> apply(const Texture& texture, const Simplify& simplify) {
    return withGrid(texture, picture::simplify(texture.grid(), texture.palette(), simplify.level));
}

Result<Texture> withColours(const Texture& texture, Result<picture::Converted> converted) {
    if (!converted) return converted.error();
    return Texture::create(std::move(converted->grid), std::move(converted->palette),
                           texture.text());
}

Result<Texture> apply(const Texture& texture, const ReduceColours& reduce) {
    return withColours(texture,
                       picture::reduceColours(texture.grid(), texture.palette(), reduce.count));
}

// Applies every operation; the one that needs a palette of another place is given it.
class Applying {
public:
    Applying(const Texture& texture, const PaletteLookup& lookUp)
        : m_texture(texture), m_lookUp(lookUp) {}

    template <typename Operation>
    Result<Texture> operator()(const Operation& operation) const {
        return apply(m_texture, operation);
    }

    Result<Texture> operator()(const Recolour& recolour) const {
        PANTILE_ASSIGN_OR_RETURN(const core::Palette wanted, m_lookUp(recolour.palette));
        return withColours(m_texture,
                           picture::recoloured(m_texture.grid(), m_texture.palette(), wanted));
    }

private:
    const Texture& m_texture;
    const PaletteLookup& m_lookUp;
};

}  // namespace

Result<Texture> touched(const Texture& texture, const TouchOperation& operation,
                        const PaletteLookup& lookUp) {
    return std::visit(Applying(texture, lookUp), operation);
}

}  // namespace pantile::tasks
