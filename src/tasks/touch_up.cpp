#include "tasks/touch_up.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "catalogue/edit.h"
#include "catalogue/palettes.h"
#include "catalogue/reader.h"
#include "catalogue/writer.h"
#include "core/text.h"
#include "tasks/drawing_estimate.h"
#include "tasks/seam_measure.h"

namespace pantile::tasks {

using core::Result;
using core::Texture;

namespace {

constexpr int kMostTries = 5;

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

// What a touch-up makes, and from what.
struct Computed {
    Texture before;
    Texture after;
    DrawingDefaults defaults;
    std::optional<catalogue::Estimate> estimate;
};

Result<Computed> withEstimate(const catalogue::Library& library, Texture before, Texture after) {
    PANTILE_ASSIGN_OR_RETURN(DrawingDefaults defaults, drawingDefaults(library));
    auto estimate = estimateDrawing(after, defaults);
    return Computed{std::move(before), std::move(after), std::move(defaults), std::move(estimate)};
}

Result<Computed> compute(const catalogue::Library& library, core::TextureId id,
                         std::span<const TouchStep> steps, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(auto record, catalogue::readTexture(library, id));
    PANTILE_ASSIGN_OR_RETURN(Texture after,
                             touchedUp(record.texture, steps, namedPalettes(library), progress));
    return withEstimate(library, std::move(record.texture), std::move(after));
}

Result<void> noteCosts(catalogue::Library& library, core::TextureId id, const Computed& computed) {
    PANTILE_RETURN_IF_ERROR(noteSeam(library, id, computed.after));
    if (!computed.estimate) return {};
    return catalogue::setEstimate(library, id, *computed.estimate);
}

Result<bool> isStillTrue(const catalogue::Library& library, core::TextureId id,
                         const Computed& computed) {
    PANTILE_ASSIGN_OR_RETURN(const auto record, catalogue::readTexture(library, id));
    PANTILE_ASSIGN_OR_RETURN(const DrawingDefaults defaults, drawingDefaults(library));
    return record.texture.grid() == computed.before.grid() &&
           record.texture.palette() == computed.before.palette() && defaults == computed.defaults;
}

// Nothing if what was computed was computed from something else than what is there now.
Result<std::optional<TouchedUp>> store(catalogue::Library& library, core::TextureId id,
                                       const Computed& computed) {
    PANTILE_ASSIGN_OR_RETURN(auto transaction, library.begin());
    PANTILE_ASSIGN_OR_RETURN(const bool stillTrue, isStillTrue(library, id, computed));
    if (!stillTrue) return std::optional<TouchedUp>();
    const Texture& after = computed.after;
    PANTILE_RETURN_IF_ERROR(catalogue::setContent(library, id, after.grid(), after.palette()));
    PANTILE_RETURN_IF_ERROR(noteCosts(library, id, computed));
    PANTILE_ASSIGN_OR_RETURN(const auto rows, catalogue::readRows(library, {&id, 1}));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return std::optional(TouchedUp{rows.front().revision, cellsChanged(computed.before, after),
                                   after.grid().size()});
}

std::string titleBeside(const std::string& title) {
    const std::string added = " (touched up)";
    const bool hasRoom = core::codePointCount(title) + added.size() <= core::kMaxTitleCharacters;
    return !title.empty() && hasRoom ? title + added : title;
}

}  // namespace

PaletteLookup namedPalettes(const catalogue::Library& library) {
    return [&library](const std::string& name) -> Result<core::Palette> {
        PANTILE_ASSIGN_OR_RETURN(const auto named, catalogue::readPalette(library, name));
        return named.palette;
    };
}

Result<Texture> touchedUp(const Texture& texture, std::span<const TouchStep> steps,
                          const PaletteLookup& lookUp, const core::Progress& progress) {
    const auto total = static_cast<std::int64_t>(steps.size());
    Texture latest = texture;
    for (std::int64_t done = 0; done < total; ++done) {
        const TouchStep& step = steps[static_cast<std::size_t>(done)];
        progress.tell(done, total, step.name);
        if (progress.stopRequested()) return core::stoppedError();
        auto next = touched(latest, step.operation, lookUp);
        if (!next) return next.error().at(step.name);
        latest = *std::move(next);
    }
    progress.tell(total, total, "");
    return latest;
}

Result<TouchedUp> touchUp(catalogue::Library& library, core::TextureId id,
                          std::span<const TouchStep> steps, const core::Progress& progress) {
    for (int tries = 0; tries < kMostTries; ++tries) {
        // Before the transaction: other programs need not wait for it.
        PANTILE_ASSIGN_OR_RETURN(const Computed computed, compute(library, id, steps, progress));
        PANTILE_ASSIGN_OR_RETURN(const auto stored, store(library, id, computed));
        if (stored) return *stored;
    }
    return core::Error{
        core::ErrorKind::Busy,
        "another program changes texture " + std::to_string(id.value) + " again and again",
        "try again when it has finished"};
}

Result<TouchedUp> keepTouched(catalogue::Library& library, core::TextureId id,
                              const Texture& before, const Texture& after) {
    PANTILE_ASSIGN_OR_RETURN(const Computed computed, withEstimate(library, before, after));
    PANTILE_ASSIGN_OR_RETURN(const auto stored, store(library, id, computed));
    if (stored) return *stored;
    return core::Error{core::ErrorKind::Busy,
                       "texture " + std::to_string(id.value) +
                           " was changed by another program while it was worked on",
                       "keep your work as a texture of its own, or take what the library has"};
}

Result<core::TextureId> keepBeside(catalogue::Library& library, const Texture& texture) {
    core::TextureText text = texture.text();
    text.title = titleBeside(text.title);
    PANTILE_ASSIGN_OR_RETURN(const Texture titled, texture.withText(std::move(text)));
    PANTILE_ASSIGN_OR_RETURN(const Computed computed, withEstimate(library, titled, titled));
    PANTILE_ASSIGN_OR_RETURN(auto transaction, library.begin());
    PANTILE_ASSIGN_OR_RETURN(const auto added, catalogue::addTexture(library, titled));
    PANTILE_RETURN_IF_ERROR(noteCosts(library, added.id, computed));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return added.id;
}

}  // namespace pantile::tasks
