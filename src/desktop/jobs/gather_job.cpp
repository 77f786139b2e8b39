#include "desktop/jobs/gather_job.h"

#include <algorithm>

#include <QBuffer>
#include <QMimeData>
#include <QRegularExpression>
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

// A web page may hand over a picture within its text, as RFC 2397 says.
std::optional<tasks::GatherInput> embeddedPicture(const QString& text) {
    static const QRegularExpression kPattern(
        QStringLiteral("data:image/[a-z0-9.+-]+;base64,([A-Za-z0-9+/=%\\s]+)"),
        QRegularExpression::CaseInsensitiveOption);
    const QRegularExpressionMatch match = kPattern.match(text);
    if (!match.hasMatch()) return std::nullopt;
    const QByteArray letters = QByteArray::fromPercentEncoding(match.captured(1).toLatin1());
    const QByteArray bytes = QByteArray::fromBase64(letters);
    if (bytes.isEmpty()) return std::nullopt;
    return tasks::GatherInput{kPictureName, bytes.toStdString()};
}

bool hasLinksAlone(const QMimeData& data) {
    const QList<QUrl> links = data.urls();
    const auto leadsAway = [](const QUrl& url) {
        return url.scheme() == QLatin1String("http") || url.scheme() == QLatin1String("https");
    };
    return !links.isEmpty() && std::all_of(links.begin(), links.end(), leadsAway);
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
    for (const QString& each : {text, data.html()}) {
        auto embedded = embeddedPicture(each);
        if (!embedded) continue;
        request.inputs.push_back(*std::move(embedded));
        return request;
    }
    if (text.trimmed().isEmpty()) return std::nullopt;
    if (hasLinksAlone(data)) {
        request.isLink = true;
        return request;
    }
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
    GatherRequest request;
    request.inputs.push_back({kTextName, text.toStdString()});
    return request;
}

Result<tasks::GatherInput> pictureInput(const QImage& picture) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    if (!picture.save(&buffer, "PNG")) {
        return core::Error{core::ErrorKind::Internal, "the pasted picture could not be taken over",
                           "save it as a file and add that"};
    }
    return tasks::GatherInput{kPictureName, bytes.toStdString()};
}

Result<tasks::GatherReport> runGather(const std::filesystem::path& libraryPath,
                                      GatherRequest request, const core::Progress& progress) {
    if (!request.picture.isNull()) {
        PANTILE_ASSIGN_OR_RETURN(tasks::GatherInput input, pictureInput(request.picture));
        request.inputs.push_back(std::move(input));
    }
    if (request.isLink) {
        return core::Error{core::ErrorKind::Unsupported, "this is only the way to something",
                           "open it, copy the picture or the text itself, and paste that here"};
    }
    PANTILE_ASSIGN_OR_RETURN(catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Change));
    return tasks::gather(library, request.inputs, request.options, progress);
}

}  // namespace pantile::desktop
