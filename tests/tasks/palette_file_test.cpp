#include "tasks/palette_file.h"

#include "image_files/write_png.h"
#include "support/matchers.h"
#include "support/temporary_folder.h"
#include "tasks/files.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

class PaletteFile : public ::testing::Test {
protected:
    std::filesystem::path write(const std::string& name, std::string_view text) const {
        EXPECT_THAT(writeFile(m_folder.path() / name, text, IfExists::Refuse), isOk());
        return m_folder.path() / name;
    }

    tests::TemporaryFolder m_folder;
};

TEST_F(PaletteFile, ReadsOneColourALine) {
    const auto palette =
        readPaletteFile(write("p.txt", "# shore\n#1b2631\r\n\n#F2EFE4 transparent\n#b5532d\n"));
    ASSERT_THAT(palette, isOk());
    EXPECT_EQ(*palette, *core::Palette::create(
                            {{0x1b, 0x26, 0x31}, {0xf2, 0xef, 0xe4}, {0xb5, 0x53, 0x2d}}, 1));
}

TEST_F(PaletteFile, ReadsAgainWhatItWrote) {
    const core::Palette palette =
        *core::Palette::create({{0x1b, 0x26, 0x31}, {0xf2, 0xef, 0xe4}, {0xf2, 0xef, 0xe4}}, 2);
    const auto path = m_folder.path() / "slipway.txt";
    ASSERT_THAT(writePaletteFile(path, palette, IfExists::Refuse), isOk());
    EXPECT_EQ(readFile(path, 100).value(), "#1b2631\n#f2efe4\n#f2efe4 transparent\n");
    EXPECT_EQ(readPaletteFile(path).value(), palette);
    EXPECT_EQ(paletteFromFile(path, {2, {}, 0, 0}).value(), palette);
    EXPECT_THAT(writePaletteFile(path, palette, IfExists::Refuse),
                failsWith(ErrorKind::AlreadyExists, "slipway.txt"));
}

TEST_F(PaletteFile, NamesTheLineThatIsNoColour) {
    EXPECT_THAT(readPaletteFile(write("p.txt", "#1b2631\nblue\n")),
                failsWith(ErrorKind::InvalidInput, "p.txt: line 2: 'blue' is not a colour"));
    EXPECT_THAT(readPaletteFile(write("q.txt", "#1b2631\n")),
                failsWith(ErrorKind::InvalidInput, "q.txt: a palette has 2"));
    EXPECT_THAT(readPaletteFile(m_folder.path() / "none.txt"),
                failsWith(ErrorKind::NotFound, "none.txt"));
}

TEST_F(PaletteFile, RefusesMoreThan256Colours) {
    std::string text;
    for (int i = 0; i < 300; ++i) text += "#000000\n";
    EXPECT_THAT(readPaletteFile(write("p.txt", text)),
                failsWith(ErrorKind::InvalidInput, "not 257"));
}

TEST_F(PaletteFile, RefusesMoreLinesThanItReads) {
    std::string text = "#1b2631\n" + std::string(9998, '\n') + "#f2efe4";
    EXPECT_THAT(readPaletteFile(write("p.txt", text)), isOk());
    text.insert(text.begin() + 8, '\n');
    EXPECT_THAT(readPaletteFile(write("q.txt", text)),
                failsWith(ErrorKind::TooLarge, "q.txt: it has more than 10000 lines"));
}

TEST_F(PaletteFile, TakesThePaletteOfAnIndexedPictureAsItIs) {
    const core::Palette palette = *core::Palette::create({{9, 9, 9}, {1, 2, 3}, {9, 9, 9}}, 1);
    const auto png = image_files::encodePng(*core::Grid::filled(4, 4, 2), palette);
    ASSERT_THAT(png, isOk());
    ASSERT_THAT(writeFile(m_folder.path() / "p.png", *png, IfExists::Refuse), isOk());
    EXPECT_EQ(*readPaletteFile(m_folder.path() / "p.png"), palette);
    EXPECT_EQ(*paletteFromFile(m_folder.path() / "p.png", {2, {}, 0, 0}), palette);
}

TEST_F(PaletteFile, ChoosesColoursFromAPicture) {
    core::Pixels pixels{{2, 2},
                        {{255, 0, 0, 255}, {0, 255, 0, 255}, {0, 0, 255, 255}, {7, 7, 7, 0}}};
    const auto png = image_files::encodePng(pixels);
    ASSERT_THAT(png, isOk());
    ASSERT_THAT(writeFile(m_folder.path() / "p.png", *png, IfExists::Refuse), isOk());
    EXPECT_EQ(*paletteFromPicture(m_folder.path() / "p.png", {16, {}, 0, 0}),
              *core::Palette::create({{255, 0, 0}, {0, 255, 0}, {0, 0, 255}}));
    EXPECT_EQ(*paletteFromFile(m_folder.path() / "p.png", {16, {}, 0, 0}),
              *core::Palette::create({{255, 0, 0}, {0, 255, 0}, {0, 0, 255}}));
    EXPECT_THAT(paletteFromPicture(m_folder.path() / "p.png", {1, {}, 0, 0}),
                failsWith(ErrorKind::InvalidInput, "colours is 1"));
    EXPECT_EQ(*paletteFromPicture(m_folder.path() / "p.png", {16, {{9, 9, 9}}, 0, 0}),
              *core::Palette::create({{9, 9, 9}, {255, 0, 0}, {0, 255, 0}, {0, 0, 255}}));
    EXPECT_EQ(paletteFromPicture(m_folder.path() / "p.png", {16, {}, 10000, 0})->size(), 2);
    EXPECT_THAT(paletteFromPicture(m_folder.path() / "p.png", {16, {{9, 9, 9}, {9, 9, 9}}, 0, 0}),
                failsWith(ErrorKind::InvalidInput, "pinned twice"));
    EXPECT_THAT(readPaletteFile(m_folder.path() / "p.png"),
                failsWith(ErrorKind::InvalidInput, "no palette of its own"));
}

}  // namespace
}  // namespace pantile::tasks
