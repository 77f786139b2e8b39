#include "desktop/texts.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>
#include <QTextDocument>

#include "core/duration.h"
#include "core/text.h"

namespace pantile::desktop {

namespace {

QString translatedText(const char* text) {
    return QCoreApplication::translate("texts", text);
}

// Sentences of errors begin small, as they may follow a place.
QString asSentence(const QString& text) {
    if (text.isEmpty()) return text;
    const QString begun = text.left(1).toUpper() + text.mid(1);
    return begun.endsWith(QLatin1Char('.')) ? begun : begun + QLatin1Char('.');
}

}  // namespace

QString fromUtf8(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString shownText(std::string_view text) {
    return fromUtf8(core::visibleText(text));
}

QString shownLines(std::string_view text) {
    return fromUtf8(core::visibleText(text, core::LineBreaks::Allowed));
}

QString shownTitle(std::string_view title) {
    return title.empty() ? translatedText("(no title)") : shownText(title);
}

QString shownToolTip(const QString& words) {
    if (!Qt::mightBeRichText(words)) return words;
    return QStringLiteral("<span>%1</span>")
        .arg(words.toHtmlEscaped().replace(QLatin1Char('\n'), QStringLiteral("<br>")));
}

QString shownDuration(std::int64_t milliseconds) {
    const core::RoundedDuration time = core::roundedDuration(milliseconds);
    if (time.minutes > 0) return translatedText("%1 min %2 s").arg(time.minutes).arg(time.seconds);
    return translatedText("%1 s").arg(
        QLocale().toString(time.seconds + time.tenths / 10.0, 'f', 1));
}

QString shownBytes(std::int64_t bytes) {
    constexpr std::int64_t kKibi = 1024;
    if (bytes < 10 * kKibi)
        return translatedText("%1 bytes").arg(QLocale().toString(qlonglong{bytes}));
    const double kibi = static_cast<double>(bytes) / static_cast<double>(kKibi);
    return translatedText("%1 KiB").arg(QLocale().toString(kibi, 'f', 1));
}

QString shownCost(const std::optional<catalogue::Estimate>& estimate) {
    if (!estimate) return translatedText("cost not known");
    return shownDuration(estimate->drawMs) + QStringLiteral(" · ") +
           shownBytes(estimate->loadBytes);
}

QString shownStars(int stars) {
    constexpr char16_t kFull = u'\u2605';
    constexpr char16_t kEmpty = u'\u2606';
    if (stars <= 0) return QCoreApplication::translate("texts", "none");
    return QString(stars, QChar(kFull)) + QString(catalogue::kMostStars - stars, QChar(kEmpty));
}

QString shownTime(std::int64_t unixSeconds) {
    return QLocale().toString(QDateTime::fromSecsSinceEpoch(unixSeconds), QLocale::ShortFormat);
}

QString shownSize(core::Size size) {
    return QStringLiteral("%1 × %2").arg(size.width).arg(size.height);
}

QString counted(const char* context, const char* one, const char* many, std::int64_t number) {
    return QCoreApplication::translate(context, number == 1 ? one : many)
        .arg(QLocale().toString(qlonglong{number}));
}

QString shownError(const core::Error& error) {
    QString message = asSentence(shownLines(error.message));
    if (error.hint.empty()) return message;
    return message + QLatin1Char(' ') + asSentence(shownLines(error.hint));
}

}  // namespace pantile::desktop
