#pragma once

#include <optional>

#include <QImage>
#include <QWidget>

#include "desktop/theme/theme.h"

namespace pantile::desktop {

/// The picture that is to become a texture, and the part of it that is used: drawn out by the
/// pointer, moved by the arrow keys and made larger or smaller by these with Shift.
class SourceView : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    SourceView(const Theme& theme, QWidget* parent);

    /// `size` is the picture's own, of which `image` may be a smaller likeness.
    void setPicture(const QImage& image, QSize size);

    /// A part of several pictures makes no sense.
    void setTakesPart(bool takesPart);

    /// Units: pixels of the picture. Nothing while all of it is used.
    std::optional<QRect> part() const { return m_part; }

    void useAll();

    /// Where the picture is painted.
    QRect shown() const;

    bool hasHeightForWidth() const override { return true; }

    int heightForWidth(int width) const override { return width; }

    QSize sizeHint() const override;

Q_SIGNALS:
    void partChanged();

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    QPoint pixelAt(QPoint position) const;
    QRect inWindow(const QRect& part) const;
    void setPart(const QRect& part);
    void drawOut(QPoint to);

    const Theme& m_theme;
    QImage m_image;
    QSize m_size;
    bool m_takesPart = true;
    std::optional<QRect> m_part;
    std::optional<QPoint> m_from;  ///< Where a part is being drawn out from.
};

}  // namespace pantile::desktop
