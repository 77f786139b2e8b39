#include "desktop/views/tile_pictures.h"

#include <cmath>

#include "catalogue/reader.h"

namespace pantile::desktop {

QImage TilePictures::picture(const catalogue::TextureRow& row, int side, double pixelRatio) {
    const int pixels = static_cast<int>(std::floor(side * pixelRatio));
    QImage image = m_pictures.get({row.id.value, row.revision, pixels}, [&] {
        const auto record = catalogue::readTexture(m_library, row.id);
        return record ? cellPicture(record->texture, pixels, Repeat::Once, m_hatch) : QImage();
    });
    image.setDevicePixelRatio(pixelRatio);
    return image;
}

}  // namespace pantile::desktop
