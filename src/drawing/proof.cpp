#include <string>

#include "drawing/replay.h"
#include "drawing/reports.h"

namespace pantile::drawing {
namespace {

using Shown = std::optional<core::PaletteIndex>;

core::Error differs(const std::string& what) {
    return {core::ErrorKind::Internal, what,
            "the plan is wrong and must not be sent; please report it with the texture"};
}

std::string shownText(Shown shown) {
    return shown ? "colour " + std::to_string(*shown) : std::string("unpainted");
}

Shown wantedAt(core::Point cell, const DrawingRequest& request) {
    if (!request.grid.contains(cell) || !request.isPainted(cell)) return std::nullopt;
    return request.grid.at(cell);
}

core::Result<void> compareCells(const Replayed& shown, const DrawingRequest& request) {
    std::size_t i = 0;
    for (int y = 0; y < request.canvas.size.height; ++y) {
        for (int x = 0; x < request.canvas.size.width; ++x, ++i) {
            const Shown wanted = wantedAt({x, y}, request);
            if (shown.cells[i] == wanted) continue;
            return differs("the plan leaves the cell in column " + std::to_string(x) + ", row " +
                           std::to_string(y) + " " + shownText(shown.cells[i]) + " instead of " +
                           shownText(wanted));
        }
    }
    return {};
}

core::Result<void> compareFigure(const std::string& what, std::int64_t foretold,
                                 std::int64_t replayed) {
    if (foretold == replayed) return {};
    return differs("the plan foretells " + std::to_string(foretold) + " " + what +
                   ", but its replay took " + std::to_string(replayed));
}

}  // namespace

core::Result<void> provePlan(const Plan& plan, const DrawingRequest& request) {
    PANTILE_RETURN_IF_ERROR(checkRequest(request));
    const std::vector<Report> reports = reportsOf(plan, request.canvas, request.timing);
    PANTILE_ASSIGN_OR_RETURN(const Replayed shown, replay(reports, request.canvas, request.timing));
    PANTILE_RETURN_IF_ERROR(compareCells(shown, request));
    PANTILE_RETURN_IF_ERROR(compareFigure("ms", plan.milliseconds, shown.milliseconds));
    PANTILE_RETURN_IF_ERROR(compareFigure("picks", plan.picks, shown.picks));
    PANTILE_RETURN_IF_ERROR(compareFigure("fills", plan.fill ? 1 : 0, shown.fills));
    return compareFigure("lifts", plan.lifts, shown.lifts);
}

}  // namespace pantile::drawing
