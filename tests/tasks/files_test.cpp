#include "tasks/files.h"

#include <csignal>
#include <sys/resource.h>

#include "support/matchers.h"
#include "support/temporary_folder.h"
#include "tasks/collect_files.h"
#include "tasks/library_place.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

TEST(Files, WrittenTextIsReadBack) {
    const tests::TemporaryFolder folder;
    const auto path = folder.path() / "note.txt";
    ASSERT_THAT(writeFile(path, "shingle\n", IfExists::Refuse), isOk());
    EXPECT_EQ(*readFile(path, 100), "shingle\n");
}

TEST(Files, NeverReplaceSilently) {
    const tests::TemporaryFolder folder;
    const auto path = folder.path() / "note.txt";
    ASSERT_THAT(writeFile(path, "first", IfExists::Refuse), isOk());
    EXPECT_THAT(writeFile(path, "second", IfExists::Refuse),
                failsWith(ErrorKind::AlreadyExists, "note.txt"));
    EXPECT_EQ(*readFile(path, 100), "first");
    ASSERT_THAT(writeFile(path, "second", IfExists::Replace), isOk());
    EXPECT_EQ(*readFile(path, 100), "second");
}

TEST(Files, ADanglingLinkCountsAsThere) {
    const tests::TemporaryFolder folder;
    const auto link = folder.path() / "link.txt";
    std::filesystem::create_symlink(folder.path() / "nowhere", link);
    EXPECT_THAT(writeFile(link, "x", IfExists::Refuse),
                failsWith(ErrorKind::AlreadyExists, "link.txt"));
}

TEST(Files, SayWhatIsWrongWithThePlace) {
    const tests::TemporaryFolder folder;
    EXPECT_THAT(writeFile(folder.path() / "nowhere" / "note.txt", "x", IfExists::Refuse),
                failsWith(ErrorKind::NotFound, "there is no folder"));
    EXPECT_THAT(readFile(folder.path(), 100), failsWith(ErrorKind::InvalidInput, "is a folder"));
}

// To read it would take its locks away, to write it the library.
TEST(Files, OfALibraryThatIsOpenAreLeftAlone) {
    const tests::TemporaryFolder folder;
    const auto path = folder.path() / "library.db";
    const auto link = folder.path() / "link.db";
    {
        const auto library = openLibrary(path.string(), Purpose::Change);
        ASSERT_THAT(library, isOk());
        std::filesystem::create_symlink(path, link);
        for (const auto& name : {path, link, folder.path() / "library.db-wal"}) {
            EXPECT_THAT(readFile(name, 1U << 24U),
                        failsWith(ErrorKind::InvalidInput, "belongs to the library"));
            EXPECT_THAT(writeFile(name, "x", IfExists::Replace),
                        failsWith(ErrorKind::InvalidInput, "belongs to the library"));
        }
    }
    EXPECT_THAT(readFile(path, 1U << 24U), isOk());
}

// Qt opens files by UTF-16 names: others would come to be of another name, or end the program.
TEST(Files, APathThatIsNotUtf8IsRefused) {
    const tests::TemporaryFolder folder;
    for (const std::string& name : {std::string("kelp\xff"), std::string("kelp\0x", 6)}) {
        EXPECT_THAT(writeFile(folder.path() / name, "x", IfExists::Refuse),
                    failsWith(ErrorKind::InvalidInput, "not UTF-8"));
        EXPECT_THAT(readFile(folder.path() / name, 100),
                    failsWith(ErrorKind::InvalidInput, "not UTF-8"));
        EXPECT_THAT(makeFolder(folder.path() / name),
                    failsWith(ErrorKind::InvalidInput, "not UTF-8"));
    }
    EXPECT_TRUE(std::filesystem::is_empty(folder.path()));
}

TEST(Files, ReadingIsBounded) {
    const tests::TemporaryFolder folder;
    const auto path = folder.path() / "long.txt";
    ASSERT_THAT(writeFile(path, std::string(101, 'x'), IfExists::Refuse), isOk());
    EXPECT_THAT(readFile(path, 100), failsWith(ErrorKind::TooLarge, "more than 100 bytes"));
    EXPECT_THAT(readFile("/dev/zero", 100), failsWith(ErrorKind::TooLarge, "more than 100 bytes"));
    EXPECT_THAT(readFile(folder.path() / "none.txt", 100),
                failsWith(ErrorKind::NotFound, "none.txt"));
}

// The limit for a load is 6 GiB; a small file must not take that much memory.
TEST(Files, ReadingTakesNoMoreMemoryThanTheFileNeeds) {
    const tests::TemporaryFolder folder;
    const auto path = folder.path() / "small.bin";
    const std::string text(3 << 20U, 'x');
    ASSERT_THAT(writeFile(path, text, IfExists::Refuse), isOk());
    constexpr std::uint64_t kBeyondAllMemory = std::uint64_t{1} << 46U;
    const auto read = readFile(path, kBeyondAllMemory);
    ASSERT_THAT(read, isOk());
    EXPECT_TRUE(*read == text);
}

// A limit on the size of files answers a write as a full disk does: with an error in the middle.
class FileSizeLimit {
public:
    explicit FileSizeLimit(rlim_t bytes) {
        std::signal(SIGXFSZ, SIG_IGN);
        getrlimit(RLIMIT_FSIZE, &m_before);
        const rlimit limit{bytes, m_before.rlim_max};
        setrlimit(RLIMIT_FSIZE, &limit);
    }

    ~FileSizeLimit() { setrlimit(RLIMIT_FSIZE, &m_before); }

    FileSizeLimit(const FileSizeLimit&) = delete;
    FileSizeLimit& operator=(const FileSizeLimit&) = delete;
    FileSizeLimit(FileSizeLimit&&) = delete;
    FileSizeLimit& operator=(FileSizeLimit&&) = delete;

private:
    rlimit m_before{};
};

TEST(Files, AFullDiskLeavesTheOldFile) {
    const tests::TemporaryFolder folder;
    const auto path = folder.path() / "note.txt";
    ASSERT_THAT(writeFile(path, "old", IfExists::Refuse), isOk());
    {
        const FileSizeLimit limit(4096);
        EXPECT_THAT(writeFile(path, std::string(100000, 'x'), IfExists::Replace),
                    failsWith(ErrorKind::Io, "note.txt was not written"));
    }
    {
        // So little that it waits in memory until the file is closed.
        const FileSizeLimit limit(5);
        EXPECT_THAT(writeFile(path, std::string(100, 'x'), IfExists::Replace),
                    failsWith(ErrorKind::Io, "note.txt was not written"));
    }
    EXPECT_EQ(*readFile(path, 100), "old");
    EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder.path()), {}), 1);
}

TEST(Files, SayWhatStandsInTheWayOfAFolder) {
    const tests::TemporaryFolder folder;
    const auto file = folder.path() / "eve.h";
    ASSERT_THAT(writeFile(file, "x", IfExists::Refuse), isOk());
    EXPECT_THAT(makeFolder(file), failsWith(ErrorKind::Io, "eve.h is a file, not a folder"));
    EXPECT_THAT(makeFolder(file / "below" / "it"),
                failsWith(ErrorKind::Io, "eve.h is a file, not a folder"));
    EXPECT_THAT(makeFolder(folder.path() / "new" / "one"), isOk());
}

TEST(CollectFiles, ReadsFoldersThroughInOrderWithoutHiddenOnes) {
    const tests::TemporaryFolder folder;
    std::filesystem::create_directories(folder.path() / "b" / ".hidden");
    for (const char* name : {"b/2.png", "a.png", "b/.secret.png", "b/.hidden/3.png", "b/1.png"}) {
        ASSERT_THAT(writeFile(folder.path() / name, "x", IfExists::Refuse), isOk());
    }
    std::filesystem::create_directory_symlink(folder.path(), folder.path() / "b" / "loop");
    const auto files = collectFiles(folder.path());
    ASSERT_THAT(files, isOk());
    std::vector<std::string> names;
    EXPECT_TRUE(files->unread.empty());
    for (const FoundFile& file : files->files) {
        EXPECT_TRUE(file.insideFolder);
        names.push_back(file.path.lexically_relative(folder.path()).string());
    }
    EXPECT_EQ(names, (std::vector<std::string>{"a.png", "b/1.png", "b/2.png"}));
}

// A path that is longer than the system takes, as nothing else keeps everybody from reading.
TEST(CollectFiles, AFolderThatCannotBeReadIsToldAndTheOthersAreRead) {
    const tests::TemporaryFolder folder;
    ASSERT_THAT(writeFile(folder.path() / "a.png", "x", IfExists::Refuse), isOk());
    const auto before = std::filesystem::current_path();
    std::filesystem::current_path(folder.path());
    for (int depth = 0; depth < 20; ++depth) {
        std::filesystem::create_directory(std::string(250, 'd'));
        std::filesystem::current_path(std::string(250, 'd'));
    }
    std::filesystem::current_path(before);
    const auto found = collectFiles(folder.path());
    ASSERT_THAT(found, isOk());
    ASSERT_EQ(found->files.size(), 1U);
    ASSERT_EQ(found->unread.size(), 1U);
    EXPECT_THAT(core::Result<void>(found->unread.front().error),
                failsWith(ErrorKind::Io, "cannot be read"));
}

TEST(CollectFiles, ANamedFileStandsForItself) {
    const tests::TemporaryFolder folder;
    ASSERT_THAT(writeFile(folder.path() / ".kelp.png", "x", IfExists::Refuse), isOk());
    const auto files = collectFiles(folder.path() / ".kelp.png");
    ASSERT_THAT(files, isOk());
    ASSERT_EQ(files->files.size(), 1U);
    EXPECT_FALSE(files->files.front().insideFolder);
    EXPECT_THAT(collectFiles(folder.path() / "none"), failsWith(ErrorKind::NotFound, "none"));
}

}  // namespace
}  // namespace pantile::tasks
