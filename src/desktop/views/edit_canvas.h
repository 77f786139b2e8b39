#pragma once

#include <optional>
#include <vector>

#include <QImage>
#include <QWidget>

#include "core/texture.h"
#include "desktop/theme/theme.h"
#include "desktop/views/cell_picture.h"
#include "picture/symmetry.h"

namespace pantile::desktop {

/// The texture under work: as large as fits or as one likes, with the lines between its cells, its
/// repetitions around it and the axes of symmetry. It says over which cells the pointer, or the
/// keys in its stead, goes; what that means is for others to say.
class EditCanvas : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    EditCanvas(const Theme& theme, QWidget* parent);

    /// What is shown: the texture, or how it would be.
    void setTexture(std::optional<core::Texture> texture);

    const std::optional<core::Texture>& texture() const { return m_texture; }

    void setShowsLines(bool shows);
    void setShowsNeighbours(bool shows);
    void setSymmetry(picture::Symmetry symmetry);

    /// Marks the box between two corners; none if there are no two.
    void setFrame(std::vector<core::Point> corners);

    /// The whole texture in the middle, as large as whole multiples allow.
    void fit();

    void zoomIn() { zoomAround(QPointF(width() / 2.0, height() / 2.0), 1); }

    void zoomOut() { zoomAround(QPointF(width() / 2.0, height() / 2.0), -1); }

    /// Pixels of the screen for a cell.
    int cellSide() const { return m_cellSide; }

    /// Where a cell's middle stands in the widget.
    QPointF middleOf(core::Point cell) const;

Q_SIGNALS:
    /// With the left button. Cells may lie outside of the grid.
    void pressed(core::Point cell);
    void released(core::Point cell);

    /// With the left button held, or by keys.
    void moved(core::Point cell);

    /// The pointer went to another cell without a button.
    void hovered(core::Point cell);

    /// Enter, where the keys are.
    void entered(core::Point cell);

    /// The other button, or Space: the colour of this cell is wanted.
    void picked(core::Point cell);

    void cancelled();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    core::Point cellAt(QPointF position) const;

    core::Size size() const { return m_texture->grid().size(); }

    double scale() const;
    void zoomAround(QPointF position, int steps);
    void keepInView();
    void moveKeyCell(core::Point by);
    void pan(QPointF by);
    void followKeyCell();
    void paintFrame(QPainter& painter) const;
    void paintCells(QPainter& painter, double opacity, QPointF origin) const;
    void paintLines(QPainter& painter) const;
    void paintAxes(QPainter& painter) const;
    void paintKeyCell(QPainter& painter) const;

    const Theme& m_theme;
    Hatch m_hatch;
    std::optional<core::Texture> m_texture;
    QImage m_image;      ///< A pixel for each cell; unpainted ones have alpha 0.
    int m_cellSide = 1;  ///< Pixels of the screen.
    QPointF m_origin;    ///< Of cell (0, 0), in the widget.
    bool m_fits = true;  ///< Until one zooms or pans.
    bool m_showsLines = true;
    bool m_showsNeighbours = false;
    picture::Symmetry m_symmetry = picture::Symmetry::None;
    std::optional<core::Point> m_lastCell;  ///< Of the pointer.
    std::optional<QPointF> m_panFrom;
    core::Point m_keyCell;  ///< Where the keys are.
    std::vector<core::Point> m_frame;
};

}  // namespace pantile::desktop
