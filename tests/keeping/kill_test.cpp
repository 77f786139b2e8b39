// Programs killed at random moments while they add, tag, load and bring old libraries up to date.

#include <array>
#include <csignal>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <string>
#include <sys/wait.h>
#include <unistd.h>

#include <gtest/gtest.h>

#include "catalogue/library.h"
#include "catalogue/migrations.h"
#include "keeping/deeds.h"
#include "keeping/rounds.h"
#include "keeping/whole_library.h"
#include "support/matchers.h"
#include "support/temporary_folder.h"

namespace pantile::tests {
namespace {

namespace fs = std::filesystem;
using catalogue::Library;

/// A program of its own that runs until it is killed.
class KilledProgram {
public:
    /// `work` is given the end of a pipe to say into what is done.
    template <typename Work>
    explicit KilledProgram(Work work) {
        std::array<int, 2> ends = {};
        EXPECT_EQ(pipe(ends.data()), 0);
        m_said = ends[0];
        m_child = fork();
        if (m_child == 0) {
            work(ends[1]);
            _exit(0);
        }
        ::close(ends[1]);
    }

    KilledProgram(const KilledProgram&) = delete;
    KilledProgram& operator=(const KilledProgram&) = delete;

    ~KilledProgram() { ::close(m_said); }

    /// Gives the last number that it said, or `before` if it said none.
    std::int64_t killAfter(int microseconds, std::int64_t before) const {
        usleep(static_cast<useconds_t>(microseconds));
        EXPECT_EQ(kill(m_child, SIGKILL), 0);
        int status = 0;
        EXPECT_EQ(waitpid(m_child, &status, 0), m_child);
        std::int64_t last = before;
        for (std::int64_t said = 0; read(m_said, &said, sizeof said) == sizeof said;) last = said;
        return last;
    }

private:
    pid_t m_child = 0;
    int m_said = -1;
};

constexpr std::int64_t kFault = -1;

/// Does deeds from `number` on and says each that is done; kFault, and no more, if one fails.
void workFrom(const fs::path& path, std::uint64_t seed, std::int64_t number, int said) {
    const auto say = [said](std::int64_t what) {
        if (write(said, &what, sizeof what) != sizeof what) _exit(1);
    };
    auto library = Library::open(path, deedOptions(number));
    if (!library) return say(kFault);
    for (;; ++number) {
        const auto done = doDeed(*library, seed, number);
        if (!done && !isRefusal(done.error())) return say(kFault);
        say(number);
    }
}

class KillTest : public ::testing::Test {
protected:
    fs::path path(const std::string& name) const { return m_folder.path() / name; }

    static void makeNew(const fs::path& path) {
        const std::int64_t number = 0;
        auto library = Library::open(path, deedOptions(number));
        ASSERT_THAT(library, isOk());
        ASSERT_THAT(prepareForDeeds(*library), isOk());
    }

    std::string referenceAfter(std::uint64_t seed, std::int64_t last) {
        auto library = Library::open(path("reference.db"), deedOptions(m_done));
        EXPECT_THAT(library, isOk());
        while (m_done < last) {
            ++m_done;
            const auto done = doDeed(*library, seed, m_done);
            EXPECT_TRUE(done || isRefusal(done.error()));
        }
        return wholeLibrary(library->connection()).value();
    }

    /// The library holds exactly the deeds up to `said`, or one more that was not said any more.
    void expectWhole(std::uint64_t seed, std::int64_t said) {
        const auto found = wholeLibrary(path("killed.db"));
        ASSERT_THAT(found, isOk());
        if (*found == referenceAfter(seed, said)) return;
        ASSERT_EQ(*found, referenceAfter(seed, said + 1)) << "after deed " << said;
        ++m_unsaid;
    }

    TemporaryFolder m_folder;
    std::int64_t m_done = 0;  ///< Deeds done in the reference.
    int m_unsaid = 0;
};

TEST_F(KillTest, WhatWasAcknowledgedIsThereAndNothingByHalf) {
    const int all = rounds(4, 500);
    constexpr int kRoundsOfALibrary = 20;
    constexpr int kLongestLife = 60'000;
    Random random(20261126);
    for (int round = 0; round < all; ++round) {
        const auto seed = static_cast<std::uint64_t>(round / kRoundsOfALibrary);
        if (round % kRoundsOfALibrary == 0) {
            for (const char* name : {"killed.db", "reference.db"}) {
                for (const char* suffix : {"", "-wal", "-shm"}) {
                    fs::remove(path(std::string(name) + suffix));
                }
                makeNew(path(name));
            }
            m_done = 0;
        }
        const std::int64_t before = m_done;
        const KilledProgram program(
            [&](int said) { workFrom(path("killed.db"), seed, before + 1, said); });
        const std::int64_t last = program.killAfter(random.between(0, kLongestLife), before);
        ASSERT_NE(last, kFault);
        expectWhole(seed, last);
        if (HasFatalFailure()) return;
    }
    std::printf("%d kills, %d deeds done but not said\n", all, m_unsaid);
}

TEST_F(KillTest, AnOldLibraryIsOldOrNewAndHoldsTheSame) {
    const int newest = catalogue::embeddedMigrations().back().version;
    const int each = rounds(1, 125);
    constexpr int kLongestLife = 100'000;
    Random random(20261127);
    int finished = 0;
    for (int version = 1; version < newest; ++version) {
        const fs::path old = path("old-" + std::to_string(version) + ".db");
        makeOldLibrary(old, version);
        copyLibrary(old, path("whole.db"));
        const std::string expected = wholeLibrary(path("whole.db")).value();
        for (int round = 0; round < each; ++round) {
            const fs::path folder = path("migrating");
            fs::create_directory(folder);
            copyLibrary(old, folder / "killed.db");
            const KilledProgram program([&](int said) {
                const std::int64_t number = 1;
                const auto library = Library::open(folder / "killed.db", deedOptions(number));
                (void)write(said, &number, library ? sizeof number : 0);
            });
            finished += static_cast<int>(program.killAfter(random.between(0, kLongestLife), 0));
            EXPECT_EQ(wholeLibrary(folder / "killed.db").value(), expected);
            for (const auto& file : fs::directory_iterator(folder)) {
                const bool isCopy = file.path().string().find(".version-") != std::string::npos &&
                                    file.path().extension() != ".part";
                if (!isCopy) continue;
                copyLibrary(file.path(), path("copy.db"));
                EXPECT_EQ(wholeLibrary(path("copy.db")).value(), expected);
            }
            fs::remove_all(folder);
            for (const auto& file : fs::directory_iterator(m_folder.path())) {
                if (file.path().string().find("copy.db") != std::string::npos) {
                    fs::remove(file.path());
                }
            }
        }
    }
    std::printf("%d of %d had been brought up to date when they were killed\n", finished,
                each * (newest - 1));
}

}  // namespace
}  // namespace pantile::tests
