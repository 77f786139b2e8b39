#include "tasks/load_candidates.h"

#include <algorithm>
#include <map>
#include <utility>

#include "board/load_writer.h"
#include "catalogue/canvases.h"
#include "catalogue/reader.h"
#include "catalogue/shelves.h"
#include "core/text.h"
#include "tasks/in_order.h"
#include "tasks/plan_drawing.h"

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;
using core::TextureId;

namespace {

Error notSelected(TextureId id, std::string_view option) {
    return {ErrorKind::InvalidInput,
            std::string(option) + " names texture " + std::to_string(id.value) +
                ", which is not in the selection",
            "name it in the selection as well"};
}

Result<void> checkNamed(const std::vector<TextureId>& ids, const ChooseOptions& options) {
    const auto isSelected = [&](TextureId id) {
        return std::find(ids.begin(), ids.end(), id) != ids.end();
    };
    for (const TextureId id : options.must) {
        if (!isSelected(id)) return notSelected(id, "--must");
        if (!options.never.contains(id)) continue;
        return Error{ErrorKind::InvalidInput,
                     "texture " + std::to_string(id.value) + " is named by --must and by --never",
                     "let go of one of them"};
    }
    for (const TextureId id : options.never) {
        if (!isSelected(id)) return notSelected(id, "--never");
    }
    for (const auto& [id, worth] : options.worth) {
        if (!isSelected(id)) return notSelected(id, "--worth");
    }
    return {};
}

/// The ways in which the texture may lie in a load, from quick to small.
/// Errors: DoesNotFit; Cancelled.
Result<void> addVariants(const core::Texture& texture, const std::vector<core::Canvas>& canvases,
                         const core::Board& board, const core::Progress& progress,
                         LoadCandidate& candidate) {
    PANTILE_ASSIGN_OR_RETURN(const core::Canvas canvas, chooseCanvas(texture, canvases));
    PANTILE_ASSIGN_OR_RETURN(PlannedDrawing planned, planTexture(texture, canvas, board, progress));
    PANTILE_ASSIGN_OR_RETURN(auto variants, drawingVariants(planned, candidate.row.title));
    for (board::TextureVariant& variant : variants) {
        candidate.takes.push_back({variant.bytes, variant.plan.milliseconds});
        candidate.variants.push_back({candidate.row.title, planned.fitted.grid,
                                      planned.fitted.palette, canvas, std::move(variant.plan),
                                      planned.picture});
    }
    return {};
}

Result<std::vector<catalogue::TextureRecord>> readSelected(const catalogue::Library& library,
                                                           const std::vector<TextureId>& ids,
                                                           const ChooseOptions& options) {
    std::vector<catalogue::TextureRecord> records;
    for (const TextureId id : ids) {
        if (options.never.contains(id)) continue;
        PANTILE_ASSIGN_OR_RETURN(catalogue::TextureRecord record,
                                 catalogue::readTexture(library, id));
        records.push_back(std::move(record));
    }
    return records;
}

Result<LoadCandidates> planned(const std::vector<catalogue::TextureRecord>& records,
                               const std::vector<core::Canvas>& canvases,
                               const ChooseOptions& options, const core::Board& board,
                               const core::Progress& progress) {
    LoadCandidates found;
    const auto plan = [&](std::int64_t i) -> Result<LoadCandidate> {
        const catalogue::TextureRecord& record = records[static_cast<std::size_t>(i)];
        LoadCandidate candidate{
            record.row, record.texture.palette(), usualWorth(record.row), {}, {}};
        if (const auto worth = options.worth.find(record.row.id); worth != options.worth.end())
            candidate.worth = worth->second;
        candidate.must = options.must.contains(record.row.id);
        PANTILE_RETURN_IF_ERROR(
            addVariants(record.texture, canvases, board, {progress.stop, {}}, candidate));
        return candidate;
    };
    const auto keep = [&](std::int64_t i, Result<LoadCandidate> candidate) -> Result<void> {
        if (progress.stopRequested()) return core::stoppedError();
        progress.tell(i, std::ssize(records), "planning");
        if (candidate) {
            found.possible.push_back(*std::move(candidate));
        } else if (candidate.error().kind == ErrorKind::DoesNotFit) {
            found.impossible.push_back(
                {records[static_cast<std::size_t>(i)].row.id, candidate.error().message});
        } else {
            return candidate.error();
        }
        return {};
    };
    PANTILE_RETURN_IF_ERROR(inOrder<Result<LoadCandidate>>(std::ssize(records), plan, keep));
    progress.tell(std::ssize(records), std::ssize(records), "");
    return found;
}

/// Binds textures to one another; those that share one with others belong to one bundle.
class Bundles {
public:
    void bind(const std::vector<TextureId>& ids) {
        for (const TextureId id : ids) m_firstOf.try_emplace(id, id);
        for (const TextureId id : ids) {
            const TextureId from = first(id);
            const TextureId to = first(ids.front());
            m_firstOf[std::max(from, to)] = std::min(from, to);
        }
    }

    /// The first of the bundle, by id, or nothing for a texture that is in none.
    std::optional<TextureId> of(TextureId id) const {
        return m_firstOf.contains(id) ? std::optional(first(id)) : std::nullopt;
    }

private:
    TextureId first(TextureId id) const {
        while (m_firstOf.at(id) != id) id = m_firstOf.at(id);
        return id;
    }

    std::map<TextureId, TextureId> m_firstOf;
};

Result<Bundles> bundlesFor(const catalogue::Library& library, const std::vector<TextureId>& ids,
                           const ChooseOptions& options) {
    Bundles bundles;
    for (const std::string& shelf : options.together) {
        PANTILE_ASSIGN_OR_RETURN(std::vector<TextureId> bound,
                                 catalogue::texturesOnShelf(library, shelf));
        std::erase_if(bound, [&](TextureId id) {
            return options.never.contains(id) || std::find(ids.begin(), ids.end(), id) == ids.end();
        });
        if (bound.empty()) {
            return Error{ErrorKind::InvalidInput,
                         "--together names the shelf '" + core::excerpt(shelf) +
                             "', and none of its textures is in the selection",
                         "select them, or leave the shelf away"};
        }
        bundles.bind(bound);
    }
    return bundles;
}

/// Numbers the bundles of what is possible. A bundle of which one texture is impossible is
/// impossible as a whole.
void applyBundles(const Bundles& bundles, LoadCandidates& found) {
    std::map<TextureId, TextureId> brokenBy;
    for (const NotChosen& each : found.impossible) {
        if (const auto bundle = bundles.of(each.id)) brokenBy.try_emplace(*bundle, each.id);
    }
    std::map<TextureId, int> numbers;
    std::vector<LoadCandidate> possible;
    for (LoadCandidate& candidate : found.possible) {
        const auto bundle = bundles.of(candidate.row.id);
        if (bundle && brokenBy.contains(*bundle)) {
            found.impossible.push_back(
                {candidate.row.id, "it is kept together with " +
                                       std::to_string(brokenBy.at(*bundle).value) +
                                       ", which cannot be drawn"});
            continue;
        }
        if (bundle) {
            const int next = static_cast<int>(numbers.size());
            candidate.bundle = numbers.try_emplace(*bundle, next).first->second;
        }
        possible.push_back(std::move(candidate));
    }
    found.possible = std::move(possible);
}

Result<void> checkMusts(const LoadCandidates& found, const ChooseOptions& options) {
    for (const NotChosen& each : found.impossible) {
        if (!options.must.contains(each.id)) continue;
        return Error{
            ErrorKind::DoesNotFit,
            "texture " + std::to_string(each.id.value) + " must be in the load, but " + each.reason,
            "leave it out, or make a canvas that it fits"};
    }
    return {};
}

}  // namespace

std::string LoadCandidate::name() const {
    return std::to_string(row.id.value) + (row.title.empty() ? "" : " " + core::excerpt(row.title));
}

// The library keeps no stars yet.
std::int64_t usualWorth(const catalogue::TextureRow& row) {
    return row.stars > 0 ? row.stars : kUsualWorth;
}

Result<std::vector<core::Canvas>> canvasesFor(const catalogue::Library& library,
                                              const std::string& canvas) {
    if (canvas.empty()) return catalogue::listCanvases(library);
    PANTILE_ASSIGN_OR_RETURN(core::Canvas only, catalogue::readCanvas(library, canvas));
    return std::vector{std::move(only)};
}

Result<LoadCandidates> loadCandidates(const catalogue::Library& library,
                                      const std::vector<TextureId>& ids,
                                      const ChooseOptions& options, const core::Board& board,
                                      const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(checkNamed(ids, options));
    PANTILE_ASSIGN_OR_RETURN(const Bundles bundles, bundlesFor(library, ids, options));
    PANTILE_ASSIGN_OR_RETURN(const auto canvases, canvasesFor(library, options.canvas));
    PANTILE_ASSIGN_OR_RETURN(const auto records, readSelected(library, ids, options));
    PANTILE_ASSIGN_OR_RETURN(LoadCandidates found,
                             planned(records, canvases, options, board, progress));
    applyBundles(bundles, found);
    PANTILE_RETURN_IF_ERROR(checkMusts(found, options));
    for (const TextureId id : options.never) {
        found.impossible.push_back({id, "you said that it is never to be in"});
    }
    return found;
}

board::FitLimits loadLimits(const core::Board& board, const ChooseOptions& options) {
    return {board.slots, std::max<std::int64_t>(board.bytes - board::loadBaseBytes(), 0),
            options.milliseconds};
}

std::vector<board::FitItem> fitItems(const std::vector<LoadCandidate>& candidates) {
    std::vector<board::FitItem> items;
    items.reserve(candidates.size());
    for (const LoadCandidate& each : candidates)
        items.push_back({each.worth, each.takes, each.must, each.bundle, each.name()});
    return items;
}

ChosenSlot chosenSlot(std::vector<LoadCandidate>& candidates, const board::FitPick& pick) {
    LoadCandidate& chosen = candidates[pick.item];
    const board::FitVariant& takes = chosen.takes[pick.variant];
    return {chosen.row.id,      takes.bytes,
            takes.milliseconds, std::move(chosen.variants[pick.variant]),
            chosen.row.author,  chosen.row.licence};
}

}  // namespace pantile::tasks
