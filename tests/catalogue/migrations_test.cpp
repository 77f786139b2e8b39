#include "catalogue/migrations.h"

#include <array>

#include "catalogue/library_fixture.h"
#include "catalogue/reader.h"
#include "catalogue/statement.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using MigrationsTest = LibraryTest;

constexpr std::string_view kSecondSql =
    "CREATE TABLE tides (id INTEGER PRIMARY KEY) STRICT; INSERT INTO tides VALUES (4);";

std::array<Migration, 2> withSecond(std::string_view sql = kSecondSql) {
    return {embeddedMigrations().front(), Migration{2, "tides", sql}};
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
    EXPECT_EQ(bytes.substr(60, 4), std::string("\0\0\0\1", 4));
    EXPECT_EQ(bytes.substr(68, 4), "PTLE");
}

TEST_F(MigrationsTest, BringAnOlderLibraryForwardAndKeepACopyBeside) {
    add(tests::textureOf(1, tests::titled("Wet sand")));
    const auto report = migrate(library().connection(), withSecond());
    ASSERT_THAT(report, isOk());
    EXPECT_FALSE(report->created);
    ASSERT_TRUE(report->backup);
    EXPECT_EQ(report->backup->filename(), "library.db.version-1");
    EXPECT_EQ(library().connection().number("PRAGMA user_version").value(), 2);
    EXPECT_EQ(library().connection().number("SELECT id FROM tides").value(), 4);
    EXPECT_EQ(library().connection().number("PRAGMA foreign_keys").value(), 1);

    OpenOptions never;
    never.create = OpenOptions::Create::Never;
    const auto copy = Library::open(*report->backup, never);
    ASSERT_THAT(copy, isOk());
    EXPECT_EQ(readTexture(*copy, {1})->row.title, "Wet sand");
}

TEST_F(MigrationsTest, ThatFailLeaveTheLibraryAsItWas) {
    add(tests::textureOf(1));
    const auto broken = withSecond("CREATE TABLE tides (id INTEGER) STRICT; SELECT nothing;");
    EXPECT_FALSE(migrate(library().connection(), broken));
    EXPECT_EQ(library().connection().number("PRAGMA user_version").value(), 1);
    EXPECT_FALSE(library().connection().execute("SELECT * FROM tides"));
    EXPECT_THAT(readTexture(library(), {1}), isOk());
}

TEST_F(MigrationsTest, ThatTearReferencesApartAreUndone) {
    add(tests::textureOf(1));
    EXPECT_THAT(migrate(library().connection(), withSecond("DELETE FROM contents;")),
                failsWith(ErrorKind::Corrupt, "point nowhere"));
    EXPECT_THAT(readTexture(library(), {1}), isOk());
}

TEST_F(MigrationsTest, RefuseANewerLibrary) {
    ASSERT_THAT(migrate(library().connection(), withSecond()), isOk());
    EXPECT_THAT(migrate(library().connection(), embeddedMigrations()),
                failsWith(ErrorKind::Unsupported, "version 2"));
}

TEST_F(MigrationsTest, DoNothingTwice) {
    const auto report = migrate(library().connection(), embeddedMigrations());
    ASSERT_THAT(report, isOk());
    EXPECT_FALSE(report->created);
    EXPECT_FALSE(report->backup);
}

}  // namespace
}  // namespace pantile::catalogue
