#pragma once

#include <deque>
#include <filesystem>
#include <functional>

#include <QObject>
#include <QString>

#include "catalogue/library.h"
#include "core/result.h"
#include "desktop/jobs/background_job.h"

namespace pantile::desktop {

/// One change of the library that a person asked for: one transaction.
struct LibraryEdit {
    using Change = std::function<core::Result<std::int64_t>(catalogue::Library&)>;
    using Words = std::function<QString(std::int64_t)>;

    Change change;  ///< Gives how many textures, or other things, became different.
    Words words;    ///< What was done, for that number.
};

/// The same words whatever the number.
LibraryEdit::Words sameWords(const QString& words);

/// For a change that is one or fails.
core::Result<std::int64_t> oneIf(const core::Result<void>& done);

/// Changes the library off the window's thread, one edit after the other.
class LibraryEdits : public QObject {
    Q_OBJECT

public:
    /// `pool` must outlive it.
    LibraryEdits(std::filesystem::path libraryPath, QThreadPool& pool, QObject* parent);

    void apply(LibraryEdit edit);

    bool isRunning() const { return m_job.isRunning(); }

    /// For closing: all that was asked for is done when it returns.
    void finishAll();

Q_SIGNALS:
    void done(const QString& words);
    void failed(const core::Error& error);

private:
    void startNext();
    void tell(const core::Result<std::int64_t>& changed);

    std::filesystem::path m_libraryPath;
    std::deque<LibraryEdit> m_waiting;
    BackgroundJob<std::int64_t> m_job;
};

}  // namespace pantile::desktop
