#include "desktop/views/edit_canvas.h"

#include <algorithm>
#include <cmath>

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include "desktop/theme/apply_theme.h"
#include "desktop/views/arrow_step.h"

namespace pantile::desktop {

using core::Point;

namespace {

constexpr int kMostCellSide = 96;
constexpr int kLeastSideForLines = 6;  // Lines any closer would hide the cells.
constexpr double kNeighbourOpacity = 0.45;
constexpr double kFarthest = 1000;
constexpr int kNeighbourCells = 4;  // Room around the texture for what repeats it.

QImage cellImage(const core::Texture& texture) {
    const core::Size size = texture.grid().size();
    QImage image(size.width, size.height, QImage::Format_ARGB32);
    for (int y = 0; y < size.height; ++y) {
        for (int x = 0; x < size.width; ++x) {
            const core::PaletteIndex cell = texture.grid().at({x, y});
            const core::Rgb8 colour = texture.palette()[cell];
            const bool unpainted = texture.palette().transparent() == cell;
            image.setPixel(x, y,
                           unpainted ? qRgba(0, 0, 0, 0) : qRgb(colour.r, colour.g, colour.b));
        }
    }
    return image;
}

QPointF topLeftOf(const std::vector<Point>& corners) {
    return {double(std::min(corners[0].x, corners[1].x)),
            double(std::min(corners[0].y, corners[1].y))};
}

QPointF bottomRightOf(const std::vector<Point>& corners) {
    return {std::max(corners[0].x, corners[1].x) + 1.0, std::max(corners[0].y, corners[1].y) + 1.0};
}

// Light and dark, to be seen on any colour.
void paintMarkAround(QPainter& painter, const QRectF& box) {
    painter.setPen(QPen(Qt::white, 3));
    painter.drawRect(box);
    painter.setPen(QPen(Qt::black, 1));
    painter.drawRect(box);
}

}  // namespace

EditCanvas::EditCanvas(const Theme& theme, QWidget* parent)
    : QWidget(parent), m_theme(theme), m_hatch(hatchOf(theme)) {
    setObjectName(QStringLiteral("editCanvas"));
    setAccessibleName(tr("Cells of the texture"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setMinimumSize(160, 160);
    setCursor(Qt::CrossCursor);
}

void EditCanvas::setTexture(std::optional<core::Texture> texture) {
    const bool isOther = !m_texture || !texture || size() != texture->grid().size();
    m_texture = std::move(texture);
    m_image = m_texture ? cellImage(*m_texture) : QImage();
    if (isOther) {
        m_keyCell = {0, 0};
        fit();
    }
    update();
}

void EditCanvas::setShowsLines(bool shows) {
    m_showsLines = shows;
    update();
}

void EditCanvas::setShowsNeighbours(bool shows) {
    m_showsNeighbours = shows;
    if (m_fits) fit();
    update();
}

void EditCanvas::setSymmetry(picture::Symmetry symmetry) {
    m_symmetry = symmetry;
    update();
}

void EditCanvas::setFrame(std::vector<Point> corners) {
    m_frame = std::move(corners);
    update();
}

double EditCanvas::scale() const {
    return m_cellSide / devicePixelRatioF();
}

QPointF EditCanvas::middleOf(Point cell) const {
    return m_origin + QPointF(cell.x + 0.5, cell.y + 0.5) * scale();
}

Point EditCanvas::cellAt(QPointF position) const {
    const QPointF cell = (position - m_origin) / scale();
    // The pointer can be dragged far away; tools take places up to there.
    const auto within = [](double at) {
        return static_cast<int>(std::floor(std::clamp(at, -kFarthest, kFarthest)));
    };
    return {within(cell.x()), within(cell.y())};
}

void EditCanvas::fit() {
    m_fits = true;
    if (!m_texture) return;
    const int around = m_showsNeighbours ? 2 * kNeighbourCells : 0;
    const double ratio = devicePixelRatioF();
    const int across = static_cast<int>(width() * ratio) / (size().width + around);
    const int down = static_cast<int>(height() * ratio) / (size().height + around);
    m_cellSide = std::clamp(std::min(across, down), 1, kMostCellSide);
    const QSizeF shown = QSizeF(size().width, size().height) * scale();
    // On whole pixels of the screen, or cells would be smoothed.
    const auto whole = [ratio](double place) { return std::floor(place * ratio) / ratio; };
    m_origin = {whole((width() - shown.width()) / 2), whole((height() - shown.height()) / 2)};
    update();
}

void EditCanvas::zoomAround(QPointF position, int steps) {
    if (!m_texture) return;
    const QPointF cell = (position - m_origin) / scale();
    const int next = steps > 0 ? m_cellSide + std::max(1, m_cellSide / 4)
                               : m_cellSide - std::max(1, m_cellSide / 5);
    m_cellSide = std::clamp(next, 1, kMostCellSide);
    m_origin = position - cell * scale();
    m_fits = false;
    keepInView();
}

// Some of the texture always stays on the canvas, on whole pixels of the screen.
void EditCanvas::keepInView() {
    const QSizeF shown = QSizeF(size().width, size().height) * scale();
    const double ratio = devicePixelRatioF();
    const auto kept = [ratio](double at, double length, double room) {
        const double within = std::clamp(at, std::min(2.0 * kGap - length, 0.0), room - 2 * kGap);
        return std::round(within * ratio) / ratio;
    };
    m_origin = {kept(m_origin.x(), shown.width(), width()),
                kept(m_origin.y(), shown.height(), height())};
    update();
}

void EditCanvas::paintEvent(QPaintEvent* /*event*/) {
    if (!m_texture) return;
    QPainter painter(this);
    if (m_showsNeighbours) {
        const QPointF step(size().width * scale(), size().height * scale());
        for (int down = -1; down <= 1; ++down) {
            for (int right = -1; right <= 1; ++right) {
                if (down == 0 && right == 0) continue;
                paintCells(painter, kNeighbourOpacity,
                           m_origin + QPointF(right * step.x(), down * step.y()));
            }
        }
    }
    paintCells(painter, 1, m_origin);
    if (m_showsLines && m_cellSide >= kLeastSideForLines) paintLines(painter);
    paintAxes(painter);
    if (m_frame.size() == 2) paintFrame(painter);
    if (hasFocus()) paintKeyCell(painter);
}

void EditCanvas::paintCells(QPainter& painter, double opacity, QPointF origin) const {
    const QRectF where(origin, QSizeF(size().width, size().height) * scale());
    if (!where.intersects(QRectF(rect()))) return;
    painter.setOpacity(opacity);
    if (m_texture->palette().transparent()) {
        painter.fillRect(where, QColor(m_hatch.ground));
        painter.fillRect(where, QBrush(QColor(m_hatch.line), Qt::BDiagPattern));
    }
    painter.drawImage(where, m_image);
    painter.setOpacity(1);
}

void EditCanvas::paintLines(QPainter& painter) const {
    QColor line = toQColor(m_theme.text);
    line.setAlpha(56);
    painter.setPen(QPen(line, 0));
    const QPointF end = m_origin + QPointF(size().width, size().height) * scale();
    for (int x = 0; x <= size().width; ++x) {
        const double at = m_origin.x() + x * scale();
        painter.drawLine(QPointF(at, m_origin.y()), QPointF(at, end.y()));
    }
    for (int y = 0; y <= size().height; ++y) {
        const double at = m_origin.y() + y * scale();
        painter.drawLine(QPointF(m_origin.x(), at), QPointF(end.x(), at));
    }
}

void EditCanvas::paintAxes(QPainter& painter) const {
    using picture::Symmetry;
    if (m_symmetry == Symmetry::None) return;
    const QPointF extent = QPointF(size().width, size().height) * scale();
    const QPointF end = m_origin + extent;
    const QPointF middle = m_origin + extent / 2;
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(toQColor(m_theme.next), 2, Qt::DashLine));
    if (m_symmetry != Symmetry::TopBottom)
        painter.drawLine(QPointF(middle.x(), m_origin.y()), QPointF(middle.x(), end.y()));
    if (m_symmetry != Symmetry::LeftRight)
        painter.drawLine(QPointF(m_origin.x(), middle.y()), QPointF(end.x(), middle.y()));
    if (m_symmetry == Symmetry::Eight) {
        painter.drawLine(m_origin, end);
        painter.drawLine(QPointF(m_origin.x(), end.y()), QPointF(end.x(), m_origin.y()));
    }
    painter.setRenderHint(QPainter::Antialiasing, false);
}

void EditCanvas::paintFrame(QPainter& painter) const {
    paintMarkAround(painter, QRectF(m_origin + topLeftOf(m_frame) * scale(),
                                    m_origin + bottomRightOf(m_frame) * scale()));
}

void EditCanvas::paintKeyCell(QPainter& painter) const {
    paintMarkAround(painter, QRectF(m_origin + QPointF(m_keyCell.x, m_keyCell.y) * scale(),
                                    QSizeF(scale(), scale())));
}

void EditCanvas::resizeEvent(QResizeEvent* /*event*/) {
    if (m_fits) {
        fit();
    } else if (m_texture) {
        keepInView();
    }
}

void EditCanvas::mousePressEvent(QMouseEvent* event) {
    if (!m_texture) return;
    const Point cell = cellAt(event->position());
    if (event->button() == Qt::MiddleButton) {
        m_panFrom = event->position();
    } else if (event->button() == Qt::RightButton) {
        Q_EMIT picked(cell);
    } else if (event->button() == Qt::LeftButton) {
        m_lastCell = cell;
        Q_EMIT pressed(cell);
    }
}

void EditCanvas::mouseMoveEvent(QMouseEvent* event) {
    if (!m_texture) return;
    if (m_panFrom) {
        pan(event->position() - *m_panFrom);
        m_panFrom = event->position();
        return;
    }
    const Point cell = cellAt(event->position());
    if (m_lastCell == cell) return;
    m_lastCell = cell;
    if ((event->buttons() & Qt::LeftButton) != 0) {
        Q_EMIT moved(cell);
    } else {
        Q_EMIT hovered(cell);
    }
}

void EditCanvas::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() == Qt::MiddleButton) m_panFrom.reset();
    if (m_texture && event->button() == Qt::LeftButton) Q_EMIT released(cellAt(event->position()));
}

void EditCanvas::wheelEvent(QWheelEvent* event) {
    if (!m_texture || event->angleDelta().isNull()) return;
    if ((event->modifiers() & Qt::ControlModifier) != 0) {
        zoomAround(event->position(), event->angleDelta().y() > 0 ? 1 : -1);
    } else {
        pan(QPointF(event->angleDelta()) / 2);
    }
    event->accept();
}

void EditCanvas::pan(QPointF by) {
    m_origin += by;
    m_fits = false;
    keepInView();
}

void EditCanvas::keyPressEvent(QKeyEvent* event) {
    if (!m_texture) return QWidget::keyPressEvent(event);
    if (const QPoint step = arrowStep(event->key()); !step.isNull()) {
        if ((event->modifiers() & Qt::ControlModifier) == 0) {
            return moveKeyCell({step.x(), step.y()});
        }
        return pan(QPointF(-step.x() * width(), -step.y() * height()) / 4);
    }
    switch (event->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            Q_EMIT entered(m_keyCell);
            return;
        case Qt::Key_Space:
            Q_EMIT picked(m_keyCell);
            return;
        case Qt::Key_Escape:
            Q_EMIT cancelled();
            return;
        default:
            QWidget::keyPressEvent(event);
    }
}

void EditCanvas::moveKeyCell(Point by) {
    m_keyCell = {std::clamp(m_keyCell.x + by.x, 0, size().width - 1),
                 std::clamp(m_keyCell.y + by.y, 0, size().height - 1)};
    followKeyCell();
    Q_EMIT moved(m_keyCell);
    update();
}

// Where one has zoomed in, what is shown goes along with the keys.
void EditCanvas::followKeyCell() {
    const QPointF middle = middleOf(m_keyCell);
    const double half = scale() / 2;
    const auto missing = [half](double at, double room) {
        return std::max(half - at, 0.0) - std::max(at + half - room, 0.0);
    };
    const QPointF by(missing(middle.x(), width()), missing(middle.y(), height()));
    if (!by.isNull()) pan(by);
}

void EditCanvas::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    update();
}

void EditCanvas::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    update();
}

}  // namespace pantile::desktop
