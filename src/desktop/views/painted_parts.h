#pragma once

// What several views paint alike.

#include <optional>

#include "core/colour.h"
#include "desktop/theme/theme.h"

class QFont;
class QPainter;
class QRect;
class QRectF;
class QString;

namespace pantile::desktop {

/// One line of text from the left, cut at its end where there is no room for it.
void paintLine(QPainter& painter, const QRect& where, const QFont& font, core::Rgb8 colour,
               const QString& text);

/// A colour of a palette; none is the one that leaves cells unpainted, as a hatch of `line`.
void fillSwatch(QPainter& painter, const QRectF& where, std::optional<core::Rgb8> colour,
                const Theme& theme, core::Rgb8 line);

}  // namespace pantile::desktop
