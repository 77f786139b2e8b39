#include "desktop/views/drawing_screen.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

using core::Point;

namespace {

constexpr std::int64_t kShownWayMs = 1500;  // Of the drawing's time.
constexpr int kLeastScreen = 160;

}  // namespace

DrawingScreen::DrawingScreen(const Theme& theme, QWidget* parent)
    : QWidget(parent), m_theme(theme) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

QSize DrawingScreen::minimumSizeHint() const {
    return {kLeastScreen, kLeastScreen};
}

void DrawingScreen::showFilm(drawing::Film film, const core::Canvas& canvas,
                             const tasks::FittedTexture& texture) {
    m_state = std::make_unique<FilmState>(std::move(film));
    m_canvas = canvas;
    m_palette = texture.palette;
    m_wanted = texture.grid;
    m_painted = QImage(canvas.size.width, canvas.size.height, QImage::Format_ARGB32);
    m_painted.fill(Qt::transparent);
    measure();
    tell();
    update();
}

void DrawingScreen::clear() {
    m_state.reset();
    update();
}

void DrawingScreen::seek(std::int64_t milliseconds) {
    if (!m_state) return;
    m_state->seek(milliseconds, [this](std::size_t cell) { showCell(cell); });
    tell();
    update();
}

void DrawingScreen::showCell(std::size_t cell) {
    const int at = static_cast<int>(cell);
    const auto colour = m_state->cells()[cell];
    m_painted.setPixel(at % m_canvas.size.width, at / m_canvas.size.width,
                       colour ? toQColor((*m_palette)[*colour]).rgb() : qRgba(0, 0, 0, 0));
}

// For those who do not see it; words say how far it is.
void DrawingScreen::tell() {
    const auto& cells = m_state->cells();
    const auto painted = std::count_if(cells.begin(), cells.end(),
                                       [](const auto& cell) { return cell.has_value(); });
    setAccessibleDescription(tr("%1 cells are painted").arg(painted));
}

void DrawingScreen::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (m_state) measure();
}

// As large as whole pixels for a cell allow, so that cells stay square and alike.
void DrawingScreen::measure() {
    const core::CanvasGeometry& geometry = m_canvas.geometry;
    const int pitch = geometry.cellPitch;
    QRect all(geometry.gridCentre.x - pitch / 2, geometry.gridCentre.y - pitch / 2,
              m_canvas.size.width * pitch, m_canvas.size.height * pitch);
    for (int i = 0; i < m_palette->size(); ++i) {
        const Point centre = geometry.swatch(static_cast<core::PaletteIndex>(i));
        const int half = geometry.swatchPitch / 2;
        all |= QRect(centre.x - half, centre.y - half, geometry.swatchPitch, geometry.swatchPitch);
    }
    all.adjust(-pitch, -pitch, pitch, pitch);  // For the pen at the edge.
    m_corner = {all.left(), all.top()};
    m_extent = {all.width(), all.height()};
    const double ratio = devicePixelRatioF();
    const double fitting =
        std::min(width() * ratio / m_extent.width, height() * ratio / m_extent.height);
    m_cellPixels = static_cast<int>(std::floor(fitting * pitch));
    m_scale = m_cellPixels >= 1 ? static_cast<double>(m_cellPixels) / pitch : fitting;

    const int across =
        std::max(1, static_cast<int>(std::lround(m_canvas.size.width * pitch * m_scale)));
    const int down =
        std::max(1, static_cast<int>(std::lround(m_canvas.size.height * pitch * m_scale)));
    m_ground = QImage(across, down, QImage::Format_RGB32);
    const Hatch hatch = hatchOf(m_theme);
    const QRgb bare = toQColor(m_theme.field).rgb();
    for (int y = 0; y < down; ++y) {
        auto* const line = reinterpret_cast<QRgb*>(m_ground.scanLine(y));
        const int row = y * m_canvas.size.height / down;
        for (int x = 0; x < across; ++x) {
            const int column = x * m_canvas.size.width / across;
            const bool isWanted = column < m_wanted->width() && row < m_wanted->height() &&
                                  m_palette->transparent() != m_wanted->at({column, row});
            line[x] = isWanted ? bare : hatchAt(x, y, hatch);
        }
    }
}

QPointF DrawingScreen::onScreen(Point counts) const {
    return {(counts.x - m_corner.x) * m_scale, (counts.y - m_corner.y) * m_scale};
}

QRectF DrawingScreen::swatchPlace(core::PaletteIndex index) const {
    const Point centre = m_canvas.geometry.swatch(index);
    const double side = std::max(2.0, std::floor(m_canvas.geometry.swatchPitch * m_scale) - 1);
    const QPointF middle = onScreen(centre);
    return {std::floor(middle.x() - side / 2), std::floor(middle.y() - side / 2), side, side};
}

void DrawingScreen::paintEvent(QPaintEvent* /*event*/) {
    if (!m_state) return;
    QPainter painter(this);
    // In pixels of the screen, so that no scaling by the platform comes between.
    const double ratio = devicePixelRatioF();
    painter.scale(1 / ratio, 1 / ratio);
    paintGrid(painter);
    paintSwatches(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    paintWay(painter);
    paintPen(painter);
}

void DrawingScreen::paintGrid(QPainter& painter) const {
    const int half = m_canvas.geometry.cellPitch / 2;
    const Point corner = m_canvas.geometry.gridCentre;
    const QPointF place = onScreen({corner.x - half, corner.y - half});
    const QRect target(
        QPoint(static_cast<int>(std::lround(place.x())), static_cast<int>(std::lround(place.y()))),
        m_ground.size());
    painter.drawImage(target.topLeft(), m_ground);
    // At less than a pixel a cell, the painter averages; otherwise whole multiples stay sharp.
    painter.setRenderHint(QPainter::SmoothPixmapTransform, m_cellPixels < 1);
    painter.drawImage(target, m_painted);
    painter.setPen(toQColor(m_theme.edge));
    painter.drawRect(target.adjusted(0, 0, -1, -1));
}

void DrawingScreen::paintSwatches(QPainter& painter) const {
    const drawing::Instant* const now = m_state->now();
    for (int i = 0; i < m_palette->size(); ++i) {
        const auto index = static_cast<core::PaletteIndex>(i);
        if (m_palette->transparent() == index) continue;
        const QRectF place = swatchPlace(index);
        painter.fillRect(place, toQColor((*m_palette)[index]));
        const bool isPicked = now != nullptr && now->colour == index;
        if (!isPicked) continue;
        // Two lines, so that one stands out from any colour.
        const double line = std::max(2.0, place.width() / 8);
        painter.setPen(
            QPen(toQColor(m_theme.field), 3 * line, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
        painter.drawRect(place);
        painter.setPen(
            QPen(toQColor(m_theme.text), line, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
        painter.drawRect(place);
    }
}

// The pen's way of the last moments: a thick line where it was down, a dotted one where it was up.
void DrawingScreen::paintWay(QPainter& painter) const {
    const auto& instants = m_state->film().instants;
    const std::size_t landed = m_state->landed();
    if (landed < 2) return;
    const std::int64_t now = instants[landed - 1].milliseconds;
    QList<QLineF> down;
    QList<QLineF> up;
    for (std::size_t i = landed - 1; i > 0 && instants[i].milliseconds > now - kShownWayMs; --i) {
        const bool isDown = instants[i].pressed && instants[i - 1].pressed;
        (isDown ? down : up).append({onScreen(instants[i - 1].pen), onScreen(instants[i].pen)});
    }
    const double line = std::max(1.5, m_canvas.geometry.cellPitch * m_scale / 6);
    const auto draw = [&](const QList<QLineF>& ways, core::Rgb8 colour, double width,
                          Qt::PenStyle style) {
        painter.setPen(QPen(toQColor(colour), width, style, Qt::RoundCap));
        painter.drawLines(ways);
    };
    // With an edge, so that it stands out from any colour.
    draw(down, m_theme.field, 2.6 * line, Qt::SolidLine);
    draw(up, m_theme.field, 2.6 * line, Qt::DotLine);
    draw(up, m_theme.text, line, Qt::DotLine);
    draw(down, m_theme.text, line, Qt::SolidLine);
}

// A full disc while the button is down, a ring while it is up.
void DrawingScreen::paintPen(QPainter& painter) const {
    const drawing::Instant* const now = m_state->now();
    const Point counts = now == nullptr ? m_canvas.geometry.gridCentre : now->pen;
    const bool isDown = now != nullptr && now->pressed;
    const double radius = std::max(4.0, m_canvas.geometry.cellPitch * m_scale * 0.6);
    const double line = std::max(2.0, radius / 3);
    const QPointF place = onScreen(counts);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(toQColor(m_theme.field), 2 * line));
    painter.drawEllipse(place, radius, radius);
    painter.setPen(QPen(toQColor(m_theme.text), line));
    if (isDown) painter.setBrush(toQColor(m_theme.text));
    painter.drawEllipse(place, radius, radius);
}

}  // namespace pantile::desktop
