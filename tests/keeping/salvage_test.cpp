// What `check --repair` saves of damaged libraries.

#include "catalogue/salvage.h"

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include "board/profile.h"
#include "catalogue/canvases.h"
#include "catalogue/connection.h"
#include "catalogue/reader.h"
#include "catalogue/rescue_rows.h"
#include "catalogue/statement.h"
#include "keeping/deeds.h"
#include "keeping/rounds.h"
#include "keeping/whole_library.h"
#include "support/matchers.h"
#include "support/temporary_folder.h"
#include "tasks/files.h"
#include "tasks/library_place.h"

namespace pantile::tests {
namespace {

namespace fs = std::filesystem;
using catalogue::Library;
using catalogue::SalvageReport;

class SalvageTest : public ::testing::Test {
protected:
    void SetUp() override {
        makeUsedLibrary(path("library.db"));
        m_whole = rescued();
    }

    /// What is to be rescued of it as it is now.
    std::string rescued() const {
        fs::remove(path("copy.db"));
        copyLibrary(path("library.db"), path("copy.db"));
        return rescuedLibrary(path("copy.db")).value();
    }

    fs::path path(const std::string& name) const { return m_folder.path() / name; }

    core::Result<SalvageReport> salvage() {
        fs::remove(path("saved.db"));
        const std::int64_t number = 1000;
        return catalogue::salvageLibrary(path("library.db"), path("saved.db"), deedOptions(number));
    }

    std::string bytes() const { return tasks::readFile(path("library.db"), 1 << 26).value(); }

    void write(const std::string& bytes) const {
        ASSERT_THAT(tasks::writeFile(path("library.db"), bytes, tasks::IfExists::Replace), isOk());
    }

    void forge(const std::string& sql) const {
        const auto connection = catalogue::Connection::open(
            path("library.db"), catalogue::FileMode::ReadWrite, std::chrono::milliseconds(0));
        ASSERT_THAT(connection, isOk());
        EXPECT_THAT((*connection)->execute(sql), isOk()) << sql;
    }

    TemporaryFolder m_folder;
    std::string m_whole;
};

TEST_F(SalvageTest, OfASoundLibraryIsTheSame) {
    const auto report = salvage();
    ASSERT_THAT(report, isOk());
    EXPECT_TRUE(report->lost.empty()) << report->lost.front().where << report->lost.front().what;
    EXPECT_EQ(rescuedLibrary(path("saved.db")).value(), m_whole);
    EXPECT_EQ(rescued(), m_whole);
}

TEST_F(SalvageTest, OfALibraryWithoutPalettesKeepsItsCanvases) {
    fs::remove(path("library.db"));
    ASSERT_THAT(tasks::openLibrary(path("library.db"), tasks::Purpose::Change), isOk());
    const auto report = salvage();
    ASSERT_THAT(report, isOk());
    EXPECT_TRUE(report->lost.empty()) << report->lost.front().where << report->lost.front().what;
    const auto saved = tasks::openLibrary(path("saved.db"), tasks::Purpose::Look);
    ASSERT_THAT(saved, isOk());
    EXPECT_EQ(catalogue::listCanvases(*saved)->size(), board::shippedCanvases().size());
}

TEST_F(SalvageTest, OfRubbleIsAnEmptyLibraryThatSaysSo) {
    write(std::string(50000, 'r'));
    const auto report = salvage();
    ASSERT_THAT(report, isOk());
    EXPECT_EQ(report->textures, 0);
    EXPECT_FALSE(report->lost.empty());
}

TEST_F(SalvageTest, RefusesADatabaseOfAnotherProgram) {
    fs::remove(path("library.db"));
    {
        const auto other =
            catalogue::Connection::open(path("library.db"), catalogue::FileMode::ReadWriteOrCreate,
                                        std::chrono::milliseconds(0));
        ASSERT_THAT(other, isOk());
        ASSERT_THAT((*other)->execute("CREATE TABLE ledger (day TEXT, sum INTEGER); "
                                      "INSERT INTO ledger VALUES ('monday', 3)"),
                    isOk());
    }
    const std::string before = bytes();
    EXPECT_THAT(salvage(), failsWith(core::ErrorKind::InvalidInput, "no Pantile library"));
    EXPECT_FALSE(fs::exists(path("saved.db")));
    EXPECT_EQ(bytes(), before);
}

TEST_F(SalvageTest, OfAnOldLibraryIsUpToDate) {
    fs::remove(path("library.db"));
    makeOldLibrary(path("library.db"), 1);
    const auto report = salvage();
    ASSERT_THAT(report, isOk());
    EXPECT_TRUE(report->lost.empty()) << report->lost.front().where << report->lost.front().what;
    EXPECT_EQ(rescuedLibrary(path("saved.db")).value(), rescued());
    EXPECT_FALSE(fs::exists(path("saved.db.part.version-1")));
}

TEST_F(SalvageTest, NeverReplacesAFile) {
    write("rubble");
    ASSERT_THAT(
        tasks::writeFile(path("taken.db"), std::string_view("dear"), tasks::IfExists::Refuse),
        isOk());
    const std::int64_t number = 1000;
    EXPECT_THAT(
        catalogue::salvageLibrary(path("library.db"), path("taken.db"), deedOptions(number)),
        failsWith(core::ErrorKind::AlreadyExists, "taken.db"));
    EXPECT_THAT(catalogue::salvageLibrary(path("none.db"), path("saved.db"), deedOptions(number)),
                failsWith(core::ErrorKind::NotFound, "none.db"));
}

TEST_F(SalvageTest, MendsAHeaderThatNothingOpens) {
    std::string broken = bytes();
    broken.replace(0, 16, "rubble in the he");
    write(broken);
    const auto report = salvage();
    ASSERT_THAT(report, isOk());
    EXPECT_TRUE(report->lost.empty()) << report->lost.front().where << report->lost.front().what;
    EXPECT_EQ(rescuedLibrary(path("saved.db")).value(), m_whole);
}

TEST_F(SalvageTest, SaysWhatIsLost) {
    forge(
        "UPDATE contents SET body = x'00' WHERE id = (SELECT content_id FROM textures WHERE id = "
        "3)");
    forge("DELETE FROM revisions WHERE texture_id = 4 AND number = 1");
    forge("UPDATE textures SET title = char(8238) || 'Foam' WHERE id = 8");
    forge("UPDATE canvases SET cell_pitch = -4");
    const auto report = salvage();
    ASSERT_THAT(report, isOk());
    const auto isLost = [&](std::string_view where) {
        for (const auto& problem : report->lost) {
            if (problem.where == where) return true;
        }
        return false;
    };
    for (const char* where : {"texture 3", "texture 4", "texture 8", "canvas 'Quay'"}) {
        EXPECT_TRUE(isLost(where)) << where;
    }
    const std::int64_t number = 1000;
    const auto saved = Library::open(path("saved.db"), deedOptions(number));
    ASSERT_THAT(saved, isOk());
    EXPECT_THAT(catalogue::readTexture(*saved, {3}), failsWith(core::ErrorKind::NotFound, ""));
    EXPECT_EQ(catalogue::readTexture(*saved, {8})->row.title, "Foam");
    EXPECT_EQ(catalogue::readTexture(*saved, {4})->row.revision, 1);
    EXPECT_EQ(wholeLibrary(path("saved.db"))->find("PROBLEM"), std::string::npos);
}

// Whatever page is gone: what is saved is sound, and no picture is another one.
TEST_F(SalvageTest, SavesTheRestOfADamagedFile) {
    const std::string sound = bytes();
    constexpr std::size_t kPageBytes = 4096;
    const auto step = static_cast<std::size_t>(rounds(9, 1));
    const std::int64_t number = 1000;
    const auto original = [&] {
        copyLibrary(path("library.db"), path("original.db"));
        return Library::open(path("original.db"), deedOptions(number)).value();
    }();
    const std::int64_t all = original.connection().number("SELECT count(*) FROM textures").value();
    std::int64_t least = all;
    for (std::size_t page = 1; page < sound.size() / kPageBytes; page += step) {
        SCOPED_TRACE("page " + std::to_string(page + 1));
        std::string broken = sound;
        broken.replace(page * kPageBytes, kPageBytes, kPageBytes, '\x5a');
        write(broken);
        const auto report = salvage();
        ASSERT_THAT(report, isOk());
        const std::string whole = rescuedLibrary(path("saved.db")).value();
        EXPECT_EQ(whole.find("PROBLEM"), std::string::npos) << whole.substr(whole.find("PROBLEM"));
        EXPECT_TRUE(whole == m_whole || !report->lost.empty()) << "lost without a word";
        const auto saved = Library::open(path("saved.db"), deedOptions(number));
        const auto ids = allNumbers(saved->connection(), "SELECT id FROM textures").value();
        for (const std::int64_t id : ids) {
            EXPECT_EQ(catalogue::readTexture(*saved, {id})->texture.grid(),
                      catalogue::readTexture(original, {id})->texture.grid());
        }
        least = std::min(least, report->textures);
    }
    std::printf("with one page gone, at least %lld of %lld textures saved\n",
                static_cast<long long>(least), static_cast<long long>(all));
}

TEST_F(SalvageTest, KnowsEveryTable) {
    const std::int64_t number = 0;
    const auto library = Library::open(path("library.db"), deedOptions(number));
    std::size_t known = catalogue::rescuedTables().size();
    for (const auto& table : catalogue::rescuedTables()) {
        EXPECT_EQ(library->connection()
                      .number("SELECT count(*) FROM sqlite_schema WHERE name = '" +
                              std::string(table.name) + "'")
                      .value(),
                  1);
    }
    for (const std::string_view table : catalogue::derivedTables()) {
        known += static_cast<std::size_t>(
            library->connection()
                .number("SELECT count(*) FROM sqlite_schema WHERE name = '" + std::string(table) +
                        "'")
                .value());
    }
    EXPECT_EQ(library->connection()
                  .number("SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name NOT "
                          "LIKE 'sqlite%' AND name NOT LIKE 'words_%'")
                  .value(),
              static_cast<std::int64_t>(known));
}

}  // namespace
}  // namespace pantile::tests
