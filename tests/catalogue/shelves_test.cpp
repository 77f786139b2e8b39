#include "catalogue/shelves.h"

#include "catalogue/edit.h"
#include "catalogue/library_fixture.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using core::TextureId;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using tests::textureOf;

class ShelvesTest : public LibraryTest {
protected:
    void SetUp() override {
        for (std::uint64_t seed = 1; seed <= 3; ++seed) ids.push_back(add(textureOf(seed)));
    }

    std::vector<TextureId> ids;
};

TEST_F(ShelvesTest, KeepTheOrderInWhichTexturesWerePut) {
    EXPECT_EQ(putOnShelf(library(), {{ids[2]}}, "Quay").value(), 1);
    EXPECT_EQ(putOnShelf(library(), ids, "quay").value(), 2);
    EXPECT_EQ(texturesOnShelf(library(), "Quay").value(),
              (std::vector<TextureId>{ids[2], ids[0], ids[1]}));
    ASSERT_EQ(listShelves(library())->size(), 1U);
    EXPECT_EQ(listShelves(library())->front().name, "Quay");
}

TEST_F(ShelvesTest, CountWhatIsNotRemoved) {
    ASSERT_THAT(putOnShelf(library(), ids, "Quay"), isOk());
    ASSERT_THAT(removeTextures(library(), {{ids[0]}}), isOk());
    EXPECT_EQ(listShelves(library())->front().count, 2);
    EXPECT_EQ(texturesOnShelf(library(), "Quay")->size(), 2U);
    ASSERT_THAT(recoverTextures(library(), {{ids[0]}}), isOk());
    EXPECT_EQ(texturesOnShelf(library(), "Quay").value(), ids);
}

TEST_F(ShelvesTest, GiveTexturesBack) {
    ASSERT_THAT(putOnShelf(library(), ids, "Quay"), isOk());
    EXPECT_EQ(takeFromShelf(library(), {{ids[1]}}, "Quay").value(), 1);
    EXPECT_EQ(takeFromShelf(library(), {{ids[1]}}, "Quay").value(), 0);
    EXPECT_EQ(texturesOnShelf(library(), "Quay").value(), (std::vector<TextureId>{ids[0], ids[2]}));
    EXPECT_THAT(takeFromShelf(library(), ids, "Quai"), failsWith(ErrorKind::NotFound, "Quai"));
}

TEST_F(ShelvesTest, AreMadeRenamedAndDeleted) {
    ASSERT_THAT(createShelf(library(), "Attic"), isOk());
    ASSERT_THAT(createShelf(library(), "Quay"), isOk());
    EXPECT_THAT(createShelf(library(), "ATTIC"), failsWith(ErrorKind::AlreadyExists, "ATTIC"));
    EXPECT_THAT(createShelf(library(), " x"), failsWith(ErrorKind::InvalidInput, "shelf name"));
    EXPECT_THAT(createShelf(library(), ""), failsWith(ErrorKind::InvalidInput, "shelf name"));
    EXPECT_THAT(renameShelf(library(), "Attic", "quay"),
                failsWith(ErrorKind::AlreadyExists, "quay"));
    ASSERT_THAT(renameShelf(library(), "Attic", "attic"), isOk());
    ASSERT_THAT(renameShelf(library(), "attic", "Loft"), isOk());
    ASSERT_THAT(putOnShelf(library(), ids, "Loft"), isOk());
    ASSERT_THAT(deleteShelf(library(), "Loft"), isOk());
    EXPECT_EQ(listShelves(library())->size(), 1U);
    EXPECT_THAT(deleteShelf(library(), "Loft"), failsWith(ErrorKind::NotFound, "Loft"));
    EXPECT_EQ(library().connection().number("SELECT count(*) FROM textures").value(), 3);
}

TEST_F(ShelvesTest, ThatAreMistypedGetTheNearestName) {
    ASSERT_THAT(createShelf(library(), "North shore"), isOk());
    const auto refused = texturesOnShelf(library(), "Nort shore");
    EXPECT_THAT(refused, failsWith(ErrorKind::NotFound, "Nort shore"));
    EXPECT_NE(refused.error().hint.find("North shore"), std::string::npos);
}

TEST_F(ShelvesTest, AreOrderedAsPlaced) {
    for (const char* name : {"Shore", "Rocks", "Lamps"}) {
        ASSERT_THAT(createShelf(library(), name), isOk());
    }
    const auto order = [&] {
        std::string names;
        const auto shelves = *listShelves(library());
        for (const Shelf& shelf : shelves) names += shelf.name + " ";
        return names;
    };
    ASSERT_THAT(placeShelf(library(), "lamps", 1), isOk());
    EXPECT_EQ(order(), "Lamps Shore Rocks ");
    ASSERT_THAT(placeShelf(library(), "lamps", 2), isOk());
    EXPECT_EQ(order(), "Shore Lamps Rocks ");
    ASSERT_THAT(placeShelf(library(), "shore", 99), isOk());
    EXPECT_EQ(order(), "Lamps Rocks Shore ");
    EXPECT_THAT(placeShelf(library(), "Quay", 1), failsWith(ErrorKind::NotFound, "Quay"));
}

TEST_F(ShelvesTest, HoldTexturesInTheOrderPlaced) {
    for (std::uint64_t seed = 4; seed <= 5; ++seed) ids.push_back(add(textureOf(seed)));
    ASSERT_THAT(putOnShelf(library(), std::span(ids).first(4), "Shore"), isOk());
    using TextureIds = std::vector<core::TextureId>;
    ASSERT_THAT(placeOnShelf(library(), TextureIds{{4}, {2}}, "shore", 1), isOk());
    EXPECT_EQ(*texturesOnShelf(library(), "Shore"), (TextureIds{{4}, {2}, {1}, {3}}));
    ASSERT_THAT(placeOnShelf(library(), TextureIds{{4}, {5}}, "shore", 2), isOk());
    EXPECT_EQ(*texturesOnShelf(library(), "Shore"), (TextureIds{{2}, {4}, {5}, {1}, {3}}));
    ASSERT_THAT(placeOnShelf(library(), TextureIds{{2}}, "shore", 1000), isOk());
    EXPECT_EQ(*texturesOnShelf(library(), "Shore"), (TextureIds{{4}, {5}, {1}, {3}, {2}}));
    EXPECT_THAT(placeOnShelf(library(), TextureIds{{9}}, "shore", 1),
                failsWith(ErrorKind::NotFound, "9"));
}

}  // namespace
}  // namespace pantile::catalogue
