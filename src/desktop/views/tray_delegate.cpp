#include "desktop/views/tray_delegate.h"

#include <algorithm>

#include <QPainter>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/painted_parts.h"

namespace pantile::desktop {

namespace {

constexpr int kTrayPicture = 64;
constexpr int kTrayFocusLine = 2;
constexpr int kTitleCharacters = 15;

}  // namespace

TrayDelegate::TrayDelegate(const TrayModel& model, const Theme& theme, TilePictures pictures,
                           QObject* parent)
    : QStyledItemDelegate(parent),
      m_model(model),
      m_theme(theme),
      m_pictures(std::move(pictures)) {}

QSize TrayDelegate::compartmentSize() const {
    // Room for usual titles and for any time.
    const int words = std::max(QFontMetrics(QFont()).averageCharWidth() * kTitleCharacters,
                               QFontMetrics(figureFont()).horizontalAdvance(shownDuration(108000)));
    return {kTrayPicture + words + 4 * kGap, kTrayPicture + 2 * kGap};
}

QSize TrayDelegate::sizeHint(const QStyleOptionViewItem& /*option*/,
                             const QModelIndex& /*index*/) const {
    return compartmentSize();
}

void TrayDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    painter->save();
    const catalogue::TextureRow* const row = m_model.textureRow(index.row());
    paintGround(*painter, option, row != nullptr);
    const QRect inside = option.rect.adjusted(kGap, kGap, -kGap, -kGap);
    if (row != nullptr) {
        const double ratio = painter->device()->devicePixelRatioF();
        painter->drawImage(inside.topLeft(), m_pictures.picture(*row, kTrayPicture, ratio));
    }
    paintWords(*painter, inside.adjusted(row == nullptr ? 0 : kTrayPicture + kGap, 0, 0, 0),
               index.row());
    painter->restore();
}

void TrayDelegate::paintGround(QPainter& painter, const QStyleOptionViewItem& option,
                               bool isFilled) const {
    const QRect whole = option.rect.adjusted(2, 2, -2, -2);
    if (isFilled) {
        const bool isSelected = option.state.testFlag(QStyle::State_Selected);
        painter.fillRect(whole, toQColor(isSelected ? m_theme.selection : m_theme.field));
        if (isSelected)
            painter.fillRect(QRect(whole.left(), whole.bottom() - 3, whole.width(), 4),
                             toQColor(m_theme.structure));
    } else {
        painter.setPen(QPen(toQColor(m_theme.edge), 1, Qt::DashLine));
        painter.drawRect(whole.adjusted(0, 0, -1, -1));
    }
    if (!option.state.testFlag(QStyle::State_HasFocus)) return;
    painter.setPen(QPen(toQColor(m_theme.structure), kTrayFocusLine));
    painter.drawRect(whole.adjusted(1, 1, -1, -1));
}

void TrayDelegate::paintWords(QPainter& painter, const QRect& place, int slot) const {
    int top = place.top();
    const auto line = [&](const QFont& font, core::Rgb8 colour, const QString& text) {
        const int height = QFontMetrics(font).height();
        paintLine(painter, {place.left(), top, place.width(), height}, font, colour, text);
        top += height;
    };
    line(figureFont(), m_theme.quietText, tr("Slot %1").arg(slot + 1));
    if (m_model.textureRow(slot) == nullptr)
        return line(figureFont(), m_theme.quietText, tr("empty"));
    line(QFont(), m_theme.text, m_model.index(slot).data().toString());
    const tasks::SlotCost* const cost = m_model.slotCost(slot);
    if (cost == nullptr || cost->variants.empty())
        return line(figureFont(), m_theme.quietText, m_model.costWords(slot));
    line(figureFont(), m_theme.quietText, shownDuration(cost->milliseconds()));
    line(figureFont(), m_theme.quietText, shownBytes(cost->bytes()));
}

}  // namespace pantile::desktop
