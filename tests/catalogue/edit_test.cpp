#include "catalogue/edit.h"

#include "catalogue/boards.h"
#include "catalogue/history.h"
#include "catalogue/library_fixture.h"
#include "catalogue/loads.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "catalogue/shelves.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using core::TextureId;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using tests::textureOf;
using tests::titled;
using tests::withTitle;

class EditTest : public LibraryTest {
protected:
    void SetUp() override {
        for (std::uint64_t seed = 1; seed <= 3; ++seed) {
            ids.push_back(add(textureOf(seed, titled("Net " + std::to_string(seed), {"net"}))));
        }
        now += 100;
    }

    TextureRow row(TextureId id) { return readTexture(library(), id)->row; }

    std::vector<TextureRow> rows() { return *readRows(library(), ids); }

    std::vector<TextureId> ids;
};

TEST_F(EditTest, SetsTheGivenFieldsOnly) {
    TextPatch patch;
    patch.author = "Ebb";
    patch.note = "line\nline";
    EXPECT_EQ(setText(library(), ids, patch).value(), 3);
    for (const TextureRow& changed : rows()) {
        EXPECT_EQ(changed.author, "Ebb");
        EXPECT_EQ(changed.note, "line\nline");
        EXPECT_EQ(changed.title, "Net " + std::to_string(changed.id.value));
        EXPECT_EQ(changed.revision, 2);
        EXPECT_EQ(changed.changedAt, now);
        EXPECT_EQ(changed.addedAt, now - 100);
    }
}

TEST_F(EditTest, CountsAndNotesOnlyWhatBecameDifferent) {
    EXPECT_EQ(setText(library(), ids, withTitle("Net 2")).value(), 2);
    EXPECT_EQ(row(ids[1]).revision, 1);
    EXPECT_EQ(row(ids[1]).changedAt, now - 100);
    EXPECT_EQ(setText(library(), ids, withTitle("Net 2")).value(), 0);
    EXPECT_EQ(setText(library(), ids, {}).value(), 0);
}

TEST_F(EditTest, AnIdThatStandsTwiceCountsOnce) {
    const std::vector<TextureId> twice = {ids[0], ids[0]};
    EXPECT_EQ(setText(library(), twice, withTitle("Once")).value(), 1);
    EXPECT_EQ(row(ids[0]).revision, 2);
}

TEST_F(EditTest, AnUnknownIdFailsTheWhole) {
    const auto before = rows();
    std::vector<TextureId> list = ids;
    list.push_back({99});
    const std::vector<std::string> tags = {"x"};
    EXPECT_THAT(setText(library(), list, withTitle("No")), failsWith(ErrorKind::NotFound, "99"));
    EXPECT_THAT(changeTags(library(), list, tags, {}), failsWith(ErrorKind::NotFound, "99"));
    EXPECT_THAT(removeTextures(library(), list), failsWith(ErrorKind::NotFound, "99"));
    EXPECT_THAT(recoverTextures(library(), list), failsWith(ErrorKind::NotFound, "99"));
    EXPECT_THAT(purgeRemoved(library(), list), failsWith(ErrorKind::NotFound, "99"));
    EXPECT_THAT(putOnShelf(library(), list, "Quay"), failsWith(ErrorKind::NotFound, "99"));
    EXPECT_TRUE(listShelves(library())->empty());
    EXPECT_EQ(rows(), before);
}

TEST_F(EditTest, BadTextFailsTheWhole) {
    const auto before = rows();
    EXPECT_THAT(setText(library(), ids, withTitle("a\x1b[31m")),
                failsWith(ErrorKind::InvalidInput, "title"));
    EXPECT_THAT(setText(library(), ids,
                        withTitle("a\xE2\x80\xAE"
                                  "b")),
                failsWith(ErrorKind::InvalidInput, "title"));
    EXPECT_THAT(setText(library(), ids, withTitle(std::string(10000, 'x'))),
                failsWith(ErrorKind::TooLarge, "10000"));
    EXPECT_EQ(rows(), before);
}

TEST_F(EditTest, StrangeButHonestTextIsKept) {
    for (const std::string title :
         {"*/ DROP TABLE textures; --", "\"'\"'", "100%_\\", "grève d'algues 海藻"}) {
        ASSERT_THAT(setText(library(), {{ids[0]}}, withTitle(title)), isOk());
        EXPECT_EQ(row(ids[0]).title, title);
    }
}

TEST_F(EditTest, ChangesTags) {
    const std::vector<std::string> add = {"wet", "knot", "wet"};
    const std::vector<std::string> drop = {"net", "missing"};
    EXPECT_EQ(changeTags(library(), ids, add, drop).value(), 3);
    EXPECT_EQ(row(ids[2]).tags, (std::vector<std::string>{"knot", "wet"}));
    EXPECT_EQ(changeTags(library(), ids, add, drop).value(), 0);
    EXPECT_EQ(library().connection().number("SELECT count(*) FROM tags").value(), 2);
}

TEST_F(EditTest, RefusesWhatIsNoTagAndTooMany) {
    const std::vector<std::string> bad = {"two words"};
    EXPECT_THAT(changeTags(library(), ids, bad, {}),
                failsWith(ErrorKind::InvalidInput, "two words"));
    std::vector<std::string> many;
    for (int i = 0; i < 64; ++i) many.push_back("t" + std::to_string(i));
    EXPECT_THAT(changeTags(library(), ids, many, {}), failsWith(ErrorKind::TooLarge, "65"));
    EXPECT_EQ(row(ids[0]).tags, (std::vector<std::string>{"net"}));
}

TEST_F(EditTest, RemovesAndRecovers) {
    const std::vector<TextureId> two = {ids[0], ids[1]};
    EXPECT_EQ(removeTextures(library(), two).value(), 2);
    EXPECT_EQ(removeTextures(library(), ids).value(), 1);
    EXPECT_EQ(findTextures(library(), *parseQuery("all"))->total, 0);
    EXPECT_EQ(findTextures(library(), *parseQuery("is:removed"))->total, 3);
    EXPECT_EQ(recoverTextures(library(), two).value(), 2);
    EXPECT_EQ(recoverTextures(library(), two).value(), 0);
    EXPECT_EQ(findTextures(library(), *parseQuery("all"))->total, 2);
}

TEST_F(EditTest, PurgesRemovedTexturesOnly) {
    ASSERT_THAT(removeTextures(library(), {{ids[0]}}), isOk());
    EXPECT_THAT(purgeRemoved(library(), ids),
                failsWith(ErrorKind::InvalidInput, "2 is not removed"));
    EXPECT_THAT(readTexture(library(), ids[0]), isOk());
    EXPECT_EQ(purgeRemoved(library(), {{ids[0]}}).value(), 1);
    EXPECT_THAT(readTexture(library(), ids[0]), failsWith(ErrorKind::NotFound, "1"));
    EXPECT_EQ(library().connection().number("SELECT count(*) FROM contents").value(), 2);
    EXPECT_EQ(library().connection().number("SELECT count(*) FROM palettes").value(), 1);
}

TEST_F(EditTest, PurgesNothingThatALoadHolds) {
    core::Board board;
    board.name = "Five slots";
    ASSERT_THAT(addBoard(library(), board), isOk());
    StoredLoad load;
    load.name = "Harbour";
    load.board = "Five slots";
    load.slots = {ids[0]};
    ASSERT_THAT(addLoad(library(), load), isOk());
    ASSERT_THAT(removeTextures(library(), {{ids[0]}}), isOk());
    EXPECT_THAT(purgeRemoved(library(), {{ids[0]}}), failsWith(ErrorKind::InvalidInput, "Harbour"));
    ASSERT_THAT(removeLoad(library(), "Harbour"), isOk());
    EXPECT_THAT(purgeRemoved(library(), {{ids[0]}}), isOk());
}

TEST_F(EditTest, ReplacesThePictureAndKeepsTheOldOneInTheHistory) {
    const core::Texture fresh = textureOf(50, {}, {32, 8}, 4);
    EXPECT_EQ(setContent(library(), ids[0], fresh.grid(), fresh.palette()).value(), 1);
    EXPECT_EQ(readTexture(library(), ids[0])->texture.grid(), fresh.grid());
    EXPECT_EQ(row(ids[0]).size, (core::Size{32, 8}));
    EXPECT_EQ(setContent(library(), ids[0], fresh.grid(), fresh.palette()).value(), 0);
    ASSERT_THAT(revertTexture(library(), ids[0], 1), isOk());
    EXPECT_EQ(readTexture(library(), ids[0])->texture.grid(), textureOf(1).grid());
}

TEST_F(EditTest, RefusesThePictureOfAnotherTexture) {
    const core::Texture other = textureOf(2);
    EXPECT_THAT(setContent(library(), ids[0], other.grid(), other.palette()),
                failsWith(ErrorKind::AlreadyExists, "texture 2"));
    EXPECT_THAT(setContent(library(), ids[0], other.grid(), tests::paletteOf(2)),
                failsWith(ErrorKind::InvalidInput, "palette"));
    EXPECT_EQ(row(ids[0]).revision, 1);
}

}  // namespace
}  // namespace pantile::catalogue
