#include "tasks/split_over_loads.h"

#include <algorithm>
#include <map>
#include <utility>

#include "board/fit.h"
#include "board/left_out.h"
#include "board/load_writer.h"
#include "board/pack_loads.h"
#include "catalogue/boards.h"
#include "tasks/load_candidates.h"

namespace pantile::tasks {

using core::Result;

namespace {

/// What goes into one load as a whole: places of candidates, and what they take.
struct Parcel {
    std::vector<std::size_t> members;
    board::PackItem item;
};

/// Numbers for shelves and palettes.
class Groups {
public:
    std::vector<int> of(const LoadCandidate& candidate) {
        std::vector<int> groups;
        for (const std::string& shelf : candidate.row.shelves)
            groups.push_back(m_shelves.try_emplace(shelf, next()).first->second);
        groups.push_back(ofPalette(candidate.palette));
        return groups;
    }

private:
    int next() const { return static_cast<int>(m_shelves.size() + m_palettes.size()); }

    int ofPalette(const core::Palette& palette) {
        const auto known = std::find_if(m_palettes.begin(), m_palettes.end(),
                                        [&](const auto& each) { return each.first == palette; });
        if (known != m_palettes.end()) return known->second;
        m_palettes.emplace_back(palette, next());
        return m_palettes.back().second;
    }

    std::map<std::string, int> m_shelves;
    std::vector<std::pair<core::Palette, int>> m_palettes;
};

/// The smallest variant, with its own time.
board::FitVariant smallestOf(const LoadCandidate& candidate) {
    return *std::min_element(
        candidate.takes.begin(), candidate.takes.end(), [](const auto& a, const auto& b) {
            return std::pair(a.bytes, a.milliseconds) < std::pair(b.bytes, b.milliseconds);
        });
}

std::vector<Parcel> parcelsOf(const std::vector<LoadCandidate>& candidates) {
    Groups groups;
    std::map<int, std::size_t> placeOf;
    std::vector<Parcel> parcels;
    for (std::size_t i = 0; i < candidates.size(); ++i) {
        const LoadCandidate& candidate = candidates[i];
        std::size_t place = parcels.size();
        if (candidate.bundle != board::FitItem::kNoBundle)
            place = placeOf.try_emplace(candidate.bundle, place).first->second;
        if (place == parcels.size()) {
            parcels.emplace_back();
            parcels.back().item.slots = 0;
        }
        Parcel& parcel = parcels[place];
        parcel.members.push_back(i);
        const board::FitVariant smallest = smallestOf(candidate);
        ++parcel.item.slots;
        parcel.item.bytes += smallest.bytes;
        parcel.item.milliseconds += smallest.milliseconds;
        parcel.item.worth += candidate.worth;
        for (const int group : groups.of(candidate)) {
            std::vector<int>& known = parcel.item.groups;
            if (std::find(known.begin(), known.end(), group) == known.end()) known.push_back(group);
        }
    }
    return parcels;
}

bool fits(const board::PackItem& item, const board::FitLimits& limits) {
    return item.slots <= limits.slots && item.bytes <= limits.bytes &&
           item.milliseconds <= limits.milliseconds.value_or(item.milliseconds);
}

/// Parcels that are too large in their smallest variants get quicker ones if those fit. Takes out
/// the others, with the reasons that chooseBest finds for them in an empty load.
/// Errors: DoesNotFit for a must among them.
Result<std::vector<NotChosen>> takeOutTooLarge(const std::vector<LoadCandidate>& candidates,
                                               const board::FitLimits& limits,
                                               const core::Progress& progress,
                                               std::vector<Parcel>& parcels) {
    std::vector<NotChosen> tooLarge;
    std::vector<Parcel> kept;
    for (Parcel& parcel : parcels) {
        if (!fits(parcel.item, limits)) {
            std::vector<LoadCandidate> alone;
            for (const std::size_t member : parcel.members) alone.push_back(candidates[member]);
            std::vector<board::FitItem> items = fitItems(alone);
            for (board::FitItem& item : items) item.worth = 1;
            PANTILE_ASSIGN_OR_RETURN(const board::FitChoice choice,
                                     board::chooseBest(items, limits, progress));
            for (const board::LeftOut& left : choice.leftOut)
                tooLarge.push_back({alone[left.item].row.id,
                                    left.reason,
                                    board::changeText(items, left),
                                    {},
                                    left.shortage});
            parcel.item.bytes = choice.bytes;
            parcel.item.milliseconds = choice.milliseconds;
            if (!choice.leftOut.empty()) continue;
        }
        kept.push_back(std::move(parcel));
    }
    parcels = std::move(kept);
    return tooLarge;
}

/// What no way of choosing variants gets below, or the packing itself where each texture has one.
std::size_t fewestPossible(const std::vector<LoadCandidate>& candidates,
                           const std::vector<Parcel>& parcels, const board::PackLimits& limits,
                           std::size_t fewestOfPacking) {
    std::vector<board::PackItem> least;
    bool single = true;
    for (const Parcel& parcel : parcels) {
        board::PackItem item{0, {}, parcel.item.slots};
        for (const std::size_t member : parcel.members) {
            const std::vector<board::FitVariant>& takes = candidates[member].takes;
            single = single && takes.size() == 1;
            item.bytes += smallestOf(candidates[member]).bytes;
            item.milliseconds +=
                std::min_element(takes.begin(), takes.end(), [](const auto& a, const auto& b) {
                    return a.milliseconds < b.milliseconds;
                })->milliseconds;
        }
        least.push_back(std::move(item));
    }
    return single || !limits.milliseconds ? fewestOfPacking : board::fewestLoads(least, limits);
}

/// The textures of one load, each in the variant that draws quickest while all fit.
Result<Choice> loadOf(std::vector<LoadCandidate> chosen, const core::Board& board,
                      const board::FitLimits& limits, const core::Progress& progress) {
    for (LoadCandidate& candidate : chosen) candidate.must = true;
    PANTILE_ASSIGN_OR_RETURN(const board::FitChoice fit,
                             board::chooseBest(fitItems(chosen), limits, progress));
    Choice choice{board,
                  {},
                  fit.bytes + board::loadBaseBytes(),
                  fit.milliseconds,
                  fit.worth,
                  {},
                  fit.provenBest,
                  fit.worthBound};
    for (const board::FitPick& pick : fit.chosen) choice.slots.push_back(chosenSlot(chosen, pick));
    return choice;
}

}  // namespace

Result<Split> splitOverLoads(const catalogue::Library& library,
                             const std::vector<core::TextureId>& ids, const ChooseOptions& options,
                             const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const core::Board board, catalogue::readBoard(library, options.board));
    PANTILE_ASSIGN_OR_RETURN(LoadCandidates found,
                             loadCandidates(library, ids, options, board, progress));
    const board::FitLimits limits = loadLimits(board, options);
    const core::Progress quiet{progress.stop, {}};
    std::vector<Parcel> parcels = parcelsOf(found.possible);
    PANTILE_ASSIGN_OR_RETURN(std::vector<NotChosen> tooLarge,
                             takeOutTooLarge(found.possible, limits, quiet, parcels));

    Split split{board, {}, std::move(found.impossible), 0};
    split.leftOut.insert(split.leftOut.end(), tooLarge.begin(), tooLarge.end());
    std::sort(split.leftOut.begin(), split.leftOut.end(),
              [](const NotChosen& a, const NotChosen& b) { return a.id < b.id; });
    std::vector<board::PackItem> items;
    items.reserve(parcels.size());
    for (const Parcel& parcel : parcels) items.push_back(parcel.item);
    const board::PackLimits room{limits.slots, limits.bytes, limits.milliseconds};
    PANTILE_ASSIGN_OR_RETURN(const board::Packing packing, board::packLoads(items, room, quiet));
    split.fewest = fewestPossible(found.possible, parcels, room, packing.fewest);
    for (const std::vector<std::size_t>& load : packing.loads) {
        std::vector<std::size_t> members;
        for (const std::size_t parcel : load) {
            members.insert(members.end(), parcels[parcel].members.begin(),
                           parcels[parcel].members.end());
        }
        std::sort(members.begin(), members.end());
        std::vector<LoadCandidate> chosen;
        chosen.reserve(members.size());
        for (const std::size_t member : members)
            chosen.push_back(std::move(found.possible[member]));
        PANTILE_ASSIGN_OR_RETURN(Choice choice, loadOf(std::move(chosen), board, limits, quiet));
        split.loads.push_back(std::move(choice));
    }
    return split;
}

}  // namespace pantile::tasks
