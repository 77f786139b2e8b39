#pragma once

#include <QWidget>

#include "core/board.h"
#include "desktop/theme/theme.h"

namespace pantile::desktop {

/// A board's slots as compartments, the bytes that they share below them, and its display.
class SlotsPicture : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    SlotsPicture(const Theme& theme, QWidget* parent);

    /// `board` must pass core::checkBoard.
    void showBoard(const core::Board& board);

    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QRectF paintSlots(QPainter& painter, const QRectF& room) const;
    double paintBytes(QPainter& painter, const QRectF& slots) const;
    void paintDisplay(QPainter& painter, double top) const;

    const Theme& m_theme;
    core::Board m_board;
};

}  // namespace pantile::desktop
