#include "desktop/models/film_state.h"

#include <algorithm>
#include <utility>

namespace pantile::desktop {

FilmState::FilmState(drawing::Film film)
    : m_film(std::move(film)), m_cells(m_film.end.cells.size()) {}

const drawing::Instant* FilmState::now() const {
    return m_landed == 0 ? nullptr : &m_film.instants[m_landed - 1];
}

void FilmState::seek(std::int64_t milliseconds, const std::function<void(std::size_t)>& changed) {
    const auto after =
        std::upper_bound(m_film.instants.begin(), m_film.instants.end(), milliseconds,
                         [](std::int64_t time, const drawing::Instant& instant) {
                             return time < instant.milliseconds;
                         });
    m_landed = static_cast<std::size_t>(after - m_film.instants.begin());
    const std::size_t wanted = m_landed == 0 ? 0 : m_film.instants[m_landed - 1].changes;
    const auto show = [&](const drawing::CellChange& change, const Cell& colour) {
        m_cells[change.cell] = colour;
        changed(change.cell);
    };
    for (; m_done < wanted; ++m_done) show(m_film.changes[m_done], m_film.changes[m_done].after);
    for (; m_done > wanted; --m_done)
        show(m_film.changes[m_done - 1], m_film.changes[m_done - 1].before);
}

std::int64_t FilmState::nextReport() const {
    return m_landed < m_film.instants.size() ? m_film.instants[m_landed].milliseconds
                                             : milliseconds();
}

std::int64_t FilmState::reportBefore() const {
    return m_landed < 2 ? -1 : m_film.instants[m_landed - 2].milliseconds;
}

bool FilmState::goesDown(std::size_t report) const {
    const bool wasDown = report > 0 && m_film.instants[report - 1].pressed;
    return m_film.instants[report].pressed && !wasDown;
}

std::int64_t FilmState::nextStroke() const {
    for (std::size_t i = m_landed; i < m_film.instants.size(); ++i) {
        if (goesDown(i)) return m_film.instants[i].milliseconds;
    }
    return milliseconds();
}

std::int64_t FilmState::strokeBefore() const {
    for (std::size_t i = m_landed; i > 1; --i) {
        if (goesDown(i - 2)) return m_film.instants[i - 2].milliseconds;
    }
    return -1;
}

}  // namespace pantile::desktop
