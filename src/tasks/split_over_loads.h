#pragma once

// Choose: all of some textures over as few loads as possible, in an order for an evening of
// drawing.

#include <cstddef>
#include <vector>

#include "catalogue/library.h"
#include "core/board.h"
#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"
#include "tasks/choose_for_board.h"

namespace pantile::tasks {

struct Split {
    core::Board board;
    std::vector<Choice> loads;       ///< In the order of drawing.
    std::vector<NotChosen> leftOut;  ///< Those that no load holds.
    std::size_t fewest = 0;          ///< There is no way with fewer loads than this.

    bool provenFewest() const { return loads.size() == fewest; }
};

/// `options.milliseconds` holds for each load. Textures that share a shelf or a palette lie in one
/// load where that costs no further load; those of a shelf in `options.together` always do. The
/// load that is worth most comes first; after each the one that shares most shelves and palettes
/// with it, of these the one that is worth most, then the one with the earliest texture. Errors: as
/// loadCandidates (load_candidates.h); DoesNotFit, naming it, for a must that no load holds;
/// TooLarge.
core::Result<Split> splitOverLoads(const catalogue::Library& library,
                                   const std::vector<core::TextureId>& ids,
                                   const ChooseOptions& options,
                                   const core::Progress& progress = {});

}  // namespace pantile::tasks
