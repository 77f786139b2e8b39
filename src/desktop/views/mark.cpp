#include "desktop/views/mark.h"

#include <cmath>

#include <QPainter>

#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

namespace {

constexpr int kSide = 20;  // The grid that all our signs are drawn on.
constexpr double kLine = 2;

void drawMark(QPainter& painter, MarkKind kind, const Theme& theme) {
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    const bool done = kind == MarkKind::Done;
    painter.setBrush(toQColor(done ? theme.done : theme.caution));
    if (done) {
        painter.drawEllipse(QRectF(1, 1, 18, 18));
    } else {
        painter.drawRoundedRect(QRectF(1, 1, 18, 18), 3, 3);
    }
    painter.setPen(QPen(toQColor(done ? theme.onMark : theme.onCaution), kLine, Qt::SolidLine,
                        Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    if (done) {
        painter.drawPolyline(QPolygonF({{6, 10.5}, {9, 13.5}, {14.5, 7}}));
    } else {
        painter.drawLine(QPointF(10, 5), QPointF(10, 11));
        painter.drawPoint(QPointF(10, 14.8));
    }
}

}  // namespace

Mark::Mark(MarkKind kind, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_kind(kind), m_theme(theme) {
    setFixedSize(kSide, kSide);
    setKind(kind);
}

void Mark::setKind(MarkKind kind) {
    m_kind = kind;
    setAccessibleName(kind == MarkKind::Done ? tr("Done") : tr("Caution"));
    update();
}

void Mark::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    drawMark(painter, m_kind, m_theme);
}

QImage markImage(MarkKind kind, const Theme& theme, int side, double pixelRatio) {
    const int pixels = static_cast<int>(std::lround(side * pixelRatio));
    QImage image(pixels, pixels, QImage::Format_ARGB32_Premultiplied);
    image.setDevicePixelRatio(pixelRatio);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    painter.translate((side - kSide) / 2.0, (side - kSide) / 2.0);
    drawMark(painter, kind, theme);
    return image;
}

}  // namespace pantile::desktop
