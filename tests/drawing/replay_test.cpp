#include "drawing/replay.h"

#include <gmock/gmock.h>

#include "drawing/requests.h"
#include "support/matchers.h"

namespace pantile::drawing {
namespace {

using core::ErrorKind;
using core::PenModel;
using tests::failsWith;
using tests::isOk;

/// A canvas of 4x2 cells, grid from (0, 0) to (31, 15), swatches of 16 counts from (56, 0) down.
core::Canvas smallCanvas(PenModel pen = PenModel::WholeCells) {
    return tests::canvasFor({4, 2}, 3, pen);
}

/// Picks colour 0 and comes back to the centre of cell (0, 0).
std::vector<Report> picked() {
    return {{60, 4, false, 8},
            {0, 0, true, 33},
            {0, 0, false, 33},
            {0, 0, false, 100},
            {-60, -4, false, 8}};
}

std::vector<Report> operator+(std::vector<Report> a, const std::vector<Report>& b) {
    a.insert(a.end(), b.begin(), b.end());
    return a;
}

core::Result<Replayed> replayed(const std::vector<Report>& reports,
                                PenModel pen = PenModel::WholeCells,
                                core::PointerTiming timing = {}) {
    return replay(reports, smallCanvas(pen), timing);
}

std::string shownAs(const core::Result<Replayed>& shown) {
    if (!shown) return shown.error().message;
    std::string text;
    for (const auto& cell : shown->cells) text += cell ? static_cast<char>('0' + *cell) : '.';
    return text;
}

const std::vector<Report> kPress{{0, 0, true, 33}};
const std::vector<Report> kRelease{{0, 0, false, 33}};

TEST(Replay, ShowsNothingWithoutReports) {
    const auto shown = replayed({});
    ASSERT_THAT(shown, isOk());
    EXPECT_EQ(shownAs(shown), "........");
    EXPECT_EQ(shown->milliseconds, 0);
}

TEST(Replay, PaintsWhatADragPasses) {
    const auto shown = replayed(picked() + kPress +
                                std::vector<Report>{{8, 0, true, 8}, {0, 8, true, 8}} + kRelease);
    EXPECT_EQ(shownAs(shown), "00...0..");
    ASSERT_THAT(shown, isOk());
    EXPECT_EQ(shown->milliseconds, 182 + 33 + 16 + 33);
    EXPECT_EQ(shown->picks, 1);
    EXPECT_EQ(shown->lifts, 1);
}

TEST(Replay, PaintsOverWithTheColourPickedLast) {
    const std::vector<Report> pickSecond{
        {60, 20, false, 8}, {0, 0, true, 33}, {0, 0, false, 133}, {-60, -20, false, 8}};
    EXPECT_EQ(shownAs(replayed(picked() + kPress + kRelease + pickSecond + kPress + kRelease)),
              "1.......");
}

TEST(Replay, FollowsThePenModelOfTheCanvas) {
    core::PointerTiming timing;
    timing.maxStepDown = 127;
    const auto drag = [](int dx, int dy) {
        return picked() + kPress +
               std::vector<Report>{
                   {static_cast<std::int8_t>(dx), static_cast<std::int8_t>(dy), true, 8}} +
               kRelease;
    };
    const std::string unknown = "report 6 drags in a way that the pen model does not know";
    EXPECT_EQ(shownAs(replayed(drag(24, 0), PenModel::WholeCells, timing)), unknown);
    EXPECT_EQ(shownAs(replayed(drag(24, 0), PenModel::Diagonals, timing)), unknown);
    EXPECT_EQ(shownAs(replayed(drag(24, 0), PenModel::Lines, timing)), "0000....");
    EXPECT_EQ(shownAs(replayed(drag(24, 0), PenModel::Sampled, timing)), "0..0....");
    EXPECT_EQ(shownAs(replayed(drag(8, 8), PenModel::WholeCells, timing)), unknown);
    EXPECT_EQ(shownAs(replayed(drag(8, 8), PenModel::Diagonals, timing)), "0....0..");
    EXPECT_EQ(shownAs(replayed(drag(8, 8), PenModel::Lines, timing)), unknown);
    EXPECT_EQ(shownAs(replayed(drag(16, 8), PenModel::Diagonals, timing)), unknown);
    EXPECT_EQ(shownAs(replayed(drag(16, 8), PenModel::Sampled, timing)), "0.....0.");
}

core::Canvas ruledCanvas(core::PenRules rules) {
    core::Canvas canvas = smallCanvas();
    canvas.rules = rules;
    return canvas;
}

TEST(Replay, RejectsWhatThePenRulesForbid) {
    const core::Canvas noTurns = ruledCanvas({false, true});
    const core::Canvas noCovering = ruledCanvas({true, false});
    const std::vector<Report> corner =
        picked() + kPress + std::vector<Report>{{8, 0, true, 8}, {0, 8, true, 8}} + kRelease;
    EXPECT_THAT(replay(corner, noTurns, {}),
                failsWith(ErrorKind::InvalidInput, "report 7 turns with the pen down"));
    EXPECT_THAT(replay(corner, noCovering, {}), isOk());
    const std::vector<Report> pickSecond{
        {60, 20, false, 8}, {0, 0, true, 33}, {0, 0, false, 133}, {-60, -20, false, 8}};
    const std::vector<Report> over = picked() + kPress + kRelease + pickSecond + kPress + kRelease;
    EXPECT_THAT(replay(over, noCovering, {}),
                failsWith(ErrorKind::InvalidInput, "report 11 paints over another colour"));
    EXPECT_THAT(replay(over, noTurns, {}), isOk());
}

TEST(Replay, RejectsAStrokeThatLeavesTheCanvas) {
    const std::vector<Report> out =
        picked() + kPress +
        std::vector<Report>{{8, 0, true, 8}, {0, 8, true, 8}, {0, 8, true, 8}, {0, -8, true, 8}} +
        kRelease;
    EXPECT_THAT(replayed(out),
                failsWith(ErrorKind::InvalidInput, "report 8 drags the pen off the grid"));
}

TEST(Replay, TakesBackAStrokeThatLeftTheCanvasWhereTheRulesSaySo) {
    core::PenRules undone;
    undone.leaving = core::PenLeaving::Undone;
    const core::Canvas canvas = ruledCanvas(undone);
    // Colour 0 on the cell (0, 0), and kept; colour 1 from there down, over itself, out and back
    // in.
    const std::vector<Report> pickSecond{
        {60, 20, false, 8}, {0, 0, true, 33}, {0, 0, false, 133}, {-60, -20, false, 8}};
    const std::vector<Report> out{{0, 8, true, 8}, {8, 0, true, 8},  {-8, 0, true, 8},
                                  {0, 8, true, 8}, {0, -8, true, 8}, {8, 0, true, 8}};
    const std::vector<Report> begun = picked() + kPress + kRelease + pickSecond + kPress + out;
    const auto shown = replay(begun + kRelease, canvas, {});
    EXPECT_EQ(shownAs(shown), "0.......");
    ASSERT_THAT(shown, isOk());
    EXPECT_EQ(shown->lifts, 2);
    // The next stroke paints again, from where the pointer is: cell (1, 1).
    EXPECT_EQ(shownAs(replay(begun + kRelease + kPress + kRelease, canvas, {})), "0....1..");
    // Off the screen is off the screen.
    EXPECT_THAT(replay(picked() + kPress + std::vector<Report>{{-8, 0, true, 8}}, canvas, {}),
                failsWith(ErrorKind::InvalidInput, "off the screen"));
}

/// As smallCanvas with a fill button at (56, 60), below the swatches.
core::Canvas fillCanvas() {
    core::Canvas canvas = smallCanvas();
    canvas.geometry.fillButton = core::Point{56, 60};
    return canvas;
}

const std::vector<Report> kFill{
    {52, 56, false, 8}, {0, 0, true, 33}, {0, 0, false, 33}, {0, 0, false, 100}};

TEST(Replay, FillsTheWholeCanvas) {
    const auto shown = replay(picked() + kFill, fillCanvas(), {});
    EXPECT_EQ(shownAs(shown), "00000000");
    ASSERT_THAT(shown, isOk());
    EXPECT_EQ(shown->fills, 1);
    EXPECT_EQ(shown->picks, 1);
    EXPECT_EQ(shown->lifts, 0);
    EXPECT_EQ(shown->milliseconds, 182 + 8 + 33 + 33 + 100);
}

TEST(Replay, RejectsAWrongFill) {
    const core::Canvas canvas = fillCanvas();
    EXPECT_THAT(replay(kFill, canvas, {}),
                failsWith(ErrorKind::InvalidInput, "report 1 fills before a colour was picked"));
    EXPECT_THAT(replay(picked() + kFill, smallCanvas(), {}),
                failsWith(ErrorKind::InvalidInput, "clicks at (56, 60)"));
    std::vector<Report> beside = picked() + kFill;
    beside[5].dx = 51;
    EXPECT_THAT(replay(beside, canvas, {}), failsWith(ErrorKind::InvalidInput, "at (55, 60)"));
    EXPECT_THAT(
        replay(picked() + std::vector<Report>{kFill[0], kFill[1], {-8, 0, true, 8}}, canvas, {}),
        failsWith(ErrorKind::InvalidInput, "drags from the fill button"));
    std::vector<Report> hasty = picked() + kFill;
    hasty.pop_back();
    EXPECT_THAT(replay(hasty, canvas, {}), failsWith(ErrorKind::InvalidInput, "long enough"));
    core::Canvas noCovering = canvas;
    noCovering.rules.covers = false;
    const std::vector<Report> pickSecond{
        {60, 20, false, 8}, {0, 0, true, 33}, {0, 0, false, 133}, {-8, 36, false, 8}};
    const std::vector<Report> over = picked() + kPress + kRelease + pickSecond +
                                     std::vector<Report>{{0, 0, true, 33}, {0, 0, false, 133}};
    EXPECT_THAT(replay(over, noCovering, {}),
                failsWith(ErrorKind::InvalidInput, "paints over another colour"));
    EXPECT_EQ(shownAs(replay(over, canvas, {})), "11111111");
}

TEST(Replay, RejectsAMoveTogetherWithTheButton) {
    EXPECT_THAT(replayed(picked() + std::vector<Report>{{1, 0, true, 33}}),
                failsWith(ErrorKind::InvalidInput, "report 5 moves and changes the button"));
}

TEST(Replay, RejectsTooLargeAStep) {
    EXPECT_THAT(replayed({{-128, 0, false, 8}}),
                failsWith(ErrorKind::InvalidInput, "report 0 moves 128 counts; at most 127"));
    core::PointerTiming timing;
    timing.maxStepUp = 50;
    EXPECT_THAT(replayed({{51, 0, false, 8}}, PenModel::WholeCells, timing),
                failsWith(ErrorKind::InvalidInput, "moves 51 counts; at most 50"));
    timing.maxStepUp = 127;
    timing.maxStepDown = 5;
    EXPECT_THAT(replayed(picked() + kPress + std::vector<Report>{{6, 0, true, 8}},
                         PenModel::WholeCells, timing),
                failsWith(ErrorKind::InvalidInput, "report 6 moves 6 counts; at most 5"));
}

TEST(Replay, RejectsAMoveThatIsTooQuick) {
    EXPECT_THAT(replayed({{60, 4, false, 7}}),
                failsWith(ErrorKind::InvalidInput, "report 0 lasts 7 ms; a move needs 8"));
}

TEST(Replay, RejectsShortClicksAndAnUnsettledColour) {
    EXPECT_THAT(replayed({{60, 4, false, 8}, {0, 0, true, 32}, {0, 0, false, 133}}),
                failsWith(ErrorKind::InvalidInput, "report 2 comes 1 ms too soon"));
    EXPECT_THAT(replayed({{60, 4, false, 8},
                          {0, 0, true, 33},
                          {0, 0, false, 33},
                          {0, 0, false, 99},
                          {-60, -4, false, 8}}),
                failsWith(ErrorKind::InvalidInput, "report 4 comes 1 ms too soon"));
    EXPECT_THAT(replayed(picked() + kPress + std::vector<Report>{{0, 0, false, 32}}),
                failsWith(ErrorKind::InvalidInput, "report 7 is missing: the last release"));
}

TEST(Replay, AddsUpWaitsOverSeveralReports) {
    EXPECT_THAT(replayed({{60, 4, false, 8},
                          {0, 0, true, 20},
                          {0, 0, true, 13},
                          {0, 0, false, 100},
                          {0, 0, false, 33}}),
                isOk());
}

TEST(Replay, RejectsAPenThatLeavesTheGridOrTheBarWithTheButtonDown) {
    EXPECT_THAT(replayed(picked() + kPress + std::vector<Report>{{0, 8, true, 8}, {0, 8, true, 8}}),
                failsWith(ErrorKind::InvalidInput, "report 7 drags the pen off the grid"));
    EXPECT_THAT(replayed({{60, 4, false, 8}, {0, 0, true, 33}, {8, 0, true, 8}}),
                failsWith(ErrorKind::InvalidInput, "report 2 drags from the palette bar"));
}

TEST(Replay, RejectsClicksBesideASwatch) {
    const std::vector<core::Point> beside{{51, 4}, {68, 4}, {60, 44}, {40, 100}, {0, 12}};
    for (const core::Point step : beside) {
        EXPECT_THAT(replayed({{static_cast<std::int8_t>(step.x), static_cast<std::int8_t>(step.y),
                               false, 8},
                              {0, 0, true, 33}}),
                    failsWith(ErrorKind::InvalidInput, "neither on the grid nor on a swatch"))
            << step.x << ", " << step.y;
    }
    for (const core::Point step : {core::Point{52, -4}, {67, 11}, {60, 43}}) {
        EXPECT_THAT(replayed({{static_cast<std::int8_t>(step.x), static_cast<std::int8_t>(step.y),
                               false, 8},
                              {0, 0, true, 33},
                              {0, 0, false, 133}}),
                    isOk());
    }
}

TEST(Replay, KnowsTheColumnsOfThePaletteBar) {
    core::Canvas canvas = smallCanvas();
    canvas.geometry.swatchesPerColumn = 2;
    const auto shown = [&](int dx, int dy) {
        return replay(std::vector<Report>{{static_cast<std::int8_t>(dx),
                                           static_cast<std::int8_t>(dy), false, 8},
                                          {0, 0, true, 33},
                                          {0, 0, false, 133}},
                      canvas, {});
    };
    EXPECT_THAT(shown(60, 20), isOk());
    EXPECT_THAT(shown(76, 4), isOk());
    const std::string beside = "neither on the grid nor on a swatch";
    EXPECT_THAT(shown(76, 20), failsWith(ErrorKind::InvalidInput, beside)) << "colour 3 of 3";
    EXPECT_THAT(shown(60, 36), failsWith(ErrorKind::InvalidInput, beside)) << "below the column";
}

TEST(Replay, RejectsPaintBeforeAColour) {
    EXPECT_THAT(replayed(kPress), failsWith(ErrorKind::InvalidInput, "before a colour was picked"));
}

TEST(Replay, RejectsAButtonLeftDown) {
    EXPECT_THAT(
        replayed(picked() + kPress),
        failsWith(ErrorKind::InvalidInput, "report 6 is missing: the button is still down"));
}

TEST(Replay, RejectsAPenOffTheScreen) {
    EXPECT_THAT(replayed({{-5, 0, false, 8}}),
                failsWith(ErrorKind::InvalidInput, "report 0 moves the pen off the screen"));
}

TEST(Replay, RefusesACanvasOfForgedSize) {
    core::Canvas canvas = smallCanvas();
    canvas.size = {1 << 30, 1 << 30};
    EXPECT_THAT(replay({}, canvas, {}), failsWith(ErrorKind::InvalidInput, "outside 1x1"));
}

}  // namespace
}  // namespace pantile::drawing
