#pragma once

// Modelled runs: for each cell the answers 'is it candidate 1?', 'candidate 2?' and so on, each
// foretold from the cells that are known. A run is a row of 'yes, as the first candidate', whose
// price falls towards nothing as it goes on. Authority: docs/code-format.md, section 14.

#include <cstddef>
#include <cstdint>
#include <span>
#include <unordered_map>
#include <vector>

#include "codec/bit_coder.h"
#include "codec/bit_mixer.h"
#include "core/grid.h"
#include "core/palette.h"

namespace pantile::codec {

/// Bounds the time that a reader takes, whatever it is given.
inline constexpr std::size_t kMostDecisions = 100000;

inline constexpr std::size_t kGridContexts = 15;
inline constexpr std::size_t kGridChoosers = 3;
using GridMixer = BitMixer<kGridContexts, kGridChoosers>;

/// How many choices each chooser of a GridMixer has: by the candidate's place; by that and which
/// neighbours are equal; by what repeats and mirrors foretell.
inline constexpr std::array<std::size_t, kGridChoosers> kGridChoices = {12, 48, 90};

/// The weights to start from, learned from open art and frozen in the format.
const GridMixer::StartWeights& gridStartWeights();

/// Cells of a palette whose colours are known. Grids that follow one another share what is learned.
class GridModel {
public:
    /// `cells`: of all grids to come; memory is taken in proportion.
    explicit GridModel(std::size_t cells,
                       const GridMixer::StartWeights& start = gridStartWeights());

    /// Puts down `cells` (empty when reading), or reads them. False if all grids
    /// together need more than kMostDecisions: then they cannot be written this way, and what was
    /// read is damaged.
    /// `paletteNumber` tells the palettes of one code apart.
    bool code(BitCoder& coder, core::Size size, const core::Palette& palette,
              std::size_t paletteNumber, std::vector<core::PaletteIndex>& cells);

    /// How many were coded so far.
    std::size_t decisions() const { return kMostDecisions - m_decisionsLeft; }

    const GridMixer& mixer() const { return m_mixer; }

private:
    friend class GridCoding;

    GridMixer m_mixer;
    std::size_t m_decisionsLeft = kMostDecisions;
    std::vector<core::PaletteIndex> m_history;              ///< The cells of all grids so far.
    std::array<std::vector<std::int32_t>, 2> m_lastPlaces;  ///< In history, by hash of neighbours.
    std::size_t m_previousAt = 0;  ///< Where the grid before this one begins.
    core::Size m_previousSize;
};

}  // namespace pantile::codec
