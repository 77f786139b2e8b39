#include "board/pack_loads.h"

#include <algorithm>
#include <numeric>
#include <string>

#include "board/fit.h"
#include "board/load_bins.h"
#include "board/load_groups.h"
#include "core/board.h"
#include "core/range_check.h"

namespace pantile::board {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

// Together well under a second on a machine of its day.
constexpr std::int64_t kPackSteps = 50'000'000;

// The search goes as deep as there are items.
constexpr std::size_t kMaxSearchedItems = 2000;

Result<void> checkFigures(const PackItem& item) {
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("a texture's size in bytes", item.bytes, 0, kMaxFitFigure));
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("a texture's time in ms", item.milliseconds, 0, kMaxFitFigure));
    PANTILE_RETURN_IF_ERROR(core::checkRange("a texture's worth", item.worth, 0, kMaxFitFigure));
    return core::checkRange("an item's slots", item.slots, 1, core::kMaxBoardSlots);
}

Result<void> checkFits(const PackItem& item, std::size_t number, const PackLimits& limits) {
    const auto tooLarge = [&](std::int64_t need, std::int64_t room, const std::string& what) {
        return Error{ErrorKind::DoesNotFit,
                     "item " + std::to_string(number) + " needs " + std::to_string(need) + " " +
                         what + ", and a load has " + std::to_string(room),
                     "leave it out"};
    };
    if (item.bytes > limits.bytes) return tooLarge(item.bytes, limits.bytes, "bytes");
    if (item.slots > limits.slots) return tooLarge(item.slots, limits.slots, "slots");
    if (limits.milliseconds && item.milliseconds > *limits.milliseconds)
        return tooLarge(item.milliseconds, *limits.milliseconds, "ms");
    return {};
}

Result<void> checkItems(std::span<const PackItem> items, const PackLimits& limits) {
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the number of slots", limits.slots, 1, core::kMaxBoardSlots));
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the number of bytes", limits.bytes, 0, kMaxFitFigure));
    PANTILE_RETURN_IF_ERROR(core::checkRange("the time allowed in ms",
                                             limits.milliseconds.value_or(0), 0, kMaxFitFigure));
    if (items.size() > kMaxPackItems) {
        return Error{ErrorKind::TooLarge,
                     std::to_string(items.size()) + " textures are too many; at most " +
                         std::to_string(kMaxPackItems) + " can be spread over loads at once",
                     "narrow the selection"};
    }
    for (std::size_t i = 0; i < items.size(); ++i) {
        PANTILE_RETURN_IF_ERROR(checkFigures(items[i]));
        PANTILE_RETURN_IF_ERROR(checkFits(items[i], i, limits));
    }
    return {};
}

std::int64_t quotientUp(std::int64_t dividend, std::int64_t divisor) {
    return (dividend + divisor - 1) / divisor;
}

/// L2: items above half a load cannot share one. For a threshold, items that leave less room than
/// that beside them stay alone; the rest between threshold and half has to go beside the others of
/// more than a half, or into further loads.
std::int64_t fewestBySizes(std::vector<std::int64_t> sizes, std::int64_t room) {
    if (room == 0) return 0;
    std::sort(sizes.begin(), sizes.end());
    std::vector<std::int64_t> sumBelow(sizes.size() + 1, 0);
    std::partial_sum(sizes.begin(), sizes.end(), sumBelow.begin() + 1);
    const auto countUpTo = [&](std::int64_t size) {
        return static_cast<std::size_t>(std::upper_bound(sizes.begin(), sizes.end(), size) -
                                        sizes.begin());
    };
    const std::size_t half = countUpTo(room / 2);
    const auto large = static_cast<std::int64_t>(sizes.size() - half);
    std::int64_t fewest = large;
    for (std::size_t least = 0; least < half; ++least) {
        const std::size_t alone = std::max(half, countUpTo(room - sizes[least]));
        const std::int64_t rest = sumBelow[half] - sumBelow[least];
        const std::int64_t beside =
            static_cast<std::int64_t>(alone - half) * room - (sumBelow[alone] - sumBelow[half]);
        const std::int64_t further = std::max<std::int64_t>(quotientUp(rest - beside, room), 0);
        fewest = std::max(fewest, large + further);
    }
    return fewest;
}

struct Search {
    Loads loads;
    std::size_t fewest = 0;
};

/// Tries more and more loads, from the bound upwards, until they hold all or no fewer are left.
Result<Search> searchFewest(std::span<const PackItem> items, const PackLimits& limits,
                            const core::Progress& progress) {
    Search search{firstFitDecreasing(items, limits), fewestLoads(items, limits)};
    if (items.size() > kMaxSearchedItems) return search;
    std::int64_t steps = kPackSteps;
    while (search.fewest < search.loads.size()) {
        const BinAnswer answer =
            packInto(items, limits, search.fewest, steps, progress, search.loads);
        if (answer == BinAnswer::Cancelled) return core::stoppedError();
        if (answer != BinAnswer::Impossible) break;
        ++search.fewest;
    }
    return search;
}

}  // namespace

std::size_t fewestLoads(std::span<const PackItem> items, const PackLimits& limits) {
    std::int64_t slots = 0;
    std::vector<std::int64_t> bytes;
    std::vector<std::int64_t> times;
    for (const PackItem& item : items) {
        slots += item.slots;
        bytes.push_back(item.bytes);
        times.push_back(item.milliseconds);
    }
    std::int64_t fewest =
        std::max(quotientUp(slots, limits.slots), fewestBySizes(std::move(bytes), limits.bytes));
    if (limits.milliseconds)
        fewest = std::max(fewest, fewestBySizes(std::move(times), *limits.milliseconds));
    return static_cast<std::size_t>(fewest);
}

Result<Packing> packLoads(std::span<const PackItem> items, const PackLimits& limits,
                          const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(checkItems(items, limits));
    PANTILE_ASSIGN_OR_RETURN(Search search, searchFewest(items, limits, progress));
    PANTILE_ASSIGN_OR_RETURN(Loads together,
                             gatherGroups(items, limits, std::move(search.loads), progress));
    return Packing{std::move(together), search.fewest};
}

}  // namespace pantile::board
