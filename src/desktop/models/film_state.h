#pragma once

// FilmState: where in a film one is, and what the canvas shows there. Knows no Qt.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "core/grid.h"
#include "drawing/film.h"

namespace pantile::desktop {

class FilmState {
public:
    using Cell = std::optional<core::PaletteIndex>;

    /// Stands before the first report, with nothing painted.
    explicit FilmState(drawing::Film film);

    std::int64_t milliseconds() const { return m_film.end.milliseconds; }

    const drawing::Film& film() const { return m_film; }

    /// Row by row, as the canvas has them.
    const std::vector<Cell>& cells() const { return m_cells; }

    /// How many reports have landed.
    std::size_t landed() const { return m_landed; }

    /// The last one that landed; null before the first.
    const drawing::Instant* now() const;

    /// Goes to what is to be seen at that time. Calls `changed` with the place of each cell that
    /// may show something else. Cost: the changes in between.
    void seek(std::int64_t milliseconds, const std::function<void(std::size_t)>& changed);

    /// When the next report lands, or the one before the last; the ends if there is none.
    std::int64_t nextReport() const;
    std::int64_t reportBefore() const;

    /// When the pen goes down next, or went down before; the ends if there is none.
    std::int64_t nextStroke() const;
    std::int64_t strokeBefore() const;

private:
    bool goesDown(std::size_t report) const;

    drawing::Film m_film;
    std::vector<Cell> m_cells;
    std::size_t m_landed = 0;
    std::size_t m_done = 0;  ///< Changes.
};

}  // namespace pantile::desktop
