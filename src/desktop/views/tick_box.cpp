#include "desktop/views/tick_box.h"

#include <algorithm>

#include <QPainter>

#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

namespace {

constexpr int kBoxSide = 18;
constexpr double kBoxRound = 3;

}  // namespace

TickBox::TickBox(const QString& text, const Theme& theme, QWidget* parent)
    : QCheckBox(text, parent), m_theme(theme) {}

QSize TickBox::sizeHint() const {
    const QSize words = fontMetrics().size(Qt::TextShowMnemonic, text());
    return {kBoxSide + kGap + words.width() + kGap,
            std::max(kBoxSide + 2, words.height() + kGap / 2)};
}

bool TickBox::hitButton(const QPoint& position) const {
    return rect().contains(position);
}

void TickBox::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF box(1, (height() - kBoxSide) / 2.0 + 1, kBoxSide - 2, kBoxSide - 2);
    painter.setPen(hasFocus() ? QPen(toQColor(m_theme.structure), 2)
                              : QPen(toQColor(m_theme.edge), 1));
    painter.setBrush(toQColor(m_theme.field));
    painter.drawRoundedRect(box, kBoxRound, kBoxRound);
    const QColor ink = toQColor(isEnabled() ? m_theme.text : m_theme.edge);
    if (isChecked()) {
        painter.setPen(QPen(ink, 2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        painter.setBrush(Qt::NoBrush);
        painter.translate(box.topLeft());
        painter.drawPolyline(QPolygonF({{4, 8.5}, {7, 11.5}, {12.5, 5}}));
        painter.resetTransform();
    }
    painter.setPen(ink);
    painter.drawText(rect().adjusted(kBoxSide + kGap, 0, 0, 0),
                     Qt::AlignLeft | Qt::AlignVCenter | Qt::TextShowMnemonic, text());
}

}  // namespace pantile::desktop
