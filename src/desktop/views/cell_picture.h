#pragma once

// A texture as a picture for the screen: whole multiples, never smoothed; cells that are left
// unpainted as a fine diagonal hatch.

#include <QImage>
#include <QRgb>

#include "core/texture.h"
#include "desktop/theme/theme.h"

namespace pantile::desktop {

enum class Repeat {
    Once,
    ThreeByThree,  ///< As tiles, to see its seams.
};

struct Hatch {
    QRgb line = 0;
    QRgb ground = 0;
};

Hatch hatchOf(const Theme& theme);

/// The hatch at a pixel of a picture.
QRgb hatchAt(int x, int y, Hatch hatch);

/// Shape: at most `side` x `side` pixels, as large as whole multiples of a cell allow. Where a cell
/// would be less than a pixel, the cells are averaged by area in linear light instead.
/// Units: pixels of the screen, so that no scaling by the platform comes between.
QImage cellPicture(const core::Texture& texture, int side, Repeat repeat, Hatch hatch);

}  // namespace pantile::desktop
