#include "tasks/enlarged_art.h"

#include <utility>

#include "picture/pixel_scale.h"

namespace pantile::tasks {

std::optional<double> undoEnlargement(core::Picture& picture, core::Size limit) {
    const core::Size size = picture.pixels.size;
    if (picture.indexed && size.width <= limit.width && size.height <= limit.height)
        return std::nullopt;
    std::optional<picture::EnlargedArt> art = picture::findEnlargedArt(picture);
    if (!art) return std::nullopt;
    picture = std::move(art->small);
    return art->factor();
}

}  // namespace pantile::tasks
