#include "catalogue/backup.h"

#include "catalogue/edit.h"
#include "catalogue/library_fixture.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"

namespace pantile::catalogue {
namespace {

namespace fs = std::filesystem;
using core::ErrorKind;
using core::TextureId;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using tests::readBytes;
using tests::textureOf;
using tests::titled;
using tests::writeBytes;

class BackupTest : public LibraryTest {
protected:
    void SetUp() override {
        add(textureOf(1, titled("Foam")));
        add(textureOf(2, titled("Brass")));
    }

    static std::int64_t count(const Library& where) {
        return findTextures(where, *parseQuery("all"))->total;
    }

    std::int64_t countIn(const fs::path& file) {
        OpenOptions never = tests::plainOptions();
        never.create = OpenOptions::Create::Never;
        const auto opened = Library::open(file, never);
        EXPECT_THAT(opened, isOk());
        return opened ? count(*opened) : -1;
    }

    std::vector<std::string> files() {
        std::vector<std::string> names;
        for (const auto& entry : fs::directory_iterator(folder())) {
            names.push_back(entry.path().filename().string());
        }
        std::sort(names.begin(), names.end());
        return names;
    }

    fs::path backup() { return folder() / "copy.db"; }
};

TEST_F(BackupTest, IsAWholeLibrary) {
    ASSERT_THAT(backupTo(library(), backup()), isOk());
    const auto copy = Library::open(backup(), tests::plainOptions());
    ASSERT_THAT(copy, isOk());
    EXPECT_FALSE(copy->wasCreated());
    EXPECT_EQ(readTexture(*copy, {2})->texture, textureOf(2, titled("Brass")));
}

TEST_F(BackupTest, IsOfOneMomentWhileAnotherWrites) {
    auto other = *Library::open(path(), options());
    auto transaction = other.begin();
    ASSERT_THAT(addTexture(other, textureOf(3)), isOk());
    ASSERT_THAT(backupTo(library(), backup()), isOk());
    ASSERT_THAT(transaction->commit(), isOk());
    EXPECT_EQ(countIn(backup()), 2);
    EXPECT_EQ(count(library()), 3);
}

TEST_F(BackupTest, OverwritesOnlyWhenAsked) {
    writeBytes(backup(), "something dear");
    EXPECT_THAT(backupTo(library(), backup()), failsWith(ErrorKind::AlreadyExists, "copy.db"));
    EXPECT_EQ(readBytes(backup()), "something dear");
    ASSERT_THAT(backupTo(library(), backup(), Overwrite::Replace), isOk());
    EXPECT_EQ(countIn(backup()), 2);
}

TEST_F(BackupTest, NeverGoesOverTheLibraryItself) {
    EXPECT_THAT(backupTo(library(), path(), Overwrite::Replace),
                failsWith(ErrorKind::InvalidInput, "itself"));
    for (const char* beside : {"-wal", "-shm"}) {
        ASSERT_TRUE(fs::exists(path().string() + beside));
        EXPECT_THAT(backupTo(library(), path().string() + beside, Overwrite::Replace),
                    failsWith(ErrorKind::InvalidInput, "itself"));
    }
    EXPECT_EQ(count(library()), 2);
}

TEST_F(BackupTest, LeavesNothingHalfDone) {
    EXPECT_THAT(backupTo(library(), folder() / "no" / "such.db"), failsWith(ErrorKind::Io, ""));
    close();
    EXPECT_EQ(files(), (std::vector<std::string>{"library.db"}));
}

TEST_F(BackupTest, IsPutBackAndThePresentLibraryKept) {
    ASSERT_THAT(backupTo(library(), backup()), isOk());
    ASSERT_THAT(removeTextures(library(), {{TextureId{1}, TextureId{2}}}), isOk());
    add(textureOf(9));
    // It stays open all the while, as another program's would.
    const auto report = restoreLibrary(path(), backup(), options());
    ASSERT_THAT(report, isOk());
    EXPECT_EQ(report->textures, 2);
    EXPECT_EQ(report->kept.filename(), "library.db.before-restore");
    EXPECT_EQ(count(library()), 2);
    EXPECT_EQ(readTexture(library(), {1})->row.title, "Foam");
    EXPECT_EQ(countIn(report->kept), 1);
    const auto again = restoreLibrary(path(), backup(), options());
    ASSERT_THAT(again, isOk());
    EXPECT_EQ(again->kept.filename(), "library.db.before-restore-2");
}

TEST_F(BackupTest, TakesThePlaceOfALibraryBeyondUse) {
    ASSERT_THAT(backupTo(library(), backup()), isOk());
    close();
    writeBytes(path(), "rubble");
    const auto report = restoreLibrary(path(), backup(), options());
    ASSERT_THAT(report, isOk());
    EXPECT_EQ(countIn(path()), 2);
    EXPECT_EQ(readBytes(report->kept), "rubble");
}

TEST_F(BackupTest, TakesThePlaceOfALibraryThatIsGone) {
    ASSERT_THAT(backupTo(library(), backup()), isOk());
    close();
    fs::remove(path());
    const auto report = restoreLibrary(path(), backup(), options());
    ASSERT_THAT(report, isOk());
    EXPECT_TRUE(report->kept.empty());
    EXPECT_EQ(countIn(path()), 2);
}

TEST_F(BackupTest, IsCheckedBeforeItIsPutBack) {
    ASSERT_THAT(backupTo(library(), backup()), isOk());
    {
        auto copy = *Library::open(backup(), tests::plainOptions());
        ASSERT_THAT(copy.connection().execute("UPDATE contents SET body = x'00' WHERE id = 2"),
                    isOk());
    }
    add(textureOf(3));
    EXPECT_THAT(restoreLibrary(path(), backup(), options()),
                failsWith(ErrorKind::Corrupt, "texture 2"));
    writeBytes(folder() / "letter.txt", "no library");
    EXPECT_THAT(restoreLibrary(path(), folder() / "letter.txt", options()),
                failsWith(ErrorKind::InvalidInput, "letter.txt"));
    EXPECT_THAT(restoreLibrary(path(), folder() / "none.db", options()),
                failsWith(ErrorKind::NotFound, "none.db"));
    EXPECT_THAT(restoreLibrary(path(), path(), options()),
                failsWith(ErrorKind::InvalidInput, "itself"));
    EXPECT_EQ(count(library()), 3);
}

TEST_F(BackupTest, WaitsForNoWriterForEver) {
    ASSERT_THAT(backupTo(library(), backup()), isOk());
    auto transaction = library().begin();
    add(textureOf(3));
    EXPECT_THAT(restoreLibrary(path(), backup(), options()), failsWith(ErrorKind::Busy, ""));
    ASSERT_THAT(transaction->commit(), isOk());
    EXPECT_EQ(count(library()), 3);
}

}  // namespace
}  // namespace pantile::catalogue
