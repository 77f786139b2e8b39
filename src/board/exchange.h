#pragma once

// What would let a texture in that was left out: other textures out, or a larger board.

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "board/fit.h"
#include "board/weighing.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::board {

/// Textures that can only be in together; usually one.
using Unit = std::vector<Candidate>;

/// What was chosen, as the exchanges see it.
class Standing {
public:
    /// A bundle with something required in it is required as a whole.
    Standing(std::vector<Candidate> chosen, Assignment variants, const FitLimits& limits);

    const std::vector<Candidate>& chosen() const { return m_chosen; }

    const Assignment& variants() const { return m_variants; }

    const FitLimits& limits() const { return m_limits; }

    Figures asItIs() const { return m_asItIs; }

    std::int64_t leastBytes() const { return m_leastBytes; }

    std::int64_t leastMs() const { return m_leastMs; }

    /// Of the textures and bundles that may go, what the one of least worth is worth.
    std::optional<std::int64_t> leastWorth() const { return m_leastWorth; }

private:
    std::vector<Candidate> m_chosen;
    Assignment m_variants;
    FitLimits m_limits;
    Figures m_asItIs;
    std::int64_t m_leastBytes = 0;
    std::int64_t m_leastMs = 0;
    std::optional<std::int64_t> m_leastWorth;
};

/// One texture of the least worth of all that may go, if that is enough while the others stay as
/// they are: then nothing is cheaper. Of several the slowest, then the first.
std::optional<Exchange> singleExchange(const Standing& standing, const Unit& unit);

/// The cheapest exchange that lets all of `unit` in, or nothing if not even everything that may go
/// would make room. Cost: at most `steps`; what is left of them stays there. Errors: Cancelled.
core::Result<std::optional<Exchange>> cheapestExchange(const Standing& standing, const Unit& unit,
                                                       std::int64_t& steps,
                                                       const core::Progress& progress);

/// Cost: as cheapestExchange; without steps the bytes may be more than needed. Errors: Cancelled.
core::Result<Shortage> shortageFor(const Standing& standing, const Unit& unit, std::int64_t& steps,
                                   const core::Progress& progress);

}  // namespace pantile::board
