#include "drawing/planner.h"

#include <gmock/gmock.h>

#include "drawing/replay.h"
#include "drawing/requests.h"
#include "support/matchers.h"

namespace pantile::drawing {
namespace {

using core::ErrorKind;
using core::PenModel;
using testing::ElementsAre;
using tests::failsWith;
using tests::isOk;

TEST(PlanRowByRow, GoesByColourAndTurnsAtEveryRowThatHasRuns) {
    const Plan plan = planRowByRow(tests::requestFor({"0011", "1111", "0.00"}));
    EXPECT_THAT(plan.strokes, ElementsAre(Stroke{0, {{0, 0}, {1, 0}}}, Stroke{0, {{3, 2}, {2, 2}}},
                                          Stroke{0, {{0, 2}}}, Stroke{1, {{2, 0}, {3, 0}}},
                                          Stroke{1, {{3, 1}, {0, 1}}}));
    EXPECT_EQ(plan.picks, 2);
    EXPECT_EQ(plan.lifts, 5);
}

TEST(PlanRowByRow, TakesTheTimeWorkedOutByHand) {
    // Start (4, 4); swatches at (48, 8) and (48, 24): every way is one report of 8 ms.
    // Two colours: 2 x (8 + 66 + 100) of picks, 2 x (8 + 66) of single cells.
    EXPECT_EQ(planRowByRow(tests::requestFor({"01"})).milliseconds, 496);
}

TEST(PlanDrawing, BeginsARowAtTheEndNearThePaletteBar) {
    const DrawingRequest request = tests::requestFor({"0000000000000000"});
    // Swatch (160, 8): pick 16 + 166; to (124, 4) 8, not 16 to (4, 4); click 66 and 15 x 8.
    EXPECT_EQ(planDrawing(request).value().milliseconds, 376);
    EXPECT_EQ(planRowByRow(request).milliseconds, 384);
}

TEST(PlanDrawing, DrawsColumnsWhereThoseAreFewer) {
    const Plan plan = planDrawing(tests::requestFor({"01", "01", "01", "01"})).value();
    EXPECT_EQ(plan.lifts, 2);
    EXPECT_EQ(planRowByRow(tests::requestFor({"01", "01", "01", "01"})).lifts, 8);
}

TEST(PlanDrawing, IsEmptyForATextureWithNothingToPaint) {
    const DrawingRequest request = tests::requestFor({"..", ".."});
    const auto plan = planDrawing(request);
    ASSERT_THAT(plan, isOk());
    EXPECT_EQ(*plan, Plan{});
    EXPECT_THAT(provePlan(*plan, request), isOk());
    EXPECT_EQ(lowerBoundMs(request), 0);
}

TEST(PlanDrawing, RefusesWhatDoesNotFit) {
    DrawingRequest request = tests::requestFor({"0123"});
    request.canvas = tests::canvasFor({3, 1}, 16);
    EXPECT_THAT(planDrawing(request), failsWith(ErrorKind::DoesNotFit, "4x1"));
    request.canvas = tests::canvasFor({4, 1}, 3);
    EXPECT_THAT(planDrawing(request), failsWith(ErrorKind::DoesNotFit, "colour 3"));
}

TEST(PlanDrawing, StopsWhenAsked) {
    std::stop_source source;
    core::Progress progress;
    progress.stop = source.get_token();
    int told = 0;
    progress.report = [&](std::int64_t, std::int64_t, std::string_view) {
        if (++told == 3) source.request_stop();
    };
    const auto plan = planDrawing(tests::requestFor({"0123456789"}), progress);
    EXPECT_THAT(plan, failsWith(ErrorKind::Cancelled, "stopped"));
    EXPECT_EQ(told, 3) << "it goes on no further than the next colour";
}

/// Every plan draws its texture in the time foretold, and bound <= plan <= row by row.
void expectSound(const DrawingRequest& request, const std::string& description) {
    Effort effort;
    effort.triesPerCell = 1;
    effort.leastTries = 50;
    const auto plan = planDrawing(request, {}, effort);
    ASSERT_THAT(plan, isOk()) << description;
    ASSERT_THAT(provePlan(*plan, request), isOk()) << description;
    const Plan byRow = planRowByRow(request);
    ASSERT_THAT(provePlan(byRow, request), isOk()) << description;
    ASSERT_LE(plan->milliseconds, byRow.milliseconds) << description;
    ASSERT_LE(lowerBoundMs(request), plan->milliseconds) << description;
}

TEST(PlanDrawing, IsSoundOnSeededRandomTextures) {
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
        const DrawingRequest request = tests::randomRequest(seed, 12);
        expectSound(request, tests::described(seed, request));
        if (HasFatalFailure()) return;
    }
}

TEST(PlanDrawing, IsSoundForEveryPenModelAndTimingOnPictures) {
    for (const PenModel pen :
         {PenModel::WholeCells, PenModel::Diagonals, PenModel::Lines, PenModel::Sampled}) {
        for (const int interval : {1, 8}) {
            core::PointerTiming timing = core::PointerTiming::quick();
            timing.reportIntervalMs = interval;
            timing.maxStepDown = 127;
            expectSound(tests::pictureRequest(tests::detailedField(1, 16), timing, pen), "field");
            expectSound(tests::pictureRequest(tests::ditheredGradient(12), timing, pen),
                        "gradient");
        }
    }
}

/// The replay knows the rules too, so that a plan that breaks one is not sound.
TEST(PlanDrawing, KeepsToThePenRules) {
    for (std::uint64_t seed = 0; seed < 18; ++seed) {
        DrawingRequest request = tests::randomRequest(seed, 10);
        const std::int64_t free = planDrawing(request).value().milliseconds;
        request.canvas.rules = {seed % 2 == 0, seed % 3 == 0};
        expectSound(request, tests::described(seed, request));
        EXPECT_LE(free, planDrawing(request).value().milliseconds * 102 / 100);
    }
}

/// A shore of few grains: one colour on most cells.
core::Grid fewGrains(std::uint64_t seed, core::Size size) {
    tests::Random random(seed);
    core::Grid grid = core::Grid::filled(size.width, size.height, 3).value();
    for (int i = 0; i < size.width * size.height / 8; ++i) {
        grid.set(random.between(0, size.width - 1), random.between(0, size.height - 1),
                 static_cast<core::PaletteIndex>(random.between(0, 4)));
    }
    return grid;
}

DrawingRequest withFillButton(DrawingRequest request) {
    core::CanvasGeometry& g = request.canvas.geometry;
    g.fillButton = core::Point{g.swatchCentre.x, g.swatchCentre.y + 20 * g.swatchPitch};
    return request;
}

TEST(PlanDrawing, FillsWithTheColourOfMostCells) {
    const auto request =
        withFillButton(tests::pictureRequest(fewGrains(1, {16, 16}), core::PointerTiming::quick()));
    const Plan plan = planDrawing(request).value();
    EXPECT_EQ(plan.fill, core::PaletteIndex{3});
    EXPECT_THAT(provePlan(plan, request), isOk());
    for (const Stroke& stroke : plan.strokes) EXPECT_NE(stroke.colour, 3);
    DrawingRequest without = request;
    without.canvas.geometry.fillButton.reset();
    EXPECT_LT(plan.milliseconds * 3, planDrawing(without)->milliseconds * 2);
}

TEST(PlanDrawing, FillsACanvasOfOneColourAndDrawsNothing) {
    const auto request = withFillButton(tests::requestFor({"22222222", "22222222", "22222222"}));
    const Plan plan = planDrawing(request).value();
    EXPECT_TRUE(plan.strokes.empty());
    // Swatch (96, 40) and button (96, 328): ways of 8 and 24, twice click and settle.
    EXPECT_EQ(plan.milliseconds, 8 + 24 + 2 * (66 + 100));
    EXPECT_EQ(lowerBoundMs(request), plan.milliseconds);
    EXPECT_THAT(provePlan(plan, request), isOk());
}

TEST(PlanDrawing, LeavesTheFillButtonWhereItWouldDoHarm) {
    const auto hasFill = [](const DrawingRequest& request) {
        const Plan plan = planDrawing(request).value();
        EXPECT_THAT(provePlan(plan, request), isOk());
        return plan.fill.has_value();
    };
    DrawingRequest request =
        withFillButton(tests::requestFor({"000000", "000000", "000100", "000000"}));
    ASSERT_TRUE(hasFill(request));
    request.canvas.rules.covers = false;
    EXPECT_FALSE(hasFill(request)) << "nothing may cover what was filled";
    request.canvas.rules.covers = true;
    request.canvas.size.height = 5;
    EXPECT_FALSE(hasFill(request)) << "a row beside the texture must stay as it is";
    request = withFillButton(tests::requestFor({"000000", "000000", "000.00", "000000"}));
    EXPECT_FALSE(hasFill(request)) << "a cell must stay unpainted";
    EXPECT_FALSE(hasFill(withFillButton(tests::requestFor({"01"})))) << "it does not pay";
}

TEST(PlanDrawing, IsSoundWithAFillButton) {
    for (std::uint64_t seed = 0; seed < 24; ++seed) {
        DrawingRequest request = tests::randomRequest(seed, 10);
        if (seed % 2 == 0) request.grid = fewGrains(seed, request.grid.size());
        if (seed % 2 == 0) request.canvas.freeColours = 16;
        if (seed % 3 != 0) request.leaveUnpainted.reset();
        if (seed % 4 != 0) request.canvas.size = request.grid.size();
        request.canvas.geometry = core::CanvasGeometry::beside(request.canvas.size);
        request = withFillButton(request);
        expectSound(request, tests::described(seed, request));
        if (HasFatalFailure()) return;
    }
}

TEST(PlanDrawing, JumpsWithTheSampledPen) {
    core::PointerTiming timing = core::PointerTiming::quick();
    timing.maxStepDown = 127;
    const DrawingRequest request =
        tests::requestFor({"0110000000110", "1000111111101"}, PenModel::Sampled, timing);
    const Plan plan = planDrawing(request).value();
    EXPECT_THAT(provePlan(plan, request), isOk());
    EXPECT_EQ(plan.lifts, 2) << "one stroke for each colour";
    bool jumped = false;
    for (const Stroke& stroke : plan.strokes) {
        for (std::size_t i = 1; i < stroke.path.size(); ++i) jumped |= stroke.jumpsTo(i);
    }
    EXPECT_TRUE(jumped);
    EXPECT_EQ(plan.milliseconds, lowerBoundMs(request));
}

TEST(PlanDrawing, JumpsNoFurtherThanAReportReaches) {
    core::PointerTiming timing;
    timing.maxStepDown = 23;
    const DrawingRequest request = tests::requestFor({"0.0..0"}, PenModel::Sampled, timing);
    const Plan plan = planDrawing(request).value();
    EXPECT_THAT(provePlan(plan, request), isOk());
    ASSERT_EQ(plan.strokes.size(), 2U) << "2 cells are 16 counts, 3 are 24";
    DrawingRequest noTurns = request;
    noTurns.canvas.rules.turns = false;
    EXPECT_EQ(planDrawing(noTurns)->lifts, 3);
}

TEST(PlanStraight, IsSoundOnTheLargestGrid) {
    tests::Random random(5);
    for (const int colours : {2, 256}) {
        core::Grid grid = tests::randomGrid(random, {256, 256}, colours);
        const DrawingRequest request{
            std::move(grid), std::nullopt, tests::canvasFor({256, 256}, 256), {}};
        const auto plan = planStraight(request);
        ASSERT_THAT(plan, isOk());
        ASSERT_THAT(provePlan(*plan, request), isOk());
        EXPECT_LE(plan->milliseconds, planRowByRow(request).milliseconds);
    }
}

TEST(PlanDrawing, GivesTheSamePlanAgain) {
    for (std::uint64_t seed = 0; seed < 8; ++seed) {
        const DrawingRequest request = tests::randomRequest(seed, 16);
        ASSERT_EQ(planDrawing(request).value(), planDrawing(request).value());
    }
}

TEST(PlanDrawing, IsNoSlowerWithMoreEffort) {
    const auto request =
        tests::pictureRequest(tests::ditheredGradient(24), core::PointerTiming::quick());
    const auto plannedMs = [&](std::int64_t triesPerCell) {
        Effort effort;
        effort.triesPerCell = triesPerCell;
        return planDrawing(request, {}, effort).value().milliseconds;
    };
    EXPECT_LT(plannedMs(3), plannedMs(0));
    EXPECT_LE(plannedMs(3), plannedMs(1));
}

TEST(PlanDrawing, TurnsAndPassesUnderLaterColours) {
    const DrawingRequest request = tests::requestFor({"0000", "0110", "0000"});
    const Plan plan = planDrawing(request).value();
    ASSERT_THAT(provePlan(plan, request), isOk());
    EXPECT_EQ(plan.lifts, 2) << "the frame is one stroke, and so is what lies in it";
    const bool frameIsFirst = plan.strokes.front().colour == 0;
    EXPECT_GT(plan.strokes[frameIsFirst ? 0 : 1].path.size(), 2U);
    const Plan under = planDrawing(tests::requestFor({"0102010"})).value();
    EXPECT_EQ(under.strokes.front().colour, 0) << "background first";
    EXPECT_THAT(under.strokes.front().path,
                testing::UnorderedElementsAre(core::Point{0, 0}, core::Point{6, 0}));
}

/// Three bands, each with spots of the next band's colour: whatever the order, some spots lie on
/// what was drawn before, unless they wait or go ahead.
TEST(PlanDrawing, ComesBackToColoursWhereThatPays) {
    core::PointerTiming timing = core::PointerTiming::quick();
    timing.reportIntervalMs = 1;
    std::vector<std::string> rows;
    for (int y = 0; y < 12; ++y) {
        rows.emplace_back();
        for (int x = 0; x < 18; ++x) {
            const bool isSpot = x % 3 == 1 && y % 3 == 1;
            rows.back() += "012"[(x / 6 + (isSpot ? 1 : 0)) % 3];
        }
    }
    const auto request = tests::requestFor(rows, PenModel::WholeCells, timing);
    const Plan plan = planDrawing(request).value();
    ASSERT_THAT(provePlan(plan, request), isOk());
    EXPECT_EQ(plan.picks, 4);
    const Plan once = planDrawing(request, {}, {0, 0, 0, 1}).value();
    EXPECT_EQ(once.picks, 3);
    EXPECT_LT(plan.milliseconds, once.milliseconds * 9 / 10);
}

// Common practice, no source: detailed 64x64 art drawn by simple means takes two to five minutes.
TEST(PlanRowByRow, TakesTwoToFiveMinutesForDetailedArtWithCarefulTiming) {
    constexpr std::int64_t kMinuteMs = 60'000;
    const auto careful = core::PointerTiming::careful();
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        const auto request = tests::pictureRequest(tests::detailedField(seed, 64), careful);
        const auto ms = planRowByRow(request).milliseconds;
        EXPECT_GE(ms, 2 * kMinuteMs);
        EXPECT_LE(ms, 5 * kMinuteMs);
    }
    const auto gradient = tests::pictureRequest(tests::ditheredGradient(64), careful);
    EXPECT_GE(planRowByRow(gradient).milliseconds, 2 * kMinuteMs);
    EXPECT_LE(planRowByRow(gradient).milliseconds, 5 * kMinuteMs);
}

/// This project's own measurement; docs/drawing.md section 8.
TEST(PlanDrawing, GainsOnDetailedArtAsStated) {
    constexpr double kStatedRatio = 0.40;
    const auto careful = core::PointerTiming::careful();
    for (std::uint64_t seed = 1; seed <= 2; ++seed) {
        const auto request = tests::pictureRequest(tests::detailedField(seed, 32), careful);
        const auto planned = static_cast<double>(planDrawing(request).value().milliseconds);
        const auto byRow = static_cast<double>(planRowByRow(request).milliseconds);
        EXPECT_LE(planned / byRow, kStatedRatio) << "seed " << seed;
        RecordProperty("ratio_" + std::to_string(seed), std::to_string(planned / byRow));
    }
}

}  // namespace
}  // namespace pantile::drawing
