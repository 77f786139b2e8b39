// Pictures on their way into the library, through the real window and the real dialog.

#include "desktop/dialogs/convert_dialog.h"

#include <fstream>

#include <QAbstractButton>
#include <QClipboard>
#include <QComboBox>
#include <QElapsedTimer>
#include <QGuiApplication>
#include <QImage>
#include <QPlainTextEdit>
#include <QSlider>
#include <QSpinBox>
#include <QThread>
#include <QUrl>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "codec/text_code.h"
#include "desktop/views/picture_view.h"
#include "desktop/views/source_view.h"
#include "library_fixture.h"
#include "open_window.h"
#include "tasks/gather.h"

namespace pantile::desktop {
namespace {

using tests::comes;
using tests::LibraryFolder;
using tests::OpenWindow;
using tests::smallTexture;

// A slope of colours, with no two rows alike, too large to be taken cell by cell.
QImage slope(int width, int height, int blue = 90) {
    QImage picture(width, height, QImage::Format_RGB32);
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x)
            picture.setPixel(x, y, qRgb(x * 255 / width, y * 255 / height, blue));
    }
    return picture;
}

QUrl saved(const LibraryFolder& folder, const char* name, const QImage& picture) {
    const QString path = QString::fromStdString(folder.path(name));
    EXPECT_TRUE(picture.save(path));
    return QUrl::fromLocalFile(path);
}

ConvertDialog* dialogOf(OpenWindow& open) {
    return open.window.findChild<ConvertDialog*>(QStringLiteral("convertDialog"));
}

// Waits for the dialog to show what would be added.
ConvertDialog* shownDialog(OpenWindow& open) {
    EXPECT_TRUE(comes([&] { return dialogOf(open) != nullptr && dialogOf(open)->isExact(); }));
    return dialogOf(open);
}

void dropFiles(OpenWindow& open, const QList<QUrl>& urls) {
    QMimeData data;
    data.setUrls(urls);
    open.drop(data);
}

std::vector<catalogue::TextureRow> rowsOf(LibraryFolder& folder) {
    return catalogue::findTextures(folder.library(), *catalogue::parseQuery(""))->rows;
}

TEST(ConvertDialog, AsksHowALargePictureIsToBecomeATextureAndAddsJustThat) {
    LibraryFolder folder;
    OpenWindow open(folder);
    dropFiles(open, {saved(folder, "wet-sand.png", slope(300, 200))});
    ConvertDialog* const dialog = shownDialog(open);
    EXPECT_FALSE(open.part<PictureView>("convertedPicture").image().isNull());
    EXPECT_EQ(open.words("convertedCells"), QStringLiteral("64 × 64"));
    EXPECT_TRUE(comes([&] { return open.words("convertedDrawing").contains(QLatin1Char('s')); }));
    EXPECT_TRUE(open.words("convertedLoad").contains(QStringLiteral("bytes")) ||
                open.words("convertedLoad").contains(QStringLiteral("KiB")));
    EXPECT_TRUE(open.words("convertedCode").endsWith(QStringLiteral(" characters")));
    EXPECT_TRUE(open.words("convertedError").contains(QStringLiteral("as seen")));
    EXPECT_EQ(rowsOf(folder).size(), 0U) << "nothing is added by asking";
    open.part<QSpinBox>("convertColours").setValue(4);
    open.part<QLineEdit>("convertTags").setText(QStringLiteral("sand, wet"));
    open.part<QLineEdit>("convertShelf").setText(QStringLiteral("Tidal flat"));
    open.part<QLineEdit>("convertAuthor").setText(QStringLiteral("Tidewrack studio"));
    EXPECT_TRUE(comes([&] { return open.words("convertedColourCount") == QStringLiteral("4"); }));
    QTest::mouseClick(&open.part<QAbstractButton>("convertAdd"), Qt::LeftButton);
    EXPECT_TRUE(comes([&] { return open.shown() == 1; }));
    (void)dialog;
    const auto rows = rowsOf(folder);
    ASSERT_EQ(rows.size(), 1U);
    EXPECT_EQ(rows[0].title, "wet sand");
    EXPECT_EQ(rows[0].colours, 4);
    EXPECT_EQ(rows[0].author, "Tidewrack studio");
    EXPECT_THAT(rows[0].tags, ::testing::ElementsAre("sand", "wet"));
    EXPECT_THAT(rows[0].shelves, ::testing::ElementsAre("Tidal flat"));
}

TEST(ConvertDialog, ShowsTheVeryTextureThatTheAddingMakes) {
    LibraryFolder folder;
    const QImage picture = slope(900, 700);
    OpenWindow open(folder);
    dropFiles(open, {saved(folder, "slate.png", picture)});
    ConvertDialog* dialog = shownDialog(open);
    ASSERT_NE(dialog, nullptr);
    QTest::mouseClick(&open.part<QAbstractButton>("dither7"), Qt::LeftButton);
    open.part<QSpinBox>("convertContrast").setValue(40);
    open.part<QSpinBox>("convertColours").setValue(6);
    ASSERT_TRUE(comes([&] { return dialog->isExact(); }));
    const tasks::GatherOptions options = dialog->options();
    EXPECT_EQ(options.pictures.dither, picture::Dither::Bayer2);
    EXPECT_EQ(options.pictures.adjustments.contrast, 40);
    const QString cost = open.words("convertedColourCount");
    QTest::keyClick(dialog, Qt::Key_Return);
    ASSERT_TRUE(comes([&] { return open.shown() == 1; }));
    EXPECT_EQ(QString::number(rowsOf(folder)[0].colours), cost);
}

TEST(ConvertDialog, AddsNothingWhenItIsLeft) {
    LibraryFolder folder;
    OpenWindow open(folder);
    dropFiles(open, {saved(folder, "kelp.png", slope(120, 90))});
    QTest::keyClick(shownDialog(open), Qt::Key_Escape);
    EXPECT_TRUE(comes([&] { return dialogOf(open) == nullptr; }));
    EXPECT_FALSE(open.page().isGathering());
    EXPECT_EQ(rowsOf(folder).size(), 0U);
}

TEST(ConvertDialog, TakesPicturesThatFitWithoutAskingUnlessTheyAreAddedByHand) {
    LibraryFolder folder;
    OpenWindow open(folder);
    const QUrl small = saved(folder, "net.png", slope(16, 16));
    dropFiles(open, {small});
    EXPECT_TRUE(comes([&] { return open.shown() == 1; }));
    EXPECT_EQ(dialogOf(open), nullptr);
    open.prompts.files = {small.toLocalFile()};
    open.act("addPictures");
    ASSERT_NE(shownDialog(open), nullptr);
    EXPECT_EQ(open.words("convertedCells"), QStringLiteral("16 × 16"));
    EXPECT_EQ(open.words("convertedError"), QStringLiteral("nothing: its own cells"));
}

TEST(ConvertDialog, ShowsSeveralPicturesInTurnAndAddsAllAlike) {
    LibraryFolder folder;
    std::filesystem::create_directories(folder.path("wall"));
    OpenWindow open(folder);
    saved(folder, "wall/a.png", slope(100, 100, 10));
    saved(folder, "wall/b.png", slope(200, 100, 60));
    std::ofstream(folder.path("wall/c.txt")) << "nothing here";
    dropFiles(open, {QUrl::fromLocalFile(QString::fromStdString(folder.path("wall")))});
    ConvertDialog* const dialog = shownDialog(open);
    ASSERT_NE(dialog, nullptr);
    EXPECT_EQ(open.words("convertPlace"), QStringLiteral("a.png, 1 of 2"));
    open.part<QSpinBox>("convertColours").setValue(3);
    QTest::mouseClick(&open.part<QAbstractButton>("convertNext"), Qt::LeftButton);
    EXPECT_EQ(open.words("convertPlace"), QStringLiteral("b.png, 2 of 2"));
    EXPECT_TRUE(comes([&] { return dialog->isExact(); }));
    EXPECT_EQ(open.words("convertedColourCount"), QStringLiteral("3"));
    QTest::mouseClick(&open.part<QAbstractButton>("convertAdd"), Qt::LeftButton);
    EXPECT_TRUE(comes([&] { return open.shown() == 2; }));
    for (const auto& row : rowsOf(folder)) EXPECT_EQ(row.colours, 3) << row.title;
}

// Samples and costs of one picture that are ready when the next one is asked for.
TEST(ConvertDialog, PassesOverWhatWasWorkedOutForThePictureBefore) {
    LibraryFolder folder;
    std::filesystem::create_directories(folder.path("wall"));
    OpenWindow open(folder);
    saved(folder, "wall/a.png", slope(100, 100, 10));
    saved(folder, "wall/b.png", slope(200, 100, 60));
    dropFiles(open, {QUrl::fromLocalFile(QString::fromStdString(folder.path("wall")))});
    ConvertDialog* const dialog = shownDialog(open);
    ASSERT_NE(dialog, nullptr);
    for (const char* button : {"convertNext", "convertBefore", "convertNext"}) {
        ASSERT_TRUE(comes([&] { return dialog->isExact(); }));
        QThread::msleep(300);
        QTest::mouseClick(&open.part<QAbstractButton>(button), Qt::LeftButton);
    }
    EXPECT_TRUE(comes([&] { return dialog->isExact(); }));
    EXPECT_TRUE(comes([&] { return !open.part<QAbstractButton>("dither11").icon().isNull(); }));
}

TEST(ConvertDialog, SaysWhatIsWrongWithWhatWasTypedAndWillNotAddSo) {
    LibraryFolder folder;
    OpenWindow open(folder);
    dropFiles(open, {saved(folder, "kelp.png", slope(120, 90))});
    ASSERT_NE(shownDialog(open), nullptr);
    auto& pinned = open.part<QLineEdit>("convertPinned");
    auto& add = open.part<QAbstractButton>("convertAdd");
    pinned.setText(QStringLiteral("#2f6f5e moss"));
    EXPECT_TRUE(open.part<QWidget>("convertFormError").isVisible());
    EXPECT_FALSE(add.isEnabled());
    pinned.setText(QStringLiteral("#2f6f5e"));
    EXPECT_TRUE(comes([&] { return add.isEnabled(); }));
    EXPECT_FALSE(open.part<QWidget>("convertFormError").isVisible());
    open.part<QLineEdit>("convertTags").setText(QStringLiteral("(kelp"));
    EXPECT_TRUE(open.part<QWidget>("convertFormError").isVisible());
    EXPECT_FALSE(add.isEnabled());
    open.part<QLineEdit>("convertTags").clear();
    EXPECT_TRUE(add.isEnabled());
}

TEST(ConvertDialog, UsesThePartThatIsDrawnOutOrMovedByKeys) {
    LibraryFolder folder;
    OpenWindow open(folder);
    dropFiles(open, {saved(folder, "kelp.png", slope(640, 640))});
    ConvertDialog* const dialog = shownDialog(open);
    auto& source = open.part<SourceView>("sourceView");
    const QRect place = source.shown();
    ASSERT_GT(place.width(), 100);
    QTest::mousePress(&source, Qt::LeftButton, {}, QPoint(1, 0));  // A null point is the middle.
    QTest::mouseMove(&source, place.center());
    QTest::mouseRelease(&source, Qt::LeftButton, {}, place.center());
    ASSERT_TRUE(source.part().has_value());
    EXPECT_NEAR(source.part()->width(), 320, 16);
    EXPECT_TRUE(comes([&] { return dialog->isExact(); }));
    ASSERT_TRUE(dialog->options().pictures.part.has_value());
    EXPECT_LE(dialog->options().pictures.part->at.x, 3);
    EXPECT_EQ(dialog->options().pictures.part->at.y, 0);
    source.setFocus();
    const int width = source.part()->width();
    const int left = source.part()->left();
    QTest::keyClick(&source, Qt::Key_Right);
    EXPECT_EQ(source.part()->left(), left + 20);
    QTest::keyClick(&source, Qt::Key_Left, Qt::ShiftModifier);
    EXPECT_EQ(source.part()->width(), width - 20);
    QTest::keyClick(&source, Qt::Key_Escape);
    EXPECT_FALSE(source.part().has_value());
    EXPECT_TRUE(dialog->isVisible()) << "Escape gave up the part, not the dialog";
    EXPECT_FALSE(dialog->options().pictures.part.has_value());
}

TEST(ConvertDialog, FollowsASliderWithoutHoldingTheWindowUp) {
    LibraryFolder folder;
    OpenWindow open(folder);
    dropFiles(open, {saved(folder, "wide.png", slope(2400, 1600))});
    ConvertDialog* const dialog = shownDialog(open);
    auto& slider = open.part<QSlider>("convertBrightnessSlider");
    slider.setFocus();
    qint64 longest = 0;
    for (int i = 0; i < 10; ++i) {
        QElapsedTimer timer;
        timer.start();
        QTest::keyClick(&slider, Qt::Key_Right);
        longest = std::max(longest, timer.elapsed());
    }
    EXPECT_LT(longest, 1000) << "each step only starts work (generous: the machine may be busy)";
    EXPECT_TRUE(comes([&] { return dialog->isExact(); }));
    EXPECT_EQ(dialog->options().pictures.adjustments.brightness, 10);
}

TEST(ConvertDialog, ShowsThePictureUnderEachDitherWithItsCost) {
    LibraryFolder folder;
    OpenWindow open(folder);
    dropFiles(open, {saved(folder, "kelp.png", slope(96, 96))});
    ASSERT_NE(shownDialog(open), nullptr);
    for (int i = 0; i <= static_cast<int>(picture::Dither::Optimal); ++i) {
        auto& button = open.part<QAbstractButton>(("dither" + std::to_string(i)).c_str());
        EXPECT_TRUE(comes([&] { return !button.icon().isNull(); })) << i;
        EXPECT_TRUE(comes([&] { return button.text().contains(QStringLiteral(" s")); })) << i;
    }
    auto& none = open.part<QAbstractButton>("dither0");
    none.setFocus();
    QTest::keyClick(&none, Qt::Key_Right);
    EXPECT_TRUE(comes([&] {
        return dialogOf(open)->options().pictures.dither == picture::Dither::FloydSteinberg;
    }));
}

TEST(ConvertDialog, GivesEverythingThatTakesTheFocusAName) {
    LibraryFolder folder;
    OpenWindow open(folder);
    dropFiles(open, {saved(folder, "kelp.png", slope(96, 96))});
    ConvertDialog* const dialog = shownDialog(open);
    for (const QWidget* const each : dialog->findChildren<QWidget*>()) {
        const bool takesFocus = (each->focusPolicy() & Qt::TabFocus) != 0 && !each->focusProxy();
        if (!each->isVisible() || !takesFocus) continue;
        const auto* const button = qobject_cast<const QAbstractButton*>(each);
        EXPECT_FALSE(each->accessibleName().isEmpty() &&
                     (button == nullptr || button->text().isEmpty()))
            << each->objectName().toStdString() << " " << each->metaObject()->className();
    }
}

TEST(ConvertDialog, IsLeftWhenTheWindowClosesWhileItWorks) {
    LibraryFolder folder;
    {
        OpenWindow open(folder);
        dropFiles(open, {saved(folder, "wide.png", slope(2400, 1600))});
        ASSERT_TRUE(comes([&] { return dialogOf(open) != nullptr; }));
        EXPECT_TRUE(open.window.close());
    }
    EXPECT_EQ(rowsOf(folder).size(), 0U);
}

TEST(Adding, TakesAPictureOutOfTheTextOfAWebPage) {
    LibraryFolder folder;
    OpenWindow open(folder);
    const QUrl file = saved(folder, "small.png", slope(6, 6));
    QFile read(file.toLocalFile());
    ASSERT_TRUE(read.open(QIODevice::ReadOnly));
    QMimeData data;
    data.setHtml(QStringLiteral("<img src=\"data:image/png;base64,%1\">")
                     .arg(QString::fromLatin1(read.readAll().toBase64())));
    open.drop(data);
    EXPECT_TRUE(comes([&] { return open.shown() == 1; }));
    EXPECT_EQ(rowsOf(folder)[0].size.width, 6);
}

TEST(Adding, TakesThePictureThatABrowserHandsOverWithItsAddress) {
    LibraryFolder folder;
    OpenWindow open(folder);
    QMimeData data;
    data.setUrls({QUrl(QStringLiteral("https://tidewrack.invalid/kelp.png"))});
    data.setImageData(slope(8, 8));
    open.drop(data);
    EXPECT_TRUE(comes([&] { return open.shown() == 1; }));
}

TEST(Adding, SaysThatAnAddressAloneIsNothing) {
    LibraryFolder folder;
    OpenWindow open(folder);
    QMimeData data;
    data.setUrls({QUrl(QStringLiteral("https://tidewrack.invalid/kelp.png"))});
    open.drop(data);
    EXPECT_TRUE(comes([&] {
        return open.words("notice").startsWith(QStringLiteral("This is only the way to something"));
    }));
}

TEST(Adding, SaysWhatIsThereAlreadyMirrored) {
    LibraryFolder folder;
    const auto texture = [](bool mirrored) {
        std::vector<core::PaletteIndex> cells;
        for (int y = 0; y < 12; ++y) {
            for (int x = 0; x < 12; ++x) {
                const int across = mirrored ? 11 - x : x;
                cells.push_back(static_cast<core::PaletteIndex>(
                    (across * across * across + y * y * 3 + across * y) / 3 % 4));
            }
        }
        core::TextureText text;
        text.title = mirrored ? "kelp the other way" : "kelp";
        return *core::Texture::create(
            *core::Grid::create(12, 12, std::move(cells)),
            *core::Palette::create({{27, 38, 49}, {184, 170, 120}, {90, 120, 80}, {220, 60, 40}}),
            std::move(text));
    };
    const auto code = [&](bool mirrored) {
        return QString::fromStdString(codec::encodeTextCode(texture(mirrored))->text);
    };
    OpenWindow open(folder);
    QGuiApplication::clipboard()->setText(code(false));
    open.act("paste");
    ASSERT_TRUE(comes([&] { return open.shown() == 1; }));
    QGuiApplication::clipboard()->setText(code(true));
    open.act("paste");
    ASSERT_TRUE(comes([&] { return open.shown() == 2; }));
    const QString lines = open.part<QPlainTextEdit>("noticeLines").toPlainText();
    EXPECT_TRUE(lines.startsWith(QStringLiteral("kelp the other way: you have this, mirrored")))
        << lines.toStdString();
    EXPECT_TRUE(lines.endsWith(QStringLiteral(": #1 kelp"))) << lines.toStdString();
}

TEST(Adding, SaysWhatWasHealedInACode) {
    LibraryFolder folder;
    OpenWindow open(folder);
    QString code = QString::fromStdString(codec::encodeTextCode(smallTexture("rope", 99))->text);
    const auto place = code.size() - 6;
    code[place] = code[place] == QLatin1Char('2') ? QLatin1Char('3') : QLatin1Char('2');
    QGuiApplication::clipboard()->setText(code);
    open.act("paste");
    ASSERT_TRUE(comes([&] { return open.shown() == 1; }));
    EXPECT_TRUE(open.words("notice").endsWith(QStringLiteral("Slips in 1 code were put right.")));
    EXPECT_TRUE(open.part<QPlainTextEdit>("noticeLines")
                    .toPlainText()
                    .startsWith(QStringLiteral("rope: put right: ")));
}

}  // namespace
}  // namespace pantile::desktop
