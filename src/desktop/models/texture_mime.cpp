#include "desktop/models/texture_mime.h"

#include <QDropEvent>
#include <QMimeData>
#include <QString>

namespace pantile::desktop {

QString textureMimeType() {
    return QStringLiteral("application/x-pantile-texture-ids");
}

QString loadMimeType() {
    return QStringLiteral("application/x-pantile-load");
}

QMimeData* textureMimeData(const std::vector<core::TextureId>& ids) {
    QByteArray list;
    for (const core::TextureId id : ids) list += QByteArray::number(qlonglong{id.value}) + ' ';
    auto* const data = new QMimeData;
    data->setData(textureMimeType(), list);
    return data;
}

QMimeData* loadMimeData(const std::vector<core::TextureId>& ids, const std::string& load) {
    QMimeData* const data = textureMimeData(ids);
    data->setData(loadMimeType(), QByteArray::fromStdString(load));
    return data;
}

std::string loadIn(const QMimeData& data) {
    return data.data(loadMimeType()).toStdString();
}

void acceptTextures(QDropEvent& event) {
    if (event.mimeData()->hasFormat(textureMimeType())) {
        event.acceptProposedAction();
    } else {
        event.ignore();
    }
}

std::vector<core::TextureId> textureIdsIn(const QMimeData& data) {
    std::vector<core::TextureId> ids;
    for (const QByteArray& word : data.data(textureMimeType()).simplified().split(' ')) {
        if (word.isEmpty()) continue;
        bool isNumber = false;
        const qlonglong value = word.toLongLong(&isNumber);
        if (!isNumber || value <= 0) return {};
        ids.push_back(core::TextureId{value});
    }
    return ids;
}

}  // namespace pantile::desktop
