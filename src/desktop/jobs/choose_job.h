#pragma once

// What runs off the window's thread to choose for a board.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include <QString>

#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::desktop {

/// More are not planned at once: it would take long, and one chooses among some.
inline constexpr std::size_t kMostToChooseFrom = 2000;

struct ChooseRequest {
    std::filesystem::path libraryPath;
    std::string load;  ///< To be filled, or what several are named after; empty for a new one.
    std::string board;
    std::string canvas;                 ///< Of the load; empty for each texture's own.
    std::vector<core::TextureId> ids;   ///< To choose from.
    std::string shelf;                  ///< The same, if not empty.
    std::vector<core::TextureId> keep;  ///< These must be in.
    std::optional<std::int64_t> milliseconds;
    bool overSeveral = false;  ///< All of them over as few loads as possible.
};

struct LeftOutWords {
    core::TextureId id;
    QString title;
    QString reason;
    QString change;  ///< What would let it in; may be empty.
};

struct ChooseAnswer {
    std::vector<std::vector<core::TextureId>> loads;  ///< One, unless over several.
    std::vector<LeftOutWords> leftOut;
    QString words;  ///< How good the choice is.
};

/// Errors: InvalidInput if there is nothing to choose from; TooLarge beyond kMostToChooseFrom; as
/// tasks::chooseForBoard and splitOverLoads.
core::Result<ChooseAnswer> chooseFor(const ChooseRequest& request, const core::Progress& progress);

}  // namespace pantile::desktop
