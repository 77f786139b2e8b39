#pragma once

// Exact search for a packing into a given number of loads. packLoads (pack_loads.h) asks it for
// more and more.

#include <cstddef>
#include <cstdint>
#include <span>
#include <utility>
#include <vector>

#include "board/pack_loads.h"

namespace pantile::board {

using Loads = std::vector<std::vector<std::size_t>>;

/// What an item takes of a load, or what a load has left.
struct PackRoom {
    std::int64_t bytes = 0;
    std::int64_t slots = 0;
    std::int64_t milliseconds = 0;

    static PackRoom of(const PackItem& item) { return {item.bytes, item.slots, item.milliseconds}; }

    static PackRoom of(const PackLimits& limits);

    bool holds(const PackRoom& other) const {
        return other.bytes <= bytes && other.slots <= slots && other.milliseconds <= milliseconds;
    }

    PackRoom& operator+=(const PackRoom& other);
    PackRoom& operator-=(const PackRoom& other);
};

/// Loads that are filled item by item, each item going where there is room first.
class FirstFit {
public:
    FirstFit(std::span<const PackItem> items, const PackLimits& limits)
        : m_items(items), m_limits(limits) {}

    /// Puts the item into load `preferred` if that has room, else into the first that has, else
    /// into a new one; which.
    std::size_t put(std::size_t item, std::size_t preferred = 0);

    Loads take() && { return std::move(m_loads); }

private:
    std::span<const PackItem> m_items;
    PackLimits m_limits;
    Loads m_loads;
    std::vector<PackRoom> m_room;  ///< By load.
};

/// Each item into the first load, largest items first, that still has room for it.
/// Source: first-fit decreasing, D. S. Johnson, 'Near-optimal bin packing algorithms', 1973.
Loads firstFitDecreasing(std::span<const PackItem> items, const PackLimits& limits);

enum class BinAnswer { Found, Impossible, OutOfSteps, Cancelled };

/// Looks for a packing into at most `count` loads, which it puts into `loads` when it is Found.
/// Cost: at most `steps`; what is left of them stays there.
/// Source: load by load, each begun with the largest item that is left and filled until nothing
/// more fits, as in R. E. Korf, 'A new algorithm for optimal bin packing', AAAI 2002.
BinAnswer packInto(std::span<const PackItem> items, const PackLimits& limits, std::size_t count,
                   std::int64_t& steps, const core::Progress& progress, Loads& loads);

}  // namespace pantile::board
