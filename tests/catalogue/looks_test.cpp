#include "catalogue/looks.h"

#include "catalogue/edit.h"
#include "catalogue/integrity.h"
#include "catalogue/library_fixture.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using core::TextureId;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using tests::textureOf;

constexpr std::uint32_t kHigh = 0xFFFFFFFFU;

LookFigures lookWith(std::uint32_t shape, std::uint8_t mean) {
    LookFigures look{shape, {mean, 1, 2, 255}, {}};
    look.lights.fill(mean);
    return look;
}

class LooksTest : public LibraryTest {
protected:
    void SetUp() override {
        for (std::uint64_t seed = 1; seed <= 4; ++seed) ids.push_back(add(textureOf(seed)));
        store(ids[0], lookWith(kHigh, 10));
        store(ids[1], lookWith(7, 200));
        store(ids[2], lookWith(kHigh, 255));
        store(ids[3], lookWith(7, 10));
    }

    void store(TextureId id, const LookFigures& look) {
        EXPECT_THAT(storeLook(library(), id, look), isOk());
    }

    std::vector<TextureId> texturesWithin(const MeanRanges& ranges) {
        std::vector<TextureId> found;
        const auto looks = looksWithin(library(), ranges).value();
        for (const ContentLook& look : looks) {
            if (const auto texture = textureOfContent(library(), look.contentId).value())
                found.push_back(texture->id);
        }
        return found;
    }

    std::vector<TextureId> ids;
};

TEST_F(LooksTest, AreReadAsTheyWereStored) {
    EXPECT_EQ(readLook(library(), ids[0]).value(), lookWith(kHigh, 10));
    open();
    EXPECT_EQ(readLook(library(), ids[2]).value(), lookWith(kHigh, 255));
    store(ids[2], lookWith(8, 0));
    EXPECT_EQ(readLook(library(), ids[2]).value(), lookWith(8, 0));
}

TEST_F(LooksTest, AreFoundByShape) {
    EXPECT_EQ(texturesOfShape(library(), kHigh).value(), (std::vector<TextureId>{ids[0], ids[2]}));
    EXPECT_TRUE(texturesOfShape(library(), 6)->empty());
    EXPECT_EQ(sharedShapes(library()).value(),
              (std::vector<std::vector<TextureId>>{{ids[0], ids[2]}, {ids[1], ids[3]}}));
}

TEST_F(LooksTest, AreFoundByTheirMeans) {
    EXPECT_EQ(texturesWithin({}), ids);
    EXPECT_EQ(texturesWithin({{10, 1, 2, 255}, {199, 1, 2, 255}}),
              (std::vector<TextureId>{ids[0], ids[3]}));
    EXPECT_TRUE(texturesWithin({{0, 2, 0, 0}, {255, 255, 255, 255}}).empty());
    EXPECT_TRUE(texturesWithin({{0, 0, 0, 0}, {255, 255, 1, 255}}).empty());
    EXPECT_TRUE(texturesWithin({{0, 0, 0, 0}, {255, 255, 255, 254}}).empty());
    const auto looks = looksWithin(library(), {{200, 0, 0, 0}, {200, 255, 255, 255}}).value();
    ASSERT_EQ(looks.size(), 1U);
    EXPECT_EQ(looks[0].look, lookWith(7, 200));
    const auto texture = textureOfContent(library(), looks[0].contentId).value();
    EXPECT_EQ(texture, (PresentTexture{ids[1], textureOf(2).grid().size()}));
    EXPECT_FALSE(textureOfContent(library(), 99).value());
}

TEST_F(LooksTest, LeaveRemovedTexturesOut) {
    ASSERT_THAT(removeTextures(library(), {{ids[2]}}), isOk());
    EXPECT_EQ(texturesOfShape(library(), kHigh).value(), (std::vector<TextureId>{ids[0]}));
    EXPECT_EQ(texturesWithin({}), (std::vector<TextureId>{ids[0], ids[1], ids[3]}));
    EXPECT_EQ(sharedShapes(library()).value(),
              (std::vector<std::vector<TextureId>>{{ids[1], ids[3]}}));
}

TEST_F(LooksTest, AreMissingWhereNothingWasStored) {
    EXPECT_TRUE(missingLooks(library(), 0, 10)->empty());
    const TextureId fifth = add(textureOf(5));
    const TextureId sixth = add(textureOf(6));
    const auto both = missingLooks(library(), 0, 10).value();
    ASSERT_EQ(both.size(), 2U);
    EXPECT_EQ(both[0].id, fifth);
    EXPECT_EQ(both[1].id, sixth);
    EXPECT_EQ(missingLooks(library(), 0, 1).value(), (std::vector<MissingLook>{both[0]}));
    EXPECT_EQ(missingLooks(library(), both[0].contentId, 9).value(),
              (std::vector<MissingLook>{both[1]}));
    EXPECT_FALSE(readLook(library(), fifth).value());
}

TEST_F(LooksTest, AreMissingAgainWhenThePictureChanges) {
    const core::Texture other = textureOf(9);
    ASSERT_THAT(setContent(library(), ids[0], other.grid(), other.palette()), isOk());
    const auto missing = missingLooks(library(), 0, 10).value();
    ASSERT_EQ(missing.size(), 1U);
    EXPECT_EQ(missing.front().id, ids[0]);
    EXPECT_EQ(texturesOfShape(library(), kHigh).value(), (std::vector<TextureId>{ids[2]}));
    EXPECT_TRUE(checkLibrary(library())->ok);
    forge("DELETE FROM looks_missing");
    EXPECT_FALSE(checkLibrary(library())->ok);
}

TEST_F(LooksTest, GoWithThePicture) {
    ASSERT_THAT(removeTextures(library(), {{ids[1]}}), isOk());
    ASSERT_THAT(purgeRemoved(library(), {{ids[1]}}), isOk());
    EXPECT_EQ(library().connection().number("SELECT count(*) FROM looks").value(), 3);
}

TEST_F(LooksTest, AreOfATexture) {
    EXPECT_THAT(storeLook(library(), TextureId{99}, lookWith(1, 1)),
                failsWith(ErrorKind::NotFound, "99"));
}

}  // namespace
}  // namespace pantile::catalogue
