#pragma once

// TilePictures: the small pictures of textures, made when first shown, of which so many are kept.

#include <cstdint>
#include <tuple>

#include <QImage>

#include "catalogue/library.h"
#include "catalogue/texture_row.h"
#include "desktop/models/bounded_cache.h"
#include "desktop/views/cell_picture.h"

namespace pantile::desktop {

class TilePictures {
public:
    /// `library` must outlive it.
    TilePictures(const catalogue::Library& library, Hatch hatch)
        : m_library(library), m_hatch(hatch) {}

    /// At most `side` device-independent pixels a side; null if the texture cannot be read.
    QImage picture(const catalogue::TextureRow& row, int side, double pixelRatio);

private:
    // Id, revision, side: a texture's picture changes only with its revision.
    using Key = std::tuple<std::int64_t, int, int>;

    const catalogue::Library& m_library;
    Hatch m_hatch;
    BoundedCache<Key, QImage> m_pictures{600};
};

}  // namespace pantile::desktop
