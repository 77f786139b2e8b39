#include "cli/json.h"

#include <ostream>

#include <QJsonDocument>

namespace pantile::cli {
namespace {

// Acts on a terminal or on the order of letters, or is not seen. Below U+0020 Qt sees to it.
bool isUnseen(QChar c) {
    const QChar::Category category = c.category();
    return category == QChar::Other_Control || category == QChar::Other_Format ||
           category == QChar::Separator_Line || category == QChar::Separator_Paragraph;
}

// Outside of its texts JSON has no such characters, and in them an escape says the same (RFC 8259,
// section 7).
QString withUnseenEscaped(const QString& json) {
    QString text;
    text.reserve(json.size());
    for (const QChar c : json) {
        if (isUnseen(c)) {
            text += QStringLiteral("\\u%1").arg(c.unicode(), 4, 16, QLatin1Char('0'));
        } else {
            text += c;
        }
    }
    return text;
}

void printDocument(std::ostream& out, const QJsonDocument& document) {
    const QByteArray bytes =
        withUnseenEscaped(QString::fromUtf8(document.toJson(QJsonDocument::Compact))).toUtf8();
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
