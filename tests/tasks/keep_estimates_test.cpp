// keep_estimates.h: costs follow the canvases and the default board.

#include "tasks/keep_estimates.h"

#include <functional>
#include <vector>

#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/edit.h"
#include "tasks/calibrate_canvas.h"
#include "tasks/drawing_estimate.h"
#include "tasks/library_fixture.h"
#include "tasks/undo.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

class KeepEstimates : public tests::LibraryFixture {
protected:
    KeepEstimates() {
        for (int seed = 1; seed <= 3; ++seed) add(texture(seed));
        EXPECT_EQ(refreshEstimates(m_library).value(), 3);
    }

    std::optional<catalogue::Estimate> kept(std::int64_t id) const {
        return catalogue::readTexture(m_library, {id})->row.estimate;
    }

    /// What is kept is what planning gives now.
    void expectRight() const {
        const auto defaults = drawingDefaults(m_library);
        for (std::int64_t id = 1; id <= 3; ++id) {
            const auto record = catalogue::readTexture(m_library, {id});
            EXPECT_EQ(record->row.estimate, estimateDrawing(record->texture, *defaults)) << id;
        }
    }

    core::Canvas canvas() const { return catalogue::readCanvas(m_library, "cells-16").value(); }

    core::Board board() const { return catalogue::readBoard(m_library, "flash-32k").value(); }
};

TEST_F(KeepEstimates, DropsThemWithTheTimingOfTheDefaultBoard) {
    const auto before = kept(1);
    core::Board quick = board();
    quick.timing = core::PointerTiming::quick();
    ASSERT_THAT(tasks::setBoard(m_library, quick), isOk());
    EXPECT_EQ(kept(1), std::nullopt);
    EXPECT_EQ(refreshEstimates(m_library).value(), 3);
    EXPECT_LT(kept(1)->drawMs, before->drawMs);
    expectRight();
}

TEST_F(KeepEstimates, DropsThemWithACanvasThatIsCalibrated) {
    ASSERT_THAT(takeCalibration(m_library, "cells-16", {{2, 1}, {10, 9}, {}, {}}), isOk());
    EXPECT_EQ(kept(1), std::nullopt);
    EXPECT_EQ(refreshEstimates(m_library).value(), 3);
    expectRight();
}

TEST_F(KeepEstimates, FollowNameAndSettingsChangedAsOneAction) {
    core::Canvas wide = canvas();
    wide.name = "Slipway";
    wide.geometry.cellPitch = 9;
    ASSERT_THAT(changeCanvas(m_library, "cells-16", wide), isOk());
    EXPECT_EQ(kept(1), std::nullopt);
    EXPECT_EQ(refreshEstimates(m_library).value(), 3);
    expectRight();
    EXPECT_EQ(catalogue::lastAction(m_library).value()->what,
              "Rename canvas 'cells-16' to 'Slipway'");
    core::Board taken = board();
    taken.name = "Pier";
    taken.slots = 0;
    EXPECT_FALSE(changeBoard(m_library, "flash-32k", taken));
    EXPECT_THAT(catalogue::readBoard(m_library, "flash-32k"), isOk());
    ASSERT_THAT(tasks::undoLast(m_library), isOk());
    EXPECT_EQ(canvas().geometry.cellPitch, wide.geometry.cellPitch - 1);
    EXPECT_EQ(kept(1), std::nullopt);
}

TEST_F(KeepEstimates, KeepsThemWhereNothingThatCountsChanged) {
    core::Board other = board();
    other.name = "pier";
    other.timing = core::PointerTiming::quick();
    ASSERT_THAT(tasks::addBoard(m_library, other), isOk());
    other.slots = 9;
    ASSERT_THAT(tasks::setBoard(m_library, other), isOk());
    ASSERT_THAT(tasks::removeBoard(m_library, "pier"), isOk());
    core::Board described = board();
    described.description = "the one on the desk";
    ASSERT_THAT(tasks::setBoard(m_library, described), isOk());
    core::Canvas large = catalogue::readCanvas(m_library, "cells-64").value();
    large.penModel = core::PenModel::Lines;
    ASSERT_THAT(tasks::setCanvas(m_library, large), isOk());
    EXPECT_TRUE(kept(1) && kept(2) && kept(3));
    EXPECT_EQ(refreshEstimates(m_library).value(), 0);
    expectRight();
}

TEST_F(KeepEstimates, DropsThemWithEveryRuleOfTheirCanvas) {
    const std::vector<std::function<void(core::Canvas&)>> changes = {
        [](core::Canvas& c) { c.rules.turns = false; },
        [](core::Canvas& c) { c.rules.covers = false; },
        [](core::Canvas& c) { c.penModel = core::PenModel::Diagonals; },
        [](core::Canvas& c) { c.geometry.cellPitch = 7; },
        [](core::Canvas& c) {
            c.geometry.fillButton = core::Point{200, 600};
        },
        [](core::Canvas& c) {
            c.geometry.fillButton = core::Point{200, 601};
        },
    };
    for (std::size_t i = 0; i < changes.size(); ++i) {
        core::Canvas changed = canvas();
        changes[i](changed);
        ASSERT_THAT(tasks::setCanvas(m_library, changed), isOk());
        EXPECT_EQ(kept(1), std::nullopt) << "change " << i;
        EXPECT_EQ(refreshEstimates(m_library).value(), 3);
        expectRight();
    }
}

/// The name and size of what was chosen stay as they were; another canvas is chosen now.
TEST_F(KeepEstimates, DropsThemWhereAnotherCanvasIsChosen) {
    core::Canvas small = canvas();
    small.name = "cells-8";
    small.size = {8, 8};
    small.geometry = core::CanvasGeometry::beside(small.size);
    ASSERT_THAT(tasks::addCanvas(m_library, small), isOk());
    EXPECT_EQ(kept(2), std::nullopt);
    EXPECT_EQ(refreshEstimates(m_library).value(), 3);
    expectRight();
    ASSERT_THAT(tasks::removeCanvas(m_library, "cells-8"), isOk());
    EXPECT_EQ(kept(2), std::nullopt);
    EXPECT_EQ(refreshEstimates(m_library).value(), 3);
    expectRight();
}

TEST_F(KeepEstimates, LeavesAllAsItWasWhereTheChangeIsRefused) {
    core::Canvas bad = canvas();
    bad.geometry.fillButton = core::Point{5, 5};
    EXPECT_THAT(tasks::setCanvas(m_library, bad),
                failsWith(ErrorKind::InvalidInput, "on the grid"));
    EXPECT_THAT(tasks::removeCanvas(m_library, "cells-17"),
                failsWith(ErrorKind::NotFound, "cells-17"));
    expectRight();
}

TEST_F(KeepEstimates, StopsWhenAskedAndGoesOnLater) {
    core::Board quick = board();
    quick.timing = core::PointerTiming::quick();
    ASSERT_THAT(tasks::setBoard(m_library, quick), isOk());
    std::stop_source source;
    core::Progress progress;
    progress.stop = source.get_token();
    progress.report = [&](std::int64_t done, std::int64_t, std::string_view) {
        if (done == 1) source.request_stop();
    };
    EXPECT_THAT(refreshEstimates(m_library, progress), failsWith(ErrorKind::Cancelled, "stopped"));
    EXPECT_TRUE(kept(1));
    EXPECT_FALSE(kept(3));
    EXPECT_GT(refreshEstimates(m_library).value(), 0);
    expectRight();
}

TEST_F(KeepEstimates, WorksOutAnewWhatAnEarlierProgramKept) {
    const auto right = kept(2);
    ASSERT_TRUE(right);
    ASSERT_THAT(catalogue::setEstimate(m_library, {2}, {1, 1, "of earlier scripts"}), isOk());
    EXPECT_EQ(knownEstimate(m_library, *catalogue::readTexture(m_library, {2})), right);
    EXPECT_EQ(kept(2), right);
}

TEST_F(KeepEstimates, WorksOutAMissingOneAndKeepsIt) {
    ASSERT_THAT(catalogue::dropEstimate(m_library, {2}), isOk());
    const auto record = catalogue::readTexture(m_library, {2});
    const auto known = knownEstimate(m_library, *record);
    ASSERT_TRUE(known);
    EXPECT_EQ(kept(2), known);
    // One that fits no canvas has none.
    const auto large = add(texture(9, 100));
    EXPECT_EQ(knownEstimate(m_library, *catalogue::readTexture(m_library, large)), std::nullopt);
    EXPECT_EQ(refreshEstimates(m_library).value(), 0);
}

}  // namespace
}  // namespace pantile::tasks
