#pragma once

// Textures of the library while they are dragged inside the window: their ids.

#include <vector>

#include "core/ids.h"

class QMimeData;
class QString;

namespace pantile::desktop {

QString textureMimeType();

/// Ownership: the caller's, as drags and models want it.
QMimeData* textureMimeData(const std::vector<core::TextureId>& ids);

/// None if there are none, or what is there is no list of ids.
std::vector<core::TextureId> textureIdsIn(const QMimeData& data);

}  // namespace pantile::desktop
