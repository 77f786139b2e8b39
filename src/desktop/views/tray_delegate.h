#pragma once

#include <QStyledItemDelegate>

#include "desktop/models/tray_model.h"
#include "desktop/theme/theme.h"
#include "desktop/views/tile_pictures.h"

namespace pantile::desktop {

/// One compartment of the tray: the slot's number, the texture's picture, title and costs.
class TrayDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    /// Model and theme must outlive it.
    TrayDelegate(const TrayModel& model, const Theme& theme, TilePictures pictures,
                 QObject* parent);

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;

    QSize compartmentSize() const;

private:
    void paintGround(QPainter& painter, const QStyleOptionViewItem& option, bool isFilled) const;
    void paintWords(QPainter& painter, const QRect& place, int slot) const;

    const TrayModel& m_model;
    const Theme& m_theme;
    mutable TilePictures m_pictures;
};

}  // namespace pantile::desktop
