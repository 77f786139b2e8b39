#pragma once

#include <QLabel>

namespace pantile::desktop {

/// Text that is never taken for markup, and that breaks inside a word where a line has no room for
/// the whole of it.
class PlainLabel : public QLabel {
    Q_OBJECT

public:
    explicit PlainLabel(QWidget* parent = nullptr);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

    bool hasHeightForWidth() const override { return true; }

    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent* event) override;
};

}  // namespace pantile::desktop
