#pragma once

#include <QWidget>

#include "desktop/theme/theme.h"

namespace pantile::desktop {

/// Lies over the window while something that can be added is held above it.
class DropHint : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    DropHint(const Theme& theme, QWidget* parent);

    /// Over all of its parent.
    void cover();

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const Theme& m_theme;
};

}  // namespace pantile::desktop
