#pragma once

#include <deque>

#include <QObject>

#include "desktop/jobs/background_job.h"
#include "desktop/jobs/gather_job.h"

namespace pantile::desktop {

/// Adds what comes in, one request after the other, off the window's thread.
class Gatherer : public QObject {
    Q_OBJECT

public:
    /// `pool` must outlive it.
    Gatherer(std::filesystem::path libraryPath, QThreadPool& pool, QObject* parent);

    /// Starts with it, or lets it wait for those before.
    void add(GatherRequest request);

    bool isRunning() const { return m_job.isRunning(); }

    /// Asks the work to stop, and drops what waits. What was added stays.
    void stop();

    /// For closing: the same, and waits until the library is at rest.
    void stopAndWait();

Q_SIGNALS:
    void progressed(int done, int total, const QString& what);
    void finished(const core::Result<tasks::GatherReport>& report);

private:
    void startNext();

    std::filesystem::path m_libraryPath;
    std::deque<GatherRequest> m_waiting;
    BackgroundJob<tasks::GatherReport> m_job;
};

}  // namespace pantile::desktop
