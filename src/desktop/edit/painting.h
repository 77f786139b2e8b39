#pragma once

// What the pointer, or the keys in its stead, does to the texture under work: from where it is
// pressed until the tool has all its places, the texture is shown as it will be; then it is so.

#include <optional>
#include <vector>

#include <QObject>

#include "core/error.h"
#include "desktop/edit/edit_session.h"
#include "desktop/edit/tools.h"

namespace pantile::desktop {

class Painting : public QObject {
    Q_OBJECT

public:
    /// `session` must outlive it. Painting needs an open one.
    Painting(EditSession& session, QObject* parent) : QObject(parent), m_session(session) {}

    /// The corners of what will be left, while a crop is under way: the cells stay as they are.
    std::vector<core::Point> frame() const;

    /// For what is begun from now on; another tool leaves what was begun.
    void setSettings(const ToolSettings& settings);

    const ToolSettings& settings() const { return m_settings; }

    bool isUnderWay() const { return m_shown.has_value(); }

    /// The texture as it will be, while something is under way.
    const std::optional<core::Texture>& shown() const { return m_shown; }

    void press(core::Point cell);

    /// While it is pressed, or on the way to a place that is still wanted.
    void move(core::Point cell);

    void release(core::Point cell);

    /// The pointer is there without having been pressed.
    void hover(core::Point cell);

    /// One key instead of a button: presses, or releases what it pressed.
    void toggle(core::Point cell);

    /// Leaves what was begun.
    void cancel();

    /// For leaving: the pen's way so far counts, anything else that was begun is left.
    void settle();

Q_SIGNALS:
    /// What is shown is another texture, or the session's again.
    void shownChanged();

    /// The tool cannot do this; what was begun is left.
    void failed(const core::Error& error);

private:
    core::Result<core::Texture> afterPlaces() const;
    void showPlaces();
    void showNextOfPen(core::Point cell);
    void show(core::Result<core::Texture> texture);
    void finish();

    EditSession& m_session;
    ToolSettings m_settings;
    std::vector<core::Point> m_places;
    bool m_isPressed = false;
    std::optional<core::Texture> m_shown;
};

}  // namespace pantile::desktop
