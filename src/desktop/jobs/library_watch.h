#pragma once

#include <cstdint>

#include <QObject>
#include <QTimer>

#include "catalogue/library.h"

namespace pantile::desktop {

/// Notices when anything but the window's own connection changes the library.
class LibraryWatch : public QObject {
    Q_OBJECT

public:
    /// `library` must outlive it.
    LibraryWatch(const catalogue::Library& library, QObject* parent);

    /// Looks at once, without waiting for the next second.
    void look();

Q_SIGNALS:
    void changed();

private:
    const catalogue::Library& m_library;
    std::int64_t m_seen = 0;
    QTimer m_seconds;
};

}  // namespace pantile::desktop
