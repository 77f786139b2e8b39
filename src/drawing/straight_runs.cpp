#include "drawing/straight_runs.h"

namespace pantile::drawing {
namespace {

constexpr std::size_t kColours = 256;

/// Shape: `cellAt(line, i)` is the i-th cell of a line.
template <typename CellAt>
std::vector<Runs> runsAlong(const DrawingRequest& request, core::Size lines, CellAt cellAt) {
    std::vector<Runs> byColour(kColours);
    for (int line = 0; line < lines.height; ++line) {
        for (int i = 0; i < lines.width; ++i) {
            const core::Point cell = cellAt(line, i);
            if (!request.isPainted(cell)) continue;
            const core::PaletteIndex colour = request.grid.at(cell);
            Runs& runs = byColour[colour];
            const bool goesOn = i > 0 && request.grid.at(cellAt(line, i - 1)) == colour;
            if (goesOn) {
                runs.back().to = cell;
            } else {
                runs.push_back({cell, cell});
            }
        }
    }
    return byColour;
}

}  // namespace

std::vector<Runs> rowRuns(const DrawingRequest& request) {
    return runsAlong(request, request.grid.size(), [](int line, int i) {
        return core::Point{i, line};
    });
}

std::vector<Runs> columnRuns(const DrawingRequest& request) {
    const core::Size size = request.grid.size();
    return runsAlong(request, {size.height, size.width}, [](int line, int i) {
        return core::Point{line, i};
    });
}

}  // namespace pantile::drawing
