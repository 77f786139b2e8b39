// drawing_bench: per class of art, timing and pen model, plans beside the row-by-row way and beside
// straight strokes, and what planning costs. Every plan is replayed. It decides nothing.
//   drawing_bench FOLDER [pictures per class [setting [prove]]]
// With `prove` the bound is the strong one, which takes seconds to minutes for each picture.
// FOLDER holds a folder of indexed pictures for each class, as open_art.py makes them.

#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <string>
#include <utility>
#include <vector>

#include "bench/art.h"
#include "board/stroke_script.h"
#include "drawing/planner.h"
#include "drawing/proven_bound.h"
#include "drawing/replay.h"
#include "drawing/requests.h"

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
    double byRow = 0;
    double straight = 0;
    double first = 0;
    double planned = 0;
    double bound = 0;
    double worst = 0;  ///< Of the ratios to row by row.
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

double scriptBytes(const drawing::Plan& plan, const drawing::DrawingRequest& request) {
    const auto script = board::encodeScript(plan.strokes, {request.grid.size(), 256});
    return script ? static_cast<double>(script->size()) : 0;
}

void addOne(const drawing::DrawingRequest& request, bool prove, Sums& sums) {
    const Timed first = timed([&] {
        return drawing::planDrawing(request, {}, {0, 0, 0, 1}).value();
    });
    const Timed planned = timed([&] { return drawing::planDrawing(request).value(); });
    const drawing::Plan byRow = drawing::planRowByRow(request);
    sums.byRow += seconds(byRow.milliseconds);
    sums.straight += seconds(drawing::planStraight(request).value().milliseconds);
    sums.first += seconds(first.plan.milliseconds);
    sums.planned += seconds(planned.plan.milliseconds);
    sums.bound +=
        seconds(prove ? drawing::provenBoundMs(request).value() : drawing::lowerBoundMs(request));
    const double ratio =
        seconds(planned.plan.milliseconds) / std::max(0.001, seconds(byRow.milliseconds));
    sums.worst = std::max(sums.worst, ratio);
    sums.firstTook += first.tookMs;
    sums.longestFirst = std::max(sums.longestFirst, first.tookMs);
    sums.tookMs += planned.tookMs;
    sums.bytesByRow += scriptBytes(byRow, request);
    sums.bytes += scriptBytes(planned.plan, request);
    for (const drawing::Plan* plan : {&first.plan, &planned.plan}) {
        if (!drawing::provePlan(*plan, request)) ++sums.wrong;
    }
}

void measure(const std::string& name, const std::vector<core::Texture>& textures,
             const Setting& setting, bool prove) {
    Sums sums;
    for (const core::Texture& texture : textures) {
        core::Canvas canvas = tests::canvasFor(texture.grid().size(), 256, setting.pen);
        addOne({texture.grid(), texture.palette().transparent(), std::move(canvas), setting.timing},
               prove, sums);
    }
    const auto count = static_cast<double>(textures.size());
    std::printf(
        "%-14s %-15s %7.1f %7.1f %7.1f %7.1f %6.3f %6.3f %7.1f %7.1f %7.1f %7.1f %7.0f "
        "%7.0f %5d\n",
        name.c_str(), setting.name.c_str(), sums.byRow / count, sums.straight / count,
        sums.first / count, sums.planned / count, sums.planned / sums.byRow, sums.worst,
        sums.bound / count, sums.firstTook / count, sums.longestFirst, sums.tookMs / count,
        sums.bytesByRow / count, sums.bytes / count, sums.wrong);
    std::fflush(stdout);
}

}  // namespace
}  // namespace pantile

int main(int argc, char** argv) {
    if (argc < 2) {
        std::fprintf(stderr,
                     "usage: drawing_bench FOLDER [pictures per class [setting [prove]]]\n");
        return 2;
    }
    const std::size_t most = argc > 2 ? std::strtoul(argv[2], nullptr, 10) : 12;
    std::printf("%-14s %-15s %7s %7s %7s %7s %6s %6s %7s %7s %7s %7s %7s %7s %5s\n", "class",
                "setting", "by row", "strght", "first", "plan s", "ratio", "worst", "bound",
                "1st ms", "longest", "ms", "B row", "B plan", "wrong");
    std::vector<std::filesystem::path> folders;
    for (const auto& entry : std::filesystem::directory_iterator(argv[1])) {
        folders.push_back(entry.path());
    }
    std::sort(folders.begin(), folders.end());
    for (const auto& folder : folders) {
        auto textures = pantile::bench::texturesIn(folder);
        // Spread over the names, which often stand in families.
        const std::size_t step = std::max<std::size_t>(1, textures.size() / most);
        std::vector<pantile::core::Texture> chosen;
        for (std::size_t i = 0; i < textures.size() && chosen.size() < most; i += step) {
            chosen.push_back(textures[i]);
        }
        for (const auto& setting : pantile::settings()) {
            if (argc > 3 && setting.name != argv[3]) continue;
            pantile::measure(folder.filename().string(), chosen, setting, argc > 4);
        }
    }
    return 0;
}
