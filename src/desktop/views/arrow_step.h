#pragma once

#include <QPoint>

namespace pantile::desktop {

/// One step right and down for an arrow key, a Qt::Key; null for every other.
QPoint arrowStep(int key);

}  // namespace pantile::desktop
