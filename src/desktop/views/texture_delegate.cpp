#include "desktop/views/texture_delegate.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/painted_parts.h"

namespace pantile::desktop {

namespace {

constexpr int kSelectionBar = 4;
constexpr int kFocusLine = 2;

const catalogue::Estimate kUsualCost{108000, 8888, ""};

// The nearest place at which pixels of a picture lie on pixels of the screen.
QPointF onScreenPixel(QPointF place, double pixelRatio) {
    return {std::round(place.x() * pixelRatio) / pixelRatio,
            std::round(place.y() * pixelRatio) / pixelRatio};
}

}  // namespace

TextureDelegate::TextureDelegate(const TextureModel& model, const Theme& theme,
                                 TilePictures pictures, QObject* parent)
    : QStyledItemDelegate(parent),
      m_model(model),
      m_theme(theme),
      m_pictures(std::move(pictures)) {}

QSize TextureDelegate::tileSize() const {
    const int words = QFontMetrics(QFont()).height() + QFontMetrics(figureFont()).height();
    // Costs are what one compares; room for usual ones, so that they are not cut.
    const int costs = QFontMetrics(figureFont()).horizontalAdvance(shownCost(kUsualCost));
    return {std::max(m_side, costs) + 2 * kGap, m_side + words + 4 * kGap};
}

QSize TextureDelegate::sizeHint(const QStyleOptionViewItem& option,
                                const QModelIndex& /*index*/) const {
    // The view hands out the width of its columns.
    return {std::max(option.rect.width(), tileSize().width()), tileSize().height()};
}

void TextureDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                            const QModelIndex& index) const {
    painter->save();
    paintState(*painter, option);
    const QRect inside = option.rect.adjusted(kGap, kGap, -kGap, -kGap);
    const QRect words = inside.adjusted(0, m_side + kGap, 0, 0);
    if (const catalogue::TextureRow* row = m_model.textureRow(index.row())) {
        paintPicture(*painter, {inside.topLeft(), QSize(m_side, m_side)}, *row);
        paintWords(*painter, words, shownTitle(row->title), shownCost(row->estimate), row->stars);
    } else {
        paintWords(*painter, words, index.data().toString(), {}, 0);
    }
    painter->restore();
}

void TextureDelegate::paintState(QPainter& painter, const QStyleOptionViewItem& option) const {
    const QRect tile = option.rect.adjusted(1, 1, -1, -1);
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    if (selected) {
        painter.fillRect(tile, toQColor(m_theme.selection));
        painter.fillRect(QRect(tile.left(), tile.top(), kSelectionBar, tile.height()),
                         toQColor(m_theme.structure));
    } else if (option.state.testFlag(QStyle::State_MouseOver)) {
        painter.fillRect(tile, toQColor(m_theme.hover));
    }
    if (!option.state.testFlag(QStyle::State_HasFocus)) return;
    painter.setPen(QPen(toQColor(m_theme.structure), kFocusLine));
    painter.drawRect(tile.adjusted(1, 1, -1, -1));
}

void TextureDelegate::paintPicture(QPainter& painter, const QRect& place,
                                   const catalogue::TextureRow& row) const {
    const double pixelRatio = painter.device()->devicePixelRatioF();
    const QImage image = m_pictures.picture(row, m_side, pixelRatio);
    if (image.isNull()) {
        painter.setPen(toQColor(m_theme.quietText));
        painter.drawText(place, Qt::AlignBottom | Qt::TextWordWrap,
                         tr("The picture is damaged. 'pantile check' says more."));
        return;
    }
    const QPointF corner(place.left(),
                         place.top() + m_side - image.deviceIndependentSize().height());
    painter.drawImage(onScreenPixel(corner, pixelRatio), image);
}

void TextureDelegate::paintWords(QPainter& painter, const QRect& place, const QString& title,
                                 const QString& cost, int stars) const {
    const int height = QFontMetrics(QFont()).height();
    const QFontMetrics figures(figureFont());
    // The stars that were given stand at the end of the title's line.
    const QString given(stars, QChar(u'\u2605'));
    const int starsWidth = given.isEmpty() ? 0 : figures.horizontalAdvance(given) + kGap / 2;
    paintLine(painter, {place.left(), place.top(), place.width() - starsWidth, height}, QFont(),
              m_theme.text, title);
    if (starsWidth > 0) {
        paintLine(painter,
                  {place.right() + 1 - starsWidth + kGap / 2, place.top(), starsWidth, height},
                  figureFont(), m_theme.quietText, given);
    }
    paintLine(painter, {place.left(), place.top() + height, place.width(), figures.height()},
              figureFont(), m_theme.quietText, cost);
}

}  // namespace pantile::desktop
