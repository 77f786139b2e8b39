#pragma once

#include <optional>

#include <QWidget>

#include "core/canvas.h"
#include "desktop/models/screen_places.h"
#include "desktop/theme/theme.h"

namespace pantile::desktop {

/// The toolkit's screen to scale, from its top left corner: grid, palette bar, fill button and
/// where the pen starts, with measures in counts.
class ScreenPicture : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    ScreenPicture(const Theme& theme, QWidget* parent);

    /// `canvas` must pass core::checkUnnamedCanvas.
    void showCanvas(const core::Canvas& canvas);

    /// Units: device-independent pixels for a count.
    double scale() const;

    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QRectF onPicture(const CountRect& rect) const;
    QPointF onPicture(core::Point place) const;
    void paintGrid(QPainter& painter) const;
    void paintBar(QPainter& painter) const;
    void paintMarks(QPainter& painter) const;
    void paintMeasures(QPainter& painter) const;

    const Theme& m_theme;
    std::optional<core::Canvas> m_canvas;
    ScreenPlaces m_places;
};

}  // namespace pantile::desktop
