// Two programs that write and four that read the same library at once.

#include <chrono>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <functional>
#include <string>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>
#include <vector>

#include <gtest/gtest.h>

#include "catalogue/integrity.h"
#include "catalogue/library.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "keeping/deeds.h"
#include "keeping/rounds.h"
#include "support/matchers.h"
#include "support/temporary_folder.h"

namespace pantile::tests {
namespace {

namespace fs = std::filesystem;
using catalogue::Library;
using Clock = std::chrono::steady_clock;

/// What a program says of itself at its end.
enum Verdict : int {
    kAllWell = 0,
    kCouldNotOpen = 1,
    kDeedFailed = 2,
    kReadingFailed = 3,
    kNothingNoticed = 4,
    kTornMoment = 5
};

/// On a slow disk a single change may take its time; this is beyond any patience.
constexpr std::chrono::seconds kMostWaiting{60};

/// Writes until the file `enough` is there.
Verdict writeUntil(const fs::path& path, std::uint64_t seed, const fs::path& enough) {
    std::int64_t number = 1;
    auto library = Library::open(path, deedOptions(number));
    if (!library) return kCouldNotOpen;
    for (; !fs::exists(enough); ++number) {
        const auto done = doDeed(*library, seed, number);
        if (!done && !isRefusal(done.error())) return kDeedFailed;
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    return kAllWell;
}

/// Rows and their number are of one moment, reading never fails nor waits, and changes are noticed:
/// it goes on until they were.
Verdict readUntil(const fs::path& path, Clock::time_point end) {
    const std::int64_t number = 0;
    const auto library = Library::open(path, deedOptions(number));
    if (!library) return kCouldNotOpen;
    // Where it would have to wait, it fails.
    if (!library->connection().execute("PRAGMA busy_timeout=0")) return kCouldNotOpen;
    const auto all = catalogue::parseQuery("all | is:removed").value();
    std::int64_t noticed = 0;
    std::int64_t version = 0;
    constexpr std::int64_t kFew = 2;
    while (Clock::now() < end || (noticed <= kFew && Clock::now() < end + kMostWaiting)) {
        const auto seen = library->dataVersion();
        if (!seen) return kReadingFailed;
        if (*seen != version) ++noticed;
        version = *seen;
        const auto found = catalogue::findTextures(*library, all);
        if (!found) return kReadingFailed;
        if (found->total != std::ssize(found->rows)) return kTornMoment;
        if (!found->rows.empty()) {
            // Another program may purge it in between.
            const auto read = catalogue::readTexture(*library, found->rows.back().id);
            if (!read && read.error().kind != core::ErrorKind::NotFound) return kReadingFailed;
        }
    }
    return noticed > kFew ? kAllWell : kNothingNoticed;
}

pid_t startProgram(const std::function<Verdict()>& work) {
    const pid_t child = fork();
    if (child == 0) _exit(work());
    return child;
}

void expectAllWell(pid_t program) {
    int status = 0;
    ASSERT_EQ(waitpid(program, &status, 0), program);
    ASSERT_TRUE(WIFEXITED(status));
    EXPECT_EQ(WEXITSTATUS(status), kAllWell);
}

TEST(Sharing, TwoWriteAndFourReadAtOnce) {
    const TemporaryFolder folder;
    const fs::path path = folder.path() / "library.db";
    {
        const std::int64_t number = 0;
        auto library = Library::open(path, deedOptions(number));
        ASSERT_THAT(library, isOk());
        ASSERT_THAT(prepareForDeeds(*library), isOk());
    }
    const fs::path enough = folder.path() / "enough";
    const auto end = Clock::now() + std::chrono::milliseconds(rounds(300, 60'000));
    std::vector<pid_t> writers;
    for (std::uint64_t seed : {11U, 12U}) {
        writers.push_back(startProgram([&] { return writeUntil(path, seed, enough); }));
    }
    std::vector<pid_t> readers;
    for (int reader = 0; reader < 4; ++reader) {
        readers.push_back(startProgram([&] { return readUntil(path, end); }));
    }
    for (const pid_t reader : readers) expectAllWell(reader);
    std::ofstream(enough).flush();
    for (const pid_t writer : writers) expectAllWell(writer);
    const std::int64_t number = 0;
    const auto library = Library::open(path, deedOptions(number));
    ASSERT_THAT(library, isOk());
    const auto report = catalogue::checkLibrary(*library);
    ASSERT_THAT(report, isOk());
    EXPECT_TRUE(report->ok) << report->problems.front().where << ": "
                            << report->problems.front().what;
    std::printf("%lld revisions, %lld textures\n",
                static_cast<long long>(
                    library->connection().number("SELECT count(*) FROM revisions").value()),
                static_cast<long long>(report->textures));
}

}  // namespace
}  // namespace pantile::tests
