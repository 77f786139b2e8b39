#pragma once

#include <optional>

#include <QWidget>

#include "board/calibration.h"
#include "core/geometry.h"
#include "desktop/theme/theme.h"

namespace pantile::desktop {

/// A calibration as it comes to lie on a toolkit's grid, with numbers at the four places that are
/// read off.
class CalibrationPicture : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    CalibrationPicture(const Theme& theme, QWidget* parent);

    /// `cells` is the canvas's size. No sight, no picture.
    void setSight(const std::optional<board::CalibrationSight>& sight, core::Size cells);

    bool hasHeightForWidth() const override { return true; }

    int heightForWidth(int width) const override { return width; }

    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    int cellPixels() const;
    QRectF boxOf(core::Point first, core::Point last) const;
    void paintCells(QPainter& painter) const;
    void paintPlaces(QPainter& painter) const;
    enum class Side { Left, Right, Above };
    void paintPlace(QPainter& painter, const QRectF& box, int number, Side side) const;

    const Theme& m_theme;
    std::optional<board::CalibrationSight> m_sight;
    core::Size m_cells;
};

}  // namespace pantile::desktop
