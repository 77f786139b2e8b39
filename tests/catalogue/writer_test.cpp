#include "catalogue/writer.h"

#include "catalogue/contents.h"
#include "catalogue/edit.h"
#include "catalogue/history.h"
#include "catalogue/library_fixture.h"
#include "catalogue/reader.h"
#include "catalogue/statement.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using core::TextureId;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using tests::textureOf;
using tests::titled;
using WriterTest = LibraryTest;
using Outcome = AddedTexture::Outcome;

TEST_F(WriterTest, ATextureComesBackAsItWasAdded) {
    core::TextureText text{
        "Tarred planks", "Ebb & Flow", "CC0", "drawn by the project", "first line\nsecond 'line'",
        {"wood", "dark"}};
    for (const core::Size size : {core::Size{1, 1}, {16, 16}, {256, 256}, {3, 200}}) {
        for (const int colours : {2, 16, 256}) {
            const core::Texture texture = textureOf(
                static_cast<std::uint64_t>(size.width * 1000 + colours), text, size, colours);
            const TextureId id = add(texture);
            const auto record = readTexture(library(), id);
            ASSERT_THAT(record, isOk());
            EXPECT_EQ(record->texture, texture);
            EXPECT_EQ(record->row.size, size);
            EXPECT_EQ(record->row.colours, texture.coloursUsed());
            EXPECT_EQ(record->row.tags, (std::vector<std::string>{"dark", "wood"}));
            EXPECT_EQ(record->row.addedAt, now);
            EXPECT_EQ(record->row.revision, 1);
        }
    }
}

TEST_F(WriterTest, ATransparentIndexIsPartOfThePicture) {
    const core::Grid grid = *core::Grid::filled(4, 4, 1);
    const core::Texture plain = *core::Texture::create(grid, tests::paletteOf(4));
    const core::Texture holed = *core::Texture::create(grid, tests::paletteOf(4, 0, 1));
    const TextureId first = add(plain);
    const TextureId second = add(holed);
    EXPECT_NE(first, second);
    EXPECT_EQ(readTexture(library(), second)->texture, holed);
    EXPECT_EQ(readTexture(library(), second)->row.colours, 0);
}

TEST_F(WriterTest, TheSamePictureIsStoredOnce) {
    const TextureId id = add(textureOf(1, titled("Rope")));
    const auto again = addTexture(library(), textureOf(1, titled("Another name")));
    ASSERT_THAT(again, isOk());
    EXPECT_EQ(again->id, id);
    EXPECT_EQ(again->outcome, Outcome::AlreadyThere);
    EXPECT_EQ(readTexture(library(), id)->row.title, "Rope");
    EXPECT_EQ(library().connection().number("SELECT count(*) FROM contents").value(), 1);
    EXPECT_EQ(history(library(), id)->size(), 1U);
}

TEST_F(WriterTest, AddingARemovedPictureRecoversIt) {
    const TextureId id = add(textureOf(1));
    ASSERT_THAT(removeTextures(library(), {{id}}), isOk());
    const auto again = addTexture(library(), textureOf(1));
    ASSERT_THAT(again, isOk());
    EXPECT_EQ(again->id, id);
    EXPECT_EQ(again->outcome, Outcome::Recovered);
    EXPECT_FALSE(readTexture(library(), id)->row.removed);
    EXPECT_EQ(history(library(), id)->back().kind, RevisionKind::Recovered);
}

TEST_F(WriterTest, TheSameCellsWithOtherColoursAreAnotherTexture) {
    const core::Texture one = textureOf(1);
    const core::Texture other = *core::Texture::create(one.grid(), tests::paletteOf(8, 99));
    EXPECT_NE(add(one), add(other));
}

TEST_F(WriterTest, PalettesAreStoredOnce) {
    add(textureOf(1));
    add(textureOf(2));
    EXPECT_EQ(library().connection().number("SELECT count(*) FROM palettes").value(), 1);
}

// The fingerprint is no guard against forgery: one that was made to match must not pass for equal.
TEST_F(WriterTest, AForgedFingerprintDoesNotHideAnotherPicture) {
    const core::Texture wanted = textureOf(1);
    const TextureId forged = add(textureOf(2));
    forge("UPDATE contents SET fingerprint = " +
          std::to_string(storedFingerprint(wanted.contentFingerprint())));
    EXPECT_EQ(findByContent(library(), wanted.grid(), wanted.palette()).value(), std::nullopt);
    const auto added = addTexture(library(), wanted);
    ASSERT_THAT(added, isOk());
    EXPECT_EQ(added->outcome, Outcome::Added);
    EXPECT_NE(added->id, forged);
    EXPECT_EQ(readTexture(library(), added->id)->texture, wanted);
}

TEST_F(WriterTest, ADamagedPictureDoesNotKeepItsTwinOut) {
    const TextureId damaged = add(textureOf(1));
    forge("UPDATE contents SET body = x'00'");
    EXPECT_THAT(readTexture(library(), damaged), failsWith(ErrorKind::Corrupt, "texture 1"));
    const auto added = addTexture(library(), textureOf(1));
    ASSERT_THAT(added, isOk());
    EXPECT_EQ(added->outcome, Outcome::Added);
    EXPECT_EQ(readTexture(library(), added->id)->texture, textureOf(1));
}

TEST_F(WriterTest, ManyTexturesAreAllOrNothingInOneTransaction) {
    {
        const auto transaction = library().begin();
        for (std::uint64_t seed = 1; seed <= 10; ++seed) add(textureOf(seed));
    }
    EXPECT_EQ(library().connection().number("SELECT count(*) FROM textures").value(), 0);
    EXPECT_EQ(library().connection().number("SELECT count(*) FROM palettes").value(), 0);
}

TEST_F(WriterTest, AnIdIsNeverUsedAgain) {
    const TextureId id = add(textureOf(1));
    ASSERT_THAT(removeTextures(library(), {{id}}), isOk());
    ASSERT_THAT(purgeRemoved(library(), {{id}}), isOk());
    EXPECT_GT(add(textureOf(2)), id);
}

TEST_F(WriterTest, EstimatesAreKeptAndReplaced) {
    const TextureId id = add(textureOf(1));
    EXPECT_EQ(readTexture(library(), id)->row.estimate, std::nullopt);
    ASSERT_THAT(setEstimate(library(), id, {1000, 200, "careful"}), isOk());
    ASSERT_THAT(setEstimate(library(), id, {900, 190, "quick"}), isOk());
    EXPECT_EQ(readTexture(library(), id)->row.estimate, (Estimate{900, 190, "quick"}));
}

TEST_F(WriterTest, EstimatesAreForgottenWithThePicture) {
    const TextureId id = add(textureOf(1));
    ASSERT_THAT(setEstimate(library(), id, {1000, 200, "careful"}), isOk());
    ASSERT_THAT(setText(library(), {{id}}, {"Renamed", {}, {}, {}, {}}), isOk());
    EXPECT_TRUE(readTexture(library(), id)->row.estimate);
    const core::Texture other = textureOf(2);
    ASSERT_THAT(setContent(library(), id, other.grid(), other.palette()), isOk());
    EXPECT_FALSE(readTexture(library(), id)->row.estimate);
}

TEST_F(WriterTest, EstimatesOutOfReasonAreRefused) {
    const TextureId id = add(textureOf(1));
    EXPECT_THAT(setEstimate(library(), id, {-1, 2, "k"}), failsWith(ErrorKind::InvalidInput, "-1"));
    EXPECT_THAT(setEstimate(library(), id, {1, -2, "k"}), failsWith(ErrorKind::InvalidInput, "-2"));
    EXPECT_FALSE(setEstimate(library(), id, {1, 2, "a\nb"}));
    EXPECT_THAT(setEstimate(library(), {77}, {1, 2, "k"}), failsWith(ErrorKind::NotFound, "77"));
}

}  // namespace
}  // namespace pantile::catalogue
