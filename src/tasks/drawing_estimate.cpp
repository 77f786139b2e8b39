#include "tasks/drawing_estimate.h"

#include <algorithm>

#include "board/profile.h"
#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "core/fingerprint.h"
#include "tasks/plan_drawing.h"

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

// Counted up whenever a script of the same strokes takes other bytes than before.
constexpr std::int64_t kScriptFigures = 2;

// Names the settings that the figures hang on, so that figures for other settings are told apart.
std::string profileKey(const core::Canvas& canvas, const core::Board& board) {
    core::FingerprintBuilder builder;
    const core::CanvasGeometry& g = canvas.geometry;
    const core::PointerTiming& t = board.timing;
    for (const std::int64_t number :
         {std::int64_t{canvas.size.width}, std::int64_t{canvas.size.height},
          static_cast<std::int64_t>(canvas.penModel), std::int64_t{g.gridCentre.x},
          std::int64_t{g.gridCentre.y}, std::int64_t{g.cellPitch}, std::int64_t{g.swatchCentre.x},
          std::int64_t{g.swatchCentre.y}, std::int64_t{g.swatchPitch},
          std::int64_t{g.swatchesPerColumn}, std::int64_t{t.reportIntervalMs},
          std::int64_t{t.maxStepUp}, std::int64_t{t.maxStepDown}, std::int64_t{t.pressMs},
          std::int64_t{t.releaseMs}, std::int64_t{t.settleMs}, std::int64_t{board.display.width},
          std::int64_t{board.display.height}, kScriptFigures}) {
        builder.addNumber(number);
    }
    // Only where they are not as they always were: figures of older libraries still hold.
    if (canvas.rules != core::PenRules{}) {
        builder.addNumber(canvas.rules.turns ? 1 : 0);
        builder.addNumber(canvas.rules.covers ? 1 : 0);
    }
    if (g.fillButton) {
        builder.addNumber(g.fillButton->x);
        builder.addNumber(g.fillButton->y);
    }
    return core::toHex(builder.finish()) + " " + canvas.name + " / " + board.name;
}

}  // namespace

Result<DrawingDefaults> drawingDefaults(const catalogue::Library& library) {
    PANTILE_ASSIGN_OR_RETURN(std::vector<core::Canvas> canvases, catalogue::listCanvases(library));
    PANTILE_ASSIGN_OR_RETURN(const std::vector<core::Board> boards, catalogue::listBoards(library));
    if (boards.empty()) {
        return Error{ErrorKind::NotFound, "the library has no board",
                     "'pantile board add' makes one"};
    }
    const std::string usual = board::shippedBoards().front().name;
    const auto found = std::find_if(boards.begin(), boards.end(),
                                    [&](const core::Board& each) { return each.name == usual; });
    return DrawingDefaults{std::move(canvases), found == boards.end() ? boards.front() : *found};
}

std::optional<std::string> estimateKey(const core::Texture& texture,
                                       const DrawingDefaults& defaults) {
    const auto canvas = chooseCanvas(texture, defaults.canvases);
    if (!canvas) return std::nullopt;
    return profileKey(*canvas, defaults.board);
}

std::optional<catalogue::Estimate> estimateDrawing(const core::Texture& texture,
                                                   const DrawingDefaults& defaults) {
    const auto canvas = chooseCanvas(texture, defaults.canvases);
    if (!canvas) return std::nullopt;
    const auto planned = planTexture(texture, *canvas, defaults.board);
    if (!planned) return std::nullopt;
    return catalogue::Estimate{planned->plan.milliseconds, planned->bytes,
                               profileKey(*canvas, defaults.board)};
}

}  // namespace pantile::tasks
