#include "tasks/read_codes.h"

#include "core/text.h"
#include "image_files/write_png.h"

namespace pantile::tasks {

using core::Result;

namespace fs = std::filesystem;

Result<std::vector<fs::path>> writePictures(const std::vector<codec::FoundCode>& codes,
                                            const fs::path& folder, IfExists ifExists) {
    PANTILE_RETURN_IF_ERROR(makeFolder(folder));
    std::vector<fs::path> files;
    files.reserve(codes.size());
    for (const codec::FoundCode& code : codes) {
        files.push_back(folder / ("line-" + std::to_string(code.textLine) + "-" +
                                  core::safeFileName(code.texture.text().title) + ".png"));
    }
    PANTILE_RETURN_IF_ERROR(checkFree(files, ifExists));
    for (std::size_t i = 0; i < codes.size(); ++i) {
        const core::Texture& texture = codes[i].texture;
        PANTILE_ASSIGN_OR_RETURN(const std::vector<std::uint8_t> bytes,
                                 image_files::encodePng(texture.grid(), texture.palette()));
        PANTILE_RETURN_IF_ERROR(writeFile(files[i], bytes, ifExists));
    }
    return files;
}

}  // namespace pantile::tasks
