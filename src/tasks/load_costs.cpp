#include "tasks/load_costs.h"

#include <algorithm>

#include "board/load_writer.h"
#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/reader.h"
#include "tasks/drawing_estimate.h"
#include "tasks/in_order.h"
#include "tasks/load_candidates.h"
#include "tasks/plan_drawing.h"

namespace pantile::tasks {

using board::FitVariant;
using core::ErrorKind;
using core::Result;
using core::TextureId;

namespace {

Result<std::vector<FitVariant>> workedOut(const catalogue::TextureRecord& record,
                                          const DrawingDefaults& settings,
                                          const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const core::Canvas canvas,
                             chooseCanvas(record.texture, settings.canvases));
    PANTILE_ASSIGN_OR_RETURN(const PlannedDrawing planned,
                             planTexture(record.texture, canvas, settings.board, progress));
    PANTILE_ASSIGN_OR_RETURN(const auto variants, drawingVariants(planned, record.row.title));
    std::vector<FitVariant> takes;
    for (const board::TextureVariant& each : variants)
        takes.push_back({each.bytes, each.plan.milliseconds});
    return takes;
}

/// The same, unless it is known. A slot holds the title as well.
Result<std::vector<FitVariant>> variantsOf(const catalogue::TextureRecord& record,
                                           const DrawingDefaults& settings, KnownCosts& known,
                                           const core::Progress& progress) {
    const std::string key = core::toHex(record.texture.contentFingerprint()) +
                            estimateKey(record.texture, settings).value_or("") + '\n' +
                            record.row.title;
    if (auto found = known.find(key)) return *std::move(found);
    PANTILE_ASSIGN_OR_RETURN(std::vector<FitVariant> variants,
                             workedOut(record, settings, progress));
    known.keep(key, variants);
    return variants;
}

std::size_t smallest(const std::vector<FitVariant>& variants) {
    const auto least = std::min_element(
        variants.begin(), variants.end(),
        [](const FitVariant& a, const FitVariant& b) { return a.bytes < b.bytes; });
    return static_cast<std::size_t>(least - variants.begin());
}

/// Which variant each lies in.
Result<void> chooseVariants(LoadCosts& costs, const core::Progress& progress) {
    std::vector<board::FitItem> items;
    std::vector<SlotCost*> drawn;
    for (SlotCost& slot : costs.slots) {
        if (slot.variants.empty()) continue;
        slot.variant = smallest(slot.variants);
        items.push_back({kUsualWorth, slot.variants, true});
        drawn.push_back(&slot);
    }
    const auto fit = board::chooseBest(items, loadLimits(costs.board, {}), {progress.stop, {}});
    if (!fit) return fit.error().kind == ErrorKind::DoesNotFit ? Result<void>() : fit.error();
    for (const board::FitPick& pick : fit->chosen) drawn[pick.item]->variant = pick.variant;
    return {};
}

}  // namespace

std::optional<std::vector<FitVariant>> KnownCosts::find(const std::string& key) const {
    const std::lock_guard lock(m_mutex);
    const auto found = m_known.find(key);
    return found == m_known.end() ? std::nullopt : std::optional(found->second);
}

void KnownCosts::keep(const std::string& key, const std::vector<FitVariant>& variants) {
    const std::lock_guard lock(m_mutex);
    if (m_known.size() >= kMostKept) m_known.clear();
    m_known[key] = variants;
}

bool LoadCosts::fits() const {
    const bool allDrawn = std::all_of(slots.begin(), slots.end(),
                                      [](const SlotCost& slot) { return slot.problem.empty(); });
    return allDrawn && bytes <= board.bytes && std::ssize(slots) <= board.slots;
}

Result<LoadCosts> loadCosts(const catalogue::Library& library, const std::string& board,
                            const std::string& canvas, const std::vector<TextureId>& ids,
                            KnownCosts& known, const core::Progress& progress) {
    DrawingDefaults settings;
    PANTILE_ASSIGN_OR_RETURN(settings.board, catalogue::readBoard(library, board));
    PANTILE_ASSIGN_OR_RETURN(settings.canvases, canvasesFor(library, canvas));
    std::vector<catalogue::TextureRecord> records;
    for (const TextureId id : ids) {
        PANTILE_ASSIGN_OR_RETURN(catalogue::TextureRecord record,
                                 catalogue::readTexture(library, id));
        records.push_back(std::move(record));
    }
    LoadCosts costs{settings.board, {}, 0, 0};
    const auto plan = [&](std::int64_t i) {
        return variantsOf(records[static_cast<std::size_t>(i)], settings, known,
                          {progress.stop, {}});
    };
    const auto take = [&](std::int64_t i,
                          Result<std::vector<FitVariant>> variants) -> Result<void> {
        progress.tell(i + 1, std::ssize(records), "planning");
        SlotCost slot{records[static_cast<std::size_t>(i)].row, {}, 0, {}};
        if (variants) {
            slot.variants = *std::move(variants);
        } else if (variants.error().kind == ErrorKind::DoesNotFit) {
            slot.problem = variants.error().message;
        } else {
            return variants.error();
        }
        costs.slots.push_back(std::move(slot));
        return {};
    };
    PANTILE_RETURN_IF_ERROR(
        inOrder<Result<std::vector<FitVariant>>>(std::ssize(records), plan, take));
    PANTILE_RETURN_IF_ERROR(chooseVariants(costs, progress));
    for (const SlotCost& slot : costs.slots) {
        costs.bytes += slot.bytes();
        costs.milliseconds += slot.milliseconds();
    }
    if (!costs.slots.empty()) costs.bytes += board::loadBaseBytes();
    return costs;
}

}  // namespace pantile::tasks
