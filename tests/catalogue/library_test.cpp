#include "catalogue/library.h"

#include <csignal>
#include <cstdlib>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

#include "catalogue/edit.h"
#include "catalogue/integrity.h"
#include "catalogue/library_fixture.h"
#include "catalogue/migrations.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "catalogue/statement.h"
#include "outside/run_program.h"

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

OpenOptions readOnly() {
    OpenOptions options = tests::plainOptions();
    options.access = OpenOptions::Access::ReadOnly;
    return options;
}

OpenOptions never() {
    OpenOptions options = tests::plainOptions();
    options.create = OpenOptions::Create::Never;
    return options;
}

// While it lives, the process has no more rights than any user: root would be stopped by no mode.
class AsPlainUser {
public:
    AsPlainUser() {
        constexpr uid_t kNobody = 65534;
        if (geteuid() == 0) m_switched = seteuid(kNobody) == 0;
    }

    ~AsPlainUser() {
        if (m_switched) {
            EXPECT_EQ(seteuid(0), 0);
        }
    }

    AsPlainUser(const AsPlainUser&) = delete;
    AsPlainUser& operator=(const AsPlainUser&) = delete;

private:
    bool m_switched = false;
};

using OpeningTest = LibraryTest;

TEST_F(OpeningTest, MakesALibraryAndItsFolder) {
    const fs::path path = folder() / "new" / "deep" / "library.db";
    const auto made = Library::open(path, tests::plainOptions());
    ASSERT_THAT(made, isOk());
    EXPECT_TRUE(made->wasCreated());
    EXPECT_FALSE(made->isReadOnly());
    const auto again = Library::open(path, tests::plainOptions());
    ASSERT_THAT(again, isOk());
    EXPECT_FALSE(again->wasCreated());
}

TEST_F(OpeningTest, MakesNoneWhereItMayNot) {
    EXPECT_THAT(Library::open(folder() / "none.db", never()),
                failsWith(ErrorKind::NotFound, "none.db"));
    EXPECT_THAT(Library::open(folder() / "none.db", readOnly()),
                failsWith(ErrorKind::NotFound, "none.db"));
    EXPECT_FALSE(fs::exists(folder() / "none.db"));
}

TEST_F(OpeningTest, KeepsWhatWasAddedBefore) {
    const TextureId id = add(textureOf(1, titled("Shingle")));
    open();
    EXPECT_EQ(readTexture(library(), id)->row.title, "Shingle");
}

TEST_F(OpeningTest, RefusesAFileThatIsNoDatabase) {
    for (const std::string& bytes : {std::string("a letter from the lighthouse"),
                                     std::string(5000, 'x'), std::string("SQLite format 3")}) {
        const fs::path path = folder() / "letter.txt";
        writeBytes(path, bytes);
        EXPECT_THAT(Library::open(path, tests::plainOptions()),
                    failsWith(ErrorKind::InvalidInput, "no SQLite file"));
        EXPECT_THAT(Library::open(path, readOnly()),
                    failsWith(ErrorKind::InvalidInput, "no SQLite file"));
        EXPECT_EQ(readBytes(path), bytes);
    }
    EXPECT_THAT(Library::open(folder(), tests::plainOptions()),
                failsWith(ErrorKind::InvalidInput, "no file"));
}

TEST_F(OpeningTest, RefusesADatabaseOfAnotherKind) {
    for (const char* id : {"0", "1413830705"}) {
        const fs::path path = folder() / ("foreign" + std::string(id) + ".db");
        {
            const auto foreign =
                *Connection::open(path, FileMode::ReadWriteOrCreate, std::chrono::milliseconds(0));
            ASSERT_THAT(
                foreign->execute("CREATE TABLE t (x); PRAGMA application_id=" + std::string(id)),
                isOk());
        }
        const std::string before = readBytes(path);
        EXPECT_THAT(Library::open(path, tests::plainOptions()),
                    failsWith(ErrorKind::InvalidInput, "no Pantile library"));
        EXPECT_EQ(readBytes(path), before);
    }
}

TEST_F(OpeningTest, RefusesANewerLibraryUntouched) {
    forge("PRAGMA user_version=9999");
    close();
    const std::string before = readBytes(path());
    for (const OpenOptions& how : {tests::plainOptions(), readOnly()}) {
        EXPECT_THAT(Library::open(path(), how), failsWith(ErrorKind::Unsupported, "9999"));
    }
    EXPECT_EQ(readBytes(path()), before);
}

// The newer version may still stand in the log alone, where the file's header does not show it.
TEST_F(OpeningTest, RefusesANewerLibraryWhoseLogIsNotYetCopied) {
    forge("PRAGMA wal_autocheckpoint=0; PRAGMA user_version=9999");
    const std::string before = readBytes(path());
    EXPECT_THAT(Library::open(path(), tests::plainOptions()),
                failsWith(ErrorKind::Unsupported, "9999"));
    EXPECT_EQ(readBytes(path()), before);
}

TEST_F(OpeningTest, RefusesAVersionBelowOne) {
    forge("PRAGMA user_version=-3");
    close();
    EXPECT_THAT(Library::open(path(), tests::plainOptions()), failsWith(ErrorKind::Corrupt, "-3"));
}

TEST_F(OpeningTest, TakesABlankDatabaseForANewLibrary) {
    const fs::path path = folder() / "blank.db";
    writeBytes(path, "");
    const auto made = Library::open(path, tests::plainOptions());
    ASSERT_THAT(made, isOk());
    EXPECT_TRUE(made->wasCreated());
}

// What a program leaves that was killed after it changed the journal and before it made the tables.
TEST_F(OpeningTest, FinishesALibraryThatWasNeverFinished) {
    const fs::path path = folder() / "half.db";
    {
        const auto half =
            *Connection::open(path, FileMode::ReadWriteOrCreate, std::chrono::milliseconds(0));
        ASSERT_THAT(half->execute("PRAGMA journal_mode=WAL"), isOk());
    }
    ASSERT_GT(fs::file_size(path), 0U);
    const auto made = Library::open(path, tests::plainOptions());
    ASSERT_THAT(made, isOk());
    EXPECT_TRUE(made->wasCreated());
}

TEST_F(OpeningTest, TellsDamageFromOtherFaults) {
    add(textureOf(1));
    close();
    std::string bytes = readBytes(path());
    for (std::size_t i = 100; i < 4096; ++i) bytes[i] = '\x5A';
    writeBytes(path(), bytes);
    EXPECT_THAT(Library::open(path(), tests::plainOptions()),
                failsWith(ErrorKind::Corrupt, "damaged"));
    EXPECT_EQ(readBytes(path()), bytes);
}

TEST_F(OpeningTest, SpecialCharactersInTheNameAreNoUri) {
    const fs::path path = folder() / "file:kelp?mode=memory#%41.db";
    { ASSERT_THAT(Library::open(path, tests::plainOptions()), isOk()); }
    EXPECT_TRUE(fs::exists(path));
}

class ReadOnlyTest : public LibraryTest {
protected:
    void SetUp() override {
        id = add(textureOf(1, titled("Lamp glass")));
        close();
        fs::permissions(path(), fs::perms(0444));
        fs::permissions(folder(), fs::perms(0555));
    }

    void TearDown() override { fs::permissions(folder(), fs::perms(0755)); }

    TextureId id;
};

TEST_F(ReadOnlyTest, IsRefusedForWritingAndLeftAlone) {
    const std::string before = readBytes(path());
    const AsPlainUser plain;
    const auto opened = Library::open(path(), tests::plainOptions());
    EXPECT_THAT(opened, failsWith(ErrorKind::Io, "read-only"));
    EXPECT_FALSE(opened.error().hint.empty());
    EXPECT_EQ(readBytes(path()), before);
}

TEST_F(ReadOnlyTest, CanBeReadInAFolderThatIsReadOnlyToo) {
    const AsPlainUser plain;
    for (const auto access :
         {OpenOptions::Access::ReadOnly, OpenOptions::Access::WhatTheFileAllows}) {
        OpenOptions options = tests::plainOptions();
        options.access = access;
        auto opened = Library::open(path(), options);
        ASSERT_THAT(opened, isOk());
        EXPECT_TRUE(opened->isReadOnly());
        EXPECT_EQ(readTexture(*opened, id)->row.title, "Lamp glass");
        EXPECT_THAT(removeTextures(*opened, {{id}}), failsWith(ErrorKind::Io, "read-only"));
    }
}

TEST_F(ReadOnlyTest, OfAnOddNameIsReadAllTheSame) {
    fs::permissions(folder(), fs::perms(0755));
    const fs::path odd = folder() / "sail 100%?cloth#1.db";
    fs::copy_file(path(), odd);
    fs::permissions(odd, fs::perms(0444));
    fs::permissions(folder(), fs::perms(0555));
    const AsPlainUser plain;
    const auto opened = Library::open(odd, readOnly());
    ASSERT_THAT(opened, isOk());
    EXPECT_THAT(readTexture(*opened, id), isOk());
}

TEST_F(ReadOnlyTest, WithAnUnfinishedLogSaysWhatToDo) {
    fs::permissions(folder(), fs::perms(0755));
    writeBytes(path().string() + "-wal", std::string(5000, 'w'));
    fs::permissions(folder(), fs::perms(0555));
    const AsPlainUser plain;
    EXPECT_THAT(Library::open(path(), readOnly()), failsWith(ErrorKind::Io, "not closed properly"));
}

TEST_F(ReadOnlyTest, AccessIsEnoughForAWritableFile) {
    fs::permissions(folder(), fs::perms(0755));
    fs::permissions(path(), fs::perms(0644));
    auto opened = Library::open(path(), readOnly());
    ASSERT_THAT(opened, isOk());
    EXPECT_THAT(addTexture(*opened, textureOf(2)), failsWith(ErrorKind::Io, "read-only"));
    auto found = findTextures(*opened, *parseQuery("all"));
    EXPECT_EQ(found->total, 1);
}

using SharedTest = LibraryTest;

TEST_F(SharedTest, ASecondWriterIsBusyAndAReaderIsNot) {
    const TextureId id = add(textureOf(1, titled("Before")));
    auto other = *Library::open(path(), options());
    auto transaction = library().begin();
    ASSERT_THAT(setText(library(), {{id}},
                        {.title = "After", .author = {}, .licence = {}, .source = {}, .note = {}}),
                isOk());
    const auto refused = addTexture(other, textureOf(2));
    EXPECT_THAT(refused, failsWith(ErrorKind::Busy, "another program"));
    EXPECT_NE(refused.error().hint.find("close the other program"), std::string::npos);
    EXPECT_EQ(readTexture(other, id)->row.title, "Before");
    ASSERT_THAT(transaction->commit(), isOk());
    EXPECT_EQ(readTexture(other, id)->row.title, "After");
    EXPECT_THAT(addTexture(other, textureOf(2)), isOk());
}

TEST_F(SharedTest, AWriterWaitsForAnother) {
    OpenOptions patient = tests::plainOptions();
    patient.busyTimeout = std::chrono::milliseconds(5000);
    auto other = *Library::open(path(), patient);
    auto transaction = library().begin();
    add(textureOf(1));
    bool isAdded = false;
    std::thread writer([&] { isAdded = addTexture(other, textureOf(2)).has_value(); });
    std::this_thread::sleep_for(std::chrono::milliseconds(50));
    EXPECT_THAT(transaction->commit(), isOk());
    writer.join();
    EXPECT_TRUE(isAdded);
    EXPECT_EQ(findTextures(library(), *parseQuery("all"))->total, 2);
}

TEST_F(SharedTest, AChangeByAnotherIsNoticed) {
    auto other = *Library::open(path(), options());
    const std::int64_t before = library().dataVersion().value();
    add(textureOf(1));
    EXPECT_EQ(library().dataVersion().value(), before);
    ASSERT_THAT(addTexture(other, textureOf(2)), isOk());
    EXPECT_NE(library().dataVersion().value(), before);
}

// SQLite removes its log when the last program closes the library. Whether it is the last one it
// tells by a lock, which the system takes away from a program that closes the file by other means
// (SQLite documentation, 'How To Corrupt An SQLite Database File', section 2.2).
TEST_F(SharedTest, AnotherProgramThatClosesItLeavesTheLogToThoseWhoHaveItOpen) {
    add(textureOf(1));
    // As the window's jobs open and close it beside the window's own.
    ASSERT_THAT(Library::open(path(), options()), isOk());
    const std::string count =
        "/usr/bin/python3 -c 'import sqlite3, sys; file = sqlite3.connect(sys.argv[1]); "
        "print(*file.execute(\"SELECT count(*) FROM textures\").fetchone()); file.close()' " +
        tests::inQuotes(path().string());
    EXPECT_EQ(tests::run(count).output, "1\n");
    EXPECT_TRUE(fs::exists(path().string() + "-wal"));
    add(textureOf(2));
    EXPECT_EQ(tests::run(count).output, "2\n") << "what is kept now is seen by others";
}

TEST_F(SharedTest, ManyProgramsMakeTheSameLibraryAtOnce) {
    constexpr int kPrograms = 8;
    for (int round = 0; round < 5; ++round) {
        const fs::path path = folder() / ("shared" + std::to_string(round) + ".db");
        std::vector<pid_t> children;
        for (int program = 0; program < kPrograms; ++program) {
            const pid_t child = fork();
            if (child == 0) {
                auto opened = Library::open(path, tests::plainOptions());
                const bool isAdded =
                    opened && addTexture(*opened, textureOf(static_cast<std::uint64_t>(program)));
                _exit(!isAdded ? 2 : (opened->wasCreated() ? 1 : 0));
            }
            children.push_back(child);
        }
        int makers = 0;
        for (const pid_t child : children) {
            int status = 0;
            ASSERT_EQ(waitpid(child, &status, 0), child);
            ASSERT_TRUE(WIFEXITED(status));
            ASSERT_NE(WEXITSTATUS(status), 2) << "a program could not open or add";
            makers += WEXITSTATUS(status);
        }
        EXPECT_EQ(makers, 1);
        const auto opened = Library::open(path, never());
        ASSERT_THAT(opened, isOk());
        EXPECT_EQ(findTextures(*opened, *parseQuery("all"))->total, kPrograms);
        EXPECT_TRUE(checkLibrary(*opened)->ok);
    }
}

// A child is killed while it adds; what it acknowledged through the pipe must be there.
TEST_F(SharedTest, AKilledProgramLosesNothingThatItAcknowledged) {
    close();
    for (int round = 0; round < 8; ++round) {
        std::array<int, 2> ends = {};
        ASSERT_EQ(pipe(ends.data()), 0);
        const pid_t child = fork();
        if (child == 0) {
            auto opened = Library::open(path(), tests::plainOptions());
            for (std::uint64_t seed = 0;; ++seed) {
                const auto added = addTexture(
                    *opened, textureOf(seed + 100000 * static_cast<std::uint64_t>(round)));
                if (!added || write(ends[1], &added->id.value, 8) != 8) _exit(1);
            }
        }
        ::close(ends[1]);
        std::this_thread::sleep_for(std::chrono::milliseconds(20 + 13 * round));
        ASSERT_EQ(kill(child, SIGKILL), 0);
        ASSERT_EQ(waitpid(child, nullptr, 0), child);
        std::vector<TextureId> acknowledged;
        for (TextureId id; read(ends[0], &id.value, 8) == 8;) acknowledged.push_back(id);
        ::close(ends[0]);

        const auto opened = Library::open(path(), tests::plainOptions());
        ASSERT_THAT(opened, isOk());
        EXPECT_THAT(readRows(*opened, acknowledged), isOk());
        const auto report = checkLibrary(*opened);
        ASSERT_THAT(report, isOk());
        EXPECT_TRUE(report->ok) << report->problems.front().what;
    }
}

class FullDiskTest : public LibraryTest {
protected:
    // Textures of one large noise each, so that a few fill what room there is.
    core::Texture large(std::uint64_t seed) { return textureOf(seed, {}, {256, 256}, 256); }

    void expectUnchangedWith(std::int64_t textures) {
        EXPECT_EQ(findTextures(library(), *parseQuery("all"))->total, textures);
        const auto report = checkLibrary(library());
        ASSERT_THAT(report, isOk());
        EXPECT_TRUE(report->ok) << report->problems.front().what;
    }
};

TEST_F(FullDiskTest, IsSaidAndNothingOfTheChangeIsKept) {
    add(large(1));
    const std::int64_t pages = library().connection().number("PRAGMA page_count").value();
    forge("PRAGMA max_page_count=" + std::to_string(pages + 4));
    const auto refused = addTexture(library(), large(2));
    EXPECT_THAT(refused, failsWith(ErrorKind::Io, "the disk is full"));
    EXPECT_NE(refused.error().hint.find("free some space"), std::string::npos);
    expectUnchangedWith(1);
    forge("PRAGMA max_page_count=1000000");
    EXPECT_THAT(addTexture(library(), large(2)), isOk());
}

// SQLite undoes the statement that failed, or gives up the whole change; then nothing is committed.
TEST_F(FullDiskTest, UndoesWhatFailedOrTheWholeChange) {
    const std::int64_t pages = library().connection().number("PRAGMA page_count").value();
    forge("PRAGMA max_page_count=" + std::to_string(pages + 40));
    std::int64_t kept = 0;
    {
        auto transaction = library().begin();
        for (std::uint64_t seed = 1; seed <= 3; ++seed) {
            if (addTexture(library(), large(seed))) ++kept;
        }
        EXPECT_LT(kept, 3);
        if (!transaction->commit()) kept = 0;
    }
    expectUnchangedWith(kept);
}

// A limit on the size of files makes the system refuse the write itself, in a process of its own.
TEST_F(FullDiskTest, IsToldWhenTheSystemRefusesToWrite) {
    add(large(1));
    close();
    const auto fileBytes = fs::file_size(path());
    const pid_t child = fork();
    if (child == 0) {
        std::signal(SIGXFSZ, SIG_IGN);
        const rlimit limit{fileBytes + 20000, fileBytes + 20000};
        if (setrlimit(RLIMIT_FSIZE, &limit) != 0) _exit(3);
        auto opened = Library::open(path(), options());
        if (!opened) _exit(4);
        for (std::uint64_t seed = 2; seed < 10; ++seed) {
            const auto added = addTexture(*opened, large(seed));
            if (added) continue;
            const core::Error& error = added.error();
            const bool isFull = error.kind == ErrorKind::Io &&
                                error.message.find("the disk is full") != std::string::npos;
            _exit(isFull ? 0 : 5);
        }
        _exit(6);
    }
    int status = 0;
    ASSERT_EQ(waitpid(child, &status, 0), child);
    ASSERT_TRUE(WIFEXITED(status));
    EXPECT_EQ(WEXITSTATUS(status), 0);
    open();
    const auto report = checkLibrary(library());
    ASSERT_THAT(report, isOk());
    EXPECT_TRUE(report->ok);
}

}  // namespace
}  // namespace pantile::catalogue
