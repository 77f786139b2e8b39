// edit_load.h: choosing by hand, and taking each step of it back.

#include "tasks/edit_load.h"

#include <gmock/gmock.h>

#include "catalogue/loads.h"
#include "tasks/pier_fixture.h"
#include "tasks/undo.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using core::TextureId;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using tests::failsWith;
using tests::isOk;

constexpr std::size_t kAtTheEnd = 255;

class EditLoad : public tests::PierFixture {
protected:
    std::vector<TextureId> slots(const std::string& name) {
        return catalogue::readLoad(m_library, name).value().slots;
    }

    std::string newOne() { return newLoads(m_library, "pier", {{}}).value().front(); }

    std::string load = newOne();
};

TEST_F(EditLoad, NewOnesAreNumbered) {
    EXPECT_EQ(load, "Load 1");
    EXPECT_EQ(newOne(), "Load 2");
    ASSERT_THAT(catalogue::removeLoad(m_library, "Load 1"), isOk());
    EXPECT_EQ(newOne(), "Load 1");
    EXPECT_THAT(newLoads(m_library, "pier", {{m_ids[0]}, {m_ids[2], m_ids[1]}}).value(),
                ElementsAre("Load 3", "Load 4"));
    EXPECT_THAT(slots("Load 4"), ElementsAre(m_ids[2], m_ids[1]));
    EXPECT_EQ(tasks::undoLast(m_library).value().action.what, "Make 2 loads");
    EXPECT_THAT(newLoads(m_library, "peer", {{}}), failsWith(ErrorKind::NotFound, "peer"));
    EXPECT_THAT(newLoads(m_library, "pier", {{m_ids[0]}, m_ids}),
                failsWith(ErrorKind::DoesNotFit, "5 textures"));
    EXPECT_THAT(catalogue::readLoad(m_library, "Load 3"), failsWith(ErrorKind::NotFound, ""));
}

TEST_F(EditLoad, TexturesArePutWhereTheyAreWanted) {
    EXPECT_EQ(putInLoad(m_library, load, {m_ids[0], m_ids[1]}, kAtTheEnd).value(), 2);
    EXPECT_EQ(putInLoad(m_library, load, {m_ids[2]}, 1).value(), 1);
    EXPECT_THAT(slots(load), ElementsAre(m_ids[0], m_ids[2], m_ids[1]));
    EXPECT_EQ(putInLoad(m_library, load, {m_ids[0]}, 3).value(), 0) << "it is moved";
    EXPECT_THAT(slots(load), ElementsAre(m_ids[2], m_ids[1], m_ids[0]));
    EXPECT_EQ(putInLoad(m_library, load, {m_ids[0], m_ids[2]}, 0).value(), 0);
    EXPECT_THAT(slots(load), ElementsAre(m_ids[0], m_ids[2], m_ids[1]));
}

TEST_F(EditLoad, TooManyAreRefusedAndNothingIsChanged) {
    ASSERT_THAT(putInLoad(m_library, load, {m_ids[0], m_ids[1]}, 0), isOk());
    EXPECT_THAT(putInLoad(m_library, load, {m_ids[2], m_ids[3]}, 0),
                failsWith(ErrorKind::DoesNotFit, "4 textures"));
    EXPECT_THAT(putInLoad(m_library, load, {{99}}, 0), failsWith(ErrorKind::NotFound, "99"));
    EXPECT_THAT(slots(load), ElementsAre(m_ids[0], m_ids[1]));
}

TEST_F(EditLoad, EachStepIsTakenBackByItsName) {
    ASSERT_THAT(putInLoad(m_library, load, {m_ids[0], m_ids[1]}, 0), isOk());
    ASSERT_THAT(putInLoad(m_library, load, {m_ids[1]}, 0), isOk());
    ASSERT_THAT(takeFromLoad(m_library, load, {m_ids[0]}), isOk());
    EXPECT_EQ(tasks::undoLast(m_library).value().action.what,
              "Take texture 1 out of load 'Load 1'");
    EXPECT_THAT(slots(load), ElementsAre(m_ids[1], m_ids[0]));
    EXPECT_EQ(tasks::undoLast(m_library).value().action.what, "Move texture 2 in load 'Load 1'");
    EXPECT_THAT(slots(load), ElementsAre(m_ids[0], m_ids[1]));
    EXPECT_EQ(tasks::undoLast(m_library).value().action.what, "Put 2 textures in load 'Load 1'");
    EXPECT_THAT(slots(load), IsEmpty());
    EXPECT_EQ(tasks::redoLast(m_library).value().action.what, "Put 2 textures in load 'Load 1'");
    EXPECT_THAT(slots(load), ElementsAre(m_ids[0], m_ids[1]));
}

TEST_F(EditLoad, CarryingBetweenTwoIsOneStep) {
    const std::string other = newOne();
    ASSERT_THAT(putInLoad(m_library, load, {m_ids[0], m_ids[1]}, 0), isOk());
    ASSERT_THAT(putInLoad(m_library, other, {m_ids[2]}, 0), isOk());
    EXPECT_EQ(carryToLoad(m_library, load, {m_ids[1]}, other, 0).value(), 1);
    EXPECT_THAT(slots(load), ElementsAre(m_ids[0]));
    EXPECT_THAT(slots(other), ElementsAre(m_ids[1], m_ids[2]));
    ASSERT_THAT(tasks::undoLast(m_library), isOk());
    EXPECT_THAT(slots(load), ElementsAre(m_ids[0], m_ids[1]));
    EXPECT_THAT(slots(other), ElementsAre(m_ids[2]));
    ASSERT_THAT(putInLoad(m_library, other, {m_ids[2], m_ids[3], m_ids[4]}, 0), isOk());
    EXPECT_THAT(carryToLoad(m_library, load, {m_ids[0]}, other, 0),
                failsWith(ErrorKind::DoesNotFit, "4 textures"));
    EXPECT_THAT(slots(load), ElementsAre(m_ids[0], m_ids[1])) << "it did not leave the first one";
}

TEST_F(EditLoad, FillingReplacesWhatLayThere) {
    ASSERT_THAT(putInLoad(m_library, load, {m_ids[0], m_ids[1]}, 0), isOk());
    ASSERT_THAT(fillLoad(m_library, load, {m_ids[4], m_ids[1]}), isOk());
    EXPECT_THAT(slots(load), ElementsAre(m_ids[4], m_ids[1]));
}

}  // namespace
}  // namespace pantile::tasks
