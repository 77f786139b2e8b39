#include "desktop/views/drop_hint.h"

#include <QPainter>

#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

DropHint::DropHint(const Theme& theme, QWidget* parent) : QWidget(parent), m_theme(theme) {
    setObjectName(QStringLiteral("dropHint"));
    setAttribute(Qt::WA_TransparentForMouseEvents);
    hide();
}

void DropHint::cover() {
    setGeometry(parentWidget()->rect());
    raise();
    show();
}

void DropHint::paintEvent(QPaintEvent* /*event*/) {
    constexpr int kFrame = 6;
    QPainter painter(this);
    painter.setPen(QPen(toQColor(m_theme.next), kFrame));
    painter.drawRect(rect().adjusted(kFrame / 2, kFrame / 2, -kFrame / 2, -kFrame / 2));
    const QString words = tr("Let go to add it to the library");
    painter.setFont(headingFont());
    QRect plate = painter.fontMetrics().boundingRect(words).adjusted(-3 * kGap, -2 * kGap, 3 * kGap,
                                                                     2 * kGap);
    plate.moveCenter(rect().center());
    painter.fillRect(plate, toQColor(m_theme.next));
    painter.setPen(toQColor(m_theme.onNext));
    painter.drawText(plate, Qt::AlignCenter, words);
}

}  // namespace pantile::desktop
