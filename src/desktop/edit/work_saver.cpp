#include "desktop/edit/work_saver.h"

#include <utility>

namespace pantile::desktop {

using core::Result;
using File = std::shared_ptr<tasks::WorkFile>;

namespace {

/// With a file of one's own from the first time on. `work` is nothing if all is kept.
Result<File> saveIn(File file, const std::filesystem::path& libraryPath,
                    const std::optional<tasks::UnkeptWork>& work) {
    if (file == nullptr && !work) return file;
    if (file == nullptr) {
        PANTILE_ASSIGN_OR_RETURN(tasks::WorkFile claimed, tasks::WorkFile::claim(libraryPath));
        file = std::make_shared<tasks::WorkFile>(std::move(claimed));
    }
    if (work) {
        PANTILE_RETURN_IF_ERROR(file->save(*work));
    } else {
        PANTILE_RETURN_IF_ERROR(file->clear());
    }
    return file;
}

}  // namespace

WorkSaver::WorkSaver(std::filesystem::path libraryPath, QThreadPool& pool, EditSession& session)
    : m_libraryPath(std::move(libraryPath)), m_session(session), m_saving(pool) {
    m_soon.setSingleShot(true);
    connect(&m_soon, &QTimer::timeout, this, &WorkSaver::saveOrClear);
    // Not put off by further changes: one who paints on and on is saved as well.
    connect(&m_session, &EditSession::changed, this, [this] {
        if (!m_soon.isActive()) m_soon.start(kSoon);
    });
}

void WorkSaver::saveOrClear() {
    // One after the other, so that no older state comes last.
    if (m_saving.isRunning()) return m_soon.start(kSoon);
    std::optional<tasks::UnkeptWork> work;
    if (m_session.isChanged())
        work = tasks::UnkeptWork{m_session.id(), m_session.kept(), m_session.texture()};
    m_saving.start([file = m_file, path = m_libraryPath,
                    work](const core::Progress&) { return saveIn(file, path, work); },
                   [this](const Result<File>& saved) {
                       if (saved) {
                           m_file = *saved;
                           m_hasFailed = false;
                       } else if (!std::exchange(m_hasFailed, true)) {
                           Q_EMIT failed(saved.error());
                       }
                   });
}

void WorkSaver::finish() {
    m_soon.stop();
    m_saving.waitForDone();
    if (m_file == nullptr) return;
    const auto cleared = m_file->clear();
    if (!cleared) Q_EMIT failed(cleared.error());
    m_file.reset();
}

}  // namespace pantile::desktop
