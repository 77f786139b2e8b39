#include "desktop/views/painted_parts.h"

#include <QPainter>

#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

void paintLine(QPainter& painter, const QRect& where, const QFont& font, core::Rgb8 colour,
               const QString& text) {
    painter.setFont(font);
    painter.setPen(toQColor(colour));
    painter.drawText(where, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine,
                     QFontMetrics(font).elidedText(text, Qt::ElideRight, where.width()));
}

void fillSwatch(QPainter& painter, const QRectF& where, std::optional<core::Rgb8> colour,
                const Theme& theme, core::Rgb8 line) {
    if (colour) return painter.fillRect(where, toQColor(*colour));
    painter.fillRect(where, toQColor(theme.hatchGround));
    painter.fillRect(where, QBrush(toQColor(line), Qt::BDiagPattern));
}

}  // namespace pantile::desktop
