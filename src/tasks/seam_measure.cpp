#include "tasks/seam_measure.h"

#include <algorithm>
#include <cmath>

#include "catalogue/reader.h"
#include "catalogue/writer.h"
#include "picture/seam_check.h"

namespace pantile::tasks {

using core::Result;

Result<void> noteSeam(catalogue::Library& library, core::TextureId id,
                      const core::Texture& texture) {
    constexpr double kHundredths = 100;
    PANTILE_ASSIGN_OR_RETURN(const picture::SeamCheck check,
                             picture::checkSeams(texture.grid(), texture.palette()));
    const double worse = std::max(check.vertical.ratio(), check.horizontal.ratio());
    return catalogue::setSeam(library, id, std::llround(worse * kHundredths));
}

Result<void> measureMissingSeams(catalogue::Library& library) {
    PANTILE_ASSIGN_OR_RETURN(const auto ids, catalogue::texturesWithoutSeam(library));
    if (ids.empty()) return {};
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, library.begin());
    for (const core::TextureId id : ids) {
        const auto record = catalogue::readTexture(library, id);
        if (!record && record.error().kind == core::ErrorKind::Corrupt) continue;
        PANTILE_RETURN_IF_ERROR(record);
        PANTILE_RETURN_IF_ERROR(noteSeam(library, id, record->texture));
    }
    return transaction.commit();
}

}  // namespace pantile::tasks
