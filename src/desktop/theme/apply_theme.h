#pragma once

// Puts a theme on the application: palette, style sheet, fonts.

#include <QColor>
#include <QFont>

#include "desktop/theme/theme.h"

class QApplication;

namespace pantile::desktop {

QColor toQColor(core::Rgb8 colour);

/// Light or dark, as the platform's own palette is. Ask before applyTheme, which replaces it.
Shade platformShade();

void applyTheme(QApplication& application, const Theme& theme);

/// The three sizes of the window, from the platform's font.
QFont headingFont();
QFont figureFont();

/// One gap; larger ones are multiples of it. Units: device-independent pixels.
inline constexpr int kGap = 8;

}  // namespace pantile::desktop
