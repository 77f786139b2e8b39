#include "tasks/seam_report.h"

#include "catalogue/reader.h"
#include "image_files/write_png.h"

namespace pantile::tasks {

using core::Result;

namespace {

Result<void> writeSeamPicture(const core::Texture& texture, const SeamPictureFile& file) {
    PANTILE_ASSIGN_OR_RETURN(const core::Pixels pixels,
                             picture::seamPicture(texture.grid(), texture.palette(), file.enlarge));
    PANTILE_ASSIGN_OR_RETURN(const auto bytes, image_files::encodePng(pixels));
    return writeFile(file.path, bytes, file.ifExists);
}

}  // namespace

Result<picture::SeamCheck> reportSeams(const catalogue::Library& library, core::TextureId id,
                                       const std::optional<SeamPictureFile>& file) {
    PANTILE_ASSIGN_OR_RETURN(const auto record, catalogue::readTexture(library, id));
    const core::Texture& texture = record.texture;
    PANTILE_ASSIGN_OR_RETURN(picture::SeamCheck check,
                             picture::checkSeams(texture.grid(), texture.palette()));
    if (file) PANTILE_RETURN_IF_ERROR(writeSeamPicture(texture, *file));
    return check;
}

}  // namespace pantile::tasks
