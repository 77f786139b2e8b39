#include "tasks/export_textures.h"

#include <QJsonDocument>

#include "catalogue/reader.h"
#include "codec/text_code.h"
#include "core/text.h"
#include "image_files/write_png.h"
#include "picture/contact_sheet.h"
#include "picture/enlarge.h"
#include "tasks/bytes.h"
#include "tasks/grid_csv.h"
#include "tasks/texture_json.h"

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace fs = std::filesystem;

namespace {

std::string_view endingOf(ExportForm form) {
    switch (form) {
        case ExportForm::Png:
        case ExportForm::Sheet:
            return ".png";
        case ExportForm::Csv:
            return ".csv";
        case ExportForm::Json:
            return ".json";
        case ExportForm::Text:
            return ".txt";
    }
    return "";
}

Result<Bytes> pngOf(const core::Texture& texture, int enlarge) {
    if (enlarge <= 1) return image_files::encodePng(texture.grid(), texture.palette());
    PANTILE_ASSIGN_OR_RETURN(const core::Pixels pixels,
                             picture::enlarged(texture.grid(), texture.palette(), enlarge));
    return image_files::encodePng(pixels);
}

Result<Bytes> contentsOf(const catalogue::TextureRecord& record, const ExportOptions& options) {
    switch (options.form) {
        case ExportForm::Png:
        case ExportForm::Sheet:
            return pngOf(record.texture, options.enlarge);
        case ExportForm::Csv:
            return bytesOf(writeGridCsv(record.texture));
        case ExportForm::Json:
            return bytesOf(QJsonDocument(textureJson(record)).toJson().toStdString());
        case ExportForm::Text: {
            PANTILE_ASSIGN_OR_RETURN(const codec::TextCode code,
                                     codec::encodeTextCode(record.texture));
            return bytesOf(code.text + "\n");
        }
    }
    return Error{ErrorKind::Internal, "no such form of export", ""};
}

fs::path fileNameOf(const catalogue::TextureRow& row, ExportForm form) {
    return std::to_string(row.id.value) + "-" + core::safeFileName(row.title) +
           std::string(endingOf(form));
}

Result<std::vector<fs::path>> exportSheet(const catalogue::Library& library,
                                          const std::vector<core::TextureId>& ids,
                                          const fs::path& folder, const ExportOptions& options) {
    const std::vector<fs::path> files = {folder / "contact-sheet.png"};
    PANTILE_RETURN_IF_ERROR(checkFree(files, options.ifExists));
    std::vector<picture::SheetItem> items;
    for (const core::TextureId id : ids) {
        PANTILE_ASSIGN_OR_RETURN(const catalogue::TextureRecord record,
                                 catalogue::readTexture(library, id));
        items.push_back({record.texture.grid(), record.texture.palette(), id.value});
    }
    PANTILE_ASSIGN_OR_RETURN(const core::Pixels pixels, picture::contactSheet(items));
    PANTILE_ASSIGN_OR_RETURN(const Bytes bytes, image_files::encodePng(pixels));
    PANTILE_RETURN_IF_ERROR(writeFile(files.front(), bytes, options.ifExists));
    return files;
}

}  // namespace

Result<std::vector<fs::path>> exportTextures(const catalogue::Library& library,
                                             const std::vector<core::TextureId>& ids,
                                             const fs::path& folder, const ExportOptions& options,
                                             const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(makeFolder(folder));
    if (options.form == ExportForm::Sheet) return exportSheet(library, ids, folder, options);

    std::vector<fs::path> files;
    PANTILE_ASSIGN_OR_RETURN(const std::vector<catalogue::TextureRow> rows,
                             catalogue::readRows(library, ids));
    files.reserve(rows.size());
    for (const catalogue::TextureRow& row : rows)
        files.push_back(folder / fileNameOf(row, options.form));
    PANTILE_RETURN_IF_ERROR(checkFree(files, options.ifExists));

    for (std::size_t i = 0; i < ids.size(); ++i) {
        if (progress.stopRequested()) return core::stoppedError();
        progress.tell(static_cast<std::int64_t>(i), std::ssize(ids), files[i].filename().string());
        PANTILE_ASSIGN_OR_RETURN(const catalogue::TextureRecord record,
                                 catalogue::readTexture(library, ids[i]));
        PANTILE_ASSIGN_OR_RETURN(const Bytes bytes, contentsOf(record, options));
        PANTILE_RETURN_IF_ERROR(writeFile(files[i], bytes, options.ifExists));
    }
    progress.tell(std::ssize(ids), std::ssize(ids), "");
    return files;
}

}  // namespace pantile::tasks
