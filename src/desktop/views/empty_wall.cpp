#include "desktop/views/empty_wall.h"

#include <algorithm>

#include <QHBoxLayout>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include "desktop/theme/apply_theme.h"
#include "desktop/views/action_button.h"
#include "desktop/views/plain_label.h"
#include "tasks/sample_library.h"

namespace pantile::desktop {

namespace {

constexpr int kCell = 16;
constexpr int kWordsWidth = 440;

}  // namespace

EmptyWall::EmptyWall(const Actions& actions, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_theme(theme), m_target(new QWidget(this)) {
    setObjectName(QStringLiteral("emptyWall"));
    m_target->setFixedSize(12 * kCell, 6 * kCell);
    m_target->setAccessibleName(tr("Drop pictures here"));

    auto* const heading = new PlainLabel(this);
    heading->setFont(headingFont());
    heading->setText(tr("Drop pictures or codes here"));
    auto* const words = new PlainLabel(this);
    words->setObjectName(QStringLiteral("firstWords"));
    words->setText(
        tr("This library holds every texture you make or are given. Drop pictures, "
           "folders or texts with codes on this window, or paste them. Each becomes a "
           "grid of cells, and nothing is kept twice."));

    auto* const buttons = new QHBoxLayout;
    buttons->setSpacing(kGap);
    buttons->addWidget(makeNextButton(actions[ActionId::AddPictures], tr("Add pictures"), this));
    buttons->addWidget(makeActionButton(actions[ActionId::Paste], tr("Paste"), this));
    if (tasks::samplesFolder())
        buttons->addWidget(
            makeActionButton(actions[ActionId::AddSamples], tr("Add the samples"), this));
    buttons->addStretch();

    // A widget rather than a layout, as only a widget can be kept from growing wide.
    auto* const column = new QWidget(this);
    column->setMaximumWidth(kWordsWidth);
    auto* const inside = new QVBoxLayout(column);
    inside->setContentsMargins({});
    inside->setSpacing(2 * kGap);
    inside->addStretch(1);
    inside->addWidget(m_target);
    inside->addWidget(heading);
    inside->addWidget(words);
    inside->addLayout(buttons);
    inside->addStretch(2);
    auto* const layout = new QHBoxLayout(this);
    layout->setContentsMargins(4 * kGap, 2 * kGap, 4 * kGap, 2 * kGap);
    layout->addStretch(1);
    layout->addWidget(column, 100);
    layout->addStretch(1);
}

// An empty grid, with the corner of a pantiled roof begun in it.
void EmptyWall::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const QPoint corner = m_target->mapTo(this, QPoint(0, 0));
    const int columns = m_target->width() / kCell;
    const int rows = m_target->height() / kCell;
    for (int row = 0; row < rows; ++row) {
        for (int column = 0; column < columns; ++column) {
            const QRect cell(corner.x() + column * kCell, corner.y() + row * kCell, kCell - 2,
                             kCell - 2);
            const bool laid = column <= 2 * row - 4 && (column + row % 2 * 2) % 4 != 0;
            painter.fillRect(cell, toQColor(laid ? m_theme.next : m_theme.hairline));
        }
    }
}

}  // namespace pantile::desktop
