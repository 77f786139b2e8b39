// Canvases, boards and palettes changed in place, through the real window.

#include "desktop/dialogs/profiles_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QListWidget>
#include <QPointer>
#include <QPushButton>
#include <QTreeWidget>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/loads.h"
#include "catalogue/palettes.h"
#include "catalogue/reader.h"
#include "desktop/views/checked_form.h"
#include "desktop/views/screen_picture.h"
#include "library_fixture.h"
#include "open_window.h"
#include "tasks/keep_estimates.h"

namespace pantile::desktop {
namespace {

using core::Rgb8;
using ::testing::Contains;
using ::testing::HasSubstr;
using tests::comes;
using tests::LibraryFolder;
using tests::OpenWindow;
using tests::smallTexture;

// The window with the dialog over it, on a canvas, a board and a palette of the test's own.
struct Slipway {
    Slipway() {
        canvas.name = "Slipway";
        canvas.size = {20, 10};
        canvas.geometry = core::CanvasGeometry::beside(canvas.size);
        canvas.geometry.swatchCentre.x += 300;  // Room for larger cells.
        EXPECT_TRUE(catalogue::addCanvas(folder.library(), canvas).has_value());
        board.name = "Winch";
        EXPECT_TRUE(catalogue::addBoard(folder.library(), board).has_value());
        EXPECT_TRUE(
            catalogue::addPalette(folder.library(), "Slate",
                                  *core::Palette::create({{1, 1, 1}, {2, 2, 2}, {3, 3, 3}}, 2))
                .has_value());
    }

    void openDialog() {
        open = std::make_unique<OpenWindow>(folder);
        open->act("profiles");
        dialog = open->window.findChild<ProfilesDialog*>();
        ASSERT_NE(dialog, nullptr);
        // The platform's part, and for QTest a dialog is active as soon as its parent is.
        dialog->activateWindow();
        ASSERT_TRUE(comes([&] { return dialog->isActiveWindow(); }));
        ASSERT_TRUE(comes([&] { return itemOf("Slate") != nullptr; }));
    }

    QTreeWidget& tree() { return open->part<QTreeWidget>("profileTree"); }

    QTreeWidgetItem* itemOf(const char* words) {
        const auto found =
            tree().findItems(QLatin1String(words), Qt::MatchExactly | Qt::MatchRecursive);
        return found.empty() ? nullptr : found.front();
    }

    void select(const char* words) {
        ASSERT_TRUE(comes([&] { return itemOf(words) != nullptr; })) << words;
        QTest::mouseClick(tree().viewport(), Qt::LeftButton, Qt::NoModifier,
                          tree().visualItemRect(itemOf(words)).center());
        ASSERT_EQ(tree().currentItem(), itemOf(words));
    }

    void type(const char* field, const char* text) {
        auto& box = open->part<QWidget>(field);
        box.setFocus();
        QTest::keyClick(&box, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(&box, QLatin1String(text));
    }

    void click(const char* button) {
        QTest::mouseClick(&open->part<QPushButton>(button), Qt::LeftButton);
    }

    bool isEnabled(const char* button) { return open->part<QPushButton>(button).isEnabled(); }

    std::string error(const char* field) {
        return open->words((std::string(field) + "Error").c_str()).toStdString();
    }

    bool says(const char* words) {
        return comes([&] { return open->words("profileState").contains(QLatin1String(words)); });
    }

    core::Canvas stored(const char* name = "Slipway") {
        const auto read = catalogue::readCanvas(folder.library(), name);
        return read ? *read : core::Canvas{};
    }

    core::Board storedBoard(const char* name) {
        const auto read = catalogue::readBoard(folder.library(), name);
        return read ? *read : core::Board{};
    }

    std::optional<core::Palette> palette(const char* name = "Slate") {
        const auto read = catalogue::readPalette(folder.library(), name);
        return read ? std::optional(read->palette) : std::nullopt;
    }

    LibraryFolder folder;
    core::Canvas canvas;
    core::Board board;
    std::unique_ptr<OpenWindow> open;
    QPointer<ProfilesDialog> dialog;
};

TEST(ProfilesDialog, ChangesACanvasInPlaceAndUndoesIt) {
    Slipway slipway;
    slipway.openDialog();
    slipway.select("Slipway");
    const double before = slipway.open->part<ScreenPicture>("screenPicture").scale();
    slipway.type("canvasPitch", "16");
    slipway.type("canvasBarAt1", "400");
    EXPECT_LT(slipway.open->part<ScreenPicture>("screenPicture").scale(), before);
    EXPECT_NE(slipway.itemOf("Slipway (not kept)"), nullptr);
    EXPECT_EQ(slipway.stored(), slipway.canvas);
    QTest::keyClick(slipway.dialog, Qt::Key_Return);
    ASSERT_TRUE(comes([&] { return slipway.stored().geometry.cellPitch == 16; }));
    EXPECT_EQ(slipway.stored().geometry.swatchCentre.x, 400);
    EXPECT_TRUE(slipway.says("Changed Slipway"));
    EXPECT_NE(slipway.itemOf("Slipway"), nullptr);
    slipway.open->act("undoInLibrary");
    ASSERT_TRUE(comes([&] { return slipway.stored() == slipway.canvas; }));
    EXPECT_TRUE(comes([&] { return slipway.open->part<NumberField>("canvasPitch").value() == 8; }));
    slipway.open->act("redoInLibrary");
    EXPECT_TRUE(comes([&] { return slipway.stored().geometry.cellPitch == 16; }));
}

TEST(ProfilesDialog, SaysBesideTheFieldWhatIsWrong) {
    Slipway slipway;
    slipway.openDialog();
    slipway.select("Slipway");
    slipway.type("canvasPitch", "128");
    EXPECT_THAT(slipway.error("canvasPitch"), HasSubstr("128"));
    EXPECT_FALSE(slipway.isEnabled("profileKeep"));
    slipway.type("canvasPitch", "9");
    EXPECT_EQ(slipway.error("canvasPitch"), "");
    slipway.type("canvasCells2", "0");
    EXPECT_THAT(slipway.error("canvasCells"), HasSubstr("height"));
    slipway.type("canvasCells2", "10");
    slipway.type("canvasColours", "257");
    EXPECT_THAT(slipway.error("canvasColours"), HasSubstr("257"));
    slipway.type("canvasColours", "8");
    slipway.type("canvasName", "CELLS-16");
    EXPECT_THAT(slipway.error("canvasName"), HasSubstr("already"));
    slipway.type("canvasName", " quay");
    EXPECT_THAT(slipway.error("canvasName"), HasSubstr("blanks"));
    slipway.type("canvasName", "quay");
    EXPECT_TRUE(slipway.isEnabled("profileKeep"));
    // A click on a button on the grid would paint.
    QTest::mouseClick(&slipway.open->part<QCheckBox>("canvasFill"), Qt::LeftButton);
    slipway.type("canvasFillAt1", "20");
    slipway.type("canvasFillAt2", "20");
    EXPECT_THAT(slipway.error("canvasFillAt"), HasSubstr("lies on the grid"));
    EXPECT_FALSE(slipway.isEnabled("profileKeep"));
    slipway.type("canvasFillAt2", "32768");
    EXPECT_THAT(slipway.error("canvasFillAt"), HasSubstr("32768"));
    slipway.click("profileTakeBack");
    EXPECT_EQ(slipway.open->part<QLineEdit>("canvasName").text(), u"Slipway");
    EXPECT_FALSE(slipway.isEnabled("profileTakeBack"));
    EXPECT_EQ(slipway.error("canvasFillAt"), "");
    EXPECT_EQ(slipway.stored(), slipway.canvas);
}

TEST(ProfilesDialog, CautionsWhereThePaletteBarLiesOnTheGrid) {
    Slipway slipway;
    slipway.openDialog();
    slipway.select("Slipway");
    slipway.type("canvasBarAt1", "40");
    EXPECT_TRUE(slipway.open->words("profileFacts").contains(u"lies on the grid"));
    slipway.type("canvasBarAt1", "400");
    EXPECT_EQ(slipway.open->words("profileFacts"), u"");
}

TEST(ProfilesDialog, GivesACanvasAFixedPaletteAndFreeColoursAgain) {
    Slipway slipway;
    slipway.openDialog();
    slipway.select("Slipway");
    auto& choice = slipway.open->part<QComboBox>("canvasPalette");
    choice.setCurrentIndex(choice.findText(QStringLiteral("Slate"), Qt::MatchContains));
    EXPECT_FALSE(slipway.open->part<NumberField>("canvasColours").isEnabled());
    slipway.click("profileKeep");
    ASSERT_TRUE(comes([&] { return slipway.stored().palette == slipway.palette(); }));
    ASSERT_TRUE(catalogue::removePalette(slipway.folder.library(), "Slate").has_value());
    EXPECT_TRUE(comes([&] {
        return choice.currentText().contains(u"without a name") ||
               slipway.itemOf("Slate") == nullptr;
    }));
    slipway.select("Winch");
    slipway.select("Slipway");
    EXPECT_EQ(choice.currentText(), u"Fixed: 3 colours without a name");
    choice.setCurrentIndex(0);
    slipway.click("profileKeep");
    EXPECT_TRUE(comes([&] { return !slipway.stored().palette; }));
}

TEST(ProfilesDialog, KeepsWhatIsRightOnLeavingAndRemembersWhatIsNot) {
    Slipway slipway;
    slipway.openDialog();
    slipway.select("Slipway");
    slipway.type("canvasPitch", "12");
    slipway.select("Winch");
    EXPECT_TRUE(comes([&] { return slipway.stored().geometry.cellPitch == 12; }));
    slipway.type("boardSlots", "300");
    EXPECT_THAT(slipway.error("boardSlots"), HasSubstr("300"));
    slipway.select("Slate");
    EXPECT_NE(slipway.itemOf("Winch (not kept)"), nullptr);
    slipway.type("paletteName", "Wet slate");
    // Closing keeps the palette and stays, as the board is not right.
    slipway.click("profileClose");
    EXPECT_TRUE(comes([&] { return slipway.palette("Wet slate").has_value(); }));
    ASSERT_TRUE(slipway.dialog != nullptr && slipway.dialog->isVisible());
    EXPECT_TRUE(
        comes([&] { return slipway.open->part<NumberField>("boardSlots").value() == 300; }));
    slipway.type("boardSlots", "30");
    slipway.click("profileClose");
    EXPECT_TRUE(comes([&] { return slipway.dialog == nullptr; }));
    EXPECT_TRUE(comes([&] { return slipway.storedBoard("Winch").slots == 30; }));
}

TEST(ProfilesDialog, AddsCopiesRenamesAndRemovesByKeys) {
    Slipway slipway;
    slipway.openDialog();
    slipway.select("Winch");
    QTest::keyClick(&slipway.tree(), Qt::Key_D, Qt::ControlModifier);
    EXPECT_TRUE(comes([&] { return slipway.storedBoard("Winch 2").name == "Winch 2"; }));
    ASSERT_TRUE(comes([&] { return slipway.tree().currentItem()->text(0) == u"Winch 2"; }));
    slipway.tree().setFocus();
    QTest::keyClick(&slipway.tree(), Qt::Key_F2);
    auto& name = slipway.open->part<QLineEdit>("boardName");
    ASSERT_TRUE(name.hasFocus());
    QTest::keyClicks(&name, QStringLiteral("Capstan"));
    QTest::keyClick(&name, Qt::Key_Return);
    EXPECT_TRUE(comes([&] { return slipway.storedBoard("Capstan").name == "Capstan"; }));
    EXPECT_EQ(slipway.storedBoard("Winch 2").name, "");
    slipway.tree().setFocus();
    QTest::keyClick(&slipway.tree(), Qt::Key_Delete);
    EXPECT_TRUE(comes([&] { return slipway.storedBoard("Capstan").name.empty(); }));
    EXPECT_TRUE(slipway.says("Removed Capstan"));
    slipway.open->act("undoInLibrary");
    EXPECT_TRUE(comes([&] { return slipway.storedBoard("Capstan").name == "Capstan"; }));
    slipway.select("Slate");
    slipway.tree().setFocus();
    QTest::keyClick(&slipway.tree(), Qt::Key_Insert);
    EXPECT_TRUE(comes([&] { return slipway.palette("Palette 1").has_value(); }));
    EXPECT_TRUE(comes([&] { return slipway.tree().currentItem()->text(0) == u"Palette 1"; }));
}

TEST(ProfilesDialog, ABoardWithALoadStaysAndTheReasonIsSaid) {
    Slipway slipway;
    catalogue::StoredLoad load;
    load.name = "Harbour";
    load.board = "Winch";
    load.slots = {slipway.folder.add(smallTexture("plank", 3))};
    ASSERT_TRUE(catalogue::addLoad(slipway.folder.library(), load).has_value());
    slipway.openDialog();
    slipway.select("Winch");
    slipway.click("profileRemove");
    EXPECT_TRUE(slipway.says("Harbour"));
    EXPECT_TRUE(comes([&] { return slipway.itemOf("Winch") != nullptr; }));
    EXPECT_EQ(slipway.storedBoard("Winch"), slipway.board);
    slipway.select("Winch");
    slipway.type("boardName", "Old winch");
    slipway.click("profileKeep");
    EXPECT_TRUE(comes([&] {
        return catalogue::readLoad(slipway.folder.library(), "Harbour")->board == "Old winch";
    }));
}

TEST(ProfilesDialog, TimingStartsFromASetAndIsChangedOneByOne) {
    Slipway slipway;
    slipway.openDialog();
    slipway.select("Winch");
    auto& set = slipway.open->part<QComboBox>("boardTiming");
    EXPECT_EQ(set.currentText(), u"careful");
    set.setFocus();
    QTest::keyClick(&set, Qt::Key_Down);
    EXPECT_EQ(slipway.open->part<NumberField>("boardPress").value(), 16);
    slipway.type("boardSettle", "60");
    EXPECT_EQ(set.currentText(), u"its own");
    QTest::mouseClick(&slipway.open->part<QCheckBox>("boardDisplay"), Qt::LeftButton);
    slipway.click("profileKeep");
    ASSERT_TRUE(comes([&] { return slipway.storedBoard("Winch").timing.settleMs == 60; }));
    EXPECT_EQ(slipway.storedBoard("Winch").timing.pressMs, 16);
    EXPECT_EQ(slipway.storedBoard("Winch").display, (core::Size{64, 48}));
}

TEST(ProfilesDialog, APaletteIsChangedColourByColour) {
    Slipway slipway;
    slipway.openDialog();
    slipway.select("Slate");
    auto& list = slipway.open->part<QListWidget>("paletteColours");
    list.setCurrentRow(0);
    slipway.type("paletteHex", "#0a0B0c");
    EXPECT_TRUE(list.item(0)->text().contains(u"#0a0b0c"));
    slipway.type("paletteHex", "red");
    EXPECT_THAT(slipway.error("paletteHex"), HasSubstr("red"));
    list.setFocus();
    QTest::keyClick(&list, Qt::Key_Down);
    EXPECT_EQ(slipway.error("paletteHex"), "");
    QTest::keyClick(&list, Qt::Key_Down, Qt::AltModifier);
    QTest::keyClick(&list, Qt::Key_Insert);
    ASSERT_EQ(list.count(), 4);
    slipway.open->prompts.colour = QColor(9, 8, 7);
    slipway.click("palettePick");
    slipway.click("profileKeep");
    // The transparent one went one place up as its neighbour went down.
    ASSERT_TRUE(comes([&] {
        return slipway.palette() ==
               *core::Palette::create({{10, 11, 12}, {3, 3, 3}, {2, 2, 2}, {9, 8, 7}}, 1);
    }));
    ASSERT_EQ(list.currentRow(), 3);
    QTest::mouseClick(&slipway.open->part<QCheckBox>("paletteUnpainted"), Qt::LeftButton);
    list.setCurrentRow(1);
    list.setFocus();
    QTest::keyClick(&list, Qt::Key_Delete);
    QTest::keyClick(&list, Qt::Key_Delete);
    QTest::keyClick(&list, Qt::Key_Delete);
    EXPECT_EQ(list.count(), 2);
    EXPECT_FALSE(slipway.isEnabled("paletteRemove"));
    slipway.click("profileKeep");
    EXPECT_TRUE(comes([&] {
        return slipway.palette() == *core::Palette::create({{10, 11, 12}, {9, 8, 7}}, 1);
    }));
}

TEST(ProfilesDialog, APaletteGoesToAFileAndComesFromOne) {
    Slipway slipway;
    slipway.openDialog();
    slipway.select("Slate");
    slipway.open->prompts.files = {QString::fromStdString(slipway.folder.path("slate.txt"))};
    slipway.click("paletteExport");
    ASSERT_TRUE(slipway.says("slate.txt"));
    EXPECT_EQ(tasks::readPaletteFile(slipway.folder.path("slate.txt")).value(), slipway.palette());
    slipway.select("Winch");
    ASSERT_TRUE(tasks::writeFile(slipway.folder.path("bad.txt"), "#010203\ngreen\n",
                                 tasks::IfExists::Refuse)
                    .has_value());
    slipway.select("Slate");
    slipway.open->prompts.files = {QString::fromStdString(slipway.folder.path("bad.txt"))};
    slipway.click("paletteImport");
    ASSERT_TRUE(slipway.says("line 2"));
    EXPECT_FALSE(slipway.isEnabled("profileKeep"));
    ASSERT_TRUE(tasks::writeFile(slipway.folder.path("good.txt"), "#010203\n#040506 transparent\n",
                                 tasks::IfExists::Refuse)
                    .has_value());
    slipway.open->prompts.files = {QString::fromStdString(slipway.folder.path("good.txt"))};
    slipway.click("paletteImport");
    ASSERT_TRUE(comes([&] { return slipway.isEnabled("profileKeep"); }));
    slipway.click("profileKeep");
    EXPECT_TRUE(comes([&] {
        return slipway.palette() == *core::Palette::create({{1, 2, 3}, {4, 5, 6}}, 1);
    }));
}

TEST(ProfilesDialog, WorksDrawingTimesOutAnewAndShowsWhatAChosenTextureWouldTake) {
    Slipway slipway;
    const core::TextureId id = slipway.folder.add(smallTexture("kelp", 5));
    ASSERT_TRUE(tasks::refreshEstimates(slipway.folder.library()).has_value());
    const auto cost = [&] {
        return catalogue::readTexture(slipway.folder.library(), id)->row.estimate;
    };
    const auto before = cost();
    ASSERT_TRUE(before);
    slipway.openDialog();
    ASSERT_TRUE(comes([&] { return slipway.open->shown() == 1; }));
    slipway.open->grid().selectIds({id});
    slipway.select("Slipway");  // The smallest that takes it.
    EXPECT_TRUE(comes([&] { return slipway.open->words("profileCost").startsWith(u"kelp"); }));
    slipway.type("canvasPitch", "100");
    slipway.type("canvasBarAt1", "3000");
    slipway.click("profileKeep");
    EXPECT_TRUE(comes([&] { return cost() && cost()->drawMs > before->drawMs; }));
    slipway.open->act("undoInLibrary");
    EXPECT_TRUE(comes([&] { return cost() == before; }));
}

TEST(ProfilesDialog, WhatWasRefusedAtLastIsThereAgainToMend) {
    Slipway slipway;
    slipway.openDialog();
    slipway.select("Slipway");
    slipway.type("canvasName", "Quay");
    // Another program is faster; the window does not know yet.
    core::Canvas quay = slipway.canvas;
    quay.name = "Quay";
    ASSERT_TRUE(catalogue::addCanvas(slipway.folder.library(), quay).has_value());
    slipway.click("profileKeep");
    ASSERT_TRUE(slipway.says("already"));
    ASSERT_TRUE(comes([&] { return slipway.itemOf("Slipway (not kept)") != nullptr; }));
    EXPECT_EQ(slipway.open->part<QLineEdit>("canvasName").text(), u"Quay");
    slipway.type("canvasName", "Far quay");
    slipway.click("profileKeep");
    EXPECT_TRUE(comes([&] { return slipway.stored("Far quay").size == quay.size; }));
}

TEST(ProfilesDialog, ClosingTheWindowAtOnceKeepsWhatWasAskedFor) {
    Slipway slipway;
    slipway.folder.addMany(40);
    slipway.openDialog();
    slipway.select("Slipway");
    slipway.type("canvasPitch", "13");
    slipway.click("profileClose");
    slipway.open->window.close();
    slipway.open.reset();
    EXPECT_EQ(slipway.stored().geometry.cellPitch, 13);
}

TEST(ProfilesDialog, NamesFromOutsideArePlainText) {
    Slipway slipway;
    core::Canvas odd = slipway.canvas;
    odd.name = "<b>tarred</b> & wet";
    ASSERT_TRUE(catalogue::addCanvas(slipway.folder.library(), odd).has_value());
    slipway.openDialog();
    slipway.select("<b>tarred</b> & wet");
    slipway.type("canvasPitch", "11");
    slipway.click("profileKeep");
    EXPECT_TRUE(slipway.says("<b>tarred</b>"));
    for (const QLabel* const label : slipway.dialog->findChildren<QLabel*>()) {
        if (!label->text().contains(u"tarred")) continue;
        EXPECT_EQ(label->textFormat(), Qt::PlainText);
    }
}

TEST(ProfilesDialog, EveryFieldHasANameForThoseWhoHearIt) {
    Slipway slipway;
    slipway.openDialog();
    for (const QWidget* const each : slipway.dialog->findChildren<QWidget*>()) {
        const bool isField = qobject_cast<const QSpinBox*>(each) != nullptr ||
                             qobject_cast<const QComboBox*>(each) != nullptr ||
                             qobject_cast<const QAbstractItemView*>(each) != nullptr;
        // A choice box makes a list of its own.
        if (!isField || each->objectName().isEmpty()) continue;
        EXPECT_FALSE(each->accessibleName().isEmpty()) << each->objectName().toStdString();
    }
}

TEST(ScreenPlaces, LieWhereTheCanvasHasThem) {
    core::Canvas canvas;
    canvas.size = {20, 10};
    canvas.freeColours = 20;
    canvas.geometry = {{4, 6}, 8, {200, 8}, 16, 16, core::Point{400, 300}};
    const ScreenPlaces places = screenPlaces(canvas);
    EXPECT_EQ(places.grid, (CountRect{{0, 2}, {160, 80}}));
    EXPECT_EQ(places.bar, (CountRect{{192, 0}, {32, 256}}));
    EXPECT_EQ(places.start, (core::Point{4, 6}));
    EXPECT_EQ(places.extent, (core::Size{416, 316}));
    EXPECT_FALSE(barLiesOnGrid(places));
    canvas.geometry.swatchCentre.x = 167;
    EXPECT_TRUE(barLiesOnGrid(screenPlaces(canvas)));
    canvas.geometry.swatchCentre.x = 168;
    EXPECT_FALSE(barLiesOnGrid(screenPlaces(canvas)));
}

}  // namespace
}  // namespace pantile::desktop
