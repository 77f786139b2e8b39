#include "desktop/views/screen_picture.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/painted_parts.h"

namespace pantile::desktop {

namespace {

constexpr int kLeastSide = 96;
constexpr int kRoomForMeasures = 5 * kGap;  // Left of the picture and below it.
constexpr double kLeastLineStep = 4;        // Closer lines would be a grey field.
constexpr double kTick = 4;

// A line between two ends with a tick at each, and words beside its middle.
void measureAcross(QPainter& painter, double left, double right, double y, const QString& words) {
    painter.drawLine(QPointF(left, y), QPointF(right, y));
    for (const double x : {left, right})
        painter.drawLine(QPointF(x, y - kTick), QPointF(x, y + kTick));
    const double width = painter.fontMetrics().horizontalAdvance(words) + kGap;
    const double middle = (left + right) / 2;
    painter.drawText(QRectF(std::max(0.0, middle - width / 2), y + kTick, width, 3 * kGap),
                     Qt::AlignHCenter | Qt::AlignTop, words);
}

void measureDown(QPainter& painter, double top, double bottom, double x, const QString& words) {
    painter.save();
    painter.translate(x, bottom);
    painter.rotate(-90);
    const double length = bottom - top;
    painter.drawLine(QPointF(0, 0), QPointF(length, 0));
    for (const double end : {0.0, length})
        painter.drawLine(QPointF(end, -kTick), QPointF(end, kTick));
    const double width = painter.fontMetrics().horizontalAdvance(words) + kGap;
    painter.drawText(QRectF((length - width) / 2, -kTick - 3 * kGap, width, 3 * kGap),
                     Qt::AlignHCenter | Qt::AlignBottom, words);
    painter.restore();
}

}  // namespace

ScreenPicture::ScreenPicture(const Theme& theme, QWidget* parent)
    : QWidget(parent), m_theme(theme) {
    setObjectName(QStringLiteral("screenPicture"));
    setAccessibleName(tr("The screen to scale"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

QSize ScreenPicture::minimumSizeHint() const {
    return {kLeastSide + kRoomForMeasures, kLeastSide + kRoomForMeasures};
}

void ScreenPicture::showCanvas(const core::Canvas& canvas) {
    m_canvas = canvas;
    m_places = screenPlaces(canvas);
    const CountRect& grid = m_places.grid;
    const CountRect& bar = m_places.bar;
    QString words = tr("Grid from %1, %2 to %3, %4. Palette bar from %5, %6 to %7, %8. The pen "
                       "starts at %9,")
                        .arg(grid.corner.x)
                        .arg(grid.corner.y)
                        .arg(grid.right())
                        .arg(grid.bottom())
                        .arg(bar.corner.x)
                        .arg(bar.corner.y)
                        .arg(bar.right())
                        .arg(bar.bottom())
                        .arg(m_places.start.x) +
                    tr(" %1.").arg(m_places.start.y);
    if (m_places.fill)
        words += tr(" Fill button at %1, %2.").arg(m_places.fill->x).arg(m_places.fill->y);
    setAccessibleDescription(words);
    update();
}

double ScreenPicture::scale() const {
    const double across = width() - kRoomForMeasures - kGap;
    const double down = height() - kRoomForMeasures - kGap;
    return std::max(0.001, std::min(across / std::max(1, m_places.extent.width),
                                    down / std::max(1, m_places.extent.height)));
}

QPointF ScreenPicture::onPicture(core::Point place) const {
    return {kRoomForMeasures + place.x * scale(), kGap / 2.0 + place.y * scale()};
}

QRectF ScreenPicture::onPicture(const CountRect& rect) const {
    return {onPicture(rect.corner), onPicture(core::Point{rect.right(), rect.bottom()})};
}

void ScreenPicture::paintEvent(QPaintEvent* /*event*/) {
    if (!m_canvas) return;
    QPainter painter(this);
    painter.setFont(figureFont());
    // The screen's own edges: its corner is where all is measured from.
    painter.setPen(QPen(toQColor(m_theme.edge), 1));
    const QPointF corner = onPicture(core::Point{0, 0});
    painter.drawLine(corner, onPicture(core::Point{m_places.extent.width, 0}));
    painter.drawLine(corner, onPicture(core::Point{0, m_places.extent.height}));
    paintGrid(painter);
    paintBar(painter);
    paintMarks(painter);
    paintMeasures(painter);
}

void ScreenPicture::paintGrid(QPainter& painter) const {
    const QRectF place = onPicture(m_places.grid);
    painter.fillRect(place, toQColor(m_theme.field));
    const double step = m_canvas->geometry.cellPitch * scale();
    if (step >= kLeastLineStep) {
        painter.setPen(QPen(toQColor(m_theme.hairline), 1));
        for (int x = 1; x < m_canvas->size.width; ++x) {
            const double at = std::round(place.left() + x * step);
            painter.drawLine(QPointF(at, place.top()), QPointF(at, place.bottom()));
        }
        for (int y = 1; y < m_canvas->size.height; ++y) {
            const double at = std::round(place.top() + y * step);
            painter.drawLine(QPointF(place.left(), at), QPointF(place.right(), at));
        }
    }
    painter.setPen(QPen(toQColor(m_theme.structure), 2));
    painter.drawRect(place);
}

void ScreenPicture::paintBar(QPainter& painter) const {
    const core::CanvasGeometry& g = m_canvas->geometry;
    const int half = g.swatchPitch / 2;
    for (int i = 0; i < m_canvas->colourLimit(); ++i) {
        const auto index = static_cast<core::PaletteIndex>(i);
        const core::Point centre = g.swatch(index);
        const QRectF place =
            onPicture(CountRect{{centre.x - half, centre.y - half}, {g.swatchPitch, g.swatchPitch}})
                .adjusted(0.5, 0.5, -0.5, -0.5);
        const auto& palette = m_canvas->palette;
        const bool isUnpainted = !palette || palette->transparent() == index;
        fillSwatch(painter, place, isUnpainted ? std::nullopt : std::optional((*palette)[index]),
                   m_theme, m_theme.hatch);
        painter.setPen(QPen(toQColor(m_theme.edge), 1));
        painter.drawRect(place);
    }
}

// A ring where the pen starts, a square for the fill button; both with a word.
void ScreenPicture::paintMarks(QPainter& painter) const {
    painter.setRenderHint(QPainter::Antialiasing);
    constexpr double kRadius = 5;
    const auto mark = [&](core::Point place, const QString& word, bool isRing) {
        const QPointF middle = onPicture(place);
        const QRectF around(middle.x() - kRadius, middle.y() - kRadius, 2 * kRadius, 2 * kRadius);
        for (const auto& [colour, width] : {std::pair(m_theme.field, 5.0), {m_theme.text, 2.0}}) {
            painter.setPen(QPen(toQColor(colour), width));
            if (isRing) {
                painter.drawEllipse(around);
            } else {
                painter.drawRect(around);
            }
        }
        const double wide = painter.fontMetrics().horizontalAdvance(word) + kGap;
        const double high = painter.fontMetrics().height();
        double left = middle.x() + 2 * kRadius;
        if (left + wide > width()) left = middle.x() - 2 * kRadius - wide;
        const QRectF words(left, middle.y() - high / 2 + kRadius, wide, high);
        painter.fillRect(words, toQColor(m_theme.field));
        painter.drawText(words, Qt::AlignCenter, word);
    };
    mark(m_places.start, tr("the pen starts"), true);
    if (m_places.fill) mark(*m_places.fill, tr("fill"), false);
    painter.setRenderHint(QPainter::Antialiasing, false);
}

void ScreenPicture::paintMeasures(QPainter& painter) const {
    const QRectF grid = onPicture(m_places.grid);
    const QRectF bar = onPicture(m_places.bar);
    painter.setPen(QPen(toQColor(m_theme.quietText), 1));
    const double below = onPicture(core::Point{0, m_places.extent.height}).y() + kGap;
    measureAcross(painter, grid.left(), grid.right(), below,
                  QString::number(m_places.grid.size.width));
    measureDown(painter, grid.top(), grid.bottom(), kRoomForMeasures - kGap,
                QString::number(m_places.grid.size.height));
    // Only where there is room for its number beside the grid's.
    const QString barWidth = QString::number(m_places.bar.size.width);
    const double free = grid.width() / 2 + bar.width() / 2 + (bar.left() - grid.right());
    if (bar.left() >= grid.right() && free > 10 * kGap)
        measureAcross(painter, bar.left(), bar.right(), below, barWidth);
}

}  // namespace pantile::desktop
