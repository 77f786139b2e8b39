#pragma once

// The fewest straight runs that paint all cells of a colour, rows and columns mixed. A cell where a
// row's run and a column's cross may be painted twice.

#include <vector>

#include "drawing/straight_runs.h"

namespace pantile::drawing {

/// The fewest straight runs that cover the cells of `rows`, which are the cells of `columns`: the
/// longest row and column runs of one colour. Ends that another run covers are trimmed.
/// Cost: cells x square root of runs.
/// Source: a least vertex cover of the graph with a node for each run and an edge for each cell;
/// D. König, 'Gráfok és mátrixok', 1931; matching by J. Hopcroft and R. Karp, 1973.
Runs fewestRuns(const Runs& rows, const Runs& columns, core::Size grid);

}  // namespace pantile::drawing
