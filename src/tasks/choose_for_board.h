#pragma once

// Choose: which of some textures a board should carry, and in which slot each lies.

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "board/fit.h"
#include "board/load.h"
#include "catalogue/library.h"
#include "core/board.h"
#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::tasks {

/// What a texture is worth unless something else is said.
inline constexpr std::int64_t kUsualWorth = 3;

struct ChooseOptions {
    std::string board;
    std::string canvas;  ///< By name, or empty for the one that chooseCanvas gives each texture.
    std::set<core::TextureId> must;
    std::set<core::TextureId> never;
    std::vector<std::string> together;  ///< Shelves whose selected textures are all in or all out.
    std::map<core::TextureId, std::int64_t> worth;  ///< usualWorth for the others.
    std::optional<std::int64_t> milliseconds;       ///< Drawing time of all together.
};

struct ChosenSlot {
    core::TextureId id;
    std::int64_t bytes = 0;
    std::int64_t milliseconds = 0;
    board::LoadSlot slot;
    std::string author = {};
    std::string licence = {};

    /// "by Mara Quill, CC0-1.0", safe to print; empty if neither is known.
    std::string credit() const;
};

struct NotChosen {
    core::TextureId id;
    std::string reason;
    std::string change = {};                    ///< A sentence: what would let it in.
    std::vector<core::TextureId> takeOut = {};  ///< The cheapest exchange, if there is one.
    board::Shortage shortage = {};              ///< What it lacks beside all that is chosen.
};

struct Choice {
    core::Board board;
    std::vector<ChosenSlot> slots;  ///< In slot order, the first is slot 1.
    std::int64_t bytes = 0;         ///< Of the whole load.
    std::int64_t milliseconds = 0;
    std::int64_t worth = 0;
    std::vector<NotChosen> leftOut;
    bool provenBest = false;
    std::int64_t worthBound = 0;  ///< No set is worth more.
};

/// Plans each texture and picks the set of greatest worth within slots, bytes and time.
/// Errors: as loadCandidates (load_candidates.h); DoesNotFit, naming the musts, if they alone do
/// not fit; InvalidInput for a worth out of range.
core::Result<Choice> chooseForBoard(const catalogue::Library& library,
                                    const std::vector<core::TextureId>& ids,
                                    const ChooseOptions& options,
                                    const core::Progress& progress = {});

/// All of `ids` in that order as a load. Errors: as chooseForBoard; DoesNotFit, naming the texture
/// or the limit, if they do not all fit.
core::Result<Choice> takeAll(const catalogue::Library& library,
                             const std::vector<core::TextureId>& ids, const ChooseOptions& options,
                             const core::Progress& progress = {});

}  // namespace pantile::tasks
