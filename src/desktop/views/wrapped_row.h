#pragma once

#include <QWidget>

namespace pantile::desktop {

/// Widgets in a row that goes on below where it has no more room.
class WrappedRow : public QWidget {
    Q_OBJECT

public:
    explicit WrappedRow(QWidget* parent);

    /// In the order of the keys as well.
    void add(QWidget* widget);

    bool hasHeightForWidth() const override { return true; }

    int heightForWidth(int width) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QList<QRect> placesIn(int width) const;

    QList<QWidget*> m_widgets;
};

}  // namespace pantile::desktop
