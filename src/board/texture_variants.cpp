#include "board/texture_variants.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <iterator>
#include <utility>

#include "board/load_writer.h"
#include "board/stroke_script.h"
#include "drawing/row_runs.h"
#include "drawing/timing.h"

namespace pantile::board {
namespace {

using core::Result;
using drawing::VisitStrokes;

/// Of what all compact visits together save, so many of kParts parts for each variant.
constexpr std::array<std::int64_t, 3> kShares = {1, 2, 3};
constexpr std::int64_t kParts = 3;

/// What it changes to draw a visit by runs.
struct RunSaving {
    std::size_t visit = 0;
    std::int64_t savedBits = 0;  ///< Above 0.
    std::int64_t costMs = 0;

    /// Whether it takes less time for a bit than the other.
    bool operator<(const RunSaving& other) const {
        const std::int64_t mine = costMs * other.savedBits;
        const std::int64_t its = other.costMs * savedBits;
        return mine != its ? mine < its : visit < other.visit;
    }
};

ScriptBounds boundsOf(const LoadSlot& slot, const drawing::TimeModel& model) {
    return {slot.grid.size(), slot.palette.size(), slot.canvas.penModel, slot.canvas.rules.turns,
            model.jumpCells()};
}

class VariantMaker {
public:
    VariantMaker(const LoadSlot& slot, const core::PointerTiming& timing)
        : m_slot(slot),
          m_model(slot.canvas, timing),
          m_visits(drawing::visitsOf(slot.plan.strokes)) {}

    Result<std::vector<TextureVariant>> make() {
        // This also checks the strokes.
        PANTILE_ASSIGN_OR_RETURN(TextureVariant fast, variant(m_slot.plan, VariantKind::Fast));
        std::vector<TextureVariant> variants;
        variants.push_back(std::move(fast));
        m_runs =
            drawing::asRowRuns(m_visits, m_slot.grid.size(), m_model, m_slot.canvas.rules.covers);
        PANTILE_ASSIGN_OR_RETURN(const std::vector<RunSaving> savings, worthwhile());
        std::int64_t most = 0;
        for (const RunSaving& saving : savings) most += saving.savedBits;
        std::size_t taken = 0;
        std::int64_t saved = 0;
        for (const std::int64_t share : kShares) {
            const std::size_t before = taken;
            for (; taken < savings.size() && saved * kParts < share * most; ++taken) {
                saved += savings[taken].savedBits;
                std::swap(m_visits[savings[taken].visit], m_runs[savings[taken].visit]);
            }
            if (taken == before) continue;
            const bool all = taken == m_visits.size();
            PANTILE_ASSIGN_OR_RETURN(
                TextureVariant next,
                variant(planNow(), all ? VariantKind::Runs : VariantKind::Compact));
            variants.push_back(std::move(next));
        }
        return variants;
    }

private:
    Result<TextureVariant> variant(drawing::Plan plan, VariantKind kind) const {
        LoadSlot slot = m_slot;
        slot.plan = std::move(plan);
        PANTILE_ASSIGN_OR_RETURN(const std::int64_t bytes, slotBytes(slot));
        return TextureVariant{kind, bytes, std::move(slot.plan)};
    }

    /// The visits that are smaller by runs, the cheapest in time first.
    Result<std::vector<RunSaving>> worthwhile() const {
        const ScriptBounds bounds = boundsOf(m_slot, m_model);
        const auto bitsOf = [&](const VisitStrokes& strokes) -> Result<std::int64_t> {
            if (strokes.empty()) return 0;
            PANTILE_ASSIGN_OR_RETURN(const std::size_t bits, visitBits(strokes, bounds));
            return static_cast<std::int64_t>(bits);
        };
        std::vector<RunSaving> savings;
        for (std::size_t i = 0; i < m_visits.size(); ++i) {
            PANTILE_ASSIGN_OR_RETURN(const std::int64_t strokes, bitsOf(m_visits[i]));
            PANTILE_ASSIGN_OR_RETURN(const std::int64_t runs, bitsOf(m_runs[i]));
            if (runs >= strokes) continue;
            savings.push_back(
                {i, strokes - runs, visitMs(m_runs[i], m_model) - visitMs(m_visits[i], m_model)});
        }
        std::sort(savings.begin(), savings.end());
        return savings;
    }

    drawing::Plan planNow() const {
        std::vector<drawing::Stroke> strokes;
        for (const VisitStrokes& visit : m_visits) {
            strokes.insert(strokes.end(), visit.begin(), visit.end());
        }
        return drawing::timedPlan(std::move(strokes), m_model, m_slot.plan.fill);
    }

    const LoadSlot& m_slot;
    drawing::TimeModel m_model;
    std::vector<VisitStrokes> m_visits;
    std::vector<VisitStrokes> m_runs;
};

/// From the quickest on only those that are smaller than all before them.
std::vector<TextureVariant> frontier(std::vector<TextureVariant> variants) {
    std::stable_sort(variants.begin(), variants.end(), [](const auto& a, const auto& b) {
        return std::pair(a.plan.milliseconds, a.bytes) < std::pair(b.plan.milliseconds, b.bytes);
    });
    std::vector<TextureVariant> kept;
    for (TextureVariant& each : variants) {
        if (kept.empty() || each.bytes < kept.back().bytes) kept.push_back(std::move(each));
    }
    return kept;
}

}  // namespace

std::string_view variantName(VariantKind kind) {
    constexpr std::array<std::string_view, 3> kNames = {"fast", "compact", "runs"};
    return kNames.at(static_cast<std::size_t>(kind));
}

Result<std::vector<TextureVariant>> variantsOf(const LoadSlot& slot,
                                               const core::PointerTiming& timing) {
    PANTILE_ASSIGN_OR_RETURN(std::vector<TextureVariant> variants,
                             VariantMaker(slot, timing).make());
    return frontier(std::move(variants));
}

}  // namespace pantile::board
