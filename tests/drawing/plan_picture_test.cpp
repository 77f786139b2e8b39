#include "drawing/plan_picture.h"

#include <gmock/gmock.h>

#include "drawing/requests.h"
#include "drawing/timing.h"

namespace pantile::drawing {
namespace {

using testing::HasSubstr;
using testing::Not;

std::ptrdiff_t timesIn(const std::string& text, const std::string& part) {
    std::ptrdiff_t times = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
        ++times;
    }
    return times;
}

std::string pictureOf(std::string_view title, const Plan& plan, const DrawingRequest& request) {
    const core::Palette palette =
        *core::Palette::create({{27, 38, 49}, {242, 239, 228}, {181, 83, 45}});
    return planSvg(plan, {title, request.grid, palette, request.canvas});
}

TEST(PlanPicture, ShowsStrokesTravelsAndPicks) {
    const DrawingRequest request = tests::requestFor({"000", "012", "000"});
    const Plan plan = timedPlan({{0, {{0, 0}, {2, 0}, {2, 2}, {0, 2}, {0, 1}}},
                                 {1, {{1, 1}}},
                                 {0, {{0, 0}}},
                                 {2, {{2, 1}}}},
                                TimeModel(request.canvas, request.timing));
    const std::string svg = pictureOf("Wet sand", plan, request);
    EXPECT_EQ(svg, pictureOf("Wet sand", plan, request));
    EXPECT_EQ(timesIn(svg, "stroke=\"#111111\""), 4 + 1) << "a ring for each stroke and the legend";
    EXPECT_EQ(timesIn(svg, "<circle"), 5 + 3) << "and a dot for each single cell";
    // Tenths of counts: cell (0, 0) has its centre at (4, 4) and the next are 8 further on.
    EXPECT_THAT(svg, HasSubstr("d=\"M40 40L200 40L200 200L40 200L40 120\""));
    EXPECT_THAT(svg, HasSubstr("stroke=\"#1b2631\" stroke-width=\"20\""));
    EXPECT_THAT(svg, HasSubstr("<rect x=\"500\" y=\"20\" width=\"120\" height=\"120\""));
    EXPECT_THAT(svg, HasSubstr(">1, 3</text>"));
    EXPECT_THAT(svg, HasSubstr("4 strokes, 4 colour picks, "));
    EXPECT_THAT(svg, HasSubstr("stroke=\"#b5532d\""));
    EXPECT_THAT(svg, Not(HasSubstr("frame of its own</text>")));
}

TEST(PlanPicture, ShowsJumpsAndTheFill) {
    core::PointerTiming timing;
    timing.maxStepDown = 127;
    DrawingRequest request = tests::requestFor({"0110", "0011"}, core::PenModel::Sampled, timing);
    request.canvas.geometry.fillButton = core::Point{64, 60};
    const Plan plan = timedPlan({{1, {{1, 0}, {2, 0}, {3, 1}, {2, 1}}, {false, false, true}}},
                                TimeModel(request.canvas, timing), core::PaletteIndex{0});
    const std::string svg = pictureOf("", plan, request);
    EXPECT_THAT(svg, HasSubstr("d=\"M120 40L200 40M280 120L200 120\""));
    EXPECT_THAT(svg, HasSubstr("d=\"M200 40L280 120\""));
    EXPECT_THAT(svg, HasSubstr("1 stroke, 2 colour picks, 1 fill, "));
}

TEST(PlanPicture, EscapesItsTitle) {
    const DrawingRequest request = tests::requestFor({"01"});
    const std::string svg = pictureOf("</title><script>\"kelp\" & \x1b[2J\u202e", Plan{}, request);
    EXPECT_THAT(svg, Not(HasSubstr("<script")));
    EXPECT_THAT(svg,
                HasSubstr("&lt;/title&gt;&lt;script&gt;&quot;kelp&quot; &amp; \\x1b[2J\\u202e"));
}

}  // namespace
}  // namespace pantile::drawing
