#include "cli/json.h"

#include <ostream>

#include <QJsonDocument>

namespace pantile::cli {
namespace {

void printDocument(std::ostream& out, const QJsonDocument& document) {
    const QByteArray bytes = document.toJson(QJsonDocument::Compact);
    out.write(bytes.constData(), bytes.size());
    out << '\n';
}

}  // namespace

QJsonObject jsonError(const core::Error& error) {
    return {{"error", QJsonObject{{"kind", jsonText(core::errorKindName(error.kind))},
                                  {"message", jsonText(error.message)},
                                  {"hint", jsonText(error.hint)}}}};
}

void printJson(std::ostream& out, const QJsonObject& object) {
    printDocument(out, QJsonDocument(object));
}

void printJsonList(std::ostream& out, const QJsonArray& array) {
    printDocument(out, QJsonDocument(array));
}

}  // namespace pantile::cli
