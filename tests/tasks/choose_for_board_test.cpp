#include "tasks/choose_for_board.h"

#include <algorithm>

#include "board/load_writer.h"
#include "catalogue/boards.h"
#include "catalogue/edit.h"
#include "catalogue/shelves.h"
#include "tasks/pier_fixture.h"
#include "tasks/split_over_loads.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using core::TextureId;
using tests::failsWith;
using tests::isOk;

class Choosing : public tests::PierFixture {
protected:
    void setBytes(std::int64_t bytes) {
        core::Board board = *catalogue::readBoard(m_library, "pier");
        board.bytes = bytes;
        ASSERT_THAT(catalogue::setBoard(m_library, board), isOk());
    }

    void shelve(const std::string& name, const std::vector<TextureId>& ids) {
        ASSERT_THAT(catalogue::putOnShelf(m_library, ids, name), isOk());
    }

    static std::vector<TextureId> idsOf(const Choice& choice) {
        std::vector<TextureId> ids;
        for (const ChosenSlot& slot : choice.slots) ids.push_back(slot.id);
        return ids;
    }
};

TEST_F(Choosing, FillsTheSlotsWithWhatIsWorthMost) {
    m_options.worth = {{m_ids[1], 9}, {m_ids[4], 8}};
    m_options.must = {m_ids[2]};
    const auto choice = chooseForBoard(m_library, m_ids, m_options);
    ASSERT_THAT(choice, isOk());
    EXPECT_EQ(idsOf(*choice), (std::vector{m_ids[1], m_ids[2], m_ids[4]}));
    EXPECT_EQ(choice->worth, 9 + kUsualWorth + 8);
    std::int64_t bytes = board::loadBaseBytes();
    for (const ChosenSlot& slot : choice->slots) bytes += slot.bytes;
    EXPECT_EQ(choice->bytes, bytes);
    EXPECT_LE(choice->bytes, 4000);
    EXPECT_TRUE(choice->provenBest);
    EXPECT_EQ(choice->worthBound, choice->worth);
}

TEST_F(Choosing, TakesStarsForWorth) {
    catalogue::TextPatch five;
    five.stars = 5;
    ASSERT_THAT(catalogue::setText(m_library, std::vector{m_ids[3], m_ids[4]}, five), isOk());
    catalogue::TextPatch one;
    one.stars = 1;
    ASSERT_THAT(catalogue::setText(m_library, std::vector{m_ids[0], m_ids[1]}, one), isOk());
    const auto choice = chooseForBoard(m_library, m_ids, m_options);
    ASSERT_THAT(choice, isOk());
    EXPECT_EQ(idsOf(*choice), (std::vector{m_ids[2], m_ids[3], m_ids[4]}));
    EXPECT_EQ(choice->worth, kUsualWorth + 5 + 5);
}

TEST_F(Choosing, DrawsInFewerBytesWhereThereIsNoRoomForTheQuickest) {
    constexpr std::int64_t kPlenty = 1 << 20U;
    setBytes(kPlenty);
    const TextureId shingle = add(texture(77, 32));
    const auto quick = chooseForBoard(m_library, {shingle}, m_options);
    ASSERT_THAT(quick, isOk());
    setBytes(quick->bytes - 1);
    const auto small = chooseForBoard(m_library, {shingle}, m_options);
    ASSERT_THAT(small, isOk());
    ASSERT_EQ(small->slots.size(), 1U);
    EXPECT_LT(small->bytes, quick->bytes);
    EXPECT_GT(small->milliseconds, quick->milliseconds);
    // A load that is kept is written in the same way.
    const auto all = takeAll(m_library, {shingle}, m_options);
    ASSERT_THAT(all, isOk());
    EXPECT_EQ(all->bytes, small->bytes);
    EXPECT_EQ(all->milliseconds, small->milliseconds);
}

TEST_F(Choosing, SaysWhatWouldLetATextureIn) {
    m_options.worth = {{m_ids[0], 1}, {m_ids[1], 9}, {m_ids[3], 2}, {m_ids[4], 8}};
    m_options.must = {m_ids[2]};
    const auto choice = chooseForBoard(m_library, m_ids, m_options);
    ASSERT_THAT(choice, isOk());
    ASSERT_EQ(choice->leftOut.size(), 2U);
    const NotChosen& first = choice->leftOut[0];
    EXPECT_EQ(first.id, m_ids[0]);
    EXPECT_EQ(first.reason, "worth less than what fills the slots");
    EXPECT_EQ(first.change, "It fits in place of 5 Tile 5 (worth 8), or with 1 slot more.");
    EXPECT_EQ(first.takeOut, std::vector{m_ids[4]});
    EXPECT_EQ(first.shortage, (board::Shortage{1, 0, 0}));
}

TEST_F(Choosing, LeavesOutWhatIsNeverToBeIn) {
    m_options.never = {m_ids[0], m_ids[1]};
    const auto choice = chooseForBoard(m_library, m_ids, m_options);
    ASSERT_THAT(choice, isOk());
    EXPECT_EQ(idsOf(*choice), (std::vector{m_ids[2], m_ids[3], m_ids[4]}));
    ASSERT_EQ(choice->leftOut.size(), 2U);
    EXPECT_EQ(choice->leftOut[1].reason, "you said that it is never to be in");
    m_options.must = {m_ids[1]};
    EXPECT_THAT(chooseForBoard(m_library, m_ids, m_options),
                failsWith(ErrorKind::InvalidInput, "named by --must and by --never"));
}

TEST_F(Choosing, KeepsShelvesTogether) {
    shelve("Shore", {m_ids[0], m_ids[1]});
    shelve("Quay", {m_ids[1], m_ids[2]});
    m_options.together = {"Shore"};
    m_options.worth = {{m_ids[0], 1}, {m_ids[1], 1}};
    EXPECT_EQ(idsOf(chooseForBoard(m_library, m_ids, m_options).value()),
              (std::vector{m_ids[2], m_ids[3], m_ids[4]}));
    m_options.must = {m_ids[1]};
    EXPECT_EQ(idsOf(chooseForBoard(m_library, m_ids, m_options).value()),
              (std::vector{m_ids[0], m_ids[1], m_ids[2]}));
    // One texture on both shelves binds all three.
    m_options.together = {"Shore", "Quay"};
    m_options.must = {m_ids[3]};
    const auto choice = chooseForBoard(m_library, m_ids, m_options);
    ASSERT_THAT(choice, isOk());
    EXPECT_EQ(idsOf(*choice), (std::vector{m_ids[3], m_ids[4]}));
    EXPECT_NE(choice->leftOut[0].reason.find("kept together with 2 others"), std::string::npos);
    // What is never in is not waited for.
    m_options.never = {m_ids[2]};
    m_options.must = {m_ids[0]};
    EXPECT_EQ(idsOf(chooseForBoard(m_library, m_ids, m_options).value()).size(), 3U);
}

TEST_F(Choosing, CannotKeepTogetherWhatCannotBeDrawn) {
    const TextureId large = add(texture(9, 100));
    m_ids.push_back(large);
    shelve("Shore", {m_ids[0], large});
    m_options.together = {"Shore"};
    const auto choice = chooseForBoard(m_library, m_ids, m_options);
    ASSERT_THAT(choice, isOk());
    EXPECT_EQ(choice->leftOut[0].reason, "it is kept together with 6, which cannot be drawn");
    m_options.must = {m_ids[0]};
    EXPECT_THAT(chooseForBoard(m_library, m_ids, m_options),
                failsWith(ErrorKind::DoesNotFit, "it is kept together with 6"));
    m_options.together = {"Shire"};
    EXPECT_THAT(chooseForBoard(m_library, m_ids, m_options),
                failsWith(ErrorKind::NotFound, "Shire"));
    shelve("Quay", {large});
    m_options.together = {"Quay"};
    m_ids.pop_back();
    EXPECT_THAT(chooseForBoard(m_library, m_ids, m_options),
                failsWith(ErrorKind::InvalidInput, "none of its textures is in the selection"));
}

TEST_F(Choosing, SaysWhatFitsNoCanvas) {
    const TextureId large = add(texture(9, 100));
    m_ids.push_back(large);
    const auto choice = chooseForBoard(m_library, m_ids, m_options);
    ASSERT_THAT(choice, isOk());
    const auto left = std::find_if(choice->leftOut.begin(), choice->leftOut.end(),
                                   [&](const NotChosen& each) { return each.id == large; });
    ASSERT_NE(left, choice->leftOut.end());
    EXPECT_NE(left->reason.find("fits no canvas"), std::string::npos);
    m_options.must = {large};
    EXPECT_THAT(chooseForBoard(m_library, m_ids, m_options),
                failsWith(ErrorKind::DoesNotFit, "must be in the load"));
}

TEST_F(Choosing, RefusesNamesThatAreNotThere) {
    m_options.board = "peer";
    EXPECT_THAT(chooseForBoard(m_library, m_ids, m_options),
                failsWith(ErrorKind::NotFound, "peer"));
    m_options.board = "pier";
    for (std::set<TextureId>* named : {&m_options.must, &m_options.never}) {
        *named = {TextureId{999}};
        EXPECT_THAT(chooseForBoard(m_library, m_ids, m_options),
                    failsWith(ErrorKind::InvalidInput, "texture 999"));
        named->clear();
    }
}

TEST_F(Choosing, TakingAllSaysWhatIsTooMuch) {
    EXPECT_THAT(
        takeAll(m_library, m_ids, m_options),
        failsWith(
            ErrorKind::DoesNotFit,
            "all 5 textures (1 Tile 1, 2 Tile 2, 3 Tile 3, 4 Tile 4, 5 Tile 5) need 5 slots, and "
            "there are 3"));
    const std::vector<TextureId> two(m_ids.begin(), m_ids.begin() + 2);
    m_options.milliseconds = 5000;
    EXPECT_THAT(takeAll(m_library, two, m_options),
                failsWith(ErrorKind::DoesNotFit, "5 s are allowed"));
    setBytes(300);
    EXPECT_THAT(takeAll(m_library, two, m_options),
                failsWith(ErrorKind::DoesNotFit, "there is room for 232"));
}

TEST_F(Choosing, SplitsAllOverTheFewestLoads) {
    shelve("Shore", {m_ids[0], m_ids[3], m_ids[4]});
    const auto split = splitOverLoads(m_library, m_ids, m_options);
    ASSERT_THAT(split, isOk());
    ASSERT_EQ(split->loads.size(), 2U);
    EXPECT_TRUE(split->provenFewest());
    EXPECT_TRUE(split->leftOut.empty());
    // The shelf lies in one load, which is worth most.
    EXPECT_EQ(idsOf(split->loads[0]), (std::vector{m_ids[0], m_ids[3], m_ids[4]}));
    EXPECT_EQ(idsOf(split->loads[1]), (std::vector{m_ids[1], m_ids[2]}));
    EXPECT_EQ(split->loads[1].worth, 2 * kUsualWorth);
    m_options.worth = {{m_ids[1], 20}};
    EXPECT_EQ(idsOf(splitOverLoads(m_library, m_ids, m_options)->loads[0]),
              (std::vector{m_ids[1], m_ids[2]}));
}

TEST_F(Choosing, SplitsByTimeAndKeepsShelvesTogether) {
    shelve("Shore", {m_ids[0], m_ids[4]});
    m_options.together = {"Shore"};
    const auto all = splitOverLoads(m_library, m_ids, m_options);
    ASSERT_THAT(all, isOk());
    std::int64_t longest = 0;
    for (const Choice& load : all->loads) {
        for (const ChosenSlot& slot : load.slots) longest = std::max(longest, slot.milliseconds);
    }
    // Time for one texture, and not for the two that are to be kept together.
    m_options.milliseconds = longest;
    const auto single = splitOverLoads(m_library, m_ids, m_options);
    ASSERT_THAT(single, isOk());
    EXPECT_EQ(single->loads.size(), 3U);
    ASSERT_EQ(single->leftOut.size(), 2U);
    EXPECT_NE(single->leftOut[0].reason.find(
                  "kept together with 1 other, alone takes longer than the time allowed"),
              std::string::npos)
        << single->leftOut[0].reason;
    EXPECT_FALSE(single->leftOut[0].change.empty());
    m_options.must = {m_ids[0]};
    EXPECT_THAT(splitOverLoads(m_library, m_ids, m_options),
                failsWith(ErrorKind::DoesNotFit, "of drawing"));
}

TEST_F(Choosing, SplitsNothingIntoNoLoad) {
    m_options.never = {m_ids.begin(), m_ids.end()};
    const auto split = splitOverLoads(m_library, m_ids, m_options);
    ASSERT_THAT(split, isOk());
    EXPECT_TRUE(split->loads.empty());
    EXPECT_TRUE(split->provenFewest());
    EXPECT_EQ(split->leftOut.size(), m_ids.size());
}

}  // namespace
}  // namespace pantile::tasks
