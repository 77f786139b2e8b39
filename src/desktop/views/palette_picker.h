#pragma once

#include <optional>

#include <QTimer>
#include <QWidget>

#include "core/palette.h"
#include "desktop/theme/theme.h"
#include "desktop/views/cell_picture.h"

namespace pantile::desktop {

/// A palette with its numbers, of which one colour is picked, and another beside it for gradients
/// and the like: by pointer, by arrow keys, or by typing its number anywhere in the place.
class PalettePicker : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    PalettePicker(const Theme& theme, QWidget* parent);

    void setPalette(const core::Palette& palette);

    core::PaletteIndex colour() const { return m_colour; }

    core::PaletteIndex other() const { return m_other; }

    /// Nothing happens if the palette has no such colour.
    void pick(int index);
    void pickOther(int index);

    /// Two digits in quick succession are one number, where the palette has that many colours.
    void typeDigit(int digit);

    bool hasHeightForWidth() const override { return true; }

    int heightForWidth(int width) const override;
    QSize sizeHint() const override;

    /// Where a colour stands, without its number.
    QRect swatch(int index) const;

    static constexpr int kRowHeight = 44;

Q_SIGNALS:
    void picked();

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    int count() const;
    int columnsIn(int width) const;
    int indexAt(QPoint position) const;

    const Theme& m_theme;
    Hatch m_hatch;
    std::optional<core::Palette> m_palette;
    core::PaletteIndex m_colour = 0;
    core::PaletteIndex m_other = 1;
    int m_typed = 0;
    QTimer m_typing;
};

}  // namespace pantile::desktop
