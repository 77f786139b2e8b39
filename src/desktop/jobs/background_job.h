#pragma once

// BackgroundJob: the only bridge between the window's thread and long work. The work gets copies of
// values and opens its own library; it never sees a widget.

#include <functional>
#include <memory>
#include <utility>
#include <vector>

#include <QFutureWatcher>
#include <QPromise>
#include <QString>
#include <QThreadPool>
#include <QtConcurrentRun>

#include "core/progress.h"
#include "core/result.h"

namespace pantile::desktop {

/// One line of work of which only the newest run counts: starting it again asks the run before to
/// stop and drops its result. All functions, and what is called back, belong to the window's
/// thread.
template <typename T>
class BackgroundJob {
public:
    using Work = std::function<core::Result<T>(const core::Progress&)>;
    using Done = std::function<void(core::Result<T>)>;
    using Report = std::function<void(int done, int total, const QString& what)>;

    /// `pool` must outlive the job.
    explicit BackgroundJob(QThreadPool& pool) : m_pool(pool) {}

    /// Asks what runs to stop and waits for it; nothing is called back any more.
    ~BackgroundJob() { stopAndWait(); }

    BackgroundJob(const BackgroundJob&) = delete;
    BackgroundJob& operator=(const BackgroundJob&) = delete;
    BackgroundJob(BackgroundJob&&) = delete;
    BackgroundJob& operator=(BackgroundJob&&) = delete;

    void start(Work work, Done done, Report report = {}) {
        dropRun();
        m_stop = std::stop_source();
        m_watcher = std::make_unique<Watcher>();
        m_done = std::move(done);
        connectWatcher(std::move(report));
        m_watcher->setFuture(QtConcurrent::run(
            &m_pool, [work = std::move(work), token = m_stop.get_token()](QPromise<Answer>& out) {
                out.addResult(std::make_shared<core::Result<T>>(work({token, reporter(out)})));
            }));
    }

    /// Asks the work to stop; it still calls back, with what it says then.
    void stop() { m_stop.request_stop(); }

    /// For closing, where the answer counts: waits for the newest run and calls back.
    void waitForDone() {
        if (m_watcher == nullptr) return;
        m_watcher->disconnect();
        m_watcher->waitForFinished();
        finish();
    }

    bool isRunning() const { return m_watcher != nullptr; }

    /// For closing: stops, waits, and calls nothing back.
    void stopAndWait() {
        dropRun();
        for (QFuture<Answer>& future : m_dropped) future.waitForFinished();
        m_dropped.clear();
    }

private:
    // QFuture copies what it holds. The two owners are the future and, for a moment, the callback.
    using Answer = std::shared_ptr<core::Result<T>>;
    using Watcher = QFutureWatcher<Answer>;

    static auto reporter(QPromise<Answer>& out) {
        return [&out](std::int64_t done, std::int64_t total, std::string_view what) {
            out.setProgressRange(0, static_cast<int>(total));
            out.setProgressValueAndText(
                static_cast<int>(done),
                QString::fromUtf8(what.data(), static_cast<qsizetype>(what.size())));
        };
    }

    void connectWatcher(Report report) {
        Watcher* const watcher = m_watcher.get();
        QObject::connect(watcher, &Watcher::finished, watcher, [this] { finish(); });
        if (!report) return;
        QObject::connect(watcher, &Watcher::progressValueChanged, watcher,
                         [watcher, report = std::move(report)](int value) {
                             report(value, watcher->progressMaximum(), watcher->progressText());
                         });
    }

    // The watcher is deleted later, as we may stand in its signal; `done` may start the next run.
    void finish() {
        const Answer answer = m_watcher->result();
        const Done callback = std::move(m_done);
        m_watcher.release()->deleteLater();
        callback(std::move(*answer));
    }

    void dropRun() {
        if (m_watcher == nullptr) return;
        m_stop.request_stop();
        m_watcher->disconnect();
        m_dropped.push_back(m_watcher->future());
        m_watcher.reset();
        std::erase_if(m_dropped, [](const QFuture<Answer>& each) { return each.isFinished(); });
    }

    QThreadPool& m_pool;
    std::stop_source m_stop;
    Done m_done;
    std::unique_ptr<Watcher> m_watcher;
    std::vector<QFuture<Answer>> m_dropped;  ///< Runs whose results nobody waits for.
};

}  // namespace pantile::desktop
