#include "desktop/edit/painting.h"

#include <array>
#include <utility>

namespace pantile::desktop {

using core::Point;

void Painting::setSettings(const ToolSettings& settings) {
    if (settings.tool != m_settings.tool) cancel();
    m_settings = settings;
}

void Painting::press(Point cell) {
    m_isPressed = true;
    if (m_places.empty()) {
        m_places.assign(m_settings.tool == Tool::Pen ? 1U : 2U, cell);
    } else {
        m_places.back() = cell;
    }
    showPlaces();
    const bool isDone = placesOf(m_settings.tool) == 1 || m_places.size() == 3;
    if (isUnderWay() && isDone) finish();
}

void Painting::move(Point cell) {
    if (!isUnderWay() || m_places.back() == cell) return;
    if (m_settings.tool == Tool::Pen) return showNextOfPen(cell);
    m_places.back() = cell;
    showPlaces();
}

void Painting::release(Point cell) {
    if (!m_isPressed) return;
    move(cell);
    m_isPressed = false;
    if (!isUnderWay()) return;
    if (m_settings.tool == Tool::Curve) {
        m_places.push_back(cell);  // Where it goes through is still wanted.
    } else {
        finish();
    }
}

void Painting::hover(Point cell) {
    if (!m_isPressed) move(cell);
}

void Painting::toggle(Point cell) {
    if (m_isPressed) {
        release(cell);
    } else {
        press(cell);
    }
}

std::vector<Point> Painting::frame() const {
    return m_settings.tool == Tool::Crop ? m_places : std::vector<Point>();
}

void Painting::cancel() {
    m_isPressed = false;
    m_places.clear();
    if (!isUnderWay()) return;
    m_shown.reset();
    Q_EMIT shownChanged();
}

void Painting::settle() {
    if (isUnderWay() && m_settings.tool == Tool::Pen) {
        finish();
    } else {
        cancel();
    }
}

core::Result<core::Texture> Painting::afterPlaces() const {
    return afterTool(m_session.texture(), m_settings, m_places);
}

void Painting::showPlaces() {
    if (m_settings.tool == Tool::Crop) return show(m_session.texture());
    show(afterPlaces());
}

// On top of what it has painted so far, as its way may be long.
void Painting::showNextOfPen(Point cell) {
    const std::array<Point, 2> step = {m_places.back(), cell};
    m_places.back() = cell;
    show(afterTool(*m_shown, m_settings, step));
}

void Painting::show(core::Result<core::Texture> texture) {
    if (!texture) {
        const core::Error error = texture.error();
        cancel();
        Q_EMIT failed(error);
        return;
    }
    m_shown = *std::move(texture);
    Q_EMIT shownChanged();
}

void Painting::finish() {
    // What a crop leaves is not shown before: the cells under the pointer must stay there.
    if (m_settings.tool == Tool::Crop) show(afterPlaces());
    if (!isUnderWay()) return;
    m_isPressed = false;
    m_places.clear();
    m_session.change(toolName(m_settings.tool), *std::exchange(m_shown, std::nullopt));
    Q_EMIT shownChanged();
}

}  // namespace pantile::desktop
