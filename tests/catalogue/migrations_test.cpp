#include "catalogue/migrations.h"

#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "catalogue/actions.h"
#include "catalogue/canvases.h"
#include "catalogue/integrity.h"
#include "catalogue/library_fixture.h"
#include "catalogue/loads.h"
#include "catalogue/looks.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "catalogue/searches.h"
#include "catalogue/statement.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using MigrationsTest = LibraryTest;

constexpr std::string_view kNextSql =
    "CREATE TABLE tides (id INTEGER PRIMARY KEY) STRICT; INSERT INTO tides VALUES (4);";

/// The newest that the program knows.
int version() {
    return embeddedMigrations().back().version;
}

/// With one more behind them.
std::vector<Migration> withNext(std::string_view sql = kNextSql) {
    std::vector<Migration> migrations(embeddedMigrations().begin(), embeddedMigrations().end());
    migrations.push_back({version() + 1, "tides", sql});
    return migrations;
}

/// A library of an old version in a file of its own, from its SQL in tests/data/libraries.
void makeOldLibrary(const std::filesystem::path& path, int old) {
    const auto sql = tests::readBytes(std::filesystem::path(PANTILE_TEST_DATA) / "libraries" /
                                      ("version-" + std::to_string(old) + ".sql"));
    ASSERT_FALSE(sql.empty());
    const auto connection =
        Connection::open(path, FileMode::ReadWriteOrCreate, std::chrono::milliseconds(0));
    ASSERT_THAT(connection, isOk());
    // Tables stand in the order of their names, rows before those that they point to.
    ASSERT_THAT((*connection)->execute("PRAGMA foreign_keys=OFF;" + sql), isOk());
}

TEST(Migrations, AreNumberedFromOneWithoutGap) {
    int expected = 0;
    for (const Migration& migration : embeddedMigrations()) {
        EXPECT_EQ(migration.version, ++expected) << migration.name;
    }
    EXPECT_GE(expected, 1);
}

// SQLite documentation, 'Database File Format', section 1.3: user_version at byte 60, application
// id at byte 68, both big-endian.
TEST_F(MigrationsTest, WriteVersionAndApplicationIntoTheHeader) {
    close();
    const std::string bytes = tests::readBytes(path());
    ASSERT_GT(bytes.size(), 100U);
    EXPECT_EQ(bytes.substr(60, 4), std::string("\0\0\0", 3) + static_cast<char>(version()));
    EXPECT_EQ(bytes.substr(68, 4), "PTLE");
}

TEST_F(MigrationsTest, BringAnOlderLibraryForwardAndKeepACopyBeside) {
    add(tests::textureOf(1, tests::titled("Wet sand")));
    const auto report = migrate(library().connection(), withNext());
    ASSERT_THAT(report, isOk());
    EXPECT_FALSE(report->created);
    ASSERT_TRUE(report->backup);
    EXPECT_EQ(report->backup->filename(), "library.db.version-" + std::to_string(version()));
    EXPECT_EQ(library().connection().number("PRAGMA user_version").value(), version() + 1);
    EXPECT_EQ(library().connection().number("SELECT id FROM tides").value(), 4);
    EXPECT_EQ(library().connection().number("PRAGMA foreign_keys").value(), 1);

    OpenOptions never = tests::plainOptions();
    never.create = OpenOptions::Create::Never;
    const auto copy = Library::open(*report->backup, never);
    ASSERT_THAT(copy, isOk());
    EXPECT_EQ(readTexture(*copy, {1})->row.title, "Wet sand");
}

TEST_F(MigrationsTest, KeepTheNewestFiveCopies) {
    namespace fs = std::filesystem;
    const auto old = [&](const std::string& name, int hours) {
        const fs::path file = folder() / name;
        tests::writeBytes(file, name);
        fs::last_write_time(file, fs::file_time_type::clock::now() - std::chrono::hours(hours));
        return file;
    };
    const std::vector<fs::path> kept = {
        old("library.db.version-1", 4),  old("library.db.version-1-2", 3),
        old("library.db.version-2", 2),  old("library.db.version-3", 1),
        old("library.db.version-x", 90), old("library.db.before-restore", 90),
        old("other.db.version-1", 90)};
    const std::vector<fs::path> gone = {old("library.db.version-2-3", 5),
                                        old("library.db.version-2-2", 6)};
    const auto report = migrate(library().connection(), withNext());
    ASSERT_THAT(report, isOk());
    EXPECT_TRUE(fs::exists(report->backup.value()));
    for (const fs::path& file : kept) EXPECT_TRUE(fs::exists(file)) << file;
    for (const fs::path& file : gone) EXPECT_FALSE(fs::exists(file)) << file;
}

TEST_F(MigrationsTest, ThatFailLeaveTheLibraryAsItWas) {
    add(tests::textureOf(1));
    const auto broken = withNext("CREATE TABLE tides (id INTEGER) STRICT; SELECT nothing;");
    EXPECT_FALSE(migrate(library().connection(), broken));
    EXPECT_EQ(library().connection().number("PRAGMA user_version").value(), version());
    EXPECT_FALSE(library().connection().execute("SELECT * FROM tides"));
    EXPECT_THAT(readTexture(library(), {1}), isOk());
}

TEST_F(MigrationsTest, ThatTearReferencesApartAreUndone) {
    add(tests::textureOf(1));
    EXPECT_THAT(migrate(library().connection(), withNext("DELETE FROM contents;")),
                failsWith(ErrorKind::Corrupt, "point nowhere"));
    EXPECT_THAT(readTexture(library(), {1}), isOk());
}

TEST_F(MigrationsTest, RefuseANewerLibrary) {
    ASSERT_THAT(migrate(library().connection(), withNext()), isOk());
    EXPECT_THAT(migrate(library().connection(), embeddedMigrations()),
                failsWith(ErrorKind::Unsupported, "version " + std::to_string(version() + 1)));
}

TEST_F(MigrationsTest, BringEveryOldVersionToTheTablesOfANewLibrary) {
    const auto tables = [](Connection& connection) {
        return allTexts(connection,
                        "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY type, name")
            .value();
    };
    for (int old = 1; old < version(); ++old) {
        const auto file = folder() / ("old-" + std::to_string(old) + ".db");
        makeOldLibrary(file, old);
        const auto opened = Library::open(file, tests::plainOptions());
        ASSERT_THAT(opened, isOk()) << "version " << old;
        EXPECT_EQ(tables(opened->connection()), tables(library().connection()));
        EXPECT_EQ(opened->connection().number("PRAGMA user_version").value(), version());
        EXPECT_TRUE(std::filesystem::exists(file.string() + ".version-" + std::to_string(old)));
    }
}

// Found by fuzzing: it was brought up to date, and then refused.
TEST_F(MigrationsTest, LeaveADamagedLibraryAsItIs) {
    const auto file = folder() / "old.db";
    makeOldLibrary(file, 3);
    std::string bytes = tests::readBytes(file);
    ASSERT_GT(bytes.size(), 0x17000U);
    bytes[0x17000] = '\x01';  // The kind of a page.
    std::ofstream(file, std::ios::binary) << bytes;
    EXPECT_THAT(Library::open(file, tests::plainOptions()),
                failsWith(ErrorKind::Corrupt, "the library is damaged"));
    const auto there = Connection::open(file, FileMode::ReadOnly, std::chrono::milliseconds(0));
    ASSERT_THAT(there, isOk());
    EXPECT_EQ(*(*there)->number("PRAGMA user_version"), 3);
}

/// Canvases of version 1 knew no pen rules: they allow what plans did then.
TEST_F(MigrationsTest, OfVersionOneKeepWhatWasThere) {
    const auto file = folder() / "old.db";
    makeOldLibrary(file, 1);
    const auto opened = Library::open(file, tests::plainOptions());
    ASSERT_THAT(opened, isOk());
    EXPECT_EQ(readTexture(*opened, {1})->row.title, "Wet sand");
    EXPECT_EQ(readTexture(*opened, {1})->row.estimate->drawMs, 584);
    const core::Canvas quay = readCanvas(*opened, "quay").value();
    EXPECT_EQ(quay.penModel, core::PenModel::Lines);
    EXPECT_EQ(quay.rules, core::PenRules{});
    EXPECT_EQ(quay.geometry.gridCentre, (core::Point{100, 60}));
    EXPECT_FALSE(quay.geometry.fillButton);
}

// What older versions did not store is worked out from what they did.
TEST_F(MigrationsTest, MakeOldVersionsFindable) {
    for (int old = 1; old < 3; ++old) {
        const auto file = folder() / ("old-" + std::to_string(old) + ".db");
        makeOldLibrary(file, old);
        const auto opened = Library::open(file, tests::plainOptions());
        ASSERT_THAT(opened, isOk()) << "version " << old;
        const auto found = [&](std::string_view query) {
            FindOptions byId;
            byId.sort.field = SortField::Id;
            return findIds(*opened, parseQuery(query).value(), byId).value();
        };
        using TextureIds = std::vector<core::TextureId>;
        EXPECT_EQ(found("all"), (TextureIds{{1}, {2}}));
        EXPECT_EQ(found("KELP"), (TextureIds{{2}}));
        EXPECT_EQ(found("tag:SHORE"), (TextureIds{{1}, {2}}));
        EXPECT_EQ(found("colour:#f2efe4"), (TextureIds{{1}}));
        EXPECT_EQ(found("colour:#1b2631"), (TextureIds{})) << "that entry is the transparent one";
        EXPECT_EQ(found("draw<1 width:4"), (TextureIds{{1}}));
        EXPECT_EQ(found("stars:0"), (TextureIds{{1}, {2}}));
        EXPECT_EQ(checkLibrary(*opened)->problems, std::vector<Problem>{});
    }
}

TEST_F(MigrationsTest, OfVersionThreeKeepWhatWasThere) {
    const auto file = folder() / "old.db";
    makeOldLibrary(file, 3);
    const auto opened = Library::open(file, tests::plainOptions());
    ASSERT_THAT(opened, isOk());
    const auto found = [&](std::string_view query) {
        FindOptions byId;
        byId.sort.field = SortField::Id;
        return findIds(*opened, parseQuery(query).value(), byId).value();
    };
    using TextureIds = std::vector<core::TextureId>;
    EXPECT_EQ(found("kustentau is:removed"), (TextureIds{{3}}));
    EXPECT_EQ(found("strands is:removed author:EBENE"), (TextureIds{{3}}));
    EXPECT_EQ(found("tag:stone"), (TextureIds{{2}}));
    EXPECT_EQ(found("on:pier"), (TextureIds{{1}, {2}}));
    EXPECT_EQ(found("palette:dune"), TextureIds{});
    EXPECT_EQ(found("colour:#22EF24"), (TextureIds{{2}}));
    EXPECT_EQ(readTexture(*opened, {1})->row.revision, 2);
    EXPECT_EQ(checkLibrary(*opened)->problems, std::vector<Problem>{});
}

TEST_F(MigrationsTest, OfVersionFourKeepWhatWasThere) {
    const auto file = folder() / "old.db";
    makeOldLibrary(file, 4);
    const auto opened = Library::open(file, tests::plainOptions());
    ASSERT_THAT(opened, isOk());
    const auto found = [&](std::string_view query) {
        FindOptions byId;
        byId.sort.field = SortField::Id;
        return findIds(*opened, parseQuery(query).value(), byId).value();
    };
    using TextureIds = std::vector<core::TextureId>;
    EXPECT_EQ(found("strands is:removed"), (TextureIds{{3}}));
    EXPECT_EQ(found("tag:strand"), (TextureIds{{1}, {2}}));
    EXPECT_EQ(found("stars>=3 on:night shelf:tideline"), (TextureIds{{1}}));
    EXPECT_EQ(listSearches(*opened)->front().query, "tag:shore stars>=3");
    EXPECT_EQ(readTexture(*opened, {2})->texture.grid().at(1, 1), 0);
    EXPECT_EQ(checkLibrary(*opened)->problems, std::vector<Problem>{});
}

// Nothing was known of how pictures look: all that a texture has now is waiting.
TEST_F(MigrationsTest, OfVersionFourMissAllLooks) {
    const auto file = folder() / "old.db";
    makeOldLibrary(file, 4);
    const auto opened = Library::open(file, tests::plainOptions());
    ASSERT_THAT(opened, isOk());
    using core::TextureId;
    EXPECT_EQ(missingLooks(*opened, 0, 9).value(),
              (std::vector<MissingLook>{
                  {1, TextureId{1}}, {3, TextureId{3}}, {4, TextureId{4}}, {5, TextureId{2}}}));
}

TEST_F(MigrationsTest, OfVersionSixKeepWhatWasThere) {
    const auto file = folder() / "old.db";
    makeOldLibrary(file, 6);
    const auto opened = Library::open(file, tests::plainOptions());
    ASSERT_THAT(opened, isOk());
    EXPECT_EQ(readLoad(*opened, "Night")->writings.front().place, "/media/card");
    EXPECT_EQ(readTexture(*opened, {2})->row.revision, 2);
    EXPECT_EQ(listActions(*opened, 9)->size(), 0U);
    EXPECT_EQ(checkLibrary(*opened)->problems, std::vector<Problem>{});
}

TEST_F(MigrationsTest, OfVersionSevenKeepWhatCanBeUndone) {
    const auto file = folder() / "old.db";
    makeOldLibrary(file, 7);
    auto opened = Library::open(file, tests::plainOptions());
    ASSERT_THAT(opened, isOk());
    const auto quay = parseQuery("tag:quay height>2 sand").value();
    EXPECT_EQ(findTextures(*opened, quay)->total, 1);
    ASSERT_THAT(undoLast(*opened), isOk());
    EXPECT_EQ(findTextures(*opened, quay)->total, 0);
    EXPECT_EQ(checkLibrary(*opened)->problems, std::vector<Problem>{});
}

TEST_F(MigrationsTest, DoNothingTwice) {
    const auto report = migrate(library().connection(), embeddedMigrations());
    ASSERT_THAT(report, isOk());
    EXPECT_FALSE(report->created);
    EXPECT_FALSE(report->backup);
}

}  // namespace
}  // namespace pantile::catalogue
