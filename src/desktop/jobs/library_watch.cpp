#include "desktop/jobs/library_watch.h"

#include <chrono>

namespace pantile::desktop {

LibraryWatch::LibraryWatch(const catalogue::Library& library, QObject* parent)
    : QObject(parent), m_library(library) {
    if (const auto version = library.dataVersion()) m_seen = *version;
    connect(&m_seconds, &QTimer::timeout, this, &LibraryWatch::look);
    m_seconds.start(std::chrono::seconds(1));
}

void LibraryWatch::look() {
    // Busy or away for a moment: the next second will tell.
    const auto version = m_library.dataVersion();
    if (!version || *version == m_seen) return;
    m_seen = *version;
    Q_EMIT changed();
}

}  // namespace pantile::desktop
