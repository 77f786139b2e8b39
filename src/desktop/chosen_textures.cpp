#include "desktop/chosen_textures.h"

#include <utility>

#include "desktop/texts.h"

namespace pantile::desktop {

void ChosenTextures::choose(std::vector<core::TextureId> ids, QStringList titles) {
    if (ids == m_ids && titles == m_titles) return;
    m_ids = std::move(ids);
    m_titles = std::move(titles);
    Q_EMIT changed();
}

QString ChosenTextures::words() const {
    if (m_ids.empty()) return tr("Nothing is chosen in the library.");
    return QStringLiteral("%1: %2").arg(
        counted("ChosenTextures", "%1 texture", "%1 textures", std::ssize(m_ids)), titleWords());
}

QString ChosenTextures::titleWords() const {
    QStringList titles = m_titles;
    if (m_ids.size() > kMostTitles) titles.append(QStringLiteral("..."));
    return titles.join(QStringLiteral(", "));
}

}  // namespace pantile::desktop
