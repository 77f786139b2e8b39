// The place called Boards and the load tray, through the real window.

#include "desktop/views/boards_page.h"

#include <QAbstractButton>
#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QDragEnterEvent>
#include <QDragMoveEvent>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QSpinBox>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "catalogue/boards.h"
#include "catalogue/edit.h"
#include "catalogue/loads.h"
#include "catalogue/shelves.h"
#include "desktop/models/texture_mime.h"
#include "desktop/views/cost_bar.h"
#include "desktop/views/load_tray.h"
#include "desktop/views/tray_view.h"
#include "library_fixture.h"
#include "open_window.h"
#include "tasks/write_load.h"

namespace pantile::desktop {
namespace {

using core::TextureId;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::SizeIs;
using ::testing::UnorderedElementsAre;
using tests::comes;
using tests::LibraryFolder;
using tests::OpenWindow;
using tests::smallTexture;

// A board of three slots and few bytes, and five textures.
struct Pier {
    Pier() {
        core::Board board;
        board.name = "pier";
        board.slots = 3;
        board.bytes = 600;
        EXPECT_TRUE(catalogue::addBoard(folder.library(), board).has_value());
        for (int seed = 1; seed <= 5; ++seed)
            ids.push_back(folder.add(smallTexture("plank " + std::to_string(seed), 7 * seed)));
    }

    void openWindow() {
        open = std::make_unique<OpenWindow>(folder);
        EXPECT_TRUE(comes([&] { return open->shown() == 5; }));
        EXPECT_TRUE(comes([&] { return boards().count() > 0; }));
    }

    void store(const std::string& name, const std::vector<TextureId>& slots) {
        catalogue::StoredLoad load;
        load.name = name;
        load.board = "pier";
        load.slots = slots;
        EXPECT_TRUE(catalogue::addLoad(folder.library(), load).has_value());
    }

    TrayView& tray() { return open->part<TrayView>("traySlots"); }

    QComboBox& boards() { return open->part<QComboBox>("trayBoards"); }

    QListWidget& loads() { return open->part<QListWidget>("loadList"); }

    std::vector<TextureId> slots(const std::string& load) {
        const auto stored = catalogue::readLoad(folder.library(), load);
        return stored ? stored->slots : std::vector<TextureId>();
    }

    bool lies(const std::string& load, const std::vector<TextureId>& wanted) {
        return comes([&] { return slots(load) == wanted; });
    }

    bool shows(int number) {
        return comes([&] {
            return tray().model()->flags(tray().model()->index(number - 1, 0)) &
                   Qt::ItemIsDragEnabled;
        });
    }

    bool says(const char* words) {
        return comes([&] { return open->words("notice").contains(QLatin1String(words)); });
    }

    void chooseBoard(const char* name) {
        boards().setCurrentIndex(boards().findData(QLatin1String(name)));
        Q_EMIT boards().activated(boards().currentIndex());
    }

    static bool drop(QWidget& target, const QPoint& place, QMimeData* data) {
        return tests::dropOn(target, place, data, Qt::CopyAction | Qt::MoveAction).drop;
    }

    QPoint leftOf(int slot) {
        return tray().visualRect(tray().model()->index(slot - 1, 0)).center() - QPoint(20, 0);
    }

    LibraryFolder folder;
    std::vector<TextureId> ids;
    std::unique_ptr<OpenWindow> open;
};

TEST(Boards, WhatIsPutInMakesALoadAndShowsWhatItTakes) {
    Pier pier;
    pier.openWindow();
    pier.chooseBoard("pier");
    ASSERT_TRUE(comes([&] { return pier.tray().model()->rowCount() == 3; }));
    pier.open->grid().selectIds({pier.ids[1], pier.ids[3]});
    QTest::keyClick(&pier.open->window, Qt::Key_Insert);
    // In the order in which they stand on the wall: the newest first.
    ASSERT_TRUE(pier.lies("Load 1", {pier.ids[3], pier.ids[1]}));
    EXPECT_TRUE(comes([&] { return pier.open->words("traySlotWords") == u"2 of 3 slots"; }));
    EXPECT_TRUE(comes([&] { return !pier.open->words("trayByteWords").startsWith(u'0'); }));
    EXPECT_FALSE(pier.open->part<CostBar>("bytesBar").isOver());
    EXPECT_TRUE(comes([&] {
        return pier.tray()
            .model()
            ->index(1, 0)
            .data(Qt::AccessibleTextRole)
            .toString()
            .startsWith(u"Slot 2: plank 2, ");
    }));
    pier.open->act("undoInLibrary");
    EXPECT_TRUE(comes([&] { return catalogue::listLoads(pier.folder.library())->empty(); }));
    EXPECT_TRUE(comes([&] { return pier.open->words("traySlotWords").startsWith(u"0 of "); }));
}

TEST(Boards, TexturesAreDroppedWhereTheyAreWanted) {
    Pier pier;
    pier.store("evening", {pier.ids[0], pier.ids[1]});
    pier.openWindow();
    ASSERT_TRUE(pier.shows(2));
    EXPECT_TRUE(
        Pier::drop(*pier.tray().viewport(), pier.leftOf(2), textureMimeData({pier.ids[4]})));
    EXPECT_TRUE(pier.lies("evening", {pier.ids[0], pier.ids[4], pier.ids[1]}));
    ASSERT_TRUE(pier.shows(3));
    // Within the tray they are moved.
    EXPECT_TRUE(Pier::drop(*pier.tray().viewport(), pier.leftOf(1),
                           loadMimeData({pier.ids[1]}, "evening")));
    EXPECT_TRUE(pier.lies("evening", {pier.ids[1], pier.ids[0], pier.ids[4]}));
    // A fourth has no slot, and nothing is changed.
    EXPECT_TRUE(
        Pier::drop(*pier.tray().viewport(), pier.leftOf(1), textureMimeData({pier.ids[2]})));
    EXPECT_TRUE(pier.says("4 textures do not fit the 3 slots"));
    EXPECT_THAT(pier.slots("evening"), ElementsAre(pier.ids[1], pier.ids[0], pier.ids[4]));
}

TEST(Boards, WhatIsDraggedOutIsTakenOut) {
    Pier pier;
    pier.store("evening", {pier.ids[0], pier.ids[1], pier.ids[2]});
    pier.openWindow();
    ASSERT_TRUE(pier.shows(3));
    pier.tray().selectIds({pier.ids[1]});
    EXPECT_TRUE(
        Pier::drop(pier.open->window, {300, 200},
                   pier.tray().model()->mimeData(pier.tray().selectionModel()->selectedIndexes())));
    EXPECT_TRUE(pier.lies("evening", {pier.ids[0], pier.ids[2]}));
    EXPECT_TRUE(pier.says("Took 1 texture out of the load evening."));
}

TEST(Boards, WhatIsLetGoOfBesideTheSlotsStaysInTheTray) {
    Pier pier;
    pier.store("evening", {pier.ids[0], pier.ids[1]});
    pier.openWindow();
    ASSERT_TRUE(pier.shows(2));
    auto& tray = pier.open->part<QWidget>("loadTray");
    auto& bar = pier.open->part<QWidget>("bytesBar");
    const QPoint place = bar.mapTo(&tray, bar.rect().center());
    EXPECT_TRUE(Pier::drop(tray, place, loadMimeData({pier.ids[0]}, "evening")));
    EXPECT_TRUE(pier.lies("evening", {pier.ids[1], pier.ids[0]})) << "the last one now";
    EXPECT_TRUE(Pier::drop(tray, place, textureMimeData({pier.ids[3]})));
    EXPECT_TRUE(pier.lies("evening", {pier.ids[1], pier.ids[0], pier.ids[3]}));
}

TEST(Boards, KeysAloneMoveAndTakeOut) {
    Pier pier;
    pier.store("evening", {pier.ids[0], pier.ids[1], pier.ids[2]});
    pier.openWindow();
    ASSERT_TRUE(pier.shows(3));
    pier.tray().setFocus();
    QTest::keyClick(&pier.tray(), Qt::Key_Home);
    QTest::keyClick(&pier.tray(), Qt::Key_Right, Qt::AltModifier);
    ASSERT_TRUE(pier.lies("evening", {pier.ids[1], pier.ids[0], pier.ids[2]}));
    EXPECT_TRUE(comes([&] { return pier.tray().selectedIds() == std::vector{pier.ids[0]}; }));
    EXPECT_TRUE(comes([&] { return pier.tray().currentSlot() == 1; }));
    QTest::keyClick(&pier.tray(), Qt::Key_Left, Qt::AltModifier);
    ASSERT_TRUE(pier.lies("evening", {pier.ids[0], pier.ids[1], pier.ids[2]}));
    ASSERT_TRUE(comes([&] { return pier.tray().currentSlot() == 0; }));
    QTest::keyClick(&pier.tray(), Qt::Key_Delete);
    EXPECT_TRUE(pier.lies("evening", {pier.ids[1], pier.ids[2]}));
    QTest::keyClick(&pier.tray(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(pier.lies("evening", {pier.ids[0], pier.ids[1], pier.ids[2]}));
}

TEST(Boards, ThereAreSeveralLoadsAndTexturesGoBetweenThem) {
    Pier pier;
    pier.store("evening", {pier.ids[0], pier.ids[1]});
    pier.store("morning", {pier.ids[2]});
    pier.openWindow();
    pier.open->act("boardsPlace");
    ASSERT_TRUE(comes([&] { return pier.loads().count() == 2; }));
    pier.loads().setCurrentRow(0);
    ASSERT_TRUE(
        comes([&] { return pier.open->part<QComboBox>("trayLoads").currentText() == u"evening"; }));
    ASSERT_TRUE(pier.shows(2));
    const QPoint morning = pier.loads().visualItemRect(pier.loads().item(1)).center();
    EXPECT_TRUE(
        Pier::drop(*pier.loads().viewport(), morning, loadMimeData({pier.ids[1]}, "evening")));
    EXPECT_TRUE(pier.lies("morning", {pier.ids[2], pier.ids[1]}));
    EXPECT_THAT(pier.slots("evening"), ElementsAre(pier.ids[0]));
    // From the library a texture is put in, and stays where it was.
    EXPECT_TRUE(Pier::drop(*pier.loads().viewport(), morning, textureMimeData({pier.ids[0]})));
    EXPECT_TRUE(pier.lies("morning", {pier.ids[2], pier.ids[1], pier.ids[0]}));
    EXPECT_THAT(pier.slots("evening"), ElementsAre(pier.ids[0]));
}

TEST(Boards, LoadsAreMadeRenamedAndRemoved) {
    Pier pier;
    pier.store("evening", {pier.ids[0]});
    pier.openWindow();
    pier.open->act("boardsPlace");
    QTest::keyClick(&pier.open->window, Qt::Key_N, Qt::ControlModifier);
    const auto shown = [&] { return pier.open->part<QComboBox>("trayLoads").currentText(); };
    ASSERT_TRUE(comes([&] { return shown() == u"Load 1"; }));
    pier.open->prompts.name = QStringLiteral("spring <tide>");
    pier.open->act("renameLoad");
    ASSERT_TRUE(comes([&] { return shown() == u"spring <tide>"; }));
    EXPECT_TRUE(pier.says("The load is called spring <tide> now."));
    pier.open->prompts.name = QStringLiteral("evening");
    pier.open->act("renameLoad");
    EXPECT_TRUE(pier.says("evening"));
    EXPECT_EQ(shown(), QStringLiteral("spring <tide>"));
    pier.open->act("removeLoad");
    ASSERT_TRUE(comes([&] { return shown() == u"evening"; }));
    EXPECT_THAT(*catalogue::listLoads(pier.folder.library()), SizeIs(1));
    pier.open->act("undoInLibrary");
    EXPECT_TRUE(comes([&] { return pier.loads().count() == 2; }));
}

TEST(Boards, TheBestAreChosenAndReasonsAreGiven) {
    Pier pier;
    for (std::size_t i = 0; i < 2; ++i) {
        catalogue::TextPatch stars;
        stars.stars = 5;
        ASSERT_TRUE(catalogue::setText(pier.folder.library(), std::span(&pier.ids[i], 1), stars)
                        .has_value());
    }
    pier.store("evening", {pier.ids[4]});
    pier.openWindow();
    pier.open->act("boardsPlace");
    ASSERT_TRUE(comes([&] { return pier.loads().count() == 1; }));
    pier.open->grid().selectAll();
    EXPECT_TRUE(comes(
        [&] { return pier.open->part<QComboBox>("chooseFrom").itemText(0).startsWith(u'5'); }));
    pier.open->part<QAbstractButton>("chooseKeep").click();
    QTest::keyClick(&pier.open->window, Qt::Key_M, Qt::ControlModifier);
    ASSERT_TRUE(comes([&] { return pier.slots("evening").size() == 3; }));
    EXPECT_THAT(pier.slots("evening"), UnorderedElementsAre(pier.ids[0], pier.ids[1], pier.ids[4]));
    EXPECT_TRUE(comes([&] { return pier.open->words("chooseAnswer").contains(u"left out"); }));
    EXPECT_THAT(pier.open->words("chooseAnswer").toStdString(),
                ::testing::StartsWith("3 textures chosen, worth 13"));
    const QStringList lines = pier.open->part<QPlainTextEdit>("leftOut").toPlainText().split(u'\n');
    ASSERT_EQ(lines.size(), 2);
    EXPECT_TRUE(lines.front().startsWith(u"3 plank 3: ")) << lines.front().toStdString();
}

TEST(Boards, AShelfIsSplitOverSeveralLoads) {
    Pier pier;
    ASSERT_TRUE(catalogue::putOnShelf(pier.folder.library(), pier.ids, "harbour").has_value());
    pier.openWindow();
    pier.chooseBoard("pier");
    pier.open->act("boardsPlace");
    auto& from = pier.open->part<QComboBox>("chooseFrom");
    ASSERT_TRUE(comes([&] { return from.count() == 2; }));
    ASSERT_TRUE(comes([&] { return pier.tray().model()->rowCount() == 3; }));
    from.setCurrentIndex(1);
    pier.open->part<QAbstractButton>("chooseOverSeveral").click();
    pier.open->part<QAbstractButton>("chooseForMeButton").click();
    ASSERT_TRUE(comes([&] { return pier.loads().count() == 2; }));
    std::vector<TextureId> all = pier.slots("Load 1");
    const std::vector<TextureId> second = pier.slots("Load 2");
    all.insert(all.end(), second.begin(), second.end());
    EXPECT_THAT(all, ::testing::UnorderedElementsAreArray(pier.ids));
    EXPECT_TRUE(pier.says("2 loads; fewer cannot be."));
}

TEST(Boards, ThereMustBeSomethingToChooseFrom) {
    Pier pier;
    pier.openWindow();
    pier.open->grid().clearSelection();
    pier.open->act("chooseForMe");
    EXPECT_TRUE(pier.says("There is nothing to choose from."));
}

TEST(Boards, WhatIsPastALimitIsSaidInWordsToo) {
    Pier pier;
    core::Board board = *catalogue::readBoard(pier.folder.library(), "pier");
    board.bytes = 100;
    ASSERT_TRUE(catalogue::setBoard(pier.folder.library(), board).has_value());
    pier.store("evening", {pier.ids[0], pier.ids[1]});
    pier.openWindow();
    pier.open->act("boardsPlace");
    EXPECT_TRUE(comes([&] { return pier.open->part<CostBar>("bytesBar").isOver(); }));
    EXPECT_TRUE(pier.open->words("trayProblem").contains(u"more than the board holds"));
    EXPECT_TRUE(pier.open->part<QWidget>("trayProblem").isVisible());
    // Neither is there a file of what does not fit.
    pier.open->prompts.folder = QString::fromStdString(pier.folder.path("card"));
    pier.open->act("writeLoad");
    EXPECT_TRUE(comes([&] { return pier.open->part<QLabel>("notice").isVisible(); }));
    EXPECT_FALSE(std::filesystem::exists(pier.folder.path("card")));
}

TEST(Boards, ATimeLimitIsHeldByTheBar) {
    Pier pier;
    pier.store("evening", {pier.ids[0], pier.ids[1]});
    pier.openWindow();
    pier.open->act("boardsPlace");
    auto& minutes = pier.open->part<QSpinBox>("chooseMinutes");
    EXPECT_EQ(minutes.text(), QStringLiteral("any time"));
    ASSERT_TRUE(comes([&] { return pier.open->words("trayTimeWords").endsWith(u"of drawing"); }));
    minutes.setValue(1);
    EXPECT_TRUE(pier.open->words("trayTimeWords").endsWith(u"of 1 min 0 s"));
    EXPECT_FALSE(pier.open->part<CostBar>("secondsBar").isOver());
}

TEST(Boards, ALoadIsWrittenVerifiedAndPrinted) {
    Pier pier;
    pier.store("evening", {pier.ids[0], pier.ids[1]});
    pier.openWindow();
    pier.open->act("boardsPlace");
    ASSERT_TRUE(pier.shows(2));
    pier.open->prompts.folder = QString::fromStdString(pier.folder.path("card"));
    pier.open->part<QComboBox>("writeAs").setCurrentIndex(1);
    QTest::keyClick(&pier.open->window, Qt::Key_W, Qt::ControlModifier | Qt::ShiftModifier);
    ASSERT_TRUE(pier.says("Wrote the load evening for pier"));
    const std::string file = pier.folder.path("card/evening/load.bin");
    ASSERT_TRUE(tasks::verifyLoadFile(file)->verified());
    EXPECT_TRUE(comes([&] {
        return pier.open->part<QPlainTextEdit>("written").toPlainText().contains(
            u"evening for pier");
    }));
    // A second time nothing is replaced unless one says so.
    pier.open->act("writeLoad");
    ASSERT_TRUE(pier.says("Or tick that files may be replaced."));
    pier.open->part<QAbstractButton>("writeReplace").click();
    pier.open->act("writeLoad");
    ASSERT_TRUE(pier.says("Wrote the load evening"));

    pier.open->prompts.files = QStringList(QString::fromStdString(file));
    pier.open->act("verifyLoad");
    EXPECT_TRUE(pier.says("The load evening is right in every slot."));
    EXPECT_TRUE(pier.open->part<QPlainTextEdit>("noticeLines")
                    .toPlainText()
                    .contains(u"Slot 2, plank 2: right"));
    pier.open->act("printSlots");
    EXPECT_TRUE(pier.says("Wrote the slot sheet of the load evening"));
}

TEST(Boards, ADamagedFileIsTold) {
    Pier pier;
    pier.openWindow();
    const QString path = QString::fromStdString(pier.folder.path("load.bin"));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("driftwood");
    file.close();
    pier.open->prompts.files = QStringList(path);
    pier.open->act("verifyLoad");
    EXPECT_TRUE(pier.says("load.bin"));
}

TEST(Boards, LeadToTheCalibrationForTheirBoard) {
    Pier pier;
    pier.store("evening", {pier.ids[0]});
    pier.openWindow();
    pier.open->act("boardsPlace");
    ASSERT_TRUE(pier.shows(1));
    pier.open->act("calibrate");
    EXPECT_TRUE(pier.open->part<QWidget>("calibrationDialog").isVisible());
    EXPECT_EQ(pier.open->part<QComboBox>("calibrationBoard").currentText(), u"pier");
}

TEST(Boards, CautionsStandBesideTheWriting) {
    Pier pier;
    pier.openWindow();
    pier.open->act("boardsPlace");
    QString all;
    for (const QLabel* const label : pier.open->part<QWidget>("writeForm").findChildren<QLabel*>())
        all += label->text();
    EXPECT_TRUE(all.contains(u"let go of the trigger before plugging it into a computer"));
    EXPECT_TRUE(all.contains(u"follow the board maker's instructions"));
}

TEST(Boards, TheTrayStandsWhereTexturesGoAndCanBePutAway) {
    Pier pier;
    pier.openWindow();
    auto& tray = pier.open->part<QWidget>("loadTray");
    EXPECT_TRUE(tray.isVisible());
    pier.open->act("editPlace");
    EXPECT_FALSE(tray.isVisible());
    pier.open->act("boardsPlace");
    EXPECT_TRUE(tray.isVisible());
    pier.open->act("tray");
    EXPECT_FALSE(tray.isVisible());
    pier.open->act("tray");
    pier.open->act("libraryPlace");
    EXPECT_TRUE(tray.isVisible());
    pier.open->window.resize(900, 400);
    EXPECT_TRUE(comes([&] { return !tray.isVisible(); })) << "the library needs the room";
}

TEST(Boards, ClosingWhileALoadIsWrittenWritesIt) {
    Pier pier;
    pier.store("evening", {pier.ids[0], pier.ids[1]});
    pier.openWindow();
    ASSERT_TRUE(pier.shows(2));
    pier.open->prompts.folder = QString::fromStdString(pier.folder.path("card"));
    pier.open->grid().selectIds({pier.ids[3]});
    pier.open->act("putInLoad");
    pier.open->act("writeLoad");
    pier.open->window.close();
    EXPECT_THAT(pier.slots("evening"), ElementsAre(pier.ids[0], pier.ids[1], pier.ids[3]));
    EXPECT_THAT(catalogue::readLoad(pier.folder.library(), "evening")->writings, SizeIs(1));
}

TEST(TrayModelTest, HoldsTheRulesOfModels) {
    TrayModel model;
    const QAbstractItemModelTester tester(&model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    core::Board board;
    board.slots = 3;
    catalogue::TextureRow row;
    row.id = TextureId{7};
    row.title = "rope";
    model.setLoad("evening", board, {row});
    EXPECT_EQ(model.rowCount(), 3);
    EXPECT_EQ(model.index(0).data(Qt::AccessibleTextRole).toString(),
              QStringLiteral("Slot 1: rope, being planned"));
    EXPECT_EQ(model.index(2).data(Qt::AccessibleTextRole).toString(),
              QStringLiteral("Slot 3: empty"));
    tasks::LoadCosts costs;
    costs.slots.push_back({row, {{400, 9000}, {300, 11000}}, 1, {}});
    model.setCosts(costs);
    EXPECT_EQ(model.index(0).data(Qt::AccessibleTextRole).toString(),
              QStringLiteral("Slot 1: rope, 11.0 s · 300 bytes\nVariant 1: 9.0 s · 400 bytes\n"
                             "Variant 2, taken: 11.0 s · 300 bytes"));
    model.setLoad("", board, {});
    EXPECT_FALSE(model.costs());
    const std::unique_ptr<QMimeData> none(model.mimeData({model.index(0)}));
    EXPECT_THAT(textureIdsIn(*none), IsEmpty());
}

}  // namespace
}  // namespace pantile::desktop
