// Organising the library: words, stars, tags, shelves, saved searches, removing, revisions.

#include "desktop/dialogs/library_actions.h"

#include <memory>

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QComboBox>
#include <QDragEnterEvent>
#include <QDragMoveEvent>
#include <QImage>
#include <QUrl>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "catalogue/edit.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "desktop/models/texture_mime.h"
#include "desktop/views/filter_pane.h"
#include "desktop/views/search_field.h"
#include "library_fixture.h"
#include "open_window.h"

namespace pantile::desktop {
namespace {

using ::testing::ElementsAre;
using tests::comes;
using tests::LibraryFolder;
using tests::OpenWindow;
using tests::smallTexture;

catalogue::TextureRow rowOf(LibraryFolder& folder, core::TextureId id) {
    return catalogue::readRows(folder.library(), std::span(&id, 1))->front();
}

// Three textures on the wall, all chosen.
struct Wall {
    Wall() {
        kelp = folder.add(smallTexture("kelp", 1));
        foam = folder.add(smallTexture("foam", 2));
        rope = folder.add(smallTexture("rope", 3));
        open = std::make_unique<OpenWindow>(folder);
        EXPECT_TRUE(comes([&] { return open->shown() == 3; }));
        open->grid().selectAll();
    }

    FilterPane& filters() { return open->part<FilterPane>("filterPane"); }

    QTreeWidgetItem* filter(const char* words) {
        const auto found = filters().findItems(QLatin1String(words), Qt::MatchRecursive);
        return found.isEmpty() ? nullptr : found.front();
    }

    void clickFilter(const char* words) {
        ASSERT_TRUE(comes([&] { return filter(words) != nullptr; })) << words;
        QTest::mouseClick(filters().viewport(), Qt::LeftButton, {},
                          filters().visualItemRect(filter(words)).center());
    }

    // As a drag that began on the wall ends.
    bool dropOn(const char* words) {
        const QPoint place = filters().visualItemRect(filter(words)).center();
        return tests::dropOn(
                   *filters().viewport(), place,
                   open->grid().model()->mimeData(open->grid().selectionModel()->selectedIndexes()))
            .move;
    }

    LibraryFolder folder;
    core::TextureId kelp;
    core::TextureId foam;
    core::TextureId rope;
    std::unique_ptr<OpenWindow> open;
};

TEST(LibraryActions, ChangesTheWordsOfManyAtOnceAndNothingElse) {
    Wall wall;
    QTest::keyClick(&wall.open->grid(), Qt::Key_F2);
    auto& accept = wall.open->part<QAbstractButton>("wordsChange");
    EXPECT_FALSE(accept.isEnabled()) << "nothing was changed yet";
    QTest::keyClicks(&wall.open->part<QLineEdit>("wordsLicence"), QStringLiteral("CC0"));
    QTest::keyClicks(&wall.open->part<QLineEdit>("wordsAdd"), QStringLiteral("wet, shore"));
    wall.open->part<QComboBox>("wordsStars").setCurrentIndex(5);
    QTest::mouseClick(&accept, Qt::LeftButton);
    ASSERT_TRUE(
        comes([&] { return wall.open->words("notice") == QStringLiteral("Changed 3 textures."); }));
    for (const core::TextureId id : {wall.kelp, wall.foam, wall.rope}) {
        const auto row = rowOf(wall.folder, id);
        EXPECT_EQ(row.licence, "CC0");
        EXPECT_EQ(row.author, "Tidewrack studio");
        EXPECT_EQ(row.stars, 4);
        EXPECT_THAT(row.tags, ElementsAre("shore", "wet"));
    }
    EXPECT_EQ(rowOf(wall.folder, wall.kelp).title, "kelp");
    EXPECT_TRUE(comes([&] { return wall.filter("shore") != nullptr; }));
    EXPECT_EQ(wall.filter("shore")->text(1), QStringLiteral("3"));
}

TEST(LibraryActions, ShowsTheWordsOfOneAndEmptiesWhatIsEmptied) {
    Wall wall;
    wall.open->grid().selectIds({wall.foam});
    wall.open->act("editWords");
    auto& title = wall.open->part<QLineEdit>("wordsTitle");
    auto& author = wall.open->part<QLineEdit>("wordsAuthor");
    EXPECT_EQ(title.text(), QStringLiteral("foam"));
    title.selectAll();
    QTest::keyClicks(&title, QStringLiteral("sea foam"));
    author.selectAll();
    QTest::keyClick(&author, Qt::Key_Delete);
    QTest::keyClick(&author, Qt::Key_Return);
    EXPECT_TRUE(comes([&] { return rowOf(wall.folder, wall.foam).title == "sea foam"; }));
    EXPECT_EQ(rowOf(wall.folder, wall.foam).author, "");
    EXPECT_TRUE(
        comes([&] { return wall.open->words("detailTitle") == QStringLiteral("sea foam"); }));
}

TEST(LibraryActions, SaysWhyATagCannotBe) {
    Wall wall;
    wall.open->act("editWords");
    QTest::keyClicks(&wall.open->part<QLineEdit>("wordsAdd"), QStringLiteral("(wet"));
    EXPECT_TRUE(wall.open->part<QWidget>("wordsError").isVisible());
    EXPECT_FALSE(wall.open->part<QAbstractButton>("wordsChange").isEnabled());
}

TEST(LibraryActions, GivesStarsByKeys) {
    Wall wall;
    wall.open->grid().selectIds({wall.rope});
    QTest::keyClick(&wall.open->window, Qt::Key_3, Qt::AltModifier);
    EXPECT_TRUE(comes([&] { return rowOf(wall.folder, wall.rope).stars == 3; }));
    EXPECT_TRUE(comes([&] { return wall.open->words("stars").startsWith(QChar(0x2605)); }));
    QTest::keyClick(&wall.open->window, Qt::Key_0, Qt::AltModifier);
    EXPECT_TRUE(comes([&] { return rowOf(wall.folder, wall.rope).stars == 0; }));
}

TEST(LibraryActions, PutsOnShelvesAndTakesFromThem) {
    Wall wall;
    wall.open->prompts.name = QStringLiteral("North shore");
    wall.open->act("putOnShelf");
    ASSERT_TRUE(comes([&] { return wall.filter("North shore") != nullptr; }));
    EXPECT_EQ(wall.filter("North shore")->text(1), QStringLiteral("3"));
    wall.open->grid().selectIds({wall.kelp});
    wall.clickFilter("North shore");
    EXPECT_TRUE(comes([&] { return wall.open->shown() == 3; }));
    EXPECT_EQ(wall.open->part<QLineEdit>("searchField").text(),
              QStringLiteral("shelf:\"North shore\""));
    wall.open->prompts.name.clear();  // The shelf that is shown is meant; nobody is asked.
    wall.open->act("takeFromShelf");
    EXPECT_TRUE(comes([&] { return wall.open->shown() == 2; }));
    EXPECT_THAT(rowOf(wall.folder, wall.kelp).shelves, ::testing::IsEmpty());
}

TEST(LibraryActions, TakesWhatIsDroppedOnAShelfOrATag) {
    Wall wall;
    ASSERT_TRUE(catalogue::createShelf(wall.folder.library(), "Harbour").has_value());
    const std::vector<std::string> tags = {"wet"};
    ASSERT_TRUE(catalogue::changeTags(wall.folder.library(), std::span(&wall.kelp, 1), tags, {})
                    .has_value());
    ASSERT_TRUE(comes([&] { return wall.filter("Harbour") && wall.filter("wet"); }));
    wall.open->grid().selectIds({wall.foam, wall.rope});
    EXPECT_TRUE(wall.dropOn("Harbour"));
    EXPECT_TRUE(comes([&] { return !rowOf(wall.folder, wall.rope).shelves.empty(); }));
    EXPECT_THAT(rowOf(wall.folder, wall.foam).shelves, ElementsAre("Harbour"));
    ASSERT_TRUE(comes([&] { return wall.filter("Harbour")->text(1) == QStringLiteral("2"); }));
    EXPECT_TRUE(wall.dropOn("wet"));
    EXPECT_TRUE(comes([&] { return !rowOf(wall.folder, wall.foam).tags.empty(); }));
    EXPECT_FALSE(wall.dropOn("All")) << "only shelves and tags take something";
}

TEST(LibraryActions, OrdersShelvesByKeys) {
    Wall wall;
    ASSERT_TRUE(catalogue::createShelf(wall.folder.library(), "Harbour").has_value());
    ASSERT_TRUE(catalogue::createShelf(wall.folder.library(), "Cliff").has_value());
    ASSERT_TRUE(comes([&] { return wall.filter("Cliff") != nullptr; }));
    wall.filters().setCurrentItem(wall.filter("Cliff"));
    QTest::keyClick(&wall.filters(), Qt::Key_Up, Qt::AltModifier);
    EXPECT_TRUE(comes(
        [&] { return catalogue::listShelves(wall.folder.library())->front().name == "Cliff"; }));
}

TEST(LibraryActions, KeepsASearchAndAsksItAgain) {
    Wall wall;
    wall.open->type("title:foam");
    ASSERT_TRUE(comes([&] { return wall.open->shown() == 1; }));
    wall.open->prompts.name = QStringLiteral("Foams");
    wall.open->act("saveSearch");
    ASSERT_TRUE(comes([&] { return wall.filter("Foams") != nullptr; }));
    EXPECT_EQ(wall.filter("Foams")->text(1), QStringLiteral("1"));
    wall.clickFilter("All");
    EXPECT_TRUE(comes([&] { return wall.open->shown() == 3; }));
    wall.filters().setCurrentItem(wall.filter("Foams"));
    QTest::keyClick(&wall.filters(), Qt::Key_Return);
    EXPECT_TRUE(comes([&] { return wall.open->shown() == 1; }));
    wall.open->act("dropFilter");
    EXPECT_TRUE(comes([&] { return wall.filter("Foams") == nullptr; }));
    EXPECT_TRUE(catalogue::listSearches(wall.folder.library())->empty());
}

TEST(LibraryActions, RenamesAndRemovesWhatIsChosenAtTheSide) {
    Wall wall;
    auto& library = wall.folder.library();
    ASSERT_TRUE(catalogue::putOnShelf(library, std::span(&wall.kelp, 1), "Cliff").has_value());
    ASSERT_TRUE(
        catalogue::changeTags(library, std::span(&wall.foam, 1), {{"wet"}}, {}).has_value());
    wall.open->act("renameFilter");
    EXPECT_TRUE(comes([&] { return wall.open->words("notice").startsWith(u"Choose a shelf"); }));
    ASSERT_TRUE(comes([&] { return wall.filter("Cliff") && wall.filter("wet"); }));

    wall.filters().setFocus();
    wall.filters().setCurrentItem(wall.filter("Cliff"));
    wall.open->prompts.name = QStringLiteral("Quay");
    QTest::keyClick(&wall.filters(), Qt::Key_F2);
    ASSERT_TRUE(comes([&] { return wall.filter("Quay") != nullptr; }));
    EXPECT_EQ(catalogue::listShelves(library)->front().name, "Quay");
    wall.filters().setCurrentItem(wall.filter("wet"));
    wall.open->prompts.name = QStringLiteral("damp");
    QTest::keyClick(&wall.filters(), Qt::Key_F2);
    ASSERT_TRUE(comes([&] { return wall.filter("damp") != nullptr; }));
    EXPECT_THAT(rowOf(wall.folder, wall.foam).tags, ElementsAre("damp"));

    // The key removes what is chosen there, and no texture.
    wall.filters().setCurrentItem(wall.filter("damp"));
    QTest::keyClick(&wall.filters(), Qt::Key_Delete);
    ASSERT_TRUE(comes([&] { return wall.filter("damp") == nullptr; }));
    EXPECT_EQ(wall.open->shown(), 3);
    wall.open->act("undoInLibrary");
    ASSERT_TRUE(comes([&] { return wall.filter("damp") != nullptr; }));
    wall.filters().setCurrentItem(wall.filter("Quay"));
    QTest::keyClick(&wall.filters(), Qt::Key_Delete);
    EXPECT_TRUE(comes([&] { return catalogue::listShelves(library)->empty(); }));
    EXPECT_EQ(wall.open->shown(), 3);
}

TEST(LibraryActions, RefusesASearchNameThatIsTaken) {
    Wall wall;
    ASSERT_TRUE(catalogue::saveSearch(wall.folder.library(), {"Foams", "foam"}).has_value());
    wall.open->prompts.name = QStringLiteral("Foams");
    wall.open->act("saveSearch");
    EXPECT_TRUE(
        comes([&] { return wall.open->words("notice").contains(QStringLiteral("Foams")); }));
    EXPECT_EQ(catalogue::listSearches(wall.folder.library())->front().query, "foam");
}

TEST(LibraryActions, RemovesAndBringsBack) {
    Wall wall;
    wall.open->grid().selectIds({wall.foam});
    wall.open->grid().setFocus();
    QTest::keyClick(&wall.open->grid(), Qt::Key_Delete);
    EXPECT_TRUE(comes([&] { return wall.open->shown() == 2; }));
    EXPECT_TRUE(rowOf(wall.folder, wall.foam).removed);
    wall.clickFilter("Removed");
    ASSERT_TRUE(comes([&] { return wall.open->shown() == 1; }));
    wall.open->grid().selectAll();
    wall.open->act("recover");
    EXPECT_TRUE(comes([&] { return !rowOf(wall.folder, wall.foam).removed; }));
    wall.open->act("showAll");
    EXPECT_TRUE(comes([&] { return wall.open->shown() == 3; }));
}

TEST(LibraryActions, LeavesTheDeleteKeyToTheSearchField) {
    Wall wall;
    auto& field = wall.open->part<QLineEdit>("searchField");
    field.setText(QStringLiteral("foam"));
    field.setFocus();
    field.setCursorPosition(0);
    QTest::keyClick(&field, Qt::Key_Delete);
    EXPECT_EQ(field.text(), QStringLiteral("oam"));
    EXPECT_FALSE(rowOf(wall.folder, wall.foam).removed);
}

TEST(LibraryActions, ShowsTheRevisionsAndGoesBackToOne) {
    Wall wall;
    catalogue::TextPatch patch;
    patch.title = "bladder wrack";
    ASSERT_TRUE(
        catalogue::setText(wall.folder.library(), std::span(&wall.kelp, 1), patch).has_value());
    wall.open->grid().selectIds({wall.kelp});
    ASSERT_TRUE(comes([&] {
        return wall.open->window.findChild<QAbstractButton*>(QStringLiteral("revert1")) !=
                   nullptr &&
               wall.open->words("detailTitle") == QStringLiteral("bladder wrack");
    }));
    QTest::mouseClick(&wall.open->part<QAbstractButton>("revert1"), Qt::LeftButton);
    EXPECT_TRUE(comes([&] { return rowOf(wall.folder, wall.kelp).title == "kelp"; }));
    EXPECT_TRUE(comes([&] { return wall.open->words("detailTitle") == QStringLiteral("kelp"); }));
}

TEST(LibraryActions, UndoesAndRedoesEachChangeByName) {
    Wall wall;
    wall.open->act("fiveStars");
    ASSERT_TRUE(comes([&] { return rowOf(wall.folder, wall.rope).stars == 5; }));
    ASSERT_TRUE(comes([&] {
        return wall.open->part<QAction>("undoInLibrary").text() ==
               QStringLiteral("&Undo: Change the words of 3 textures");
    }));
    wall.open->grid().setFocus();
    QTest::keySequence(&wall.open->grid(), QKeySequence::Undo);
    EXPECT_TRUE(comes([&] { return rowOf(wall.folder, wall.rope).stars == 0; }));
    EXPECT_EQ(rowOf(wall.folder, wall.kelp).stars, 0);
    ASSERT_TRUE(comes([&] { return wall.open->part<QAction>("redoInLibrary").isEnabled(); }));
    EXPECT_EQ(wall.open->words("notice"), QStringLiteral("Undone: Change the words of 3 textures"));
    QTest::keySequence(&wall.open->grid(), QKeySequence::Redo);
    EXPECT_TRUE(comes([&] { return rowOf(wall.folder, wall.rope).stars == 5; }));
}

TEST(LibraryActions, UndoesAfterARestartWhatWasDoneBefore) {
    Wall wall;
    wall.open->prompts.name = QStringLiteral("North shore");
    wall.open->act("putOnShelf");
    ASSERT_TRUE(comes([&] { return wall.filter("North shore") != nullptr; }));
    wall.open->act("remove");
    ASSERT_TRUE(comes([&] { return rowOf(wall.folder, wall.foam).removed; }));
    wall.open.reset();
    wall.open = std::make_unique<OpenWindow>(wall.folder);
    ASSERT_TRUE(comes([&] { return wall.open->part<QAction>("undoInLibrary").isEnabled(); }));
    wall.open->act("undoInLibrary");
    EXPECT_TRUE(comes([&] { return wall.open->shown() == 3; }));
    wall.open->act("undoInLibrary");
    EXPECT_TRUE(comes([&] { return catalogue::listShelves(wall.folder.library())->empty(); }));
}

TEST(LibraryActions, UndoesTheAddingOfAllThatCameAtOnce) {
    Wall wall;
    QStringList files;
    for (int i = 0; i < 3; ++i) {
        QImage picture(5, 5, QImage::Format_RGB32);
        picture.fill(qRgb(i * 50, 90, 20));
        picture.setPixel(i, 1, qRgb(200, 10, 10));
        files.append(
            QString::fromStdString(wall.folder.path("rope-" + std::to_string(i) + ".png")));
        ASSERT_TRUE(picture.save(files.back()));
    }
    QMimeData data;
    QList<QUrl> urls;
    for (const QString& file : files) urls.append(QUrl::fromLocalFile(file));
    data.setUrls(urls);
    wall.open->drop(data);
    ASSERT_TRUE(comes([&] { return wall.open->shown() == 6; }));
    ASSERT_TRUE(comes([&] {
        return wall.open->part<QAction>("undoInLibrary")
            .text()
            .startsWith(QStringLiteral("&Undo: Add "));
    }));
    wall.open->act("undoInLibrary");
    EXPECT_TRUE(comes([&] { return wall.open->shown() == 3; }));
    ASSERT_TRUE(comes([&] { return wall.open->part<QAction>("redoInLibrary").isEnabled(); }));
    wall.open->act("redoInLibrary");
    EXPECT_TRUE(comes([&] { return wall.open->shown() == 6; }));
}

TEST(LibraryActions, LeavesTheUndoKeyToTheSearchField) {
    Wall wall;
    wall.open->act("twoStars");
    ASSERT_TRUE(comes([&] { return rowOf(wall.folder, wall.rope).stars == 2; }));
    ASSERT_TRUE(comes([&] { return wall.open->part<QAction>("undoInLibrary").isEnabled(); }));
    wall.open->type("foam");
    auto& field = wall.open->part<QLineEdit>("searchField");
    QTest::keySequence(&field, QKeySequence::Undo);
    EXPECT_NE(field.text(), QStringLiteral("foam"));
    EXPECT_EQ(rowOf(wall.folder, wall.rope).stars, 2);
}

TEST(LibraryActions, FinishesWhatWasAskedForBeforeTheWindowCloses) {
    Wall wall;
    for (const char* const stars : {"oneStar", "fiveStars", "twoStars"}) wall.open->act(stars);
    EXPECT_TRUE(wall.open->window.close());
    EXPECT_EQ(rowOf(wall.folder, wall.rope).stars, 2);
}

TEST(LibraryActions, ReportsWhatCannotBeDoneAndGoesOn) {
    Wall wall;
    wall.open->grid().selectIds({wall.rope});
    // Another program destroys it in the moment before.
    ASSERT_TRUE(
        catalogue::removeTextures(wall.folder.library(), std::span(&wall.rope, 1)).has_value());
    ASSERT_TRUE(
        catalogue::purgeRemoved(wall.folder.library(), std::span(&wall.rope, 1)).has_value());
    wall.open->act("threeStars");
    EXPECT_TRUE(comes([&] { return wall.open->words("notice").contains(QLatin1Char('3')); }));
    wall.open->grid().selectIds({wall.kelp});
    wall.open->act("fourStars");
    EXPECT_TRUE(comes([&] { return rowOf(wall.folder, wall.kelp).stars == 4; }));
}

TEST(SearchField, CompletesKeysTagsAndShelves) {
    SearchField field(nullptr);
    field.setNames({QStringLiteral("stone"), QStringLiteral("stone/slate")},
                   {QStringLiteral("North shore")});
    EXPECT_EQ(field.completionsOf(QStringLiteral("sto")),
              QStringList({QStringLiteral("tag:stone"), QStringLiteral("tag:stone/slate")}));
    EXPECT_EQ(field.completionsOf(QStringLiteral("-tag:st")),
              QStringList({QStringLiteral("-tag:stone"), QStringLiteral("-tag:stone/slate")}));
    EXPECT_EQ(field.completionsOf(QStringLiteral("shelf:")),
              QStringList(QStringLiteral("shelf:\"North shore\"")));
    EXPECT_EQ(field.completionsOf(QStringLiteral("dra")), QStringList(QStringLiteral("draw<")));
    EXPECT_TRUE(field.completionsOf(QString()).isEmpty());
    EXPECT_TRUE(field.completionsOf(QStringLiteral("nothing-like-it")).isEmpty());
}

TEST(SearchField, TakesACompletionInTheMiddleOfTheLine) {
    Wall wall;
    const std::vector<std::string> tags = {"wet"};
    ASSERT_TRUE(catalogue::changeTags(wall.folder.library(), std::span(&wall.kelp, 1), tags, {})
                    .has_value());
    ASSERT_TRUE(comes([&] { return wall.filter("wet") != nullptr; }));
    wall.open->type("kelp we");
    QAbstractItemView* list = nullptr;
    for (QWidget* const each : QApplication::topLevelWidgets()) {
        if (each->objectName() == QStringLiteral("searchCompletions"))
            list = qobject_cast<QAbstractItemView*>(each);
    }
    ASSERT_NE(list, nullptr);
    ASSERT_TRUE(comes([&] { return list->isVisible(); }));
    QTest::keyClick(list, Qt::Key_Down);
    QTest::keyClick(list, Qt::Key_Return);
    EXPECT_EQ(wall.open->part<QLineEdit>("searchField").text(), QStringLiteral("kelp tag:wet"));
    EXPECT_TRUE(comes([&] { return wall.open->shown() == 1; }));
}

TEST(TextureMime, KeepsIdsAndRefusesWhatIsNone) {
    const std::vector<core::TextureId> ids = {core::TextureId{7}, core::TextureId{3}};
    const std::unique_ptr<QMimeData> data(textureMimeData(ids));
    EXPECT_EQ(textureIdsIn(*data), ids);
    for (const char* const bad : {"", "x", "1 two", "-4", "99999999999999999999"}) {
        data->setData(textureMimeType(), bad);
        EXPECT_TRUE(textureIdsIn(*data).empty()) << bad;
    }
}

}  // namespace
}  // namespace pantile::desktop
