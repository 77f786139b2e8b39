#include "desktop/views/source_view.h"

#include <algorithm>

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include "desktop/theme/apply_theme.h"
#include "desktop/views/arrow_step.h"

namespace pantile::desktop {

namespace {

constexpr int kLeastDrag = 4;  // Less is a slip of the hand. Units: pixels of the window.
constexpr int kKeySteps = 32;  // From one edge of the picture to the other.

}  // namespace

SourceView::SourceView(const Theme& theme, QWidget* parent) : QWidget(parent), m_theme(theme) {
    setObjectName(QStringLiteral("sourceView"));
    setAccessibleName(tr("The picture"));
    setAccessibleDescription(
        tr("Arrow keys move the part that is used, with Shift they change its size; Escape uses "
           "all of the picture"));
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::CrossCursor);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void SourceView::setPicture(const QImage& image, QSize size) {
    m_image = image;
    if (m_size != size) m_part.reset();
    m_size = size;
    update();
}

void SourceView::setTakesPart(bool takesPart) {
    m_takesPart = takesPart;
    setCursor(takesPart ? Qt::CrossCursor : Qt::ArrowCursor);
    if (!takesPart) m_part.reset();
    update();
}

void SourceView::useAll() {
    m_from.reset();
    if (!m_part) return;
    m_part.reset();
    update();
    Q_EMIT partChanged();
}

QSize SourceView::sizeHint() const {
    return {30 * kGap, 30 * kGap};
}

QRect SourceView::shown() const {
    if (m_size.isEmpty()) return {};
    const QSize size = m_size.scaled(this->size(), Qt::KeepAspectRatio);
    return {{0, 0}, size.expandedTo({1, 1})};
}

QPoint SourceView::pixelAt(QPoint position) const {
    const QRect place = shown();
    const auto along = [](int at, int length, int pixels) {
        return std::clamp(at * pixels / std::max(1, length), 0, pixels - 1);
    };
    return {along(position.x(), place.width(), m_size.width()),
            along(position.y(), place.height(), m_size.height())};
}

QRect SourceView::inWindow(const QRect& part) const {
    const QRect place = shown();
    const auto x = [&](int pixel) { return pixel * place.width() / m_size.width(); };
    const auto y = [&](int pixel) { return pixel * place.height() / m_size.height(); };
    const QPoint begin(x(part.left()), y(part.top()));
    const QPoint end(x(part.left() + part.width()), y(part.top() + part.height()));
    return {begin, QSize(std::max(1, end.x() - begin.x()), std::max(1, end.y() - begin.y()))};
}

void SourceView::setPart(const QRect& part) {
    if (m_part == part) return;
    m_part = part;
    update();
    Q_EMIT partChanged();
}

void SourceView::paintEvent(QPaintEvent* /*event*/) {
    if (m_image.isNull()) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    const QRect place = shown();
    painter.fillRect(place, toQColor(m_theme.hatchGround));
    painter.fillRect(place, QBrush(toQColor(m_theme.hatch), Qt::BDiagPattern));
    painter.drawImage(place, m_image);
    if (m_part) {
        QColor veil = toQColor(m_theme.ground);
        veil.setAlphaF(0.7F);
        const QRegion outside = QRegion(place).subtracted(inWindow(*m_part));
        for (const QRect& each : outside) painter.fillRect(each, veil);
        painter.setPen(QPen(toQColor(m_theme.next), 2));
        painter.drawRect(inWindow(*m_part));
    }
    if (hasFocus()) {
        painter.setPen(QPen(toQColor(m_theme.structure), 2));
        painter.drawRect(place.adjusted(1, 1, -1, -1));
    }
}

void SourceView::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton || !m_takesPart || m_size.isEmpty()) return;
    m_from = event->position().toPoint();
}

void SourceView::mouseMoveEvent(QMouseEvent* event) {
    if (m_from) drawOut(event->position().toPoint());
}

void SourceView::mouseReleaseEvent(QMouseEvent* event) {
    if (m_from) drawOut(event->position().toPoint());
    m_from.reset();
}

void SourceView::drawOut(QPoint to) {
    if ((to - *m_from).manhattanLength() < kLeastDrag) return;
    const QPoint one = pixelAt(*m_from);
    const QPoint other = pixelAt(to);
    setPart(QRect(QPoint(std::min(one.x(), other.x()), std::min(one.y(), other.y())),
                  QPoint(std::max(one.x(), other.x()), std::max(one.y(), other.y()))));
}

void SourceView::keyPressEvent(QKeyEvent* event) {
    const QPoint direction = arrowStep(event->key());
    if (event->key() == Qt::Key_Escape && m_part) return useAll();
    if (direction.isNull() || !m_takesPart || m_size.isEmpty())
        return QWidget::keyPressEvent(event);
    const QPoint step(direction.x() * std::max(1, m_size.width() / kKeySteps),
                      direction.y() * std::max(1, m_size.height() / kKeySteps));
    QRect part = m_part.value_or(QRect({0, 0}, m_size));
    if (event->modifiers().testFlag(Qt::ShiftModifier)) {
        part.setWidth(std::clamp(part.width() + step.x(), 1, m_size.width() - part.left()));
        part.setHeight(std::clamp(part.height() + step.y(), 1, m_size.height() - part.top()));
    } else {
        part.moveLeft(std::clamp(part.left() + step.x(), 0, m_size.width() - part.width()));
        part.moveTop(std::clamp(part.top() + step.y(), 0, m_size.height() - part.height()));
    }
    if (part == QRect({0, 0}, m_size)) return useAll();
    setPart(part);
}

}  // namespace pantile::desktop
