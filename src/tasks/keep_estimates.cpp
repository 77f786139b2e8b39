#include "tasks/keep_estimates.h"

#include <vector>

#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/reader.h"
#include "catalogue/writer.h"
#include "tasks/drawing_estimate.h"
#include "tasks/in_order.h"

namespace pantile::tasks {

using catalogue::Library;
using core::Result;
using core::TextureId;

namespace {

/// Empty where the library has no board: then no cost holds.
std::optional<DrawingDefaults> defaultsOf(const Library& library) {
    auto defaults = drawingDefaults(library);
    if (!defaults) return std::nullopt;
    return *std::move(defaults);
}

Result<void> dropStale(Library& library, const std::optional<DrawingDefaults>& defaults) {
    PANTILE_ASSIGN_OR_RETURN(const auto keys, catalogue::estimateKeys(library));
    for (const catalogue::EstimateKey& each : keys) {
        if (!each.profileKey) continue;
        const auto record = catalogue::readTexture(library, each.id);
        const bool holds =
            record && defaults && estimateKey(record->texture, *defaults) == each.profileKey;
        if (!holds) PANTILE_RETURN_IF_ERROR(catalogue::dropEstimate(library, each.id));
    }
    return {};
}

/// Carries out `change` and drops what no longer holds, as one change.
template <typename Change>
Result<void> changed(Library& library, const Change& change) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, library.begin());
    const std::optional<DrawingDefaults> before = defaultsOf(library);
    PANTILE_RETURN_IF_ERROR(change());
    const std::optional<DrawingDefaults> after = defaultsOf(library);
    if (before != after) PANTILE_RETURN_IF_ERROR(dropStale(library, after));
    return transaction.commit();
}

Result<std::vector<TextureId>> withoutEstimate(const Library& library) {
    PANTILE_ASSIGN_OR_RETURN(const auto keys, catalogue::estimateKeys(library));
    std::vector<TextureId> ids;
    for (const catalogue::EstimateKey& each : keys) {
        if (!each.profileKey) ids.push_back(each.id);
    }
    return ids;
}

}  // namespace

Result<void> addCanvas(Library& library, const core::Canvas& canvas) {
    return changed(library, [&] { return catalogue::addCanvas(library, canvas); });
}

Result<void> setCanvas(Library& library, const core::Canvas& canvas) {
    return changed(library, [&] { return catalogue::setCanvas(library, canvas); });
}

Result<void> renameCanvas(Library& library, std::string_view name, std::string_view newName) {
    return changed(library, [&] { return catalogue::renameCanvas(library, name, newName); });
}

Result<void> removeCanvas(Library& library, std::string_view name) {
    return changed(library, [&] { return catalogue::removeCanvas(library, name); });
}

Result<void> addBoard(Library& library, const core::Board& board) {
    return changed(library, [&] { return catalogue::addBoard(library, board); });
}

Result<void> setBoard(Library& library, const core::Board& board) {
    return changed(library, [&] { return catalogue::setBoard(library, board); });
}

Result<void> renameBoard(Library& library, std::string_view name, std::string_view newName) {
    return changed(library, [&] { return catalogue::renameBoard(library, name, newName); });
}

Result<void> removeBoard(Library& library, std::string_view name) {
    return changed(library, [&] { return catalogue::removeBoard(library, name); });
}

Result<void> changeCanvas(Library& library, std::string_view name, const core::Canvas& canvas) {
    return changed(library, [&]() -> Result<void> {
        if (name != canvas.name)
            PANTILE_RETURN_IF_ERROR(catalogue::renameCanvas(library, name, canvas.name));
        return catalogue::setCanvas(library, canvas);
    });
}

Result<void> changeBoard(Library& library, std::string_view name, const core::Board& board) {
    return changed(library, [&]() -> Result<void> {
        if (name != board.name)
            PANTILE_RETURN_IF_ERROR(catalogue::renameBoard(library, name, board.name));
        return catalogue::setBoard(library, board);
    });
}

Result<std::int64_t> refreshEstimates(Library& library, const core::Progress& progress) {
    const std::optional<DrawingDefaults> defaults = defaultsOf(library);
    if (!defaults) return std::int64_t{0};
    PANTILE_ASSIGN_OR_RETURN(const std::vector<TextureId> ids, withoutEstimate(library));
    std::vector<core::Texture> textures;
    std::vector<TextureId> readable;
    for (const TextureId id : ids) {
        // One that is damaged is for 'check' to tell.
        auto record = catalogue::readTexture(library, id);
        if (!record) continue;
        textures.push_back(std::move(record->texture));
        readable.push_back(id);
    }
    using Found = std::optional<catalogue::Estimate>;
    std::int64_t kept = 0;
    const auto total = static_cast<std::int64_t>(textures.size());
    const auto plan = [&](std::int64_t i) -> Found {
        if (progress.stopRequested()) return std::nullopt;
        return estimateDrawing(textures[static_cast<std::size_t>(i)], *defaults);
    };
    const auto keep = [&](std::int64_t i, const Found& found) -> Result<void> {
        if (progress.stopRequested()) return core::stoppedError();
        progress.tell(i, total, "working out drawing times");
        if (!found) return {};
        ++kept;
        return catalogue::setEstimate(library, readable[static_cast<std::size_t>(i)], *found);
    };
    PANTILE_RETURN_IF_ERROR(inOrder<Found>(total, plan, keep));
    progress.tell(total, total, "");
    return kept;
}

Result<void> dropStaleEstimates(Library& library) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, library.begin());
    PANTILE_RETURN_IF_ERROR(dropStale(library, defaultsOf(library)));
    return transaction.commit();
}

std::optional<catalogue::Estimate> knownEstimate(Library& library,
                                                 const catalogue::TextureRecord& record) {
    const std::optional<DrawingDefaults> defaults = defaultsOf(library);
    if (!defaults) return std::nullopt;
    // One that an earlier program kept may hang on other scripts.
    const auto& estimated = record.row.estimate;
    if (estimated && estimated->profileKey == estimateKey(record.texture, *defaults))
        return estimated;
    const auto estimate = estimateDrawing(record.texture, *defaults);
    // Whoever only looks is told all the same where it cannot be kept.
    if (estimate && !library.isReadOnly()) {
        const auto kept = catalogue::setEstimate(library, record.row.id, *estimate);
        static_cast<void>(kept);
    }
    return estimate;
}

}  // namespace pantile::tasks
