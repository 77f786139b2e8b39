#pragma once

// Textures as a load may hold them: planned, with what they take of a board and what they are
// worth.

#include <cstdint>
#include <string>
#include <vector>

#include "board/fit.h"
#include "board/load.h"
#include "catalogue/library.h"
#include "catalogue/texture_row.h"
#include "core/board.h"
#include "core/canvas.h"
#include "core/ids.h"
#include "core/palette.h"
#include "core/progress.h"
#include "core/result.h"
#include "tasks/choose_for_board.h"

namespace pantile::tasks {

struct LoadCandidate {
    catalogue::TextureRow row;
    core::Palette palette;
    std::int64_t worth = 0;
    std::vector<board::LoadSlot> variants;   ///< Never empty.
    std::vector<board::FitVariant> takes;    ///< What each variant takes.
    int bundle = board::FitItem::kNoBundle;  ///< By ChooseOptions::together.
    bool must = false;

    /// What messages call it: "17 Kelp bed".
    std::string name() const;
};

/// What may be chosen, and what may not, with its reason.
struct LoadCandidates {
    std::vector<LoadCandidate> possible;
    std::vector<NotChosen> impossible;
};

/// What a texture is worth unless the user says otherwise.
std::int64_t usualWorth(const catalogue::TextureRow& row);

/// Those that textures of a load may be drawn on: the one named, or all if the name is empty.
/// Errors: NotFound with the nearest name.
core::Result<std::vector<core::Canvas>> canvasesFor(const catalogue::Library& library,
                                                    const std::string& canvas);

/// Plans all of `ids` but those of `options.never`.
/// Errors: NotFound for names and ids; InvalidInput for options that name what is not among `ids`
/// or that contradict one another; DoesNotFit for a must that no canvas takes; Cancelled.
core::Result<LoadCandidates> loadCandidates(const catalogue::Library& library,
                                            const std::vector<core::TextureId>& ids,
                                            const ChooseOptions& options, const core::Board& board,
                                            const core::Progress& progress);

/// What a load for the board has for its slots.
board::FitLimits loadLimits(const core::Board& board, const ChooseOptions& options);

std::vector<board::FitItem> fitItems(const std::vector<LoadCandidate>& candidates);

/// What `pick` chose of `candidates`, moved out of there.
ChosenSlot chosenSlot(std::vector<LoadCandidate>& candidates, const board::FitPick& pick);

}  // namespace pantile::tasks
