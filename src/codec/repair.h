#pragma once

// Puts damaged codes right. The line checks tell which lines are damaged, each likely slip there is
// tried, and only what the check value of the whole confirms is taken, if nothing else is confirmed
// too. Authority: docs/code-format.md.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <vector>

#include "codec/base58.h"
#include "codec/line_readings.h"
#include "codec/pieces.h"

namespace pantile::codec {

/// Bounds the work for one text, however many damaged codes it holds; counted in steps, so that the
/// same text gives the same result everywhere.
class RepairBudget {
public:
    /// Whether so many more steps may be taken. Once they may not, no more are.
    bool spend(std::size_t steps) {
        m_left = steps <= m_left ? m_left - steps : 0;
        return m_left > 0;
    }

    bool isSpent() const { return m_left == 0; }

private:
    std::size_t m_left = std::size_t{1} << 26U;
};

struct RepairedCode {
    Symbols symbols;      ///< As openArmour takes them; their check value fits.
    std::size_t end = 0;  ///< The glyph at which the text behind the code begins.
    std::vector<Slip> slips;
};

/// Whether symbols with a right check value hold something to their last byte.
using Confirmation = std::function<bool(SymbolSpan symbols)>;

/// For a `region` that begins with a code's start mark, perhaps damaged, and in which no code could
/// be read as it stands. Puts right: one slip in each of up to two lines, or two letters of one
/// line that were taken for look-alikes. Nothing if there is no way to do that, or more than one.
/// Cost: linear in the region and in what it takes from the budget.
std::optional<RepairedCode> repairCode(std::span<const Glyph> glyphs, Region region,
                                       const Confirmation& confirm, RepairBudget& budget);

}  // namespace pantile::codec
