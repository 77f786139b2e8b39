#include "desktop/views/picture_view.h"

#include <cmath>

#include <QPainter>
#include <QResizeEvent>

namespace pantile::desktop {

PictureView::PictureView(Hatch hatch, QWidget* parent) : QWidget(parent), m_hatch(hatch) {
    setObjectName(QStringLiteral("picture"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void PictureView::setTexture(std::optional<core::Texture> texture) {
    m_texture = std::move(texture);
    renew();
}

void PictureView::setRepeat(Repeat repeat) {
    m_repeat = repeat;
    renew();
}

void PictureView::paintEvent(QPaintEvent* /*event*/) {
    if (m_image.isNull()) return;
    QPainter painter(this);
    // The window may have moved to a screen of another scale since.
    if (m_image.devicePixelRatio() != devicePixelRatioF()) renew();
    painter.drawImage(QPointF(0, 0), m_image);
}

void PictureView::resizeEvent(QResizeEvent* event) {
    if (event->size().width() != event->oldSize().width()) renew();
}

void PictureView::renew() {
    const double pixelRatio = devicePixelRatioF();
    const int side = static_cast<int>(std::floor(width() * pixelRatio));
    m_image = m_texture && side > 0 ? cellPicture(*m_texture, side, m_repeat, m_hatch) : QImage();
    m_image.setDevicePixelRatio(pixelRatio);
    setFixedHeight(static_cast<int>(std::ceil(m_image.deviceIndependentSize().height())));
    update();
}

}  // namespace pantile::desktop
