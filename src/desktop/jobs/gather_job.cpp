#include "desktop/jobs/gather_job.h"

#include <QBuffer>
#include <QMimeData>
#include <QUrl>

#include "tasks/library_place.h"

namespace pantile::desktop {

using core::Result;

namespace {

// Names where there is no file; the first becomes a title, both stand as the source.
constexpr const char* kPictureName = "pasted picture";
constexpr const char* kTextName = "pasted text";

std::vector<tasks::GatherInput> localFiles(const QMimeData& data) {
    std::vector<tasks::GatherInput> inputs;
    for (const QUrl& url : data.urls()) {
        if (url.isLocalFile()) inputs.push_back({url.toLocalFile().toStdString(), std::nullopt});
    }
    return inputs;
}

Result<std::string> asPng(const QImage& picture) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    if (!picture.save(&buffer, "PNG")) {
        return core::Error{core::ErrorKind::Internal, "the pasted picture could not be taken over",
                           "save it as a file and add that"};
    }
    return bytes.toStdString();
}

}  // namespace

std::optional<GatherRequest> gatherRequest(const QMimeData& data) {
    GatherRequest request;
    request.inputs = localFiles(data);
    if (!request.inputs.empty()) return request;
    if (data.hasImage()) {
        request.picture = qvariant_cast<QImage>(data.imageData());
        if (!request.picture.isNull()) return request;
    }
    const QString text = data.hasText() ? data.text() : data.html();
    if (text.trimmed().isEmpty()) return std::nullopt;
    return gatherText(text);
}

bool canGather(const QMimeData& data) {
    return data.hasUrls() || data.hasImage() || data.hasText() || data.hasHtml();
}

GatherRequest gatherRequest(const QStringList& paths) {
    GatherRequest request;
    for (const QString& path : paths) request.inputs.push_back({path.toStdString(), std::nullopt});
    return request;
}

GatherRequest gatherText(const QString& text) {
    return {{{kTextName, text.toStdString()}}, {}};
}

Result<tasks::GatherReport> runGather(const std::filesystem::path& libraryPath,
                                      GatherRequest request, const core::Progress& progress) {
    if (!request.picture.isNull()) {
        PANTILE_ASSIGN_OR_RETURN(std::string png, asPng(request.picture));
        request.inputs.push_back({kPictureName, std::move(png)});
    }
    PANTILE_ASSIGN_OR_RETURN(catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Change));
    return tasks::gather(library, request.inputs, {}, progress);
}

}  // namespace pantile::desktop
