#include "draw/artwork.h"

#include <fstream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "draw/ink.h"
#include "support/matchers.h"
#include "support/temporary_folder.h"

namespace pantile::sample_art {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

constexpr std::string_view kTexturePath = "textures/16/one.png";

core::Pixels pictureOf(core::Rgba8 first) {
    core::Pixels picture{{2, 1}, {}};
    picture.pixels = {first, {9, 8, 7, 255}};
    return picture;
}

core::Grid gridWith(core::PaletteIndex first) {
    core::Grid grid = *core::Grid::filled(16, 16, 3);
    grid.set(0, 0, first);
    return grid;
}

std::vector<ArtFile> smallArtwork() {
    return {{std::string(kTexturePath), TextureFile{gridWith(16), tidewrackSpritePalette()}},
            {"pictures/two.png", pictureOf({1, 2, 3, 255})},
            {"palettes/three.txt", std::string("#010203\n")}};
}

class ArtworkFolder : public ::testing::Test {
protected:
    void SetUp() override { ASSERT_THAT(writeArtwork(m_artwork, m_folder.path()), tests::isOk()); }

    std::vector<ArtFile> m_artwork = smallArtwork();
    tests::TemporaryFolder m_folder;
};

TEST_F(ArtworkFolder, IsCurrentRightAfterWriting) {
    EXPECT_THAT(differences(m_artwork, m_folder.path()), IsEmpty());
}

TEST_F(ArtworkFolder, ReportsOneChangedCell) {
    m_artwork[0].content = TextureFile{gridWith(5), tidewrackSpritePalette()};
    EXPECT_THAT(differences(m_artwork, m_folder.path()),
                ElementsAre("textures/16/one.png is not what the program draws."));
}

TEST_F(ArtworkFolder, ReportsAnotherPaletteUnderTheSameCells) {
    std::vector<core::Rgb8> colours(17, core::Rgb8{1, 1, 1});
    m_artwork[0].content = TextureFile{
        gridWith(16), *core::Palette::create(std::move(colours), core::PaletteIndex{16})};
    EXPECT_THAT(differences(m_artwork, m_folder.path()),
                ElementsAre("textures/16/one.png is not what the program draws."));
}

TEST_F(ArtworkFolder, ReportsOneChangedPixelAndAChangedText) {
    m_artwork[1].content = pictureOf({1, 2, 4, 255});
    m_artwork[2].content = std::string("#010204\n");
    EXPECT_THAT(differences(m_artwork, m_folder.path()),
                ElementsAre("pictures/two.png is not what the program draws.",
                            "palettes/three.txt is not what the program draws."));
}

TEST_F(ArtworkFolder, ReportsMissingDamagedAndStrayFiles) {
    std::filesystem::remove(m_folder.path() / "palettes/three.txt");
    std::ofstream(m_folder.path() / kTexturePath) << "no picture";
    std::ofstream(m_folder.path() / "textures/16/old.png") << "left over";
    EXPECT_THAT(differences(m_artwork, m_folder.path()),
                ElementsAre("textures/16/one.png is not what the program draws.",
                            "palettes/three.txt is missing.",
                            "textures/16/old.png is not drawn by the program."));
}

TEST_F(ArtworkFolder, SaysWhereItCouldNotWrite) {
    std::ofstream(m_folder.path() / "blocked") << "a file where a folder should be";
    EXPECT_THAT(writeArtwork(m_artwork, m_folder.path() / "blocked"),
                tests::failsWith(core::ErrorKind::Io, "one.png"));
}

TEST(FileNameOf, KeepsLowerCaseLettersAndDashes) {
    EXPECT_EQ(fileNameOf("Keeper's door"), "keepers-door");
    EXPECT_EQ(fileNameOf("Message in a bottle"), "message-in-a-bottle");
}

}  // namespace
}  // namespace pantile::sample_art
