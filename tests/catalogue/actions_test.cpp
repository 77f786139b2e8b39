#include "catalogue/actions.h"

#include <set>
#include <string>
#include <vector>

#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/history.h"
#include "catalogue/integrity.h"
#include "catalogue/library_fixture.h"
#include "catalogue/loads.h"
#include "catalogue/palettes.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "catalogue/recorded_tables.h"
#include "catalogue/rescue_rows.h"
#include "catalogue/searches.h"
#include "catalogue/shelves.h"
#include "catalogue/statement.h"
#include "catalogue/tags.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using core::TextureId;
using tests::failsWith;
using tests::isOk;

class ActionsTest : public tests::LibraryTest {
protected:
    /// What undoing would take back.
    std::string last() {
        const auto action = lastAction(library());
        EXPECT_THAT(action, isOk());
        return action && *action ? (*action)->what : "";
    }

    std::vector<TextureId> found(const std::string& query) {
        FindOptions byId;
        byId.sort.field = SortField::Id;
        return findIds(library(), parseQuery(query).value(), byId).value();
    }

    void expectSound() { EXPECT_EQ(checkLibrary(library())->problems, std::vector<Problem>{}); }
};

/// A new table, or a new column, must not be forgotten.
TEST_F(ActionsTest, TakeDownEveryTableThatIsNotWorkedOut) {
    std::set<std::string> expected;
    for (const RescuedTable& table : rescuedTables()) expected.emplace(table.name);
    expected.erase("estimates");  // Worked out anew, though it takes long.
    std::set<std::string> recorded;
    Connection& connection = library().connection();
    for (const RecordedTable& table : recordedTables()) {
        const std::string name(table.name);
        recorded.insert(name);
        std::vector<std::string> columns;
        std::size_t count = 1;
        for (const char c : table.names) count += c == ',' ? 1 : 0;
        for (std::size_t i = 0; i < count; ++i) columns.emplace_back(columnName(table, i));
        const auto known = allTexts(connection, "SELECT name FROM pragma_table_info(?1)",
                                    {std::string_view(name)});
        EXPECT_EQ(std::set<std::string>(columns.begin(), columns.end()),
                  std::set<std::string>(known->begin(), known->end()))
            << name;
        const auto keys = connection.number("SELECT count(*) FROM pragma_table_info('" + name +
                                            "') WHERE pk > 0");
        EXPECT_EQ(*keys, std::ssize(std::vector<int>(table.keys))) << name;
        for (const std::string kind : {"new", "changed", "dropped"}) {
            EXPECT_EQ(
                *connection.number("SELECT count(*) FROM sqlite_schema WHERE type = 'trigger' "
                                   "AND name = 'note_" +
                                   kind + "_" + name + "'"),
                1)
                << name;
        }
    }
    EXPECT_EQ(recorded, expected);
}

TEST_F(ActionsTest, AreNamedAndListedNewestFirst) {
    const TextureId id = add(tests::textureOf(1, tests::titled("Foam", {"foam"})));
    now += 60;
    ASSERT_THAT(renameTag(library(), "foam", "froth"), isOk());
    const auto actions = listActions(library(), 10).value();
    ASSERT_EQ(actions.size(), 2U);
    EXPECT_EQ(actions[0].what, "Rename tag 'foam' to 'froth'");
    EXPECT_EQ(actions[0].at, tests::kFirstNow + 60);
    EXPECT_EQ(actions[1].what, "Add texture 'Foam'");
    EXPECT_EQ(listActions(library(), 1)->size(), 1U);
    EXPECT_EQ(id.value, 1);
}

TEST_F(ActionsTest, AreUndoneAndDoneAgainAfterARestart) {
    const TextureId id = add(tests::textureOf(1, tests::titled("Foam", {"foam"})));
    ASSERT_THAT(renameTag(library(), "foam", "froth"), isOk());
    open();
    const auto undone = undoLast(library());
    ASSERT_THAT(undone, isOk());
    EXPECT_EQ(undone->action.what, "Rename tag 'foam' to 'froth'");
    EXPECT_EQ(found("tag:foam"), std::vector{id});
    EXPECT_EQ(found("tag:froth"), std::vector<TextureId>{});
    EXPECT_EQ(history(library(), id)->size(), 1U);
    open();
    EXPECT_EQ((*lastUndone(library()))->what, "Rename tag 'foam' to 'froth'");
    ASSERT_THAT(redoLast(library()), isOk());
    EXPECT_EQ(found("tag:froth"), std::vector{id});
    EXPECT_THAT(redoLast(library()), failsWith(ErrorKind::NotFound, "nothing to redo"));
    expectSound();
}

TEST_F(ActionsTest, OfAnEmptyLibraryAreNone) {
    EXPECT_THAT(undoLast(library()), failsWith(ErrorKind::NotFound, "nothing to undo"));
    EXPECT_EQ(last(), "");
    ASSERT_THAT(createShelf(library(), "Pier"), isOk());
    EXPECT_FALSE(createShelf(library(), "Pier"));
    ASSERT_THAT(undoLast(library()), isOk());
    EXPECT_THAT(undoLast(library()), failsWith(ErrorKind::NotFound, "nothing to undo"));
}

TEST_F(ActionsTest, ThatAddedTexturesLeaveThemRecoverable) {
    const TextureId id = add(tests::textureOf(1, tests::titled("Kelp", {"shore"})));
    ASSERT_THAT(undoLast(library()), isOk());
    EXPECT_EQ(found("is:removed kelp"), std::vector{id});
    expectSound();
    ASSERT_THAT(redoLast(library()), isOk());
    EXPECT_EQ(found("kelp"), std::vector{id});
    EXPECT_EQ(readTexture(library(), id)->row.revision, 1);
    ASSERT_THAT(undoLast(library()), isOk());
    EXPECT_EQ(found("is:removed kelp"), std::vector{id});
    ASSERT_THAT(recoverTextures(library(), {&id, 1}), isOk());
    EXPECT_EQ(found("kelp"), std::vector{id});
    expectSound();
}

TEST_F(ActionsTest, ThatChangedPicturesAreUndoneWithThem) {
    const TextureId id = add(tests::textureOf(1));
    ASSERT_THAT(setEstimate(library(), id, {900, 80, "card"}), isOk());
    const core::Texture before = readTexture(library(), id)->texture;
    const core::Texture other = tests::textureOf(2, {}, {8, 8}, 5);
    ASSERT_THAT(setContent(library(), id, other.grid(), other.palette()), isOk());
    const auto undone = undoLast(library());
    ASSERT_THAT(undone, isOk());
    EXPECT_EQ(undone->newPictures, std::vector{id});
    EXPECT_EQ(readTexture(library(), id)->texture, before);
    EXPECT_FALSE(readTexture(library(), id)->row.estimate) << "it was that of the other picture";
    expectSound();
    ASSERT_THAT(redoLast(library()), isOk());
    EXPECT_EQ(readTexture(library(), id)->texture.grid(), other.grid());
    expectSound();
}

TEST_F(ActionsTest, ThatDeletedThingsBringBackAllThatWasInThem) {
    const std::vector<TextureId> ids = {add(tests::textureOf(1)), add(tests::textureOf(2))};
    ASSERT_THAT(putOnShelf(library(), ids, "Pier"), isOk());
    core::Board board;
    board.name = "Quay board";
    ASSERT_THAT(addBoard(library(), board), isOk());
    StoredLoad load;
    load.name = "evening";
    load.board = board.name;
    load.slots = ids;
    ASSERT_THAT(addLoad(library(), load), isOk());
    ASSERT_THAT(noteLoadWritten(library(), "evening", "card"), isOk());
    const StoredLoad before = readLoad(library(), "evening").value();

    ASSERT_THAT(removeLoad(library(), "evening"), isOk());
    ASSERT_THAT(deleteShelf(library(), "Pier"), isOk());
    for (int again = 0; again < 2; ++again) {
        ASSERT_THAT(undoLast(library()), isOk());
        EXPECT_EQ(*texturesOnShelf(library(), "Pier"), ids);
        ASSERT_THAT(undoLast(library()), isOk());
        EXPECT_EQ(*readLoad(library(), "evening"), before);
        expectSound();
        ASSERT_THAT(redoLast(library()), isOk());
        ASSERT_THAT(redoLast(library()), isOk());
        EXPECT_FALSE(readLoad(library(), "evening"));
        EXPECT_FALSE(texturesOnShelf(library(), "Pier"));
        expectSound();
    }
}

/// That a board holds a load is a fact, which undoing does not change.
TEST_F(ActionsTest, OnWhichALaterFactDependsAreNotUndone) {
    const TextureId id = add(tests::textureOf(1));
    core::Board board;
    board.name = "Quay board";
    ASSERT_THAT(addBoard(library(), board), isOk());
    StoredLoad load;
    load.name = "evening";
    load.board = board.name;
    load.slots = {id};
    ASSERT_THAT(addLoad(library(), load), isOk());
    ASSERT_THAT(noteLoadWritten(library(), "evening", "card"), isOk());
    EXPECT_EQ(last(), "Make load 'evening'");
    EXPECT_THAT(undoLast(library()),
                failsWith(ErrorKind::InvalidInput, "the load was written for a board since"));
    EXPECT_THAT(readLoad(library(), "evening"), isOk());
    EXPECT_EQ(last(), "Make load 'evening'");
    EXPECT_EQ(*library().connection().number("PRAGMA foreign_keys"), 1);
    expectSound();
}

TEST_F(ActionsTest, WhoseRowsWereChangedSinceAreNotUndone) {
    ASSERT_THAT(createShelf(library(), "Pier"), isOk());
    {
        const NoAction forged(library());
        ASSERT_THAT(renameShelf(library(), "Pier", "Mole"), isOk());
    }
    EXPECT_EQ(last(), "Make shelf 'Pier'");
    EXPECT_THAT(undoLast(library()),
                failsWith(ErrorKind::InvalidInput,
                          "'Make shelf 'Pier'' cannot be undone: something that it changed"));
    EXPECT_EQ(listShelves(library())->front().name, "Mole");
}

TEST_F(ActionsTest, WhoseNameIsTakenAreNotUndone) {
    ASSERT_THAT(createShelf(library(), "Pier"), isOk());
    ASSERT_THAT(deleteShelf(library(), "Pier"), isOk());
    {
        const NoAction forged(library());
        ASSERT_THAT(createShelf(library(), "pier"), isOk());
    }
    EXPECT_THAT(undoLast(library()), failsWith(ErrorKind::InvalidInput, "changed since"));
}

TEST_F(ActionsTest, ThatWereUndoneGoWithTheNextOne) {
    ASSERT_THAT(createShelf(library(), "Pier"), isOk());
    ASSERT_THAT(undoLast(library()), isOk());
    ASSERT_THAT(createShelf(library(), "Mole"), isOk());
    EXPECT_THAT(redoLast(library()), failsWith(ErrorKind::NotFound, "nothing to redo"));
    EXPECT_EQ(listActions(library(), 9)->size(), 1U);
}

TEST_F(ActionsTest, TakeManyTransactionsAsOne) {
    {
        const OneAction both(library(), "Add 2 files");
        add(tests::textureOf(1));
        add(tests::textureOf(2));
    }
    add(tests::textureOf(3));
    EXPECT_EQ(listActions(library(), 9)->size(), 2U);
    ASSERT_THAT(undoLast(library()), isOk());
    EXPECT_EQ(undoLast(library())->action.what, "Add 2 files");
    EXPECT_EQ(found("all"), std::vector<TextureId>{});
    ASSERT_THAT(redoLast(library()), isOk());
    EXPECT_EQ(found("all").size(), 2U);
}

/// What another program did in between stays an action of its own, and is undone first.
TEST_F(ActionsTest, OfTwoProgramsAreUndoneInTheirOrder) {
    auto other = Library::open(path(), options());
    ASSERT_THAT(other, isOk());
    {
        const OneAction both(library(), "Add 2 files");
        add(tests::textureOf(1));
        ASSERT_THAT(createShelf(*other, "Pier"), isOk());
        add(tests::textureOf(2));
    }
    EXPECT_EQ(listActions(library(), 9)->size(), 3U);
    EXPECT_EQ(undoLast(*other)->action.what, "Add 2 files");
    EXPECT_EQ(undoLast(*other)->action.what, "Make shelf 'Pier'");
    EXPECT_EQ(undoLast(library())->action.what, "Add 2 files");
}

TEST_F(ActionsTest, NameTheOutermostAndForgetWhatWasRolledBack) {
    const TextureId id = add(tests::textureOf(1));
    {
        auto transaction = library().begin();
        ASSERT_THAT(transaction, isOk());
        nameAction(library(), "Tidy up");
        EXPECT_THAT(putOnShelf(library(), {&id, 1}, "Pier"), isOk());
        EXPECT_FALSE(createShelf(library(), "Pier"));
        ASSERT_THAT(transaction->commit(), isOk());
    }
    EXPECT_EQ(last(), "Tidy up");
    {
        const auto lost = library().begin();
        EXPECT_THAT(createShelf(library(), "Mole"), isOk());
    }
    EXPECT_EQ(last(), "Tidy up");
    ASSERT_THAT(undoLast(library()), isOk());
    EXPECT_EQ(listShelves(library())->size(), 0U);
    EXPECT_EQ(found("all"), std::vector{id});
}

TEST_F(ActionsTest, EndAtAPurge) {
    const TextureId id = add(tests::textureOf(1));
    ASSERT_THAT(removeTextures(library(), {&id, 1}), isOk());
    ASSERT_THAT(purgeRemoved(library(), {&id, 1}), isOk());
    EXPECT_EQ(last(), "");
    EXPECT_THAT(undoLast(library()),
                failsWith(ErrorKind::InvalidInput, "'Destroy texture 1' cannot be undone, nor"));
    EXPECT_EQ(listActions(library(), 9)->size(), 3U);
    EXPECT_EQ(*library().connection().number("SELECT count(*) FROM action_changes"), 0);
    ASSERT_THAT(createShelf(library(), "Pier"), isOk());
    ASSERT_THAT(undoLast(library()), isOk());
    EXPECT_FALSE(undoLast(library()));
}

TEST_F(ActionsTest, AreKeptUpToANumber) {
    for (std::int64_t i = 0; i < kMostActionsKept + 20; ++i) {
        ASSERT_THAT(createShelf(library(), "Pier " + std::to_string(i)), isOk());
    }
    EXPECT_EQ(std::ssize(*listActions(library(), 9999)), kMostActionsKept);
    for (std::int64_t i = 0; i < kMostActionsKept; ++i) ASSERT_THAT(undoLast(library()), isOk());
    EXPECT_FALSE(undoLast(library()));
    EXPECT_EQ(listShelves(library())->size(), 20U);
}

TEST_F(ActionsTest, KeepFewBytesInAll) {
    std::vector<TextureId> ids;
    for (std::uint64_t i = 0; i < 300; ++i) ids.push_back(add(tests::textureOf(i, {}, {4, 4})));
    for (int round = 0; round < 6; ++round) {
        TextPatch patch;
        patch.note = std::string(3900, static_cast<char>('a' + round));
        ASSERT_THAT(setText(library(), ids, patch), isOk());
    }
    EXPECT_LE(*library().connection().number("SELECT sum(bytes) FROM actions"), kMostActionBytes);
    EXPECT_EQ(*library().connection().number("SELECT sum(bytes) FROM actions"),
              *library().connection().number("SELECT sum(length(body)) FROM action_changes"));
    ASSERT_THAT(undoLast(library()), isOk());
    EXPECT_EQ(readTexture(library(), ids[7])->row.note.front(), 'e');
    expectSound();
}

TEST_F(ActionsTest, AreCheckedForDamage) {
    ASSERT_THAT(createShelf(library(), "Pier"), isOk());
    forge("UPDATE action_changes SET body = X'FF'");
    EXPECT_FALSE(checkLibrary(library())->ok);
    EXPECT_THAT(undoLast(library()), failsWith(ErrorKind::Corrupt, "undo an action"));
    forge("UPDATE actions SET what = 'Make nothing'");
    EXPECT_FALSE(checkLibrary(library())->ok);
}

TEST_F(ActionsTest, AreNotUndoneInsideATransaction) {
    ASSERT_THAT(createShelf(library(), "Pier"), isOk());
    const auto transaction = library().begin();
    EXPECT_THAT(undoLast(library()), failsWith(ErrorKind::Internal, "by itself alone"));
}

}  // namespace
}  // namespace pantile::catalogue
