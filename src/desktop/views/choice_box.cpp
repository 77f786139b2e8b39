#include "desktop/views/choice_box.h"

#include <QPainter>

#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

void ChoiceBox::paintEvent(QPaintEvent* event) {
    QComboBox::paintEvent(event);
    constexpr double kHalfWidth = 4.5;
    constexpr double kHalfHeight = 2.25;
    constexpr int kFromEnd = 16;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(toQColor(m_theme.text), 2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.translate(width() - kFromEnd, height() / 2.0);
    painter.drawPolyline(
        QPolygonF({{-kHalfWidth, -kHalfHeight}, {0, kHalfHeight}, {kHalfWidth, -kHalfHeight}}));
}

}  // namespace pantile::desktop
