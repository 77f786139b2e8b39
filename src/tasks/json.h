#pragma once

// Small helpers between the project's values and Qt's JSON. Field names are the contract of
// docs/command-line.md.

#include <cmath>
#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include <QJsonArray>
#include <QJsonObject>
#include <QJsonValue>
#include <QString>

namespace pantile::tasks {

inline QJsonValue jsonText(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

inline QJsonValue jsonNumber(std::int64_t number) {
    return static_cast<qint64>(number);
}

/// Milliseconds as seconds.
inline QJsonValue jsonSeconds(std::int64_t milliseconds) {
    return static_cast<double>(milliseconds) / 1000;
}

/// To the nearest hundredth.
inline QJsonValue jsonHundredths(double number) {
    return std::round(number * 100) / 100;
}

template <typename Items, typename Convert>
QJsonArray jsonArray(const Items& items, Convert convert) {
    QJsonArray array;
    for (const auto& item : items) array.append(convert(item));
    return array;
}

inline QJsonArray jsonTexts(const std::vector<std::string>& texts) {
    return jsonArray(texts, [](const std::string& text) { return jsonText(text); });
}

inline QJsonArray jsonPaths(const std::vector<std::filesystem::path>& paths) {
    return jsonArray(paths,
                     [](const std::filesystem::path& path) { return jsonText(path.string()); });
}

}  // namespace pantile::tasks
