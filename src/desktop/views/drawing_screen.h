#pragma once

#include <memory>
#include <optional>

#include <QImage>
#include <QWidget>

#include "core/canvas.h"
#include "core/palette.h"
#include "desktop/models/film_state.h"
#include "desktop/theme/theme.h"
#include "desktop/views/cell_picture.h"
#include "tasks/drawing_choice.h"

namespace pantile::desktop {

/// The toolkit's screen while a texture is drawn on it: grid and palette bar where the canvas has
/// them, what is painted so far, the pen, its way of the last moments and the swatch picked last.
class DrawingScreen : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    DrawingScreen(const Theme& theme, QWidget* parent);

    /// Stands before the first report then.
    void showFilm(drawing::Film film, const core::Canvas& canvas,
                  const tasks::FittedTexture& texture);
    void clear();

    /// Units: milliseconds of drawing; below 0 is before the first report.
    void seek(std::int64_t milliseconds);

    /// Null if there is no film.
    const FilmState* state() const { return m_state.get(); }

    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void showCell(std::size_t cell);
    void measure();
    QPointF onScreen(core::Point counts) const;
    QRectF swatchPlace(core::PaletteIndex index) const;
    void paintGrid(QPainter& painter) const;
    void paintSwatches(QPainter& painter) const;
    void paintWay(QPainter& painter) const;
    void paintPen(QPainter& painter) const;
    void tell();

    const Theme& m_theme;
    std::unique_ptr<FilmState> m_state;
    core::Canvas m_canvas;
    std::optional<core::Palette> m_palette;
    std::optional<core::Grid> m_wanted;
    QImage m_painted;      ///< A pixel a cell; clear where nothing is painted yet.
    QImage m_ground;       ///< What lies under it, in pixels of the screen.
    core::Point m_corner;  ///< Of what is shown, in counts.
    core::Size m_extent;   ///< The same.
    double m_scale = 1;    ///< Pixels of the screen a count.
    int m_cellPixels = 1;  ///< The same a cell; 0 if a cell is less than a pixel.
};

}  // namespace pantile::desktop
