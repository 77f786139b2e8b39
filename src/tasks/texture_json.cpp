#include "tasks/texture_json.h"

#include <QDateTime>

#include "tasks/json.h"

namespace pantile::tasks {

std::string utcTime(std::int64_t unixSeconds) {
    return QDateTime::fromSecsSinceEpoch(unixSeconds, Qt::UTC).toString(Qt::ISODate).toStdString();
}

QJsonObject textureJson(const catalogue::TextureRow& row) {
    QJsonObject object{
        {"id", jsonNumber(row.id.value)},
        {"title", jsonText(row.title)},
        {"width", row.size.width},
        {"height", row.size.height},
        {"colours", row.colours},
        {"stars", row.stars},
        {"tags", jsonTexts(row.tags)},
        {"shelves", jsonTexts(row.shelves)},
        {"author", jsonText(row.author)},
        {"licence", jsonText(row.licence)},
        {"source", jsonText(row.source)},
        {"note", jsonText(row.note)},
        {"added", jsonText(utcTime(row.addedAt))},
        {"changed", jsonText(utcTime(row.changedAt))},
        {"revision", row.revision},
        {"removed", row.removed},
        {"draw_seconds", QJsonValue()},
        {"load_bytes", QJsonValue()},
    };
    if (row.estimate) {
        object["draw_seconds"] = jsonSeconds(row.estimate->drawMs);
        object["load_bytes"] = jsonNumber(row.estimate->loadBytes);
    }
    return object;
}

void addPaletteJson(QJsonObject& object, const core::Palette& palette) {
    object["palette"] = jsonArray(palette.colours(),
                                  [](core::Rgb8 colour) { return jsonText(core::toHex(colour)); });
    const auto transparent = palette.transparent();
    object["transparent"] = transparent ? QJsonValue(*transparent) : QJsonValue();
}

QJsonArray cellsJson(const core::Grid& grid) {
    QJsonArray rows;
    for (int y = 0; y < grid.height(); ++y) {
        QJsonArray row;
        for (int x = 0; x < grid.width(); ++x) row.append(grid.at(x, y));
        rows.append(row);
    }
    return rows;
}

QJsonObject textureJson(const catalogue::TextureRecord& record) {
    QJsonObject object = textureJson(record.row);
    addPaletteJson(object, record.texture.palette());
    object["cells"] = cellsJson(record.texture.grid());
    return object;
}

}  // namespace pantile::tasks
