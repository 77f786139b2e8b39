#include "desktop/jobs/background_job.h"

#include <atomic>
#include <thread>

#include <gtest/gtest.h>

#include "library_fixture.h"

namespace pantile::desktop {
namespace {

using tests::comes;

// Work that goes on until it is asked to stop.
core::Result<int> untilStopped(const core::Progress& progress) {
    while (!progress.stopRequested()) std::this_thread::yield();
    return core::stoppedError();
}

TEST(BackgroundJob, RunsElsewhereAndCallsBackHere) {
    QThreadPool pool;
    BackgroundJob<int> job(pool);
    const auto here = std::this_thread::get_id();
    std::thread::id worked;
    std::thread::id called;
    int answer = 0;
    job.start(
        [&](const core::Progress&) -> core::Result<int> {
            worked = std::this_thread::get_id();
            return 7;
        },
        [&](const core::Result<int>& result) {
            called = std::this_thread::get_id();
            answer = *result;
        });
    EXPECT_TRUE(job.isRunning());
    EXPECT_TRUE(comes([&] { return answer == 7; }));
    EXPECT_NE(worked, here);
    EXPECT_EQ(called, here);
    EXPECT_FALSE(job.isRunning());
}

TEST(BackgroundJob, WaitsForAnAnswerThatCountsAndCallsBackOnce) {
    QThreadPool pool;
    BackgroundJob<int> job(pool);
    std::vector<int> answers;
    job.start([](const core::Progress&) -> core::Result<int> { return 7; },
              [&](const core::Result<int>& result) { answers.push_back(*result); });
    job.waitForDone();
    EXPECT_EQ(answers, std::vector<int>{7});
    EXPECT_FALSE(job.isRunning());
    job.waitForDone();
    QCoreApplication::processEvents();
    EXPECT_EQ(answers, std::vector<int>{7});
}

TEST(BackgroundJob, ReportsProgress) {
    QThreadPool pool;
    BackgroundJob<int> job(pool);
    QStringList reports;
    bool done = false;
    job.start(
        [](const core::Progress& progress) -> core::Result<int> {
            progress.tell(2, 5, "rope");
            return 0;
        },
        [&](const core::Result<int>&) { done = true; },
        [&](int value, int total, const QString& what) {
            reports.append(QStringLiteral("%1/%2 %3").arg(value).arg(total).arg(what));
        });
    EXPECT_TRUE(comes([&] { return done; }));
    EXPECT_TRUE(reports.contains(QStringLiteral("2/5 rope")))
        << reports.join(QLatin1Char(';')).toStdString();
}

TEST(BackgroundJob, SaysThatItWasStopped) {
    QThreadPool pool;
    BackgroundJob<int> job(pool);
    core::ErrorKind kind = core::ErrorKind::Internal;
    job.start(untilStopped, [&](const core::Result<int>& result) { kind = result.error().kind; });
    job.stop();
    EXPECT_TRUE(comes([&] { return kind == core::ErrorKind::Cancelled; }));
}

TEST(BackgroundJob, DropsTheResultOfAnOlderRun) {
    QThreadPool pool;
    pool.setMaxThreadCount(2);
    BackgroundJob<int> job(pool);
    std::vector<int> answers;
    const auto note = [&](const core::Result<int>& result) {
        answers.push_back(result ? *result : -1);
    };
    job.start(untilStopped, note);
    job.start([](const core::Progress&) -> core::Result<int> { return 2; }, note);
    EXPECT_TRUE(comes([&] { return !answers.empty() && pool.activeThreadCount() == 0; }));
    QTest::qWait(1);
    EXPECT_EQ(answers, std::vector<int>{2});
}

TEST(BackgroundJob, MayStartTheNextRunFromItsCallback) {
    QThreadPool pool;
    BackgroundJob<int> job(pool);
    std::vector<int> answers;
    const auto give = [](int value) {
        return [value](const core::Progress&) -> core::Result<int> { return value; };
    };
    job.start(give(1), [&](const core::Result<int>& first) {
        answers.push_back(*first);
        job.start(give(2), [&](const core::Result<int>& next) { answers.push_back(*next); });
    });
    EXPECT_TRUE(comes([&] { return answers.size() == 2; }));
    EXPECT_EQ(answers, (std::vector<int>{1, 2}));
}

TEST(BackgroundJob, WaitsForItsWorkWhenItGoes) {
    QThreadPool pool;
    std::atomic<bool> ended = false;
    {
        BackgroundJob<int> job(pool);
        job.start(
            [&](const core::Progress& progress) {
                auto result = untilStopped(progress);
                ended = true;
                return result;
            },
            [](const core::Result<int>&) { ADD_FAILURE() << "called back after its end"; });
    }
    EXPECT_TRUE(ended);
    QTest::qWait(1);
}

}  // namespace
}  // namespace pantile::desktop
