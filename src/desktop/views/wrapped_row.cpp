#include "desktop/views/wrapped_row.h"

#include <algorithm>

#include <QResizeEvent>

#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

WrappedRow::WrappedRow(QWidget* parent) : QWidget(parent) {
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void WrappedRow::add(QWidget* widget) {
    widget->setParent(this);
    m_widgets.append(widget);
    updateGeometry();
}

QList<QRect> WrappedRow::placesIn(int width) const {
    QList<QRect> places;
    QPoint next;
    int lineHeight = 0;
    qsizetype lineStart = 0;
    const auto endLine = [&] {
        for (; lineStart < places.size(); ++lineStart) {
            QRect& place = places[lineStart];
            place.moveTop(next.y() + (lineHeight - place.height()) / 2);
        }
    };
    for (const QWidget* widget : m_widgets) {
        const QSize size = widget->sizeHint().expandedTo(widget->minimumSize());
        if (next.x() > 0 && next.x() + size.width() > width) {
            endLine();
            next = {0, next.y() + lineHeight + kGap / 2};
            lineHeight = 0;
        }
        places.append(QRect(next, size));
        next.rx() += size.width() + kGap / 2;
        lineHeight = std::max(lineHeight, size.height());
    }
    endLine();
    return places;
}

int WrappedRow::heightForWidth(int width) const {
    int height = 0;
    for (const QRect& place : placesIn(width)) height = std::max(height, place.bottom() + 1);
    return height;
}

QSize WrappedRow::sizeHint() const {
    int width = 0;
    for (const QWidget* widget : m_widgets) width += widget->sizeHint().width() + kGap / 2;
    return {width, heightForWidth(std::max(this->width(), 1))};
}

QSize WrappedRow::minimumSizeHint() const {
    int widest = 0;
    for (const QWidget* widget : m_widgets) widest = std::max(widest, widget->sizeHint().width());
    return {widest, heightForWidth(std::max(width(), widest))};
}

void WrappedRow::resizeEvent(QResizeEvent* event) {
    // The height that it needs depends on the width.
    if (event->size().width() != event->oldSize().width()) updateGeometry();
    const QList<QRect> places = placesIn(width());
    for (qsizetype i = 0; i < places.size(); ++i) m_widgets[i]->setGeometry(places[i]);
}

}  // namespace pantile::desktop
