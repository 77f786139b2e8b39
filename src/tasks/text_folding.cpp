#include "tasks/text_folding.h"

#include <algorithm>

#include <QChar>
#include <QList>
#include <QString>

namespace pantile::tasks {
namespace {

bool isAscii(std::string_view text) {
    return std::all_of(text.begin(), text.end(),
                       [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

std::string foldedAscii(std::string_view text) {
    std::string folded(text);
    for (char& c : folded) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return folded;
}

bool isDropped(char32_t letter) {
    constexpr char32_t kVoiced = 0x3099;
    constexpr char32_t kHalfVoiced = 0x309A;
    if (letter == kVoiced || letter == kHalfVoiced) return false;
    const auto category = QChar::category(letter);
    return category == QChar::Mark_NonSpacing || category == QChar::Mark_Enclosing;
}

QString decomposed(const QString& text) {
    return text.normalized(QString::NormalizationForm_KD);
}

std::string foldedUnicode(std::string_view text) {
    const QString all = QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
    // Qt folds letter by letter; only its capitals make two letters of one where Unicode does.
    const QString alike = decomposed(all).toCaseFolded().toUpper().toCaseFolded();
    const QString whole = decomposed(alike);  // Folding may bring new letters to decompose.
    QString kept;
    for (const uint letter : whole.toUcs4()) {
        if (!isDropped(letter)) kept += QStringView(QChar::fromUcs4(letter));
    }
    return kept.normalized(QString::NormalizationForm_C).toStdString();
}

std::string folded(std::string_view text) {
    return isAscii(text) ? foldedAscii(text) : foldedUnicode(text);
}

}  // namespace

catalogue::TextFolding unicodeFolding() {
    // The first number is that of the rules above.
    return {"1, unicode " + std::to_string(static_cast<int>(QChar::currentUnicodeVersion())),
            folded};
}

}  // namespace pantile::tasks
