#pragma once

class QApplication;

namespace pantile::desktop {

/// Tells the platform whose windows these are: the name, the desktop entry that is installed beside
/// the program, and the icon. Without Qt's reader of SVG the windows have no icon of their own.
void setWindowIdentity(QApplication& application);

}  // namespace pantile::desktop
