// load_costs.h, held against choose_for_board.h, which plans and fits on its own.

#include "tasks/load_costs.h"

#include <gmock/gmock.h>

#include "tasks/pier_fixture.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using ::testing::HasSubstr;
using ::testing::SizeIs;
using tests::failsWith;
using tests::isOk;

class LoadCostsTest : public tests::PierFixture {
protected:
    core::Result<LoadCosts> costs(const std::vector<core::TextureId>& ids) {
        return loadCosts(m_library, "pier", "", ids, m_known);
    }

    void setBytes(std::int64_t bytes) {
        core::Board board = catalogue::readBoard(m_library, "pier").value();
        board.bytes = bytes;
        ASSERT_THAT(catalogue::setBoard(m_library, board), isOk());
    }

    KnownCosts m_known;
};

TEST_F(LoadCostsTest, AreWhatALoadOfThemTakes) {
    const std::vector ids = {m_ids[2], m_ids[0]};
    const Choice choice = takeAll(m_library, ids, m_options).value();
    for (int round = 0; round < 2; ++round) {  // The second time from what is known.
        const auto found = costs(ids);
        ASSERT_THAT(found, isOk());
        EXPECT_TRUE(found->fits());
        EXPECT_EQ(found->bytes, choice.bytes);
        EXPECT_EQ(found->milliseconds, choice.milliseconds);
        ASSERT_THAT(found->slots, SizeIs(2));
        for (std::size_t i = 0; i < 2; ++i) {
            EXPECT_EQ(found->slots[i].row.id, ids[i]);
            EXPECT_EQ(found->slots[i].bytes(), choice.slots[i].bytes);
            EXPECT_EQ(found->slots[i].milliseconds(), choice.slots[i].milliseconds);
        }
    }
    EXPECT_EQ(costs({})->bytes, 0);
}

TEST_F(LoadCostsTest, ThoseThatDoNotFitAreToldInTheirSmallestForm) {
    const auto roomy = costs({m_ids[0], m_ids[1]});
    ASSERT_THAT(roomy, isOk());
    setBytes(200);
    const auto tight = costs({m_ids[0], m_ids[1]});
    ASSERT_THAT(tight, isOk());
    EXPECT_FALSE(tight->fits());
    EXPECT_GT(tight->bytes, 200);
    EXPECT_LE(tight->bytes, roomy->bytes);
    for (const SlotCost& slot : tight->slots) {
        for (const board::FitVariant& other : slot.variants) EXPECT_LE(slot.bytes(), other.bytes);
    }
}

TEST_F(LoadCostsTest, OneThatNoCanvasTakesIsNamedAndTheOthersAreTold) {
    const core::TextureId large = add(texture(9, 200));
    const auto found = costs({large, m_ids[0]});
    ASSERT_THAT(found, isOk());
    EXPECT_FALSE(found->fits());
    EXPECT_THAT(found->slots[0].problem, HasSubstr("fits no canvas"));
    EXPECT_EQ(found->slots[0].bytes(), 0);
    EXPECT_GT(found->slots[1].bytes(), 0);
}

TEST_F(LoadCostsTest, WhatIsNotThereIsRefusedAndStoppingStops) {
    EXPECT_THAT(costs({{99}}), failsWith(ErrorKind::NotFound, "99"));
    EXPECT_THAT(loadCosts(m_library, "peer", "", {}, m_known),
                failsWith(ErrorKind::NotFound, "peer"));
    std::stop_source stop;
    stop.request_stop();
    EXPECT_THAT(loadCosts(m_library, "pier", "", m_ids, m_known, {stop.get_token(), {}}),
                failsWith(ErrorKind::Cancelled, ""));
}

}  // namespace
}  // namespace pantile::tasks
