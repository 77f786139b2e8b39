#include "catalogue/palettes.h"

#include "catalogue/actions.h"
#include "catalogue/edit.h"
#include "catalogue/library_fixture.h"
#include "catalogue/reader.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using tests::paletteOf;
using PalettesTest = LibraryTest;

TEST_F(PalettesTest, AreFoundByName) {
    const core::Palette palette = paletteOf(16, 3, 5);
    ASSERT_THAT(addPalette(library(), "Tidewrack 16", palette), isOk());
    const auto found = readPalette(library(), "tidewrack 16");
    ASSERT_THAT(found, isOk());
    EXPECT_EQ(found->name, "Tidewrack 16");
    EXPECT_EQ(found->palette, palette);
    EXPECT_THAT(addPalette(library(), "TIDEWRACK 16", paletteOf(2)),
                failsWith(ErrorKind::AlreadyExists, "TIDEWRACK"));
}

TEST_F(PalettesTest, AreListedByNameAndMayShareColours) {
    ASSERT_THAT(addPalette(library(), "slate", paletteOf(4)), isOk());
    ASSERT_THAT(addPalette(library(), "Rope", paletteOf(4)), isOk());
    const auto list = listPalettes(library());
    ASSERT_THAT(list, isOk());
    ASSERT_EQ(list->size(), 2U);
    EXPECT_EQ(list->front().name, "Rope");
    EXPECT_EQ(library().connection().number("SELECT count(*) FROM palettes").value(), 1);
    ASSERT_THAT(removePalette(library(), "Rope"), isOk());
    EXPECT_EQ(readPalette(library(), "slate")->palette, paletteOf(4));
    ASSERT_THAT(removePalette(library(), "slate"), isOk());
    EXPECT_EQ(library().connection().number("SELECT count(*) FROM palettes").value(), 0);
}

TEST_F(PalettesTest, StayWithTheirTexturesWithoutAName) {
    const core::Texture texture = tests::textureOf(1);
    const core::TextureId id = add(texture);
    ASSERT_THAT(addPalette(library(), "Kelp", texture.palette()), isOk());
    ASSERT_THAT(removePalette(library(), "Kelp"), isOk());
    EXPECT_EQ(readTexture(library(), id)->texture.palette(), texture.palette());
    EXPECT_EQ(findPalette(library(), texture.palette().fingerprint()).value(), texture.palette());
}

TEST_F(PalettesTest, AreChangedAndRenamedWhileOthersOfTheSameColoursStay) {
    ASSERT_THAT(addPalette(library(), "slate", paletteOf(4)), isOk());
    ASSERT_THAT(addPalette(library(), "Rope", paletteOf(4)), isOk());
    ASSERT_THAT(changePalette(library(), "slate", {"Wet slate", paletteOf(4)}), isOk());
    EXPECT_EQ(lastAction(library()).value()->what, "Rename palette 'slate' to 'Wet slate'");
    ASSERT_THAT(changePalette(library(), "wet slate", {"WET SLATE", paletteOf(5)}), isOk());
    EXPECT_EQ(lastAction(library()).value()->what, "Change palette 'Wet slate'");
    EXPECT_EQ(listPalettes(library()).value(),
              (std::vector<NamedPalette>{{"Rope", paletteOf(4)}, {"WET SLATE", paletteOf(5)}}));
    ASSERT_THAT(undoLast(library()), isOk());
    ASSERT_THAT(undoLast(library()), isOk());
    EXPECT_EQ(listPalettes(library()).value(),
              (std::vector<NamedPalette>{{"Rope", paletteOf(4)}, {"slate", paletteOf(4)}}));
    ASSERT_THAT(redoLast(library()), isOk());
    EXPECT_EQ(readPalette(library(), "Wet slate")->palette, paletteOf(4));
}

TEST_F(PalettesTest, StayAsTheyWereWhereAChangeIsRefused) {
    ASSERT_THAT(addPalette(library(), "slate", paletteOf(4)), isOk());
    ASSERT_THAT(addPalette(library(), "Rope", paletteOf(3)), isOk());
    EXPECT_THAT(changePalette(library(), "slate", {"rope", paletteOf(5)}),
                failsWith(ErrorKind::AlreadyExists, "rope"));
    EXPECT_THAT(changePalette(library(), "slate", {" ", paletteOf(5)}),
                failsWith(ErrorKind::InvalidInput, "blanks"));
    EXPECT_THAT(changePalette(library(), "slaet", {"slaet", paletteOf(5)}),
                failsWith(ErrorKind::NotFound, "slaet"));
    EXPECT_EQ(readPalette(library(), "slate")->palette, paletteOf(4));
    EXPECT_EQ(lastAction(library()).value()->what, "Add palette 'Rope'");
}

TEST_F(PalettesTest, ThatAreUnknownAreNotFound) {
    EXPECT_EQ(findPalette(library(), {123}).value(), std::nullopt);
    ASSERT_THAT(addPalette(library(), "Kelp", paletteOf(3)), isOk());
    const auto refused = readPalette(library(), "Klep");
    EXPECT_THAT(refused, failsWith(ErrorKind::NotFound, "Klep"));
    EXPECT_NE(refused.error().hint.find("Kelp"), std::string::npos);
    EXPECT_THAT(removePalette(library(), "Klep"), failsWith(ErrorKind::NotFound, "Klep"));
}

TEST_F(PalettesTest, ThatAreDamagedAreNoPalettes) {
    ASSERT_THAT(addPalette(library(), "Kelp", paletteOf(3)), isOk());
    forge("UPDATE palettes SET colours = zeroblob(9)");
    EXPECT_THAT(readPalette(library(), "Kelp"), failsWith(ErrorKind::Corrupt, "palette"));
    EXPECT_THAT(findPalette(library(), paletteOf(3).fingerprint()),
                failsWith(ErrorKind::Corrupt, "palette"));
}

}  // namespace
}  // namespace pantile::catalogue
