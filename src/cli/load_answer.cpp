#include "cli/load_answer.h"

#include <ostream>

#include "cli/json.h"
#include "cli/table.h"
#include "core/text.h"
#include "tasks/texture_json.h"

namespace pantile::cli {

using core::Result;

namespace {

QJsonArray texturesJson(const std::vector<tasks::LoadedTexture>& textures) {
    int number = 0;
    return jsonArray(textures, [&](const tasks::LoadedTexture& texture) {
        return QJsonObject{{"slot", ++number},
                           {"id", jsonNumber(texture.id.value)},
                           {"title", jsonText(texture.title)},
                           {"changed_since", texture.changedSince},
                           {"removed", texture.removed}};
    });
}

void printTextures(std::ostream& out, const std::vector<tasks::LoadedTexture>& textures) {
    Table table({{"slot", Align::Right}, {"id", Align::Right}, {"title"}, {"since then"}});
    int number = 0;
    for (const tasks::LoadedTexture& texture : textures) {
        table.addRow({std::to_string(++number), std::to_string(texture.id.value), texture.title,
                      texture.removed        ? "removed"
                      : texture.changedSince ? "changed"
                                             : ""});
    }
    table.print(out);
}

}  // namespace

Result<QJsonObject> storedJson(const catalogue::Library& library,
                               const catalogue::StoredLoad& load) {
    PANTILE_ASSIGN_OR_RETURN(const auto textures, tasks::texturesOf(library, load));
    return QJsonObject{
        {"load", jsonText(load.name)},
        {"board", jsonText(load.board)},
        {"canvas", load.canvas.empty() ? QJsonValue() : jsonText(load.canvas)},
        {"made", jsonText(tasks::utcTime(load.madeAt))},
        {"slots", jsonArray(load.slots, [](core::TextureId id) { return jsonNumber(id.value); })},
        {"textures", texturesJson(textures)},
        {"written", jsonArray(load.writings, [](const catalogue::LoadWriting& writing) {
             return QJsonObject{{"at", jsonText(tasks::utcTime(writing.at))},
                                {"into", jsonText(writing.place)},
                                {"board", jsonText(writing.board)}};
         })}};
}

Result<void> printStored(std::ostream& out, const catalogue::Library& library,
                         const catalogue::StoredLoad& load) {
    PANTILE_ASSIGN_OR_RETURN(const auto textures, tasks::texturesOf(library, load));
    out << core::visibleText(load.name) << ", for " << core::visibleText(load.board);
    if (!load.canvas.empty()) out << " and the canvas " << core::visibleText(load.canvas);
    out << ":\n";
    printTextures(out, textures);
    for (const catalogue::LoadWriting& writing : load.writings) {
        out << "Written " << tasks::utcTime(writing.at) << " for "
            << core::visibleText(writing.board) << " into " << core::visibleText(writing.place)
            << '\n';
    }
    return {};
}

QJsonObject writtenJson(const tasks::WrittenOnce& written) {
    return {{"load", jsonText(written.load)},
            {"at", jsonText(tasks::utcTime(written.writing.at))},
            {"board", jsonText(written.writing.board)},
            {"into", jsonText(written.writing.place)},
            {"textures", texturesJson(written.slots)}};
}

void printWritten(std::ostream& out, const tasks::WrittenOnce& written) {
    out << tasks::utcTime(written.writing.at) << ", " << core::visibleText(written.load) << " for "
        << core::visibleText(written.writing.board) << " into "
        << core::visibleText(written.writing.place) << ":\n";
    printTextures(out, written.slots);
}

}  // namespace pantile::cli
