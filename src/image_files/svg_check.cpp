#include "image_files/svg_check.h"

#include <cctype>
#include <string>

#include <QList>
#include <QSet>
#include <QString>
#include <QXmlStreamReader>

#include "core/text.h"

namespace pantile::image_files {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

constexpr std::size_t kMaxSvgBytes = std::size_t{4} << 20U;
constexpr int kMaxElements = 20000;
constexpr int kMaxDepth = 100;
constexpr int kMaxUses = 1000;

std::string_view asText(std::span<const std::uint8_t> bytes) {
    return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
}

void skipBlanks(std::string_view& text) {
    while (!text.empty() && std::isspace(static_cast<unsigned char>(text.front())) != 0)
        text.remove_prefix(1);
}

// Takes what begins with `begin` and ends with `end` off the front.
bool skipPart(std::string_view& text, std::string_view begin, std::string_view end) {
    if (!text.starts_with(begin)) return false;
    const std::size_t at = text.find(end, begin.size());
    text.remove_prefix(at == std::string_view::npos ? text.size() : at + end.size());
    return true;
}

Error refused(std::string_view name, ErrorKind kind, const std::string& what,
              const std::string& hint) {
    return {kind, "'" + core::visibleText(name) + "' " + what, hint};
}

// Reads a drawing once from front to back.
class Checker {
public:
    Checker(std::span<const std::uint8_t> bytes, std::string_view name)
        : m_reader(QByteArray::fromRawData(reinterpret_cast<const char*>(bytes.data()),
                                           static_cast<qsizetype>(bytes.size()))),
          m_name(name) {}

    Result<void> run() {
        while (!m_reader.atEnd()) {
            switch (m_reader.readNext()) {
                case QXmlStreamReader::StartElement:
                    PANTILE_RETURN_IF_ERROR(enter());
                    break;
                case QXmlStreamReader::EndElement:
                    m_open.removeLast();
                    break;
                case QXmlStreamReader::Characters:
                    PANTILE_RETURN_IF_ERROR(checkReference(m_reader.text().toString()));
                    break;
                case QXmlStreamReader::DTD:
                    if (!m_reader.entityDeclarations().isEmpty()) return entities();
                    break;
                case QXmlStreamReader::EntityReference:
                    return entities();
                case QXmlStreamReader::ProcessingInstruction:  // may name a style sheet's file
                    return outside();
                default:
                    break;
            }
        }
        if (m_reader.hasError())
            return refused(m_name, ErrorKind::Corrupt, "is cut short or damaged",
                           "get the picture again from where it came");
        if (m_withUse.intersects(m_used)) return tooMuch("parts that repeat repeated parts");
        return {};
    }

private:
    Error entities() const {
        return refused(m_name, ErrorKind::Unsupported, "declares entities of its own",
                       "save it as plain SVG");
    }

    Error tooMuch(const std::string& what) const {
        return refused(m_name, ErrorKind::TooLarge, "has too much to draw: " + what,
                       "export it as a PNG picture");
    }

    Result<void> enter() {
        const QString element = m_reader.name().toString();
        const QXmlStreamAttributes attributes = m_reader.attributes();
        m_open.append(attributes.value(QStringLiteral("id")).toString());
        if (++m_elements > kMaxElements)
            return tooMuch("more than " + std::to_string(kMaxElements) + " elements");
        if (m_open.size() > kMaxDepth)
            return tooMuch("elements nested more than " + std::to_string(kMaxDepth) + " deep");
        PANTILE_RETURN_IF_ERROR(checkElement(element));
        m_targets.clear();
        for (const QXmlStreamAttribute& attribute : attributes)
            PANTILE_RETURN_IF_ERROR(checkAttribute(attribute));
        if (element == QStringLiteral("use")) return addUse();
        return {};
    }

    // Text needs fonts, which differ between machines.
    Result<void> checkElement(const QString& element) const {
        if (element == QStringLiteral("text") || element == QStringLiteral("tspan") ||
            element == QStringLiteral("textArea"))
            return refused(m_name, ErrorKind::Unsupported, "has text in it",
                           "turn the text into paths, or export a PNG picture");
        if (element == QStringLiteral("image"))
            return refused(m_name, ErrorKind::Unsupported, "has a picture in it",
                           "add that picture itself, or export a PNG picture");
        return {};
    }

    Result<void> checkAttribute(const QXmlStreamAttribute& attribute) {
        const QString value = attribute.value().toString();
        const QString name = attribute.name().toString();
        if (name == QStringLiteral("href")) {
            const QString target = value.trimmed();
            if (!target.startsWith(u'#')) return outside();
            m_targets.append(target.mid(1));
        }
        if (name == QStringLiteral("stroke-dasharray") && value.trimmed() != QStringLiteral("none"))
            return dashed();
        return checkReference(value);
    }

    // In attributes and in style sheets.
    Result<void> checkReference(const QString& text) const {
        if (text.contains(QStringLiteral("@import"), Qt::CaseInsensitive)) return outside();
        if (text.contains(QStringLiteral("stroke-dasharray"), Qt::CaseInsensitive)) {
            QString plain = text;
            plain.remove(u' ');
            if (plain.count(QStringLiteral("stroke-dasharray"), Qt::CaseInsensitive) !=
                plain.count(QStringLiteral("stroke-dasharray:none"), Qt::CaseInsensitive))
                return dashed();
        }
        const QString url = QStringLiteral("url(");
        for (qsizetype at = text.indexOf(url, 0, Qt::CaseInsensitive); at >= 0;
             at = text.indexOf(url, at + 1, Qt::CaseInsensitive)) {
            QString target = text.mid(at + url.size()).trimmed();
            if (target.startsWith(u'"') || target.startsWith(u'\'')) target.remove(0, 1);
            if (!target.startsWith(u'#')) return outside();
        }
        return {};
    }

    Error outside() const {
        return refused(m_name, ErrorKind::Unsupported, "refers to something outside itself",
                       "save it as plain SVG with everything in it");
    }

    // A dash may be a millionth of a line long.
    Error dashed() const {
        return refused(m_name, ErrorKind::Unsupported, "has dashed lines",
                       "turn them into paths, or export a PNG picture");
    }

    // Ten parts, each of ten of the one before, are ten thousand million elements: so a repeated
    // part may not itself repeat anything.
    Result<void> addUse() {
        if (++m_uses > kMaxUses)
            return tooMuch("more than " + std::to_string(kMaxUses) + " repeated parts");
        for (const QString& target : m_targets) m_used.insert(target);
        for (const QString& id : m_open) {
            if (!id.isEmpty()) m_withUse.insert(id);
        }
        return {};
    }

    QXmlStreamReader m_reader;
    std::string_view m_name;
    QList<QString> m_open;     // ids of the elements that are open
    QList<QString> m_targets;  // to which the element at hand refers
    QSet<QString> m_used;
    QSet<QString> m_withUse;
    int m_elements = 0;
    int m_uses = 0;
};

}  // namespace

bool isSvg(std::span<const std::uint8_t> bytes) {
    std::string_view text = asText(bytes);
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    skipBlanks(text);
    while (skipPart(text, "<?", "?>") || skipPart(text, "<!--", "-->")) skipBlanks(text);
    if (text.starts_with("<!DOCTYPE svg")) return true;
    constexpr std::string_view kRoot = "<svg";
    if (!text.starts_with(kRoot) || text.size() == kRoot.size()) return false;
    const char next = text[kRoot.size()];
    return next == '>' || next == '/' || std::isspace(static_cast<unsigned char>(next)) != 0;
}

Result<void> checkSvg(std::span<const std::uint8_t> bytes, std::string_view name) {
    if (bytes.size() > kMaxSvgBytes)
        return refused(
            name, ErrorKind::TooLarge,
            "has more than " + std::to_string(kMaxSvgBytes >> 20U) + " MiB, the limit for SVG",
            "export it as a PNG picture");
    return Checker(bytes, name).run();
}

}  // namespace pantile::image_files
