#pragma once

#include <QStyledItemDelegate>

#include "desktop/models/texture_model.h"
#include "desktop/theme/theme.h"
#include "desktop/views/tile_pictures.h"

namespace pantile::desktop {

/// Paints a texture of the grid: its picture standing on a common line, title and costs below.
class TextureDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    /// Model and theme must outlive it.
    TextureDelegate(const TextureModel& model, const Theme& theme, TilePictures pictures,
                    QObject* parent);

    void setPictureSide(int side) { m_side = side; }

    int pictureSide() const { return m_side; }

    /// Of a tile: room for the picture, the words, and gaps.
    QSize tileSize() const;

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    void paintState(QPainter& painter, const QStyleOptionViewItem& option) const;
    void paintPicture(QPainter& painter, const QRect& place,
                      const catalogue::TextureRow& row) const;
    void paintWords(QPainter& painter, const QRect& place, const QString& title,
                    const QString& cost, int stars) const;

    const TextureModel& m_model;
    const Theme& m_theme;
    mutable TilePictures m_pictures;
    int m_side = 128;
};

}  // namespace pantile::desktop
