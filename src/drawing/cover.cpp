#include "drawing/cover.h"

#include <algorithm>
#include <cstdlib>

namespace pantile::drawing {
namespace {

constexpr int kNone = -1;

std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}

int lengthOf(const StraightRun& run) {
    return std::max(std::abs(run.to.x - run.from.x), std::abs(run.to.y - run.from.y)) + 1;
}

/// The i-th cell of a run that goes right or down.
core::Point cellOf(const StraightRun& run, int i) {
    return run.from.y == run.to.y ? core::Point{run.from.x + i, run.from.y}
                                  : core::Point{run.from.x, run.from.y + i};
}

/// A largest matching of row runs with column runs that cross them, and the least cover it proves.
class Crossings {
public:
    Crossings(const Runs& rows, const Runs& columns, core::Size grid)
        : m_rows(rows),
          m_width(grid.width),
          m_columnAt(at(grid.width) * at(grid.height), kNone),
          m_mateOfRow(rows.size(), kNone),
          m_mateOfColumn(columns.size(), kNone),
          m_level(rows.size()),
          m_next(rows.size()) {
        for (std::size_t c = 0; c < columns.size(); ++c) {
            for (int i = 0; i < lengthOf(columns[c]); ++i) {
                m_columnAt[offset(cellOf(columns[c], i))] = static_cast<int>(c);
            }
        }
        while (findLevels()) augmentAll();
    }

    struct Chosen {
        std::vector<bool> rows;
        std::vector<bool> columns;
    };

    /// König: with Z what alternating paths reach from unmatched rows, the rows outside Z and the
    /// columns inside it.
    Chosen leastCover() {
        findLevels();
        Chosen chosen{std::vector<bool>(m_rows.size()), std::vector<bool>(m_mateOfColumn.size())};
        for (std::size_t r = 0; r < m_rows.size(); ++r) {
            if (m_level[r] == kNone) {
                chosen.rows[r] = true;
                continue;
            }
            for (int i = 0; i < lengthOf(m_rows[r]); ++i) {
                chosen.columns[at(crossing(static_cast<int>(r), i))] = true;
            }
        }
        return chosen;
    }

private:
    std::size_t offset(core::Point cell) const { return at(cell.y) * at(m_width) + at(cell.x); }

    int crossing(int row, int i) const { return m_columnAt[offset(cellOf(m_rows[at(row)], i))]; }

    /// Breadth first from the unmatched rows. Whether an unmatched column was met.
    bool findLevels() {
        std::vector<int> queue;
        for (std::size_t r = 0; r < m_rows.size(); ++r) {
            m_level[r] = m_mateOfRow[r] == kNone ? 0 : kNone;
            m_next[r] = 0;
            if (m_level[r] == 0) queue.push_back(static_cast<int>(r));
        }
        bool met = false;
        for (std::size_t head = 0; head < queue.size(); ++head) {
            const int row = queue[head];
            for (int i = 0; i < lengthOf(m_rows[at(row)]); ++i) {
                const int mate = m_mateOfColumn[at(crossing(row, i))];
                if (mate == kNone) {
                    met = true;
                } else if (m_level[at(mate)] == kNone) {
                    m_level[at(mate)] = m_level[at(row)] + 1;
                    queue.push_back(mate);
                }
            }
        }
        return met;
    }

    void augmentAll() {
        for (std::size_t r = 0; r < m_rows.size(); ++r) {
            if (m_mateOfRow[r] == kNone) augment(static_cast<int>(r));
        }
    }

    /// Depth first along rising levels; each row on the path takes the column it stands at.
    void augment(int root) {
        std::vector<int> path{root};
        while (!path.empty()) {
            const int row = path.back();
            if (m_next[at(row)] == lengthOf(m_rows[at(row)])) {
                m_level[at(row)] = kNone;
                path.pop_back();
                if (!path.empty()) ++m_next[at(path.back())];
                continue;
            }
            const int mate = m_mateOfColumn[at(crossing(row, m_next[at(row)]))];
            if (mate == kNone) return take(path);
            if (m_level[at(mate)] == m_level[at(row)] + 1) {
                path.push_back(mate);
            } else {
                ++m_next[at(row)];
            }
        }
    }

    void take(const std::vector<int>& path) {
        for (const int row : path) {
            const int column = crossing(row, m_next[at(row)]);
            m_mateOfRow[at(row)] = column;
            m_mateOfColumn[at(column)] = row;
        }
    }

    const Runs& m_rows;
    int m_width;
    std::vector<int> m_columnAt;  ///< By cell: the column run through it.
    std::vector<int> m_mateOfRow;
    std::vector<int> m_mateOfColumn;
    std::vector<int> m_level;
    std::vector<int> m_next;
};

/// Counts how often each cell is covered, and cuts off ends that are covered twice.
class Trimmer {
public:
    Trimmer(const Runs& runs, core::Size grid)
        : m_width(grid.width), m_covered(at(grid.width) * at(grid.height)) {
        for (const StraightRun& run : runs) {
            for (int i = 0; i < lengthOf(run); ++i) ++covered(cellOf(run, i));
        }
    }

    StraightRun trimmed(const StraightRun& run) {
        int first = 0;
        int last = lengthOf(run) - 1;
        while (first < last && covered(cellOf(run, first)) > 1) --covered(cellOf(run, first++));
        while (last > first && covered(cellOf(run, last)) > 1) --covered(cellOf(run, last--));
        return {cellOf(run, first), cellOf(run, last)};
    }

private:
    int& covered(core::Point cell) { return m_covered[at(cell.y) * at(m_width) + at(cell.x)]; }

    int m_width;
    std::vector<int> m_covered;
};

}  // namespace

Runs fewestRuns(const Runs& rows, const Runs& columns, core::Size grid) {
    const Crossings::Chosen chosen = Crossings(rows, columns, grid).leastCover();
    Runs cover;
    for (std::size_t r = 0; r < rows.size(); ++r) {
        if (chosen.rows[r]) cover.push_back(rows[r]);
    }
    for (std::size_t c = 0; c < columns.size(); ++c) {
        if (chosen.columns[c]) cover.push_back(columns[c]);
    }
    Trimmer trimmer(cover, grid);
    for (StraightRun& run : cover) run = trimmer.trimmed(run);
    return cover;
}

}  // namespace pantile::drawing
