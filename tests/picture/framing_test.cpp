#include "picture/framing.h"

#include <array>

#include <gtest/gtest.h>

namespace pantile::picture {
namespace {

using core::Point;
using core::Size;

TEST(Framing, StretchUsesTheWholePictureAndTheWholeTarget) {
    const Framing framing = frame({10, 7}, {4, 3}, Fit::Stretch);
    EXPECT_EQ(framing.columns, (AxisSpan{0, 10, 4}));
    EXPECT_EQ(framing.rows, (AxisSpan{0, 7, 3}));
    EXPECT_EQ(framing.offset, (Point{0, 0}));
    EXPECT_EQ(framing.painted, (Size{4, 3}));
}

TEST(Framing, CoverCutsEvenlyFromBothSides) {
    // 100x50 onto a square of 10: the middle 50x50 pixels, 5 pixels a cell, from column 25.
    const Framing wide = frame({100, 50}, {10, 10}, Fit::Cover);
    EXPECT_EQ(wide.columns.edge(0), 25 * wide.columns.denominator);
    EXPECT_EQ(wide.columns.edge(1), 30 * wide.columns.denominator);
    EXPECT_EQ(wide.columns.edge(10), 75 * wide.columns.denominator);
    EXPECT_EQ(wide.rows, (AxisSpan{0, 50, 10}));
    const Framing high = frame({50, 100}, {10, 10}, Fit::Cover);
    EXPECT_EQ(high.rows, wide.columns);
    EXPECT_EQ(high.columns, wide.rows);
}

TEST(Framing, CoverKeepsFractionsExactly) {
    // 5x3 onto 2x2: a square of 3 pixels from column 1; each cell is 3/2 pixels wide.
    const Framing framing = frame({5, 3}, {2, 2}, Fit::Cover);
    const AxisSpan& columns = framing.columns;
    EXPECT_EQ(columns.edge(0), columns.denominator);
    EXPECT_EQ(2 * columns.edge(1), 5 * columns.denominator);
    EXPECT_EQ(columns.edge(2), 4 * columns.denominator);
}

TEST(Framing, ContainCentresAndKeepsTheProportions) {
    const Framing wide = frame({100, 50}, {16, 16}, Fit::Contain);
    EXPECT_EQ(wide.painted, (Size{16, 8}));
    EXPECT_EQ(wide.offset, (Point{0, 4}));
    EXPECT_EQ(wide.target, (Size{16, 16}));
    const Framing high = frame({30, 90}, {16, 16}, Fit::Contain);
    EXPECT_EQ(high.painted, (Size{5, 16}));  // 16/3 to the nearest
    EXPECT_EQ(high.offset, (Point{5, 0}));
}

TEST(Framing, ContainNeverLosesAThinPicture) {
    EXPECT_EQ(frame({1000, 1}, {16, 16}, Fit::Contain).painted, (Size{16, 1}));
    EXPECT_EQ(frame({1, 1000}, {16, 16}, Fit::Contain).painted, (Size{1, 16}));
}

TEST(Framing, ExactIsThePictureItself) {
    const Framing framing = frame({9, 4}, {64, 64}, Fit::Exact);
    EXPECT_EQ(framing.target, (Size{9, 4}));
    EXPECT_EQ(framing.columns, (AxisSpan{0, 9, 9}));
}

TEST(Framing, CoverKeepsTheAnchoredPart) {
    // Of 100x50 a square of 50 is shown: columns 0 to 49, 25 to 74, or 50 to 99.
    const auto firstColumn = [](Anchor anchor) {
        const AxisSpan columns = frame({100, 50}, {10, 10}, Fit::Cover, anchor).columns;
        EXPECT_EQ(columns.edge(10) - columns.edge(0), 50 * columns.denominator);
        return columns.edge(0) / columns.denominator;
    };
    for (const Anchor left : {Anchor::TopLeft, Anchor::Left, Anchor::BottomLeft})
        EXPECT_EQ(firstColumn(left), 0);
    for (const Anchor middle : {Anchor::Top, Anchor::Centre, Anchor::Bottom})
        EXPECT_EQ(firstColumn(middle), 25);
    for (const Anchor right : {Anchor::TopRight, Anchor::Right, Anchor::BottomRight})
        EXPECT_EQ(firstColumn(right), 50);
    const AxisSpan rows = frame({50, 100}, {10, 10}, Fit::Cover, Anchor::BottomLeft).rows;
    EXPECT_EQ(rows.edge(0), 50 * rows.denominator);
}

TEST(Framing, ContainPutsThePictureAtTheAnchor) {
    const auto offset = [](Anchor anchor) {
        return frame({100, 50}, {16, 13}, Fit::Contain, anchor).offset;  // 16x8 cells are painted
    };
    EXPECT_EQ(offset(Anchor::TopRight), (Point{0, 0}));
    EXPECT_EQ(offset(Anchor::Left), (Point{0, 2}));
    EXPECT_EQ(offset(Anchor::BottomLeft), (Point{0, 5}));
    const auto high = [](Anchor anchor) {
        return frame({50, 100}, {13, 16}, Fit::Contain, anchor).offset;
    };
    EXPECT_EQ(high(Anchor::BottomLeft), (Point{0, 0}));
    EXPECT_EQ(high(Anchor::Bottom), (Point{2, 0}));
    EXPECT_EQ(high(Anchor::Right), (Point{5, 0}));
}

TEST(Framing, StretchAndExactHaveNothingToAnchor) {
    for (const Fit fit : {Fit::Stretch, Fit::Exact}) {
        const Framing centred = frame({9, 4}, {5, 6}, fit);
        const Framing cornered = frame({9, 4}, {5, 6}, fit, Anchor::BottomRight);
        EXPECT_EQ(cornered.columns, centred.columns);
        EXPECT_EQ(cornered.rows, centred.rows);
        EXPECT_EQ(cornered.offset, centred.offset);
    }
}

TEST(Framing, OppositeAnchorsMirrorEachOther) {
    for (int width = 1; width <= 20; ++width) {
        for (int height = 1; height <= 20; ++height) {
            const AxisSpan first =
                frame({width, height}, {5, 3}, Fit::Cover, Anchor::TopLeft).columns;
            const AxisSpan last =
                frame({width, height}, {5, 3}, Fit::Cover, Anchor::BottomRight).columns;
            EXPECT_EQ(first.edge(0), 0);
            EXPECT_EQ(last.edge(5), width * last.denominator);
            EXPECT_EQ(first.denominator, last.denominator);
            EXPECT_EQ(first.edge(5), last.edge(5) - last.edge(0));
        }
    }
}

TEST(Framing, NeverReachesOutsideThePicture) {
    for (int width = 1; width <= 20; ++width) {
        for (int height = 1; height <= 20; ++height) {
            for (const Size target : {Size{1, 1}, Size{3, 7}, Size{16, 5}, Size{64, 64}}) {
                for (int which = 0; which < 27; ++which) {
                    const Fit fit = std::array{Fit::Cover, Fit::Contain, Fit::Stretch}.at(
                        static_cast<std::size_t>(which) % 3);
                    const Framing framing =
                        frame({width, height}, target, fit, static_cast<Anchor>(which / 3));
                    EXPECT_GE(framing.offset.x, 0);
                    EXPECT_GE(framing.offset.y, 0);
                    EXPECT_GE(framing.columns.edge(0), 0);
                    EXPECT_GE(framing.rows.edge(0), 0);
                    EXPECT_LE(framing.columns.edge(framing.painted.width),
                              width * framing.columns.denominator);
                    EXPECT_LE(framing.rows.edge(framing.painted.height),
                              height * framing.rows.denominator);
                    EXPECT_LE(framing.offset.x + framing.painted.width, target.width);
                    EXPECT_LE(framing.offset.y + framing.painted.height, target.height);
                }
            }
        }
    }
}

}  // namespace
}  // namespace pantile::picture
