#include "desktop/edit/edit_session.h"

#include <utility>

namespace pantile::desktop {

bool haveSamePicture(const core::Texture& one, const core::Texture& other) {
    return one.grid() == other.grid() && one.palette() == other.palette();
}

void EditSession::open(core::TextureId id, core::Texture texture) {
    m_id = id;
    m_kept = texture;
    m_states.clear();
    m_states.push_back({{}, std::move(texture)});
    m_now = 0;
    Q_EMIT changed();
}

void EditSession::close() {
    if (!isOpen()) return;
    m_kept.reset();
    m_states.clear();
    m_now = 0;
    Q_EMIT changed();
}

bool EditSession::isChanged() const {
    return isOpen() && !haveSamePicture(texture(), kept());
}

void EditSession::change(const QString& name, core::Texture texture) {
    if (haveSamePicture(texture, this->texture())) return;
    m_states.erase(m_states.begin() + static_cast<std::ptrdiff_t>(m_now) + 1, m_states.end());
    m_states.push_back({name, std::move(texture)});
    if (m_states.size() > kMostStates) m_states.erase(m_states.begin());
    m_now = m_states.size() - 1;
    Q_EMIT changed();
}

void EditSession::markKept(core::TextureId id, core::Texture texture) {
    m_id = id;
    m_kept = std::move(texture);
    Q_EMIT changed();
}

QString EditSession::undoName() const {
    return m_now > 0 ? m_states[m_now].name : QString();
}

QString EditSession::redoName() const {
    return m_now + 1 < m_states.size() ? m_states[m_now + 1].name : QString();
}

void EditSession::undo() {
    if (m_now == 0) return;
    --m_now;
    Q_EMIT changed();
}

void EditSession::redo() {
    if (m_now + 1 >= m_states.size()) return;
    ++m_now;
    Q_EMIT changed();
}

}  // namespace pantile::desktop
