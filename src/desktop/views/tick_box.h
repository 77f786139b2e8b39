#pragma once

#include <QCheckBox>

#include "desktop/theme/theme.h"

namespace pantile::desktop {

/// A switch with a box of our own, whose edge can be made out on every ground of the theme.
class TickBox : public QCheckBox {
    Q_OBJECT

public:
    /// The theme must outlive it.
    TickBox(const QString& text, const Theme& theme, QWidget* parent);

    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    bool hitButton(const QPoint& position) const override;

private:
    const Theme& m_theme;
};

}  // namespace pantile::desktop
