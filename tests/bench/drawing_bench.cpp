// drawing_bench: per class of grid, timing and pen model, the planned time over the row-by-row time
// of the same grids, and what planning costs. It prints and decides nothing.
//   drawing_bench [grids per class]

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <string>
#include <vector>

#include "drawing/planner.h"
#include "drawing/requests.h"

namespace pantile {
namespace {

struct GridClass {
    std::string name;
    std::function<core::Grid(std::uint64_t seed)> make;
};

struct Setting {
    std::string name;
    core::PointerTiming timing;
    core::PenModel pen;
};

core::Grid randomCells(std::uint64_t seed, int side, int colours) {
    tests::Random random(seed);
    return tests::randomGrid(random, {side, side}, colours);
}

std::vector<GridClass> gridClasses() {
    return {
        {"field 16x16", [](std::uint64_t seed) { return tests::detailedField(seed, 16); }},
        {"field 32x32", [](std::uint64_t seed) { return tests::detailedField(seed, 32); }},
        {"field 64x64", [](std::uint64_t seed) { return tests::detailedField(seed, 64); }},
        {"gradient 64x64", [](std::uint64_t) { return tests::ditheredGradient(64); }},
        {"mixed 64x64", [](std::uint64_t seed) { return randomCells(seed, 64, 16); }},
        {"mixed 128x128x64", [](std::uint64_t seed) { return randomCells(seed, 128, 64); }},
        {"mixed 256x256x256", [](std::uint64_t seed) { return randomCells(seed, 256, 256); }},
    };
}

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
            {"quick lines", longSteps, PenModel::Lines},
            {"quick sampled", quick, PenModel::Sampled}};
}

struct Sums {
    double planned = 0;
    double byRow = 0;
    double bound = 0;
    double planningMs = 0;
    double strokes = 0;
    double strokesByRow = 0;
};

void addOne(const drawing::DrawingRequest& request, Sums& sums) {
    const auto start = std::chrono::steady_clock::now();
    const drawing::Plan plan = drawing::planDrawing(request).value();
    const std::chrono::duration<double, std::milli> taken =
        std::chrono::steady_clock::now() - start;
    const drawing::Plan byRow = drawing::planRowByRow(request);
    sums.planned += static_cast<double>(plan.milliseconds) / 1000;
    sums.byRow += static_cast<double>(byRow.milliseconds) / 1000;
    sums.bound += static_cast<double>(drawing::lowerBoundMs(request)) / 1000;
    sums.planningMs += taken.count();
    sums.strokes += plan.lifts;
    sums.strokesByRow += byRow.lifts;
}

void measure(const GridClass& grids, const Setting& setting, int count) {
    Sums sums;
    for (int i = 0; i < count; ++i) {
        core::Grid grid = grids.make(static_cast<std::uint64_t>(i) + 1);
        core::Canvas canvas = tests::canvasFor(grid.size(), 256, setting.pen);
        addOne({std::move(grid), std::nullopt, std::move(canvas), setting.timing}, sums);
    }
    std::printf("%-18s %-14s %9.1f %9.1f %9.1f %7.3f %8.0f %8.0f %9.2f\n", grids.name.c_str(),
                setting.name.c_str(), sums.byRow / count, sums.planned / count, sums.bound / count,
                sums.planned / sums.byRow, sums.strokesByRow / count, sums.strokes / count,
                sums.planningMs / count);
}

}  // namespace
}  // namespace pantile

int main(int argc, char** argv) {
    const int count = argc > 1 ? std::max(1, std::atoi(argv[1])) : 5;
    std::printf("%-18s %-14s %9s %9s %9s %7s %8s %8s %9s\n", "class", "setting", "by row s",
                "plan s", "bound s", "ratio", "lifts", "planned", "took ms");
    for (const auto& grids : pantile::gridClasses()) {
        for (const auto& setting : pantile::settings()) pantile::measure(grids, setting, count);
    }
    return 0;
}
