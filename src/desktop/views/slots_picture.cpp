#include "desktop/views/slots_picture.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

namespace {

constexpr int kLeastWidth = 200;
constexpr int kLeastHeight = 128;
constexpr double kLargestSlot = 72;
constexpr double kLeastForNumber = 20;
constexpr double kByteBarHeight = 2 * kGap;

}  // namespace

SlotsPicture::SlotsPicture(const Theme& theme, QWidget* parent) : QWidget(parent), m_theme(theme) {
    setObjectName(QStringLiteral("slotsPicture"));
    setAccessibleName(tr("Slots and bytes"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

QSize SlotsPicture::minimumSizeHint() const {
    return {kLeastWidth, kLeastHeight};
}

void SlotsPicture::showBoard(const core::Board& board) {
    m_board = board;
    setAccessibleDescription(
        counted("SlotsPicture", "%1 slot in %2.", "%1 slots in %2.", board.slots)
            .arg(shownBytes(board.bytes)));
    update();
}

void SlotsPicture::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.setFont(figureFont());
    const QRectF room(kGap, kGap, width() - 2.0 * kGap, height() * 0.55);
    const QRectF slots = paintSlots(painter, room);
    paintDisplay(painter, paintBytes(painter, slots));
}

// As large as all of them have room for; numbered from 1 where a number has room.
QRectF SlotsPicture::paintSlots(QPainter& painter, const QRectF& room) const {
    double side = kLargestSlot;
    int across = 1;
    int down = 1;
    for (; side > 2; side -= 1) {
        across = std::max(1, static_cast<int>(room.width() / side));
        down = (m_board.slots + across - 1) / across;
        if (down * side <= room.height()) break;
    }
    across = std::min(across, m_board.slots);
    for (int i = 0; i < m_board.slots; ++i) {
        const QRectF slot(room.left() + i % across * side, room.top() + i / across * side, side - 2,
                          side - 2);
        painter.fillRect(slot, toQColor(m_theme.field));
        painter.setPen(QPen(toQColor(m_theme.edge), 1));
        painter.drawRect(slot);
        if (side < kLeastForNumber) continue;
        painter.setPen(toQColor(m_theme.quietText));
        painter.drawText(slot, Qt::AlignCenter, QString::number(i + 1));
    }
    return {room.left(), room.top(), across * side - 2, down * side};
}

// A share for each slot; where they are many, only the whole.
double SlotsPicture::paintBytes(QPainter& painter, const QRectF& slots) const {
    const QRectF bar(slots.left(), slots.bottom() + kGap, width() - 2.0 * kGap, kByteBarHeight);
    painter.fillRect(bar, toQColor(m_theme.selection));
    const double share = bar.width() / m_board.slots;
    painter.setPen(QPen(toQColor(m_theme.edge), 1));
    for (int i = 1; i < m_board.slots && share >= kGap / 2.0; ++i) {
        const double x = std::round(bar.left() + i * share);
        painter.drawLine(QPointF(x, bar.top()), QPointF(x, bar.bottom()));
    }
    painter.drawRect(bar);
    painter.setPen(toQColor(m_theme.text));
    const QRectF words(bar.left(), bar.bottom() + kGap / 2.0, bar.width(), 3.0 * kGap);
    painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter,
                     tr("%1 in all, %2 for each slot if they share alike")
                         .arg(shownBytes(m_board.bytes))
                         .arg(shownBytes(m_board.bytes / m_board.slots)));
    return words.bottom();
}

void SlotsPicture::paintDisplay(QPainter& painter, double top) const {
    if (!m_board.hasDisplay()) return;
    const QRectF words(kGap, top, width() - 2.0 * kGap, 3.0 * kGap);
    painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter,
                     tr("Its display, %1 cells:").arg(shownSize(m_board.display)));
    const QRectF display(kGap, words.bottom(), m_board.display.width, m_board.display.height);
    painter.fillRect(display, toQColor(m_theme.field));
    painter.setPen(QPen(toQColor(m_theme.edge), 1));
    painter.drawRect(display);
}

}  // namespace pantile::desktop
