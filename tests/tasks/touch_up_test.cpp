// touch_up.h: several operations as one change of a library's texture.

#include "tasks/touch_up.h"

#include <functional>
#include <stop_token>

#include "catalogue/edit.h"
#include "catalogue/history.h"
#include "catalogue/palettes.h"
#include "tasks/drawing_estimate.h"
#include "tasks/library_fixture.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using core::Texture;
using tests::failsWith;
using tests::isOk;

TouchStep replace(core::PaletteIndex from, core::PaletteIndex to) {
    return {ReplaceColour{from, to}, "--replace"};
}

TouchStep dot(core::Point at, core::PaletteIndex colour) {
    Pen pen;
    pen.colour = colour;
    return {DrawLine{{at}, pen}, "--line"};
}

const TouchStep kMirror = {MirrorCells{picture::Mirror::LeftRight}, "--mirror"};

class TouchUp : public tests::LibraryFixture {
protected:
    TouchUp() : m_id(add(texture(1))) {}

    catalogue::TextureRecord stored() const { return *catalogue::readTexture(m_library, m_id); }

    std::size_t revisions() const { return catalogue::history(m_library, m_id)->size(); }

    core::Result<TouchedUp> touch(const std::vector<TouchStep>& steps) {
        return touchUp(m_library, m_id, steps);
    }

    /// The steps are refused, and the texture is as it was.
    void expectRefused(const std::vector<TouchStep>& steps, ErrorKind kind,
                       const std::string& words) {
        const auto before = stored();
        EXPECT_THAT(touch(steps), failsWith(kind, words));
        EXPECT_EQ(stored().row, before.row);
        EXPECT_EQ(stored().texture, before.texture);
        EXPECT_EQ(revisions(), 1U);
    }

    core::TextureId m_id;
};

TEST_F(TouchUp, AllStepsAreOneRevisionThatRevertTakesBack) {
    const Texture before = stored().texture;
    const auto done = touch({replace(0, 1), replace(2, 3), kMirror});
    ASSERT_THAT(done, isOk());
    EXPECT_EQ(done->revision, 2);
    EXPECT_EQ(done->size, before.grid().size());
    EXPECT_EQ(stored().texture.coloursUsed(), 2);
    EXPECT_EQ(stored().row.revision, 2);
    const auto history = catalogue::history(m_library, m_id);
    ASSERT_EQ(history->size(), 2U);
    EXPECT_EQ(history->back().kind, catalogue::RevisionKind::Content);
    ASSERT_THAT(catalogue::revertTexture(m_library, m_id, 1), isOk());
    EXPECT_EQ(stored().texture, before);
}

TEST_F(TouchUp, OtherSizesAndPalettesAreTakenBackToo) {
    const Texture before = stored().texture;
    ASSERT_THAT(touch({{Enlarge{3}, ""}, {ReduceColours{2}, ""}}), isOk());
    EXPECT_EQ(stored().row.size, (core::Size{24, 24}));
    EXPECT_EQ(stored().texture.palette().size(), 2);
    ASSERT_THAT(catalogue::revertTexture(m_library, m_id, 1), isOk());
    EXPECT_EQ(stored().texture, before);
    EXPECT_EQ(stored().row.size, (core::Size{8, 8}));
}

TEST_F(TouchUp, WordsTagsAndTheRestStay) {
    const auto before = stored().row;
    ASSERT_THAT(touch({kMirror}), isOk());
    const auto after = stored().row;
    EXPECT_EQ(after.title, before.title);
    EXPECT_EQ(after.author, before.author);
    EXPECT_EQ(after.tags, before.tags);
    EXPECT_EQ(after.addedAt, before.addedAt);
    EXPECT_FALSE(after.removed);
}

TEST_F(TouchUp, CountsTheCellsThatChanged) {
    const core::PaletteIndex there = stored().texture.grid().at(3, 2);
    const auto other = static_cast<core::PaletteIndex>((there + 1) % 4);
    EXPECT_EQ(touch({dot({3, 2}, other)})->changed, 1);
    EXPECT_EQ(touch({{Extend{{0, 1, 0, 0}, 0}, ""}, {Crop{{0, 1}, {7, 8}}, ""}})->changed, 0);
    EXPECT_EQ(touch({{Extend{{0, 0, 1, 0}, 0}, ""}})->changed, 8) << "one column more";
}

TEST_F(TouchUp, WhatChangesNothingIsNoRevision) {
    const auto done = touch({kMirror, kMirror});
    ASSERT_THAT(done, isOk());
    EXPECT_EQ(done->revision, 1);
    EXPECT_EQ(done->changed, 0);
    EXPECT_EQ(revisions(), 1U);
}

TEST_F(TouchUp, AStepThatFailsLeavesNothingHalfDone) {
    expectRefused({replace(0, 1), {Crop{{0, 0}, {8, 8}}, "--crop 0,0,8,8"}, kMirror},
                  ErrorKind::InvalidInput, "--crop 0,0,8,8");
    expectRefused({replace(0, 1), replace(4, 1)}, ErrorKind::InvalidInput, "--replace");
    expectRefused({replace(0, 1), {Recolour{"slate"}, "--recolour slate"}}, ErrorKind::NotFound,
                  "slate");
}

TEST_F(TouchUp, ATextureThatIsThereAlreadyIsNotMadeTwice) {
    const Texture first = stored().texture;
    const auto mirrored = touchedUp(first, std::span(&kMirror, 1), {});
    ASSERT_THAT(mirrored, isOk());
    const core::TextureId other = add(*mirrored);
    expectRefused({kMirror}, ErrorKind::AlreadyExists, std::to_string(other.value));
}

TEST_F(TouchUp, ATextureThatIsNotThereIsNamed) {
    EXPECT_THAT(touchUp(m_library, core::TextureId{999}, std::vector{kMirror}),
                failsWith(ErrorKind::NotFound, "999"));
}

// Another program's changes to the library while a touch-up computes.
class TouchUpBesideOthers : public TouchUp {
protected:
    /// Before the first step of each of the first `times` computings, `change` is called.
    core::Result<TouchedUp> touchWhile(const std::vector<TouchStep>& steps, int times,
                                       const std::function<void()>& change) {
        m_computings = 0;
        const auto report = [&](std::int64_t done, std::int64_t /*total*/, std::string_view) {
            if (done == 0 && ++m_computings <= times) change();
        };
        return touchUp(m_library, m_id, steps, {{}, report});
    }

    catalogue::Library m_other = *openLibrary(path("library.db"), Purpose::Change);
    int m_computings = 0;
};

TEST_F(TouchUpBesideOthers, ComputesAgainFromWhatIsThereNow) {
    const Texture first = stored().texture;
    const TouchStep theirs =
        dot({3, 2}, static_cast<core::PaletteIndex>((first.grid().at(3, 2) + 1) % 4));
    const auto done = touchWhile({kMirror}, 1, [&] {
        EXPECT_THAT(touchUp(m_other, m_id, {&theirs, 1}), isOk());
    });
    ASSERT_THAT(done, isOk());
    EXPECT_EQ(m_computings, 2);
    EXPECT_EQ(done->revision, 3);
    EXPECT_EQ(stored().texture.grid(), touchedUp(first, std::vector{theirs, kMirror}, {})->grid());
}

TEST_F(TouchUpBesideOthers, WordsThatChangeAreNoReason) {
    catalogue::TextPatch patch;
    patch.title = "Wet kelp";
    const auto done = touchWhile({kMirror}, 1, [&] {
        EXPECT_THAT(catalogue::setText(m_other, {&m_id, 1}, patch), isOk());
    });
    ASSERT_THAT(done, isOk());
    EXPECT_EQ(m_computings, 1);
    EXPECT_EQ(stored().row.title, "Wet kelp");
}

TEST_F(TouchUpBesideOthers, GivesUpIfItNeverEnds) {
    const auto done = touchWhile({dot({0, 0}, 1)}, 100, [&] {
        EXPECT_THAT(touchUp(m_other, m_id, std::vector{TouchStep{ShiftCells{{1, 0}}, ""}}), isOk());
    });
    EXPECT_THAT(done, failsWith(ErrorKind::Busy, std::to_string(m_id.value)));
    EXPECT_EQ(revisions(), 1U + static_cast<std::size_t>(m_computings)) << "all of them theirs";
}

TEST_F(TouchUpBesideOthers, ATextureThatGoesAwayIsNamed) {
    EXPECT_THAT(touchWhile({kMirror}, 1,
                           [&] {
                               EXPECT_THAT(catalogue::removeTextures(m_other, {&m_id, 1}), isOk());
                               EXPECT_THAT(catalogue::purgeRemoved(m_other, {&m_id, 1}), isOk());
                           }),
                failsWith(ErrorKind::NotFound, std::to_string(m_id.value)));
}

TEST_F(TouchUp, KeepsWhatWasMadeElsewhereAsOneRevision) {
    const Texture before = stored().texture;
    const Texture after = *touchedUp(before, std::vector{dot({0, 0}, 1), dot({1, 0}, 0)}, {});
    ASSERT_NE(after.grid(), before.grid());
    const auto kept = keepTouched(m_library, m_id, before, after);
    ASSERT_THAT(kept, isOk());
    EXPECT_EQ(kept->revision, 2);
    EXPECT_EQ(stored().texture.grid(), after.grid());
    const auto defaults = *drawingDefaults(m_library);
    EXPECT_EQ(stored().row.estimate, estimateDrawing(after, defaults));
    // The same once more changes nothing.
    ASSERT_THAT(keepTouched(m_library, m_id, after, after), isOk());
    EXPECT_EQ(revisions(), 2U);
}

TEST_F(TouchUp, KeepsNothingOverWhatAnotherProgramMade) {
    const Texture before = stored().texture;
    const Texture after = *touchedUp(before, std::vector{dot({0, 0}, 1)}, {});
    ASSERT_THAT(touch({kMirror}), isOk());
    const Texture theirs = stored().texture;
    EXPECT_THAT(keepTouched(m_library, m_id, before, after),
                failsWith(ErrorKind::Busy, "by another program"));
    EXPECT_EQ(stored().texture, theirs);
    EXPECT_EQ(revisions(), 2U);
}

TEST_F(TouchUp, KeepsATextureBesideTheOneItWasMadeOf) {
    const Texture before = stored().texture;
    const Texture after = *touchedUp(before, std::vector{dot({0, 0}, 1), dot({1, 0}, 0)}, {});
    const auto beside = keepBeside(m_library, after);
    ASSERT_THAT(beside, isOk());
    EXPECT_NE(*beside, m_id);
    EXPECT_EQ(stored().texture, before);
    const auto added = *catalogue::readTexture(m_library, *beside);
    EXPECT_EQ(added.texture.grid(), after.grid());
    EXPECT_EQ(added.row.title, before.text().title + " (touched up)");
    EXPECT_EQ(added.row.estimate, estimateDrawing(after, *drawingDefaults(m_library)));
    EXPECT_EQ(*keepBeside(m_library, after), *beside) << "nothing is stored twice";
}

TEST_F(TouchUp, StopsBetweenSteps) {
    std::stop_source stop;
    const auto report = [&](std::int64_t done, std::int64_t total, std::string_view what) {
        EXPECT_EQ(total, 2);
        if (done == 1) {
            EXPECT_EQ(what, "--mirror");
            stop.request_stop();
        }
    };
    EXPECT_THAT(
        touchUp(m_library, m_id, std::vector{replace(0, 1), kMirror}, {stop.get_token(), report}),
        failsWith(ErrorKind::Cancelled, "stopped"));
    EXPECT_EQ(revisions(), 1U);
}

TEST_F(TouchUp, RecoloursToAPaletteOfTheLibrary) {
    const core::Palette slate = *core::Palette::create({{0, 0, 0}, {255, 255, 255}});
    ASSERT_THAT(catalogue::addPalette(m_library, "slate", slate), isOk());
    // In the new palette index 1 is the last.
    const auto done = touch({{Recolour{"slate"}, "--recolour"}, replace(0, 1)});
    ASSERT_THAT(done, isOk());
    EXPECT_EQ(stored().texture.palette(), slate);
    EXPECT_EQ(stored().texture.grid(), *core::Grid::filled(8, 8, 1));
}

TEST_F(TouchUp, TheEstimateIsThatOfTheNewPicture) {
    ASSERT_THAT(touch({{Enlarge{2}, ""}}), isOk());
    const auto expected = estimateDrawing(stored().texture, *drawingDefaults(m_library));
    ASSERT_TRUE(expected);
    EXPECT_EQ(stored().row.estimate, *expected);
    ASSERT_THAT(touch({{Enlarge{16}, ""}}), isOk());
    EXPECT_EQ(stored().row.estimate, std::nullopt) << "256 cells a side fit no canvas";
}

TEST_F(TouchUp, StepsWorkOneAfterTheOther) {
    tests::Random random(20);
    for (int round = 0; round < 50; ++round) {
        const auto step = [&]() -> TouchStep {
            const core::Point at{random.between(-2, 9), random.between(-2, 9)};
            const auto colour = static_cast<core::PaletteIndex>(random.between(0, 3));
            switch (random.between(0, 3)) {
                case 0:
                    return dot(at, colour);
                case 1:
                    return {ShiftCells{at}, ""};
                case 2:
                    return {TurnCells{picture::Turn::Quarter}, ""};
                default:
                    return replace(colour, 0);
            }
        };
        const std::vector<TouchStep> steps = {step(), step(), step()};
        const Texture start = texture(round);
        const auto together = touchedUp(start, steps, {});
        ASSERT_THAT(together, isOk());
        Texture apart = start;
        for (const TouchStep& each : steps) apart = *touchedUp(apart, std::span(&each, 1), {});
        ASSERT_EQ(*together, apart) << "round " << round;
    }
}

}  // namespace
}  // namespace pantile::tasks
