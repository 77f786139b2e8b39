#pragma once

// Choose: what the textures of a load take of its board, also where they do not fit.

#include <cstddef>
#include <cstdint>
#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "board/fit.h"
#include "catalogue/library.h"
#include "catalogue/texture_row.h"
#include "core/board.h"
#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::tasks {

/// What textures take, as it was worked out before: planning takes long. May be used from several
/// threads.
class KnownCosts {
public:
    std::optional<std::vector<board::FitVariant>> find(const std::string& key) const;
    void keep(const std::string& key, const std::vector<board::FitVariant>& variants);

private:
    static constexpr std::size_t kMostKept = 20000;

    mutable std::mutex m_mutex;
    std::map<std::string, std::vector<board::FitVariant>> m_known;
};

struct SlotCost {
    catalogue::TextureRow row;
    std::vector<board::FitVariant> variants;  ///< From quick to small; none if it cannot be drawn.
    std::size_t variant = 0;                  ///< The one that it lies in.
    std::string problem;                      ///< Why it cannot be drawn.

    std::int64_t bytes() const { return variants.empty() ? 0 : variants[variant].bytes; }

    std::int64_t milliseconds() const {
        return variants.empty() ? 0 : variants[variant].milliseconds;
    }
};

struct LoadCosts {
    core::Board board;
    std::vector<SlotCost> slots;
    std::int64_t bytes = 0;  ///< Of the whole load.
    std::int64_t milliseconds = 0;

    bool fits() const;
};

/// Each texture on `canvas`, or if that is empty on the one that chooseCanvas gives, in the
/// variants in which all together draw quickest within the board's bytes, or in the smallest ones
/// if they do not fit. Errors: NotFound; Cancelled.
core::Result<LoadCosts> loadCosts(const catalogue::Library& library, const std::string& board,
                                  const std::string& canvas,
                                  const std::vector<core::TextureId>& ids, KnownCosts& known,
                                  const core::Progress& progress = {});

}  // namespace pantile::tasks
