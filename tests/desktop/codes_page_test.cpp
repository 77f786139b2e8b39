// The place called Codes through the real window: what goes out, and what a pasted text holds.

#include <QCheckBox>
#include <QClipboard>
#include <QComboBox>
#include <QGuiApplication>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QRegularExpression>
#include <QSpinBox>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "codec/text_code.h"
#include "open_window.h"
#include "support/random.h"

namespace pantile::desktop {
namespace {

using ::testing::ElementsAre;
using tests::comes;
using tests::LibraryFolder;
using tests::OpenWindow;
using tests::smallTexture;

// Without any order, so that its code is long.
core::Texture noise(const std::string& title, int side) {
    tests::Random random(5);
    std::vector<core::PaletteIndex> cells;
    for (int i = 0; i < side * side; ++i)
        cells.push_back(static_cast<core::PaletteIndex>(random.between(0, 3)));
    core::TextureText text;
    text.title = title;
    return *core::Texture::create(
        *core::Grid::create(side, side, std::move(cells)),
        *core::Palette::create({{27, 38, 49}, {184, 170, 120}, {90, 120, 80}, {200, 90, 60}}),
        std::move(text));
}

class OpenCodes : public OpenWindow {
public:
    explicit OpenCodes(LibraryFolder& folder) : OpenWindow(folder) { act("codesPlace"); }

    QString post() { return part<QPlainTextEdit>("post").toPlainText(); }

    QListWidget& posts() { return part<QListWidget>("postList"); }

    QPlainTextEdit& text() { return part<QPlainTextEdit>("pastedText"); }

    QListWidget& held() { return part<QListWidget>("readList"); }

    void choose(const std::vector<core::TextureId>& ids) {
        ASSERT_TRUE(comes([&] { return shown() >= static_cast<int>(ids.size()); }));
        grid().selectIds(ids);
    }

    void press(const char* button) {
        QTest::mouseClick(&part<QPushButton>(button), Qt::LeftButton);
    }
};

QString codeOf(const core::Texture& texture) {
    return QString::fromStdString(codec::encodeTextCode(texture)->text);
}

std::vector<core::Texture> texturesIn(const QString& text) {
    std::vector<core::Texture> textures;
    for (const codec::FoundCode& found : codec::harvestCodes(text.toStdString()).found)
        textures.push_back(found.texture);
    return textures;
}

TEST(CodesPage, StandsOnTheRailAndKeepsWhatWasChosen) {
    LibraryFolder folder;
    folder.add(smallTexture("kelp", 1));
    OpenWindow open(folder);
    ASSERT_TRUE(comes([&] { return open.shown() == 1; }));
    EXPECT_TRUE(open.part<QWidget>("textures").isVisible());
    QTest::mouseClick(&open.part<QPushButton>("codesPlaceButton"), Qt::LeftButton);
    EXPECT_TRUE(open.part<QWidget>("codesPage").isVisible());
    EXPECT_FALSE(open.part<QWidget>("textures").isVisible());
    EXPECT_TRUE(open.part<QPushButton>("codesPlaceButton").isChecked());
    EXPECT_FALSE(open.part<QPushButton>("libraryPlaceButton").isChecked());
    EXPECT_EQ(open.words("chosenWords"), QStringLiteral("1 texture: kelp"));
    QTest::keySequence(&open.window, QKeySequence(Qt::CTRL | Qt::Key_1));
    EXPECT_TRUE(open.part<QWidget>("textures").isVisible());
    // Pressed again, the word of the place that is shown stays on.
    QTest::mouseClick(&open.part<QPushButton>("libraryPlaceButton"), Qt::LeftButton);
    EXPECT_TRUE(open.part<QPushButton>("libraryPlaceButton").isChecked());
    EXPECT_TRUE(open.part<QWidget>("textures").isVisible());
}

TEST(CodesPage, GoesToTheLibraryToFind) {
    LibraryFolder folder;
    OpenCodes open(folder);
    open.act("find");
    EXPECT_TRUE(open.part<QLineEdit>("searchField").isVisible());
}

TEST(CodesPage, SaysWhatToDoWhileNothingIsChosen) {
    LibraryFolder folder;
    OpenCodes open(folder);
    EXPECT_TRUE(open.post().isEmpty());
    EXPECT_FALSE(open.part<QPlainTextEdit>("post").placeholderText().isEmpty());
    EXPECT_FALSE(open.part<QPushButton>("copyPostButton").isEnabled());
}

TEST(CodesPage, ShowsThePostAsItIsPastedAndCopiesIt) {
    LibraryFolder folder;
    const core::Texture kelp = smallTexture("kelp", 11);
    const auto id = folder.add(kelp);
    OpenCodes open(folder);
    open.choose({id});
    ASSERT_TRUE(comes([&] { return open.post() == codeOf(kelp); }));
    EXPECT_FALSE(open.posts().isVisible());
    EXPECT_TRUE(open.words("postCosts").startsWith(QStringLiteral("1 post · ")));
    open.press("copyPostButton");
    EXPECT_EQ(QGuiApplication::clipboard()->text(), open.post());
    EXPECT_TRUE(open.words("notice").startsWith(QStringLiteral("Copied 1 post, ")));
}

TEST(CodesPage, WritesForThePlaceThatIsAskedFor) {
    LibraryFolder folder;
    const core::Texture kelp = smallTexture("kelp", 11);
    const auto id = folder.add(kelp);
    OpenCodes open(folder);
    open.choose({id});
    ASSERT_TRUE(comes([&] { return !open.post().isEmpty(); }));
    auto& syntax = open.part<QComboBox>("postSyntax");
    syntax.setCurrentIndex(syntax.findText(QStringLiteral("BBCode")));
    ASSERT_TRUE(comes([&] { return open.post().contains(QStringLiteral("[code]")); }));
    EXPECT_TRUE(open.post().contains(QStringLiteral("kelp")));
    EXPECT_THAT(texturesIn(open.post()), ElementsAre(kelp));
}

TEST(CodesPage, CutsLongCodesIntoPartsThatTogetherAreTheTexture) {
    LibraryFolder folder;
    const core::Texture shingle = noise("shingle", 32);
    const auto id = folder.add(shingle);
    OpenCodes open(folder);
    auto& limit = open.part<QSpinBox>("postLimit");
    limit.setValue(200);
    open.choose({id});
    ASSERT_TRUE(comes([&] { return open.posts().isVisible(); }));
    ASSERT_GE(open.posts().count(), 2);
    EXPECT_TRUE(open.posts().item(0)->text().startsWith(QStringLiteral("shingle, part 1 of ")));
    open.posts().setCurrentRow(1);
    EXPECT_LE(open.post().size(), 200);
    open.press("copyAllPostsButton");
    EXPECT_THAT(texturesIn(QGuiApplication::clipboard()->text()), ElementsAre(shingle));
    limit.setValue(limit.minimum());
    EXPECT_TRUE(comes([&] { return !open.posts().isVisible() && open.post() == codeOf(shingle); }));
}

TEST(CodesPage, PutsSeveralIntoOneCode) {
    LibraryFolder folder;
    const core::Texture kelp = smallTexture("kelp", 11);
    const core::Texture foam = smallTexture("foam", 22);
    const auto first = folder.add(kelp);
    const auto second = folder.add(foam);
    OpenCodes open(folder);
    open.choose({first, second});
    ASSERT_TRUE(comes([&] { return open.posts().count() == 2; }));
    open.part<QCheckBox>("asSet").click();
    ASSERT_TRUE(comes([&] { return open.posts().count() == 1; }));
    EXPECT_THAT(texturesIn(open.post()), ::testing::UnorderedElementsAre(kelp, foam));
}

TEST(CodesPage, LeavesThePaletteOutForThoseWhoHaveIt) {
    LibraryFolder folder;
    const core::Texture kelp = smallTexture("kelp", 11);
    const auto id = folder.add(kelp);
    OpenCodes open(folder);
    open.choose({id});
    ASSERT_TRUE(comes([&] { return open.post() == codeOf(kelp); }));
    open.part<QCheckBox>("withoutPalette").click();
    ASSERT_TRUE(comes([&] { return !open.post().isEmpty() && open.post() != codeOf(kelp); }));
    EXPECT_EQ(codec::harvestCodes(open.post().toStdString()).damaged.size(), 1U);
    // The library has it, so the same window reads it.
    open.text().setPlainText(open.post());
    EXPECT_TRUE(comes([&] { return open.held().count() == 1; }));
    EXPECT_THAT(open.held().item(0)->text().toStdString(), ::testing::HasSubstr("here already"));
}

TEST(CodesPage, MarksWhereCodesStandAndWhatIsDamaged) {
    LibraryFolder folder;
    const core::Texture kelp = smallTexture("kelp", 11);
    const auto known = folder.add(kelp);
    const core::Texture rope = smallTexture("rope", 33);
    const QString whole = codeOf(kelp);
    QString slip = codeOf(rope);
    const auto letter = slip.lastIndexOf(QRegularExpression(QStringLiteral("[a-k]")));
    slip[letter] = QLatin1Char('x');
    QString lost = codeOf(noise("foam", 16));
    lost.truncate(lost.size() / 2);
    OpenCodes open(folder);
    open.text().setPlainText(
        QStringLiteral("Näss 🪸:\n%1\nand\n%2\nand\n%3\n").arg(whole, slip, lost));
    ASSERT_TRUE(comes([&] { return open.held().count() == 3; }));

    const auto marked = [&](int i) {
        return open.text().extraSelections().at(i).cursor.selectedText();
    };
    ASSERT_EQ(open.text().extraSelections().size(), 3);
    EXPECT_EQ(marked(0).replace(QChar(0x2029), QLatin1Char('\n')), whole);
    EXPECT_EQ(marked(1).replace(QChar(0x2029), QLatin1Char('\n')), slip);
    EXPECT_EQ(open.text().extraSelections().at(1).format.underlineStyle(),
              QTextCharFormat::DashUnderline);
    EXPECT_EQ(open.text().extraSelections().at(2).format.underlineStyle(),
              QTextCharFormat::WaveUnderline);

    EXPECT_THAT(open.held().item(0)->text().toStdString(),
                ::testing::HasSubstr("here already, as " + std::to_string(known.value)));
    EXPECT_THAT(open.held().item(1)->text().toStdString(),
                ::testing::HasSubstr("new · 1 slip put right"));
    EXPECT_THAT(open.held().item(2)->text().toStdString(), ::testing::StartsWith("Damaged: line "));
    EXPECT_EQ(open.words("readCounts"), QStringLiteral("2 textures · 1 new · 1 damaged"));
    open.held().setCurrentRow(1);
    EXPECT_EQ(open.text().textCursor().position(), open.text().toPlainText().indexOf(slip));
}

TEST(CodesPage, StoresNothingUntilItIsAskedTo) {
    LibraryFolder folder;
    OpenCodes open(folder);
    const core::Texture kelp = smallTexture("kelp", 11);
    open.text().setPlainText(QStringLiteral("look:\n") + codeOf(kelp));
    auto& add = open.part<QPushButton>("addReadButton");
    EXPECT_FALSE(add.isEnabled());
    ASSERT_TRUE(comes([&] { return add.isEnabled(); }));
    const auto ids = [&] {
        return *catalogue::findIds(folder.library(), *catalogue::parseQuery(""));
    };
    EXPECT_TRUE(ids().empty());
    QTest::mouseClick(&add, Qt::LeftButton);
    ASSERT_TRUE(comes([&] { return ids().size() == 1; }));
    EXPECT_TRUE(
        comes([&] { return open.words("notice") == QStringLiteral("Added 1 texture: kelp."); }));
    // Now that it is here, there is nothing more to add.
    EXPECT_TRUE(comes([&] { return !add.isEnabled(); }));
}

TEST(CodesPage, ShowsTextsFromOutsideAsTheyAre) {
    LibraryFolder folder;
    OpenCodes open(folder);
    core::Texture kelp = *smallTexture("x", 11).withText({"<b>kelp</b>", "", "", "", "", {}});
    open.text().setPlainText(codeOf(kelp));
    ASSERT_TRUE(comes([&] { return open.held().count() == 1; }));
    EXPECT_TRUE(open.held().item(0)->text().startsWith(QStringLiteral("<b>kelp</b> · ")));
    open.press("clearText");
    ASSERT_TRUE(comes([&] { return open.held().count() == 0; }));
    open.text().setPlainText(QStringLiteral("no code at all"));
    EXPECT_TRUE(
        comes([&] { return open.words("readCounts").contains(QStringLiteral("No code")); }));
}

TEST(CodesPage, IsClosedWhileItReadsWithoutHarm) {
    LibraryFolder folder;
    OpenCodes open(folder);
    open.text().setPlainText(codeOf(noise("shingle", 64)).repeated(3));
    QTest::qWait(160);  // The reading has just begun, or is about to.
    EXPECT_TRUE(open.window.close());
}

}  // namespace
}  // namespace pantile::desktop
