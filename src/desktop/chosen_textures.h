#pragma once

// What is chosen in the library, which is what the other places work on.

#include <vector>

#include <QObject>
#include <QStringList>

#include "core/ids.h"

namespace pantile::desktop {

class ChosenTextures : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    const std::vector<core::TextureId>& ids() const { return m_ids; }

    /// `titles` are fit to be shown: of the first ones, at most kMostTitles.
    void choose(std::vector<core::TextureId> ids, QStringList titles);

    /// "3 textures: kelp, foam, rope", or words that say that none is chosen.
    QString words() const;

    /// "kelp, foam, rope, ..."
    QString titleWords() const;

    static constexpr std::size_t kMostTitles = 3;

Q_SIGNALS:
    void changed();

private:
    std::vector<core::TextureId> m_ids;
    QStringList m_titles;
};

}  // namespace pantile::desktop
