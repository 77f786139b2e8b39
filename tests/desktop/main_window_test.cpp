// The real window through its real widgets, on a real library.

#include "desktop/main_window.h"

#include <fstream>

#include <QAction>
#include <QClipboard>
#include <QComboBox>
#include <QDialog>
#include <QDropEvent>
#include <QGuiApplication>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QMimeData>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QUrl>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "catalogue/edit.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "codec/text_code.h"
#include "desktop/views/library_page.h"
#include "desktop/views/picture_view.h"
#include "desktop/views/texture_grid_view.h"
#include "library_fixture.h"
#include "open_window.h"

namespace pantile::desktop {
namespace {

using ::testing::ElementsAre;
using tests::comes;
using tests::LibraryFolder;
using tests::OpenWindow;
using tests::smallTexture;

std::string writeText(const std::string& path, const std::string& text) {
    std::ofstream(path, std::ios::binary) << text;
    return path;
}

// A grid as a file; `seed` tells its cells apart.
std::string writeGrid(const std::string& path, int seed) {
    std::string text = "# palette #1b2631 #b8aa78\n";
    for (int row = 0; row < 4; ++row) {
        for (int column = 0; column < 4; ++column) {
            text += (seed >> (row * 4 + column)) % 2 == 0 ? "0" : "1";
            text += column < 3 ? "," : "\n";
        }
    }
    return writeText(path, text);
}

std::int64_t countIn(LibraryFolder& folder) {
    const auto found = catalogue::findTextures(folder.library(), *catalogue::parseQuery(""));
    return found ? found->total : -1;
}

TEST(MainWindow, ShowsTheTexturesOfTheLibraryAndTheFirstInDetail) {
    LibraryFolder folder;
    folder.add(smallTexture("kelp", 1));
    folder.add(smallTexture("foam", 2));
    OpenWindow open(folder);
    EXPECT_TRUE(comes([&] { return open.shown() == 2; }));
    EXPECT_EQ(open.words("counts"), QStringLiteral("2 textures"));
    const QString first = open.grid().model()->index(0, 0).data().toString();
    EXPECT_TRUE(comes([&] { return open.words("detailTitle") == first; }));
    EXPECT_EQ(open.words("cells"), QStringLiteral("8 × 8"));
    EXPECT_EQ(open.words("author"), QStringLiteral("Tidewrack studio"));
    EXPECT_EQ(open.words("licence"), QStringLiteral("not said"));
    EXPECT_TRUE(open.words("code").endsWith(QStringLiteral(" characters")));
    EXPECT_TRUE(open.words("drawing").endsWith(QStringLiteral(" s")))
        << open.words("drawing").toStdString();
    EXPECT_FALSE(open.part<PictureView>("picture").image().isNull());
}

TEST(MainWindow, ShowsWhereToDropThingsWhileTheLibraryIsEmpty) {
    LibraryFolder folder;
    OpenWindow open(folder);
    EXPECT_TRUE(comes([&] { return open.part<QWidget>("emptyWall").isVisible(); }));
    EXPECT_FALSE(open.part<QWidget>("detailPane").isVisible());
    EXPECT_EQ(open.words("firstWords").count(QLatin1Char('.')), 3);
}

// Where the program finds its samples, while a test runs.
class SamplesAt {
public:
    explicit SamplesAt(const std::string& folder) {
        qputenv("PANTILE_SAMPLES", QByteArray::fromStdString(folder));
    }

    ~SamplesAt() { qunsetenv("PANTILE_SAMPLES"); }

    SamplesAt(const SamplesAt&) = delete;
    SamplesAt& operator=(const SamplesAt&) = delete;
};

TEST(MainWindow, OffersTheSamplesToAnEmptyLibraryAndSaysWhoseTheyAre) {
    LibraryFolder folder;
    std::filesystem::create_directories(folder.path("samples"));
    writeGrid(folder.path("samples/rope-strand.csv"), 77);
    const SamplesAt samples(folder.path("samples"));
    OpenWindow open(folder);
    auto& add = open.part<QPushButton>("addSamplesButton");
    ASSERT_TRUE(comes([&] { return add.isVisible(); }));
    QTest::mouseClick(&add, Qt::LeftButton);
    EXPECT_TRUE(comes([&] { return open.shown() == 1; }));
    const auto found =
        catalogue::findTextures(folder.library(), *catalogue::parseQuery("tag:sample"));
    ASSERT_EQ(found->rows.size(), 1U);
    EXPECT_EQ(found->rows[0].title, "rope strand");
    EXPECT_EQ(found->rows[0].licence, "CC0-1.0");
}

TEST(MainWindow, OffersNoSamplesWhereThereAreNone) {
    LibraryFolder folder;
    const SamplesAt samples(folder.path("no such folder"));
    OpenWindow open(folder);
    EXPECT_TRUE(comes([&] { return open.part<QWidget>("emptyWall").isVisible(); }));
    EXPECT_EQ(open.window.findChild<QPushButton*>(QStringLiteral("addSamplesButton")), nullptr);
    EXPECT_FALSE(open.part<QAction>("addSamples").isEnabled());
}

TEST(MainWindow, NarrowsWhileOneTypesAndShowsAllAgain) {
    LibraryFolder folder;
    folder.add(smallTexture("kelp", 1));
    folder.add(smallTexture("foam", 2));
    OpenWindow open(folder);
    ASSERT_TRUE(comes([&] { return open.shown() == 2; }));
    open.type("kel");
    EXPECT_TRUE(comes([&] { return open.shown() == 1; }));
    EXPECT_EQ(open.words("counts"), QStringLiteral("1 of 2 textures"));
    open.type("nothing-like-it");
    EXPECT_TRUE(comes([&] { return open.part<QWidget>("nothingFound").isVisible(); }));
    open.act("showAll");
    EXPECT_TRUE(comes([&] { return open.shown() == 2 && open.grid().isVisible(); }));
}

TEST(MainWindow, ShowsWhatIsWrongWithASearchInItsPlace) {
    LibraryFolder folder;
    folder.add(smallTexture("kelp", 1));
    OpenWindow open(folder);
    ASSERT_TRUE(comes([&] { return open.shown() == 1; }));
    open.type("kelp (foam");
    EXPECT_TRUE(comes([&] { return open.part<QWidget>("searchError").isVisible(); }));
    EXPECT_THAT(open.words("searchErrorMessage").toStdString(), ::testing::StartsWith("Column "));
    EXPECT_TRUE(open.words("searchErrorPlace").contains(QLatin1Char('^')));
    EXPECT_EQ(open.shown(), 1) << "what was found before stays";
    open.type("kelp");
    EXPECT_TRUE(comes([&] { return !open.part<QWidget>("searchError").isVisible(); }));
}

TEST(MainWindow, OrdersByWhatIsChosen) {
    LibraryFolder folder;
    folder.add(smallTexture("anchor", 1));
    folder.add(smallTexture("rope", 2));
    folder.add(smallTexture("kelp", 3));
    OpenWindow open(folder);
    ASSERT_TRUE(comes([&] { return open.shown() == 3; }));
    auto& order = open.part<QComboBox>("order");
    order.setCurrentIndex(order.findText(QStringLiteral("Title")));
    const auto title = [&](int row) {
        return open.grid().model()->index(row, 0).data().toString();
    };
    EXPECT_TRUE(comes([&] { return title(0) == QStringLiteral("anchor"); }));
    EXPECT_EQ(title(1), QStringLiteral("kelp"));
    EXPECT_EQ(title(2), QStringLiteral("rope"));
}

TEST(MainWindow, AddsADroppedFileAndChoosesIt) {
    LibraryFolder folder;
    folder.add(smallTexture("kelp", 1));
    OpenWindow open(folder);
    ASSERT_TRUE(comes([&] { return open.shown() == 1; }));
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(
        QString::fromStdString(writeGrid(folder.path("wet-sand.csv"), 0x1234)))});
    open.drop(data);
    EXPECT_TRUE(comes([&] { return open.shown() == 2; }));
    EXPECT_EQ(open.words("notice"), QStringLiteral("Added 1 texture: wet sand."));
    EXPECT_TRUE(comes([&] { return open.words("detailTitle") == QStringLiteral("wet sand"); }));
    EXPECT_EQ(open.grid().selectedIds().size(), 1U);
}

TEST(MainWindow, AddsADroppedFolder) {
    LibraryFolder folder;
    OpenWindow open(folder);
    std::filesystem::create_directories(folder.path("wall/low"));
    writeGrid(folder.path("wall/slate.csv"), 7);
    writeGrid(folder.path("wall/low/net.csv"), 9);
    writeText(folder.path("wall/notes.txt"), "nothing here");
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(QString::fromStdString(folder.path("wall")))});
    open.drop(data);
    EXPECT_TRUE(comes([&] { return open.shown() == 2; }));
    EXPECT_THAT(open.words("notice").toStdString(),
                ::testing::HasSubstr("1 file in the folders holds nothing to add."));
}

TEST(MainWindow, AddsPickedFilesAndSaysWhyOneIsRefused) {
    LibraryFolder folder;
    OpenWindow open(folder);
    open.prompts.files = {
        QString::fromStdString(writeGrid(folder.path("foam.csv"), 5)),
        QString::fromStdString(writeText(folder.path("broken.png"), "\x89PNG\r\n\x1a\nno more"))};
    auto& add = open.part<QPushButton>("addPicturesButton");
    ASSERT_TRUE(comes([&] { return add.isVisible(); }));
    QTest::mouseClick(&add, Qt::LeftButton);
    EXPECT_TRUE(comes([&] { return open.shown() == 1; }));
    EXPECT_THAT(open.words("notice").toStdString(), ::testing::EndsWith("1 was refused:"));
    const auto& lines = open.part<QPlainTextEdit>("noticeLines");
    EXPECT_TRUE(lines.isVisible());
    EXPECT_TRUE(lines.toPlainText().startsWith(QStringLiteral("broken.png: ")));
    QTest::mouseClick(&open.part<QPushButton>("dismiss"), Qt::LeftButton);
    EXPECT_FALSE(open.part<QWidget>("noticeBar").isVisible());
}

TEST(MainWindow, AddsAPastedCodeAndKnowsItTheSecondTime) {
    LibraryFolder folder;
    OpenWindow open(folder);
    const auto code = codec::encodeTextCode(smallTexture("lamp glass", 77));
    ASSERT_TRUE(code.has_value());
    QGuiApplication::clipboard()->setText(QStringLiteral("look at this:\n") +
                                          QString::fromStdString(code->text));
    QTest::keySequence(&open.window, QKeySequence::Paste);
    EXPECT_TRUE(comes([&] { return open.shown() == 1; }));
    EXPECT_EQ(open.words("notice"), QStringLiteral("Added 1 texture: lamp glass."));
    QTest::keySequence(&open.window, QKeySequence::Paste);
    EXPECT_TRUE(comes(
        [&] { return open.words("notice") == QStringLiteral("1 was here already: lamp glass."); }));
    EXPECT_EQ(countIn(folder), 1);
}

TEST(MainWindow, AddsAPastedPictureEvenFromTheSearchField) {
    LibraryFolder folder;
    folder.add(smallTexture("kelp", 1));
    OpenWindow open(folder);
    ASSERT_TRUE(comes([&] { return open.shown() == 1; }));
    QImage picture(4, 4, QImage::Format_RGB32);
    picture.fill(Qt::red);
    picture.setPixel(1, 1, qRgb(0, 0, 255));
    QGuiApplication::clipboard()->setImage(picture);
    auto& field = open.part<QLineEdit>("searchField");
    field.setFocus();
    QTest::keySequence(&field, QKeySequence::Paste);
    EXPECT_TRUE(comes([&] { return open.shown() == 2; }));
    EXPECT_EQ(field.text(), QString());
    EXPECT_EQ(open.words("notice"), QStringLiteral("Added 1 texture: pasted picture."));
}

TEST(MainWindow, PastesALineIntoTheSearchField) {
    LibraryFolder folder;
    OpenWindow open(folder);
    QGuiApplication::clipboard()->setText(QStringLiteral("tag:kelp"));
    auto& field = open.part<QLineEdit>("searchField");
    field.setFocus();
    QTest::keySequence(&field, QKeySequence::Paste);
    EXPECT_EQ(field.text(), QStringLiteral("tag:kelp"));
    EXPECT_FALSE(open.page().isGathering());
}

TEST(MainWindow, SaysThatTextWithoutACodeHoldsNothing) {
    LibraryFolder folder;
    OpenWindow open(folder);
    QGuiApplication::clipboard()->setText(QStringLiteral("just words\nand more"));
    open.act("paste");
    EXPECT_TRUE(comes([&] { return open.words("notice") == QStringLiteral("1 was refused:"); }));
    EXPECT_EQ(countIn(folder), 0);
}

TEST(MainWindow, CopiesCodesThatDecodeToTheTextures) {
    LibraryFolder folder;
    const core::Texture kelp = smallTexture("kelp", 11);
    const core::Texture foam = smallTexture("foam", 22);
    folder.add(kelp);
    folder.add(foam);
    OpenWindow open(folder);
    ASSERT_TRUE(comes([&] { return open.shown() == 2; }));
    QGuiApplication::clipboard()->clear();
    open.grid().selectAll();
    open.grid().setFocus();
    QTest::keySequence(&open.grid(), QKeySequence::Copy);
    ASSERT_TRUE(comes([&] { return !QGuiApplication::clipboard()->text().isEmpty(); }));
    const std::string text = QGuiApplication::clipboard()->text().toStdString();
    const codec::Harvest harvest = codec::harvestCodes(text);
    ASSERT_EQ(harvest.found.size(), 2U);
    EXPECT_THAT(harvest.damaged, ::testing::IsEmpty());
    std::vector<core::Texture> decoded;
    for (const codec::FoundCode& each : harvest.found) decoded.push_back(each.texture);
    EXPECT_THAT(decoded, ::testing::UnorderedElementsAre(kelp, foam));
}

TEST(MainWindow, SaysHowManyAreChosen) {
    LibraryFolder folder;
    folder.add(smallTexture("kelp", 1));
    folder.add(smallTexture("foam", 2));
    OpenWindow open(folder);
    ASSERT_TRUE(comes([&] { return open.shown() == 2; }));
    open.grid().selectAll();
    EXPECT_THAT(open.words("counts").toStdString(), ::testing::HasSubstr("2 chosen: "));
}

TEST(MainWindow, ShowsTheLargePictureTiled) {
    LibraryFolder folder;
    folder.add(smallTexture("kelp", 0x5A5A));
    OpenWindow open(folder);
    auto& picture = open.part<PictureView>("picture");
    ASSERT_TRUE(comes([&] { return !picture.image().isNull(); }));
    open.act("tiled");
    const QImage& image = picture.image();
    ASSERT_EQ(image.width() % 3, 0);
    const QSize tile = image.size() / 3;
    const QImage first = image.copy(QRect({0, 0}, tile));
    EXPECT_EQ(image.copy(QRect({2 * tile.width(), tile.height()}, tile)), first);
}

TEST(MainWindow, NoticesWhatAnotherProgramChanges) {
    LibraryFolder folder;
    const auto kelp = folder.add(smallTexture("kelp", 1));
    folder.add(smallTexture("foam", 2));
    OpenWindow open(folder);
    ASSERT_TRUE(comes([&] { return open.shown() == 2; }));
    open.grid().selectIds({kelp});
    folder.add(smallTexture("rope", 3));
    EXPECT_TRUE(comes([&] { return open.shown() == 3; }));
    EXPECT_THAT(open.grid().selectedIds(), ElementsAre(kelp));
    catalogue::TextPatch patch;
    patch.title = "bladder wrack";
    ASSERT_TRUE(catalogue::setText(folder.library(), std::span(&kelp, 1), patch).has_value());
    EXPECT_TRUE(
        comes([&] { return open.words("detailTitle") == QStringLiteral("bladder wrack"); }));
    EXPECT_THAT(open.grid().selectedIds(), ElementsAre(kelp));
}

TEST(MainWindow, StopsAddingWhenAsked) {
    LibraryFolder folder;
    OpenWindow open(folder);
    std::filesystem::create_directories(folder.path("many"));
    for (int i = 0; i < 120; ++i) writeGrid(folder.path("many/" + std::to_string(i) + ".csv"), i);
    open.prompts.folder = QString::fromStdString(folder.path("many"));
    open.act("addFolder");
    ASSERT_TRUE(open.page().isGathering());
    ASSERT_TRUE(comes([&] { return open.part<QPushButton>("stop").isVisible(); }));
    QTest::mouseClick(&open.part<QPushButton>("stop"), Qt::LeftButton);
    EXPECT_TRUE(comes([&] { return !open.page().isGathering(); }));
    // A texture or two may be there by then; the words tell of them first.
    EXPECT_THAT(open.words("notice").toStdString(), ::testing::HasSubstr("Stopped after "));
    EXPECT_LT(countIn(folder), 120);
}

TEST(MainWindow, LosesNothingWhenItIsClosedWhileItAdds) {
    LibraryFolder folder;
    std::filesystem::create_directories(folder.path("many"));
    for (int i = 0; i < 120; ++i) writeGrid(folder.path("many/" + std::to_string(i) + ".csv"), i);
    {
        OpenWindow open(folder);
        open.prompts.folder = QString::fromStdString(folder.path("many"));
        open.act("addFolder");
        ASSERT_TRUE(comes([&] { return countIn(folder) > 2; }));
        EXPECT_TRUE(open.window.close());
        EXPECT_FALSE(open.page().isGathering());
    }
    const auto kept = catalogue::findIds(folder.library(), *catalogue::parseQuery(""));
    ASSERT_TRUE(kept.has_value());
    EXPECT_GT(kept->size(), 2U);
    for (const core::TextureId id : *kept)
        EXPECT_TRUE(catalogue::readTexture(folder.library(), id).has_value()) << id.value;
    // The same folder once more adds just the rest.
    OpenWindow again(folder);
    again.prompts.folder = QString::fromStdString(folder.path("many"));
    again.act("addFolder");
    EXPECT_TRUE(comes([&] { return countIn(folder) == 120; }));
}

TEST(MainWindow, ListsAllKeys) {
    LibraryFolder folder;
    OpenWindow open(folder);
    QTest::keyClick(&open.window, Qt::Key_F1);
    auto* const dialog = open.window.findChild<QDialog*>(QStringLiteral("keysDialog"));
    ASSERT_NE(dialog, nullptr);
    QStringList words;
    for (const QLabel* label : dialog->findChildren<QLabel*>()) words.append(label->text());
    for (const ActionRow& row : actionTable())
        EXPECT_TRUE(words.contains(QLatin1String(row.what))) << row.name;
}

TEST(MainWindow, CanBeWalkedThroughByTab) {
    LibraryFolder folder;
    folder.add(smallTexture("kelp", 1));
    OpenWindow open(folder);
    ASSERT_TRUE(comes([&] { return open.shown() == 1; }));
    ASSERT_TRUE(comes([&] { return open.part<QPushButton>("tiledButton").isVisible(); }));
    open.part<QLineEdit>("searchField").setFocus();
    QStringList walked;
    for (int i = 0; i < 10; ++i) {
        walked.append(QApplication::focusWidget()->objectName());
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    }
    for (const char* name :
         {"searchField", "order", "headAddButton", "textures", "copyCodeButton", "tiledButton"})
        EXPECT_TRUE(walked.contains(QLatin1String(name)))
            << name << " is not reached: " << walked.join(QLatin1Char(' ')).toStdString();
}

TEST(MainWindow, GivesWhatCanBeFocusedAName) {
    LibraryFolder folder;
    folder.add(smallTexture("kelp", 1));
    OpenWindow open(folder);
    ASSERT_TRUE(comes([&] { return open.shown() == 1; }));
    for (const char* name : {"searchField", "order", "textures", "detailPane"})
        EXPECT_FALSE(open.part<QWidget>(name).accessibleName().isEmpty()) << name;
}

TEST(MainWindow, GivesTheDetailsTheWallsPlaceWhereThereIsNoRoomForBoth) {
    LibraryFolder folder;
    folder.add(smallTexture("kelp", 1));
    OpenWindow open(folder);
    ASSERT_TRUE(comes([&] { return open.shown() == 1; }));
    EXPECT_TRUE(open.part<QWidget>("detailPane").isVisible());
    open.window.resize(600, 400);
    EXPECT_TRUE(comes([&] { return !open.part<QWidget>("detailPane").isVisible(); }));
    EXPECT_TRUE(open.grid().isVisible());
    open.act("details");
    EXPECT_TRUE(open.part<QWidget>("detailPane").isVisible());
    EXPECT_FALSE(open.grid().isVisible());
    open.window.resize(1100, 700);
    EXPECT_TRUE(comes([&] { return open.grid().isVisible(); }));
    EXPECT_TRUE(open.part<QWidget>("detailPane").isVisible());
}

}  // namespace
}  // namespace pantile::desktop
