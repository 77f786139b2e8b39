#include "tasks/export_textures.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "codec/harvest.h"
#include "image_files/read_image.h"
#include "tasks/grid_csv.h"
#include "tasks/library_fixture.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

namespace fs = std::filesystem;

class Export : public tests::LibraryFixture {
protected:
    std::vector<fs::path> exportAs(ExportForm form, const std::vector<core::TextureId>& ids) {
        ExportOptions options;
        options.form = form;
        const auto files = exportTextures(m_library, ids, path("out"), options);
        EXPECT_THAT(files, isOk());
        return files ? *files : std::vector<fs::path>{};
    }
};

TEST_F(Export, PngHoldsPaletteAndIndices) {
    const core::Texture source = texture(1);
    const auto files = exportAs(ExportForm::Png, {add(source)});
    ASSERT_EQ(files.size(), 1U);
    EXPECT_EQ(files[0].filename(), "1-Tile-1.png");
    const auto picture = image_files::readImageFile(files[0]);
    ASSERT_THAT(picture, isOk());
    ASSERT_TRUE(picture->indexed.has_value());
    EXPECT_TRUE(std::equal(picture->indexed->indices.begin(), picture->indexed->indices.end(),
                           source.grid().cells().begin(), source.grid().cells().end()));
}

TEST_F(Export, CsvAndTextAreReadBackToTheSameTexture) {
    const core::Texture source = texture(2);
    const core::TextureId id = add(source);
    const auto csv = parseGridCsv(*readFile(exportAs(ExportForm::Csv, {id})[0], 100000));
    ASSERT_THAT(csv, isOk());
    EXPECT_EQ(csv->grid, source.grid());
    const auto harvest =
        codec::harvestCodes(*readFile(exportAs(ExportForm::Text, {id})[0], 100000));
    ASSERT_EQ(harvest.found.size(), 1U);
    EXPECT_EQ(harvest.found[0].texture, source);
}

TEST_F(Export, JsonHoldsEverything) {
    const auto files = exportAs(ExportForm::Json, {add(texture(3))});
    const QJsonObject object =
        QJsonDocument::fromJson(QByteArray::fromStdString(*readFile(files[0], 100000))).object();
    EXPECT_EQ(object["title"].toString(), QStringLiteral("Tile 3"));
    EXPECT_EQ(object["palette"].toArray().size(), 4);
    EXPECT_EQ(object["cells"].toArray().size(), 8);
    EXPECT_TRUE(object["transparent"].isNull());
}

TEST_F(Export, ASheetIsOnePictureOfAll) {
    const auto files =
        exportAs(ExportForm::Sheet, {add(texture(1)), add(texture(2)), add(texture(3))});
    ASSERT_EQ(files.size(), 1U);
    const auto picture = image_files::readImageFile(files[0]);
    ASSERT_THAT(picture, isOk());
    EXPECT_GT(picture->pixels.size.width, 3 * 128);
}

TEST_F(Export, NamesNeverLeaveTheFolder) {
    core::TextureText text;
    text.title = "../../escape";
    const auto files = exportAs(ExportForm::Csv, {add(*texture(4).withText(text))});
    ASSERT_EQ(files.size(), 1U);
    EXPECT_EQ(files[0].parent_path(), path("out"));
    EXPECT_TRUE(fs::exists(files[0]));
}

TEST_F(Export, NothingIsWrittenIfOneFileIsThere) {
    const std::vector<core::TextureId> ids = {add(texture(1)), add(texture(2))};
    write("out/2-Tile-2.csv", "mine");
    ExportOptions options;
    options.form = ExportForm::Csv;
    EXPECT_THAT(exportTextures(m_library, ids, path("out"), options),
                failsWith(ErrorKind::AlreadyExists, "2-Tile-2.csv"));
    EXPECT_FALSE(fs::exists(path("out/1-Tile-1.csv")));
    options.ifExists = IfExists::Replace;
    EXPECT_THAT(exportTextures(m_library, ids, path("out"), options), isOk());
    EXPECT_NE(*readFile(path("out/2-Tile-2.csv"), 100000), "mine");
}

TEST_F(Export, SaysIfTheFolderCannotBeMade) {
    write("file", "x");
    EXPECT_THAT(exportTextures(m_library, {add(texture(1))}, path("file/out"), {}),
                failsWith(ErrorKind::Io, "is a file, not a folder"));
}

}  // namespace
}  // namespace pantile::tasks
