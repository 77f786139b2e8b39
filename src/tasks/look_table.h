#pragma once

// LookTable: the looks of a library's pictures in memory, to ask for many which others are near.

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "catalogue/library.h"
#include "catalogue/looks.h"
#include "core/result.h"
#include "picture/look.h"

namespace pantile::tasks {

catalogue::LookFigures figuresOf(const picture::Look& look);
picture::Look lookOf(const catalogue::LookFigures& figures);

class LookTable {
public:
    /// Those that may be at most `within` from one of `looks`. Cost: passes through all looks of
    /// the library.
    static core::Result<LookTable> read(const catalogue::Library& library,
                                        std::span<const picture::Look> looks, int within);

    /// Contents that may be at most so far from `look`, its own among them.
    std::vector<std::int64_t> near(const picture::Look& look, int within) const;

private:
    struct Entry {
        std::int64_t contentId;
        picture::Look look;
    };

    std::vector<Entry> m_entries;  ///< Ascending by lightness.
};

}  // namespace pantile::tasks
