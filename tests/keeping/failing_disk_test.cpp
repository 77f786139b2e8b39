// Every kind of action on a disk that fails at each of its steps in turn: what is told as done is
// there, what is told as failed has left nothing behind, and the next try works.

#include "keeping/failing_disk.h"

#include <array>
#include <cstdio>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>

#include <gtest/gtest.h>

#include "catalogue/backup.h"
#include "catalogue/library.h"
#include "keeping/deeds.h"
#include "keeping/rounds.h"
#include "keeping/whole_library.h"
#include "support/matchers.h"
#include "support/temporary_folder.h"

namespace pantile::tests {
namespace {

namespace fs = std::filesystem;
using catalogue::Library;
using core::Result;

constexpr std::array<DiskFault, 4> kFaults = {DiskFault::Write, DiskFault::Read, DiskFault::Full,
                                              DiskFault::Gone};

std::string_view nameOf(DiskFault fault) {
    constexpr std::array<std::string_view, 4> kNames = {"write", "read", "full", "gone"};
    return kNames.at(static_cast<std::size_t>(fault));
}

class FailingDiskTest : public ::testing::Test {
protected:
    fs::path path(const std::string& name) const { return m_folder.path() / name; }

    /// Calls `atStep` for one step after another until it says that the fault did not come.
    template <typename AtStep>
    void forEachStep(DiskFault fault, AtStep atStep) {
        const int stride = rounds(61, 1);
        Random random(20261126 + static_cast<std::uint64_t>(fault));
        for (std::int64_t step = random.between(0, stride - 1); atStep(step); step += stride) {
            ++m_trials;
            if (HasFailure()) return;
        }
    }

    /// A place that cannot be read is damage too, where it is `check` that reads.
    static void expectTellsOfTheDisk(const Result<void>& done, DiskFault fault) {
        if (done) return;
        const core::ErrorKind kind = done.error().kind;
        const bool isDamage = fault == DiskFault::Read && kind == core::ErrorKind::Corrupt;
        EXPECT_TRUE(kind == core::ErrorKind::Io || isDamage)
            << ::testing::PrintToString(done.error());
    }

    void TearDown() override { std::printf("%d failures of the disk\n", m_trials); }

    TemporaryFolder m_folder;
    int m_trials = 0;
};

class DeedsOnAFailingDisk : public FailingDiskTest {
protected:
    void SetUp() override {
        makeUsedLibrary(path("base.db"));
        m_before = wholeLibrary(path("base.db")).value();
    }

    Library openCopy() {
        copyLibrary(path("base.db"), path("copy.db"));
        return Library::open(path("copy.db"), deedOptions(m_number)).value();
    }

    /// A seed with which the deed finds something to do.
    std::optional<std::uint64_t> findWork(const Deed& deed) {
        for (std::uint64_t seed = 1; seed < 100; ++seed) {
            {
                Library library = openCopy();
                Random random(seed);
                if (!deed.act(library, random)) continue;
            }
            m_after = wholeLibrary(path("copy.db")).value();
            if (m_after != m_before) return seed;
        }
        return std::nullopt;
    }

    /// After a failure that has passed, the same library does the same deed as if nothing had been.
    void expectSecondTry(Library& library, const Deed& deed, std::uint64_t seed) {
        EXPECT_EQ(wholeLibrary(library.connection()).value(), m_before);
        Random random(seed);
        EXPECT_THAT(deed.act(library, random), isOk());
    }

    bool tryAt(const Deed& deed, std::uint64_t seed, DiskFault fault, std::int64_t step) {
        SCOPED_TRACE(std::string(deed.name) + ", " + std::string(nameOf(fault)) + " at " +
                     std::to_string(step));
        copyLibrary(path("base.db"), path("copy.db"));
        const FailingDisk disk;
        FailingDisk::failAt(fault, step);
        bool isDone = false;
        bool hadCome = false;
        {
            auto library = Library::open(path("copy.db"), deedOptions(m_number));
            Random random(seed);
            const Result<void> done =
                library ? deed.act(*library, random) : Result<void>(library.error());
            isDone = done.has_value();
            expectTellsOfTheDisk(done, fault);
            if (!done && library && fault != DiskFault::Gone) {
                hadCome = FailingDisk::heal();
                expectSecondTry(*library, deed, seed);
                isDone = true;
            }
        }
        hadCome = FailingDisk::heal() || hadCome;
        const auto found = wholeLibrary(path("copy.db"));
        EXPECT_THAT(found, isOk());
        const std::string text = found ? *found : "damaged";
        EXPECT_TRUE(text == m_after || (!isDone && text == m_before)) << text;
        return hadCome;
    }

    const std::int64_t m_number = 1000;
    std::string m_before;
    std::string m_after;
};

TEST_F(DeedsOnAFailingDisk, AreDoneOrNotAndNeverByHalf) {
    const auto every = static_cast<std::size_t>(rounds(5, 1));
    for (std::size_t i = 0; i < deeds().size(); i += every) {
        const Deed& deed = deeds()[i];
        const auto seed = findWork(deed);
        ASSERT_TRUE(seed) << deed.name;
        for (const DiskFault fault : kFaults) {
            forEachStep(fault, [&](std::int64_t step) { return tryAt(deed, *seed, fault, step); });
            if (HasFailure()) return;
        }
    }
}

/// Work on whole files in a folder of its own.
struct FileWork {
    std::string_view name;
    std::function<Result<void>(const fs::path& folder)> act;
    std::string_view result;  ///< The file that holds `after` in the end.
};

class FilesOnAFailingDisk : public FailingDiskTest {
protected:
    void SetUp() override {
        makeOldLibrary(path("old.db"), 1);
        makeUsedLibrary(path("used.db"));
        makeUsedLibrary(path("other.db"));
        ASSERT_THAT(addMore(path("other.db")), isOk());
    }

    static Result<void> addMore(const fs::path& path) {
        const std::int64_t number = 500;
        PANTILE_ASSIGN_OR_RETURN(auto library, Library::open(path, deedOptions(number)));
        Random random(3);
        return deeds().front().act(library, random);
    }

    static Result<void> openOne(const fs::path& path) {
        const std::int64_t number = 500;
        PANTILE_RETURN_IF_ERROR(Library::open(path, deedOptions(number)));
        return {};
    }

    static Result<void> backUp(const fs::path& folder) {
        const std::int64_t number = 500;
        PANTILE_ASSIGN_OR_RETURN(const auto library,
                                 Library::open(folder / "used.db", deedOptions(number)));
        return backupTo(library, folder / "backup.db", catalogue::Overwrite::Replace);
    }

    static Result<void> restore(const fs::path& folder) {
        const std::int64_t number = 500;
        PANTILE_RETURN_IF_ERROR(catalogue::restoreLibrary(folder / "used.db", folder / "other.db",
                                                          deedOptions(number)));
        return {};
    }

    fs::path freshFolder() {
        const fs::path folder = path("trial");
        fs::remove_all(folder);
        fs::create_directory(folder);
        for (const char* name : {"old.db", "used.db", "other.db"}) {
            copyLibrary(path(name), folder / name);
        }
        return folder;
    }

    static std::string textOf(const fs::path& path) {
        if (!fs::exists(path)) return "none";
        const auto text = wholeLibrary(path);
        if (text) return *text;
        // An empty file is what a library begins with.
        return text.error().kind == core::ErrorKind::NotFound ? "none" : "damaged";
    }

    bool tryAt(const FileWork& work, DiskFault fault, std::int64_t step) {
        SCOPED_TRACE(std::string(work.name) + ", " + std::string(nameOf(fault)) + " at " +
                     std::to_string(step));
        const fs::path folder = freshFolder();
        const fs::path result = folder / work.result;
        const FailingDisk disk;
        FailingDisk::failAt(fault, step);
        const auto done = work.act(folder);
        const bool hadCome = FailingDisk::heal();
        expectTellsOfTheDisk(done, fault);
        if (done) {
            EXPECT_EQ(textOf(result), m_after);
        } else if (fs::exists(result)) {
            const std::string found = textOf(result);
            EXPECT_TRUE(found == m_before || found == m_after) << found;
        }
        EXPECT_THAT(work.act(folder), isOk());
        EXPECT_EQ(textOf(result), m_after);
        return hadCome;
    }

    std::string m_before;
    std::string m_after;
};

TEST_F(FilesOnAFailingDisk, AreOldOrNewAndTheNextTryWorks) {
    const std::array<FileWork, 4> works = {{
        {"make", [](const fs::path& folder) { return openOne(folder / "new.db"); }, "new.db"},
        {"migrate", [](const fs::path& folder) { return openOne(folder / "old.db"); }, "old.db"},
        {"back up", backUp, "backup.db"},
        {"restore", restore, "used.db"},
    }};
    std::size_t count = 0;
    for (const FileWork& work : works) {
        const fs::path folder = freshFolder();
        m_before = textOf(folder / work.result);
        freshFolder();
        ASSERT_THAT(work.act(folder), isOk());
        m_after = textOf(folder / work.result);
        ++count;
        for (const DiskFault fault : kFaults) {
            // In a short run each work meets one fault.
            if (!isFullRun() && fault != kFaults.at(count % kFaults.size())) continue;
            forEachStep(fault, [&](std::int64_t step) { return tryAt(work, fault, step); });
            if (HasFailure()) return;
        }
    }
}

}  // namespace
}  // namespace pantile::tests
