#include "tasks/touch_up.h"

#include <algorithm>
#include <optional>

#include "catalogue/edit.h"
#include "catalogue/palettes.h"
#include "catalogue/reader.h"
#include "catalogue/writer.h"
#include "tasks/drawing_estimate.h"

namespace pantile::tasks {

using core::Result;
using core::Texture;

namespace {

// What a cell shows: nothing, or a colour.
std::optional<core::Rgb8> shown(const Texture& texture, core::Point cell) {
    const core::PaletteIndex index = texture.grid().at(cell);
    if (texture.palette().transparent() == index) return std::nullopt;
    return texture.palette()[index];
}

bool differ(const Texture& before, const Texture& after, core::Point cell) {
    return before.grid().at(cell) != after.grid().at(cell) ||
           shown(before, cell) != shown(after, cell);
}

std::int64_t cellsChanged(const Texture& before, const Texture& after) {
    const core::Size one = before.grid().size();
    const core::Size other = after.grid().size();
    std::int64_t changed = 0;
    for (int y = 0; y < std::max(one.height, other.height); ++y) {
        for (int x = 0; x < std::max(one.width, other.width); ++x) {
            const bool inOne = before.grid().contains({x, y});
            const bool inOther = after.grid().contains({x, y});
            if (inOne && inOther ? differ(before, after, {x, y}) : inOne || inOther) ++changed;
        }
    }
    return changed;
}

PaletteLookup palettesOf(const catalogue::Library& library) {
    return [&library](const std::string& name) -> Result<core::Palette> {
        PANTILE_ASSIGN_OR_RETURN(const auto named, catalogue::readPalette(library, name));
        return named.palette;
    };
}

}  // namespace

Result<Texture> touchedUp(const Texture& texture, std::span<const TouchStep> steps,
                          const PaletteLookup& lookUp) {
    Texture latest = texture;
    for (const TouchStep& step : steps) {
        auto next = touched(latest, step.operation, lookUp);
        if (!next) return next.error().at(step.name);
        latest = *std::move(next);
    }
    return latest;
}

Result<TouchedUp> touchUp(catalogue::Library& library, core::TextureId id,
                          std::span<const TouchStep> steps) {
    PANTILE_ASSIGN_OR_RETURN(auto transaction, library.begin());
    PANTILE_ASSIGN_OR_RETURN(const auto before, catalogue::readTexture(library, id));
    PANTILE_ASSIGN_OR_RETURN(const Texture after,
                             touchedUp(before.texture, steps, palettesOf(library)));
    PANTILE_RETURN_IF_ERROR(catalogue::setContent(library, id, after.grid(), after.palette()));
    PANTILE_ASSIGN_OR_RETURN(const DrawingDefaults defaults, drawingDefaults(library));
    if (const auto estimate = estimateDrawing(after, defaults)) {
        PANTILE_RETURN_IF_ERROR(catalogue::setEstimate(library, id, *estimate));
    }
    PANTILE_ASSIGN_OR_RETURN(const auto rows, catalogue::readRows(library, {&id, 1}));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return TouchedUp{rows.front().revision, cellsChanged(before.texture, after),
                     after.grid().size()};
}

}  // namespace pantile::tasks
