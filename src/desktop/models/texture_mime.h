#pragma once

// Textures of the library while they are dragged inside the window: their ids, and the load that
// they are dragged out of.

#include <string>
#include <vector>

#include "core/ids.h"

class QDropEvent;
class QMimeData;
class QString;

namespace pantile::desktop {

QString textureMimeType();
QString loadMimeType();

/// Ownership: the caller's, as drags and models want it.
QMimeData* textureMimeData(const std::vector<core::TextureId>& ids);

/// The same, out of the load of that name.
QMimeData* loadMimeData(const std::vector<core::TextureId>& ids, const std::string& load);

/// Empty if they come from the library.
std::string loadIn(const QMimeData& data);

/// Accepts what brings textures of the library; anything else is the window's, which adds it.
void acceptTextures(QDropEvent& event);

/// None if there are none, or what is there is no list of ids.
std::vector<core::TextureId> textureIdsIn(const QMimeData& data);

}  // namespace pantile::desktop
