#include <algorithm>

#include <gtest/gtest.h>

#include "desktop/edit/painting.h"
#include "desktop/edit/tools.h"
#include "support/matchers.h"

namespace pantile::desktop {
namespace {

using core::Point;

core::Texture empty(int width, int height) {
    return *core::Texture::create(*core::Grid::filled(width, height, 0),
                                  *core::Palette::create({{27, 38, 49}, {184, 170, 120}}));
}

ToolSettings painting(Tool tool) {
    ToolSettings settings;
    settings.tool = tool;
    settings.colour = 1;
    return settings;
}

int painted(const core::Texture& texture) {
    const auto cells = texture.grid().cells();
    return static_cast<int>(std::count(cells.begin(), cells.end(), 1));
}

TEST(EditTools, PaintsAWayOfMorePlacesThanALineMayHave) {
    std::vector<Point> way;
    for (int y = 0; y < 40; ++y) {
        for (int x = 0; x < 40; ++x) way.push_back({y % 2 == 0 ? x : 39 - x, y});
    }
    const auto done = afterTool(empty(40, 40), painting(Tool::Pen), way);
    ASSERT_THAT(done, tests::isOk());
    EXPECT_EQ(painted(*done), 1600);
}

TEST(EditTools, PaintsOnAtTheOppositeEdgesWhereItIsAskedTo) {
    ToolSettings settings = painting(Tool::Line);
    const std::vector<Point> way = {{-2, 1}, {1, 1}};
    EXPECT_EQ(painted(*afterTool(empty(8, 4), settings, way)), 2);
    settings.wraps = true;
    const auto around = *afterTool(empty(8, 4), settings, way);
    EXPECT_EQ(painted(around), 4);
    EXPECT_EQ(around.grid().at(6, 1), 1);
    EXPECT_EQ(around.grid().at(7, 1), 1);
}

TEST(EditTools, BringsABrushOverACornerToAllFourCorners) {
    ToolSettings settings = painting(Tool::Pen);
    settings.brush.size = 3;
    settings.wraps = true;
    const auto done = *afterTool(empty(8, 8), settings, std::vector<Point>{{0, 0}});
    EXPECT_EQ(painted(done), 9);
    for (const Point corner : {Point{0, 0}, Point{7, 0}, Point{0, 7}, Point{7, 7}})
        EXPECT_EQ(done.grid().at(corner), 1);
}

TEST(EditTools, FillsNothingFromOutside) {
    const std::vector<Point> outside = {{-1, 3}};
    for (const Tool tool : {Tool::Fill, Tool::FillAlike}) {
        ToolSettings settings = painting(tool);
        EXPECT_EQ(painted(*afterTool(empty(8, 8), settings, outside)), 0);
        settings.wraps = true;
        EXPECT_EQ(painted(*afterTool(empty(8, 8), settings, outside)), 64);
    }
}

TEST(EditTools, CropsToWhatLiesOnTheTexture) {
    const auto done =
        *afterTool(empty(8, 8), painting(Tool::Crop), std::vector<Point>{{-5, 2}, {3, 20}});
    EXPECT_EQ(done.grid().size(), (core::Size{4, 6}));
}

TEST(EditTools, PutsPlacesOutsideOnTheRepeatedTexture) {
    EXPECT_EQ(wrapped({-1, -9}, {8, 4}), (Point{7, 3}));
    EXPECT_EQ(wrapped({8, 4}, {8, 4}), (Point{0, 0}));
    EXPECT_EQ(wrapped({3, 2}, {8, 4}), (Point{3, 2}));
}

class BegunPainting : public ::testing::Test {
protected:
    BegunPainting() { m_session.open({1}, empty(8, 8)); }

    void begin(Tool tool) { m_painting.setSettings(painting(tool)); }

    EditSession m_session;
    Painting m_painting{m_session, nullptr};
};

TEST_F(BegunPainting, ShowsWhatWillBeUntilItIsReleased) {
    begin(Tool::Line);
    m_painting.press({0, 0});
    m_painting.move({7, 0});
    EXPECT_EQ(painted(*m_painting.shown()), 8);
    EXPECT_EQ(painted(m_session.texture()), 0);
    m_painting.move({3, 0});
    EXPECT_EQ(painted(*m_painting.shown()), 4) << "a line follows, it does not smear";
    m_painting.release({2, 0});
    EXPECT_EQ(painted(m_session.texture()), 3);
    EXPECT_FALSE(m_painting.isUnderWay());
}

TEST_F(BegunPainting, AsksACurveForThreePlaces) {
    begin(Tool::Curve);
    m_painting.press({0, 7});
    m_painting.release({7, 7});
    ASSERT_TRUE(m_painting.isUnderWay());
    m_painting.hover({4, 0});
    EXPECT_EQ(m_painting.shown()->grid().at(4, 0), 1);
    EXPECT_EQ(painted(m_session.texture()), 0);
    m_painting.press({4, 3});
    EXPECT_FALSE(m_painting.isUnderWay());
    EXPECT_EQ(m_session.texture().grid().at(4, 3), 1);
    m_painting.release({4, 3});
    EXPECT_FALSE(m_painting.isUnderWay()) << "the release of the last place begins nothing";
}

TEST_F(BegunPainting, IsLeftWithoutATrace) {
    begin(Tool::Rectangle);
    m_painting.press({1, 1});
    m_painting.move({5, 5});
    m_painting.cancel();
    m_painting.release({5, 5});
    EXPECT_EQ(painted(m_session.texture()), 0);
    EXPECT_TRUE(m_session.undoName().isEmpty());
    m_painting.press({1, 1});
    begin(Tool::Pen);
    EXPECT_FALSE(m_painting.isUnderWay()) << "another tool leaves what was begun";
}

TEST_F(BegunPainting, SettlesAPensWayAndLeavesAnythingElse) {
    begin(Tool::Pen);
    m_painting.press({1, 1});
    m_painting.move({3, 1});
    m_painting.settle();
    EXPECT_EQ(painted(m_session.texture()), 3);
    begin(Tool::Ellipse);
    m_painting.press({1, 1});
    m_painting.move({6, 6});
    m_painting.settle();
    EXPECT_EQ(painted(m_session.texture()), 3);
}

TEST_F(BegunPainting, FramesWhatACropLeaves) {
    begin(Tool::Crop);
    m_painting.press({1, 1});
    m_painting.move({3, 4});
    EXPECT_EQ(m_painting.frame(), (std::vector<Point>{{1, 1}, {3, 4}}));
    EXPECT_EQ(m_painting.shown()->grid().size(), (core::Size{8, 8}));
    m_painting.release({3, 4});
    EXPECT_EQ(m_session.texture().grid().size(), (core::Size{3, 4}));
    EXPECT_TRUE(m_painting.frame().empty());
}

TEST_F(BegunPainting, SaysWhyItCannot) {
    m_session.open({1}, empty(8, 4));
    ToolSettings settings = painting(Tool::Pen);
    settings.symmetry = picture::Symmetry::Eight;
    m_painting.setSettings(settings);
    std::vector<core::Error> errors;
    QObject::connect(&m_painting, &Painting::failed, &m_session,
                     [&](const core::Error& error) { errors.push_back(error); });
    m_painting.press({1, 1});
    ASSERT_EQ(errors.size(), 1U);
    EXPECT_EQ(errors.front().kind, core::ErrorKind::InvalidInput);
    EXPECT_FALSE(m_painting.isUnderWay());
}

}  // namespace
}  // namespace pantile::desktop
