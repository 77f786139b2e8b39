#include "drawing/fill.h"

#include <algorithm>
#include <array>

namespace pantile::drawing {
namespace {

/// Filling spares a colour all its cells, and the others lose the ways over them; so it pays for
/// large ones. A first plan is made for each of these.
constexpr std::size_t kMostCandidates = 3;

std::vector<core::PaletteIndex> coloursByCells(const core::Grid& grid) {
    std::array<int, 256> cells{};
    for (const core::PaletteIndex index : grid.cells()) ++cells[index];
    std::vector<core::PaletteIndex> colours;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (cells[i] > 0) colours.push_back(static_cast<core::PaletteIndex>(i));
    }
    std::stable_sort(colours.begin(), colours.end(),
                     [&](auto a, auto b) { return cells[a] > cells[b]; });
    return colours;
}

bool paintsWholeCanvas(const DrawingRequest& request) {
    const auto cells = request.grid.cells();
    return request.grid.size() == request.canvas.size &&
           std::none_of(cells.begin(), cells.end(),
                        [&](core::PaletteIndex index) { return index == request.leaveUnpainted; });
}

}  // namespace

bool canFill(const DrawingRequest& request) {
    if (!request.canvas.geometry.fillButton || !paintsWholeCanvas(request)) return false;
    return request.canvas.rules.covers || coloursByCells(request.grid).size() == 1;
}

std::vector<core::PaletteIndex> fillCandidates(const DrawingRequest& request) {
    if (!canFill(request)) return {};
    std::vector<core::PaletteIndex> colours = coloursByCells(request.grid);
    if (colours.size() > kMostCandidates) colours.resize(kMostCandidates);
    return colours;
}

}  // namespace pantile::drawing
