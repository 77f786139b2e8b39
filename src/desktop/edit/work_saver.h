#pragma once

// WorkSaver: puts what is under work and not kept yet in a file soon after each change.

#include <filesystem>
#include <memory>
#include <optional>

#include <QObject>
#include <QThreadPool>
#include <QTimer>

#include "core/error.h"
#include "desktop/edit/edit_session.h"
#include "desktop/jobs/background_job.h"
#include "tasks/unkept_work.h"

namespace pantile::desktop {

class WorkSaver : public QObject {
    Q_OBJECT

public:
    /// Pool and session must outlive it.
    WorkSaver(std::filesystem::path libraryPath, QThreadPool& pool, EditSession& session);

    /// For closing, once all is kept: no file is left.
    void finish();

    /// How long after a change at most its saving begins. Units: milliseconds.
    static constexpr int kSoon = 1000;

Q_SIGNALS:
    /// Told once; it is tried again with the next change.
    void failed(const core::Error& error);

private:
    void saveOrClear();

    std::filesystem::path m_libraryPath;
    EditSession& m_session;
    QTimer m_soon;
    std::shared_ptr<tasks::WorkFile> m_file;  ///< The job holds it too.
    bool m_hasFailed = false;
    BackgroundJob<std::shared_ptr<tasks::WorkFile>> m_saving;
};

}  // namespace pantile::desktop
