#include "desktop/jobs/gatherer.h"

namespace pantile::desktop {

Gatherer::Gatherer(std::filesystem::path libraryPath, QThreadPool& pool, QObject* parent)
    : QObject(parent), m_libraryPath(std::move(libraryPath)), m_job(pool) {}

void Gatherer::add(GatherRequest request) {
    m_waiting.push_back(std::move(request));
    if (!m_job.isRunning()) startNext();
}

void Gatherer::stop() {
    m_waiting.clear();
    m_job.stop();
}

void Gatherer::stopAndWait() {
    m_waiting.clear();
    m_job.stopAndWait();
}

void Gatherer::startNext() {
    GatherRequest request = std::move(m_waiting.front());
    m_waiting.pop_front();
    Q_EMIT progressed(0, 0, {});
    m_job.start(
        [path = m_libraryPath, request = std::move(request)](const core::Progress& progress) {
            return runGather(path, request, progress);
        },
        [this](const core::Result<tasks::GatherReport>& report) {
            Q_EMIT finished(report);
            if (!m_waiting.empty()) startNext();
        },
        [this](int done, int total, const QString& what) { Q_EMIT progressed(done, total, what); });
}

}  // namespace pantile::desktop
