#include "desktop/jobs/library_edits.h"

#include "tasks/library_place.h"

namespace pantile::desktop {

using core::Result;

namespace {

Result<std::int64_t> runEdit(const std::filesystem::path& libraryPath,
                             const LibraryEdit::Change& change) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Change));
    return change(library);
}

}  // namespace

LibraryEdit::Words sameWords(const QString& words) {
    return [words](std::int64_t) { return words; };
}

Result<std::int64_t> oneIf(const Result<void>& done) {
    if (!done) return done.error();
    return 1;
}

LibraryEdits::LibraryEdits(std::filesystem::path libraryPath, QThreadPool& pool, QObject* parent)
    : QObject(parent), m_libraryPath(std::move(libraryPath)), m_job(pool) {}

void LibraryEdits::apply(LibraryEdit edit) {
    m_waiting.push_back(std::move(edit));
    if (!m_job.isRunning()) startNext();
}

void LibraryEdits::finishAll() {
    while (m_job.isRunning()) m_job.waitForDone();
}

void LibraryEdits::startNext() {
    m_job.start([path = m_libraryPath, change = m_waiting.front().change](
                    const core::Progress&) { return runEdit(path, change); },
                [this](const Result<std::int64_t>& changed) { tell(changed); });
}

void LibraryEdits::tell(const Result<std::int64_t>& changed) {
    const LibraryEdit edit = std::move(m_waiting.front());
    m_waiting.pop_front();
    if (!m_waiting.empty()) startNext();
    if (changed) {
        Q_EMIT done(edit.words(*changed));
    } else {
        Q_EMIT failed(changed.error());
    }
}

}  // namespace pantile::desktop
