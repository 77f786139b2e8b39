#pragma once

class QLabel;
class QString;
class QWidget;

namespace pantile::desktop {

/// What stands above a part of the window, in the larger of its two sizes of text.
QLabel* makeHeading(const QString& words, QWidget* parent);

}  // namespace pantile::desktop
