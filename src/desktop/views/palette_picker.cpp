#include "desktop/views/palette_picker.h"

#include <algorithm>

#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>

#include "core/colour.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

namespace {

constexpr int kSwatchWidth = 34;
constexpr int kSwatchHeight = 24;
constexpr int kNumberHeight = 16;
constexpr int kStepX = kSwatchWidth + 4;
constexpr int kTypingPauseMs = 700;

}  // namespace

PalettePicker::PalettePicker(const Theme& theme, QWidget* parent)
    : QWidget(parent), m_theme(theme), m_hatch(hatchOf(theme)) {
    setObjectName(QStringLiteral("palettePicker"));
    setAccessibleName(tr("Palette"));
    setFocusPolicy(Qt::StrongFocus);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    m_typing.setSingleShot(true);
    m_typing.setInterval(kTypingPauseMs);
}

void PalettePicker::setPalette(const core::Palette& palette) {
    if (m_palette == palette) return;
    m_palette = palette;
    if (m_colour >= count()) m_colour = 0;
    if (m_other >= count()) m_other = static_cast<core::PaletteIndex>(count() - 1);
    updateGeometry();
    update();
    Q_EMIT picked();
}

int PalettePicker::count() const {
    return m_palette ? static_cast<int>(m_palette->size()) : 0;
}

void PalettePicker::pick(int index) {
    if (index < 0 || index >= count()) return;
    m_colour = static_cast<core::PaletteIndex>(index);
    update();
    Q_EMIT picked();
}

void PalettePicker::pickOther(int index) {
    if (index < 0 || index >= count()) return;
    m_other = static_cast<core::PaletteIndex>(index);
    update();
    Q_EMIT picked();
}

void PalettePicker::typeDigit(int digit) {
    const int longer = m_typed * 10 + digit;
    m_typed = m_typing.isActive() && longer < count() ? longer : digit;
    m_typing.start();
    pick(m_typed);
}

int PalettePicker::columnsIn(int width) const {
    return std::max(1, (width + kStepX - kSwatchWidth) / kStepX);
}

int PalettePicker::heightForWidth(int width) const {
    const int columns = columnsIn(width);
    return std::max(1, (count() + columns - 1) / columns) * kRowHeight;
}

QSize PalettePicker::sizeHint() const {
    constexpr int kUsualColumns = 16;
    return {kUsualColumns * kStepX, heightForWidth(kUsualColumns * kStepX)};
}

QRect PalettePicker::swatch(int index) const {
    const int columns = columnsIn(width());
    return {index % columns * kStepX, index / columns * kRowHeight, kSwatchWidth, kSwatchHeight};
}

int PalettePicker::indexAt(QPoint position) const {
    for (int i = 0; i < count(); ++i) {
        if (swatch(i).adjusted(0, 0, 0, kNumberHeight).contains(position)) return i;
    }
    return -1;
}

void PalettePicker::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.setFont(figureFont());
    for (int i = 0; i < count(); ++i) {
        const QRect square = swatch(i);
        if (m_palette->transparent() == i) {
            painter.fillRect(square, QColor(m_hatch.ground));
            painter.fillRect(square, QBrush(QColor(m_hatch.line), Qt::BDiagPattern));
        } else {
            painter.fillRect(square, toQColor((*m_palette)[static_cast<core::PaletteIndex>(i)]));
        }
        painter.setPen(QPen(toQColor(m_theme.edge), 1));
        painter.drawRect(square.adjusted(0, 0, -1, -1));
        const bool isPicked = i == m_colour;
        if (isPicked) {
            painter.setPen(QPen(toQColor(m_theme.text), 3));
            painter.drawRect(square.adjusted(1, 1, -2, -2));
            painter.setPen(QPen(toQColor(m_theme.ground), 1));
            painter.drawRect(square.adjusted(3, 3, -4, -4));
        }
        const QString number = QString::number(i);
        const QRect below(square.left(), square.bottom() + 1, square.width(), kNumberHeight);
        painter.setPen(toQColor(isPicked ? m_theme.text : m_theme.quietText));
        painter.drawText(below, Qt::AlignCenter,
                         i == m_other && !isPicked ? QStringLiteral("(%1)").arg(number) : number);
    }
    if (hasFocus() && count() > 0) {
        painter.setPen(QPen(toQColor(m_theme.structure), 2));
        painter.drawLine(swatch(m_colour).bottomLeft() + QPoint(0, kNumberHeight),
                         swatch(m_colour).bottomRight() + QPoint(0, kNumberHeight));
    }
}

void PalettePicker::mousePressEvent(QMouseEvent* event) {
    const int index = indexAt(event->position().toPoint());
    if (event->button() == Qt::RightButton) {
        pickOther(index);
    } else {
        pick(index);
    }
}

void PalettePicker::keyPressEvent(QKeyEvent* event) {
    const int columns = columnsIn(width());
    switch (event->key()) {
        case Qt::Key_Left:
            return pick(m_colour - 1);
        case Qt::Key_Right:
            return pick(m_colour + 1);
        case Qt::Key_Up:
            return pick(m_colour - columns);
        case Qt::Key_Down:
            return pick(m_colour + columns);
        case Qt::Key_Return:
        case Qt::Key_Enter:
            return pickOther(m_colour);
        default:
            QWidget::keyPressEvent(event);
    }
}

bool PalettePicker::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip) return QWidget::event(event);
    const auto* const help = static_cast<QHelpEvent*>(event);
    const int index = indexAt(help->pos());
    if (index < 0) {
        QToolTip::hideText();
        return true;
    }
    const QString what =
        m_palette->transparent() == index
            ? tr("left unpainted")
            : fromUtf8(core::toHex((*m_palette)[static_cast<core::PaletteIndex>(index)]));
    QToolTip::showText(help->globalPos(), tr("%1: %2").arg(index).arg(what), this);
    return true;
}

}  // namespace pantile::desktop
