// drawing_bench: per class of art, timing and pen model, plans beside simple ways (a click for each
// cell in raster order, the same colour by colour, row by row, straight strokes), and what planning
// costs. Every plan is replayed. It decides nothing.
//   drawing_bench FOLDER [pictures per class [setting [prove [milliseconds]]]]
// With `prove` the bounds are the strong ones, which take seconds to a minute for each picture; the
// gap to that of plans that pick each colour once is the mean of such plans. With milliseconds the
// effort is that of effortFor, else the usual one.
// FOLDER holds a folder of indexed pictures for each class, as open_art.py makes them.

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "bench/art.h"
#include "board/stroke_script.h"
#include "drawing/planner.h"
#include "drawing/proven_bound.h"
#include "drawing/replay.h"
#include "drawing/requests.h"
#include "drawing/timing.h"

namespace pantile {
namespace {

struct Setting {
    std::string name;
    core::PointerTiming timing;
    core::PenModel pen;
};

std::vector<Setting> settings() {
    using core::PenModel;
    const auto careful = core::PointerTiming::careful();
    const auto quick = core::PointerTiming::quick();
    core::PointerTiming fast = quick;
    fast.reportIntervalMs = 1;
    core::PointerTiming longSteps = quick;
    longSteps.maxStepDown = 127;
    return {{"careful", careful, PenModel::WholeCells},
            {"quick", quick, PenModel::WholeCells},
            {"quick 1 ms", fast, PenModel::WholeCells},
            {"quick diagonals", quick, PenModel::Diagonals},
            {"quick lines", longSteps, PenModel::Lines},
            {"quick sampled", quick, PenModel::Sampled}};
}

/// What the command line asks for, beside classes and settings.
struct Wanted {
    bool prove = false;
    std::optional<std::int64_t> milliseconds;
};

struct Timed {
    drawing::Plan plan;
    double tookMs = 0;
};

template <typename Work>
Timed timed(Work work) {
    // Of the processor and not of the wall, as other programs may run beside.
    const std::clock_t start = std::clock();
    drawing::Plan plan = work();
    const double taken = 1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    return {std::move(plan), taken};
}

struct Sums {
    double clicks = 0;          ///< Cell by cell, row by row.
    double clicksByColour = 0;  ///< Cell by cell, colour by colour.
    double byRow = 0;
    double straight = 0;
    double first = 0;
    double planned = 0;
    double gap = 0;      ///< To the bound of every plan, in percent.
    double onceGap = 0;  ///< Of plans that pick each colour once.
    int once = 0;        ///< How many those are.
    double worst = 0;    ///< Of the ratios to row by row.
    double firstTook = 0;
    double tookMs = 0;
    double longestFirst = 0;
    double bytesByRow = 0;
    double bytes = 0;
    int wrong = 0;
};

double seconds(std::int64_t milliseconds) {
    return static_cast<double>(milliseconds) / 1000;
}

double scriptBytes(const drawing::Plan& plan, const drawing::DrawingRequest& request, int colours) {
    const drawing::TimeModel model(request.canvas, request.timing);
    const auto script =
        board::encodeScript(plan.strokes, {request.grid.size(), colours, request.canvas.penModel,
                                           request.canvas.rules.turns, model.jumpCells()});
    return script ? static_cast<double>(script->size()) : 0;
}

/// A click for each painted cell, row by row.
std::vector<drawing::Stroke> rasterClicks(const drawing::DrawingRequest& request) {
    std::vector<drawing::Stroke> strokes;
    for (int y = 0; y < request.grid.height(); ++y) {
        for (int x = 0; x < request.grid.width(); ++x) {
            if (request.isPainted({x, y})) strokes.push_back({request.grid.at(x, y), {{x, y}}});
        }
    }
    return strokes;
}

void addSimpleWays(const drawing::DrawingRequest& request, Sums& sums) {
    const drawing::TimeModel model(request.canvas, request.timing);
    std::vector<drawing::Stroke> clicks = rasterClicks(request);
    sums.clicks += seconds(timedPlan(clicks, model).milliseconds);
    std::stable_sort(clicks.begin(), clicks.end(),
                     [](const auto& a, const auto& b) { return a.colour < b.colour; });
    sums.clicksByColour += seconds(timedPlan(std::move(clicks), model).milliseconds);
    sums.straight += seconds(drawing::planStraight(request).value().milliseconds);
}

std::size_t coloursIn(const drawing::DrawingRequest& request) {
    const auto cells = request.grid.cells();
    std::set<core::PaletteIndex> colours(cells.begin(), cells.end());
    if (request.leaveUnpainted) colours.erase(*request.leaveUnpainted);
    return colours.size();
}

double gapPercent(const drawing::Plan& plan, std::int64_t bound) {
    return 100 * (seconds(plan.milliseconds) / seconds(bound) - 1);
}

void addGaps(const drawing::Plan& plan, const drawing::DrawingRequest& request, bool prove,
             Sums& sums) {
    if (!prove) {
        sums.gap += gapPercent(plan, drawing::lowerBoundMs(request));
        return;
    }
    const auto bounds = drawing::provenBounds(request).value();
    sums.gap += gapPercent(plan, bounds.everyPlan);
    if (static_cast<std::size_t>(plan.picks) != coloursIn(request)) return;
    sums.onceGap += gapPercent(plan, bounds.pickedOnce);
    ++sums.once;
}

void addOne(const drawing::DrawingRequest& request, int colours, const Wanted& wanted, Sums& sums) {
    const Timed first = timed([&] {
        return drawing::planDrawing(request, {}, {0, 0, 0, 1}).value();
    });
    const drawing::Effort effort =
        wanted.milliseconds ? drawing::effortFor(*wanted.milliseconds, request) : drawing::Effort{};
    const Timed planned = timed([&] { return drawing::planDrawing(request, {}, effort).value(); });
    const drawing::Plan byRow = drawing::planRowByRow(request);
    addSimpleWays(request, sums);
    sums.byRow += seconds(byRow.milliseconds);
    sums.first += seconds(first.plan.milliseconds);
    sums.planned += seconds(planned.plan.milliseconds);
    addGaps(planned.plan, request, wanted.prove, sums);
    const double ratio =
        seconds(planned.plan.milliseconds) / std::max(0.001, seconds(byRow.milliseconds));
    sums.worst = std::max(sums.worst, ratio);
    sums.firstTook += first.tookMs;
    sums.longestFirst = std::max(sums.longestFirst, first.tookMs);
    sums.tookMs += planned.tookMs;
    sums.bytesByRow += scriptBytes(byRow, request, colours);
    sums.bytes += scriptBytes(planned.plan, request, colours);
    for (const drawing::Plan* plan : {&first.plan, &planned.plan}) {
        if (!drawing::provePlan(*plan, request)) ++sums.wrong;
    }
}

void measure(const std::string& name, const std::vector<core::Texture>& textures,
             const Setting& setting, const Wanted& wanted) {
    Sums sums;
    for (const core::Texture& texture : textures) {
        core::Canvas canvas = tests::canvasFor(texture.grid().size(), 256, setting.pen);
        addOne({texture.grid(), texture.palette().transparent(), std::move(canvas), setting.timing},
               texture.palette().size(), wanted, sums);
    }
    const auto count = static_cast<double>(textures.size());
    std::printf(
        "%-13s %-15s %6.1f %6.1f %6.1f %6.1f %6.2f %6.2f %6.3f %6.3f %6.1f %6.1f %3d %6.1f %6.1f "
        "%6.1f %6.0f %6.0f %5d\n",
        name.c_str(), setting.name.c_str(), sums.clicks / count, sums.clicksByColour / count,
        sums.byRow / count, sums.straight / count, sums.first / count, sums.planned / count,
        sums.planned / sums.byRow, sums.worst, sums.gap / count,
        sums.once > 0 ? sums.onceGap / sums.once : 0.0, sums.once, sums.firstTook / count,
        sums.longestFirst, sums.tookMs / count, sums.bytesByRow / count, sums.bytes / count,
        sums.wrong);
    std::fflush(stdout);
}

}  // namespace
}  // namespace pantile

int main(int argc, char** argv) {
    if (argc < 2) {
        std::fprintf(stderr,
                     "usage: drawing_bench FOLDER [pictures per class [setting [prove "
                     "[milliseconds]]]]\n");
        return 2;
    }
    const std::size_t most = argc > 2 ? std::strtoul(argv[2], nullptr, 10) : 12;
    pantile::Wanted wanted;
    wanted.prove = argc > 4 && std::string(argv[4]) == "prove";
    if (argc > 5) wanted.milliseconds = std::strtol(argv[5], nullptr, 10);
    std::printf("%-13s %-15s %6s %6s %6s %6s %6s %6s %6s %6s %6s %6s %3s %6s %6s %6s %6s %6s %5s\n",
                "class", "setting", "clicks", "colour", "by row", "strght", "first", "plan s",
                "ratio", "worst", "gap %", "once %", "of", "1st ms", "longst", "ms", "B row",
                "B plan", "wrong");
    for (const std::filesystem::path& folder : pantile::bench::foldersIn(argv[1])) {
        const auto chosen = pantile::bench::spread(pantile::bench::texturesIn(folder), most);
        for (const auto& setting : pantile::settings()) {
            if (argc > 3 && argv[3] != std::string("all") && setting.name != argv[3]) continue;
            pantile::measure(folder.filename().string(), chosen, setting, wanted);
        }
    }
    return 0;
}
