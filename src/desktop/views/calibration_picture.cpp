#include "desktop/views/calibration_picture.h"

#include <algorithm>

#include <QPainter>

#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

using core::Point;

namespace {

constexpr int kPictureSide = 42 * kGap;
constexpr int kLeastPixelsForLines = 4;
constexpr int kAroundGrid = 3 * kGap;  // For numbers beside its first cells.
constexpr double kAroundPlace = 3;     // Free between what is read off and its frame.

QString inWords(const board::CalibrationReading& reading) {
    const auto pair = [](const std::optional<int>& at) {
        return at ? QString::number(*at) : CalibrationPicture::tr("none touch");
    };
    return CalibrationPicture::tr(
               "1, the mark at the top left: column %1, row %2. 2, the mark at the bottom right: "
               "column %3, row %4. 3, the first ticks of the row that touch: column %5. 4, the "
               "first ticks of the column that touch: row %6.")
        .arg(reading.near.x)
        .arg(reading.near.y)
        .arg(reading.far.x)
        .arg(reading.far.y)
        .arg(pair(reading.pairColumn), pair(reading.pairRow));
}

}  // namespace

CalibrationPicture::CalibrationPicture(const Theme& theme, QWidget* parent)
    : QWidget(parent), m_theme(theme) {
    setObjectName(QStringLiteral("calibrationPicture"));
    setAccessibleName(tr("What the calibration looks like"));
    setMinimumSize(24 * kGap, 24 * kGap);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void CalibrationPicture::setSight(const std::optional<board::CalibrationSight>& sight,
                                  core::Size cells) {
    m_sight = sight;
    m_cells = cells;
    setAccessibleDescription(sight ? inWords(sight->reading) : QString());
    update();
}

QSize CalibrationPicture::sizeHint() const {
    return {kPictureSide, kPictureSide};
}

// Whole pixels of the screen.
int CalibrationPicture::cellPixels() const {
    const double side = (std::min(width(), height()) - kAroundGrid - kGap) * devicePixelRatioF();
    return std::max(1, static_cast<int>(side) / std::max({m_cells.width, m_cells.height, 1}));
}

QRectF CalibrationPicture::boxOf(Point first, Point last) const {
    const double side = cellPixels() / devicePixelRatioF();
    return {kAroundGrid + first.x * side, kAroundGrid + first.y * side,
            (last.x - first.x + 1) * side, (last.y - first.y + 1) * side};
}

void CalibrationPicture::paintEvent(QPaintEvent* /*event*/) {
    if (!m_sight) return;
    QPainter painter(this);
    paintCells(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    paintPlaces(painter);
}

void CalibrationPicture::paintCells(QPainter& painter) const {
    const QRectF grid = boxOf({0, 0}, {m_cells.width - 1, m_cells.height - 1});
    painter.fillRect(grid, toQColor(m_theme.field));
    if (cellPixels() >= kLeastPixelsForLines) {
        painter.setPen(QPen(toQColor(m_theme.hairline), 0));
        for (int x = 0; x <= m_cells.width; ++x) {
            const double at = boxOf({x, 0}, {x, 0}).left();
            painter.drawLine(QPointF(at, grid.top()), QPointF(at, grid.bottom()));
        }
        for (int y = 0; y <= m_cells.height; ++y) {
            const double at = boxOf({0, y}, {0, y}).top();
            painter.drawLine(QPointF(grid.left(), at), QPointF(grid.right(), at));
        }
    }
    for (const Point cell : m_sight->cells)
        painter.fillRect(boxOf(cell, cell), toQColor(m_theme.text));
}

void CalibrationPicture::paintPlaces(QPainter& painter) const {
    const board::CalibrationReading& reading = m_sight->reading;
    paintPlace(painter, boxOf(reading.near, reading.near), 1, Side::Left);
    paintPlace(painter, boxOf(reading.far, reading.far), 2, Side::Right);
    if (reading.pairColumn) {
        const int column = *reading.pairColumn;
        const int row = m_sight->tickRow;
        paintPlace(painter, boxOf({column - 1, row}, {column, row}), 3, Side::Above);
    }
    if (reading.pairRow) {
        const int row = *reading.pairRow;
        const int column = m_sight->tickColumn;
        paintPlace(painter, boxOf({column, row - 1}, {column, row}), 4, Side::Left);
    }
}

void CalibrationPicture::paintPlace(QPainter& painter, const QRectF& box, int number,
                                    Side side) const {
    const QRectF frame = box.adjusted(-kAroundPlace, -kAroundPlace, kAroundPlace, kAroundPlace);
    painter.setPen(QPen(toQColor(m_theme.structure), 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(frame, 2, 2);
    QFont bold = font();
    bold.setBold(true);
    painter.setFont(bold);
    const QString words = QString::number(number);
    const QFontMetricsF metrics(bold);
    QRectF beside(0, 0, metrics.horizontalAdvance(words) + kGap, metrics.height());
    beside.moveCenter(frame.center());
    switch (side) {
        case Side::Left:
            beside.moveRight(frame.left());
            break;
        case Side::Right:
            beside.moveLeft(frame.right());
            break;
        case Side::Above:
            beside.moveBottom(frame.top());
            break;
    }
    painter.setPen(toQColor(m_theme.text));
    painter.drawText(beside, Qt::AlignCenter, words);
}

}  // namespace pantile::desktop
