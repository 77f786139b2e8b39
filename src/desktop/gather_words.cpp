#include "desktop/gather_words.h"

#include <algorithm>

#include <QCoreApplication>

#include "desktop/texts.h"

namespace pantile::desktop {

namespace {

// The first few titles: "kelp, foam, rope and 4 more".
template <typename Items>
QString someTitles(const Items& items) {
    constexpr std::size_t kMost = 3;
    QStringList titles;
    for (std::size_t i = 0; i < std::min(kMost, items.size()); ++i)
        titles.append(shownTitle(items[i].title));
    QString shown = titles.join(QStringLiteral(", "));
    if (items.size() <= kMost) return shown;
    return QCoreApplication::translate("gather", "%1 and %2 more")
        .arg(shown)
        .arg(items.size() - kMost);
}

QString refusedLine(const tasks::RefusedInput& refused) {
    const QString name = shownText(std::filesystem::path(refused.path).filename().string());
    return name + QStringLiteral(": ") + shownError(refused.error);
}

QString translated(const char* text) {
    return QCoreApplication::translate("gather", text);
}

void tellRepairs(QStringList& lines, const QString& title,
                 const std::vector<std::string>& repairs) {
    for (const std::string& repair : repairs)
        lines.append(translated("%1: put right: %2").arg(title).arg(shownText(repair)));
}

// What one would like to know about each: as many as can be read through.
constexpr int kMostLines = 200;

QStringList linesOf(const tasks::GatherReport& report) {
    QStringList lines;
    for (const tasks::RefusedInput& refused : report.refused) lines.append(refusedLine(refused));
    for (const tasks::GatheredTexture& added : report.added) {
        const QString title = shownTitle(added.title);
        tellRepairs(lines, title, added.repairs);
        if (added.recovered)
            lines.append(translated("%1: it was removed, and is back.").arg(title));
        if (!added.alike) continue;
        lines.append(translated("%1: you have this, %2: #%3 %4")
                         .arg(title)
                         .arg(shownText(added.alike->how))
                         .arg(added.alike->id.value)
                         .arg(shownTitle(added.alike->title)));
    }
    for (const tasks::KnownTexture& known : report.known) {
        const QString title = shownTitle(known.title);
        tellRepairs(lines, title, known.repairs);
        lines.append(translated("%1: you have this: #%2").arg(title).arg(known.id.value));
    }
    if (lines.size() > kMostLines) {
        const auto more = lines.size() - kMostLines;
        lines.resize(kMostLines);
        lines.append(translated("... and %1 more").arg(more));
    }
    return lines;
}

}  // namespace

Notice gatherNotice(const core::Result<tasks::GatherReport>& report) {
    if (!report) return {MarkKind::Caution, shownError(report.error()), {}};
    Notice notice;
    QStringList sentences;
    const auto say = [&](const QString& sentence) { sentences.append(sentence); };
    if (!report->added.empty()) {
        say(counted("gather",
                    "Added %1 texture: ", "Added %1 textures: ", std::ssize(report->added)) +
            someTitles(report->added) + QLatin1Char('.'));
    }
    if (!report->known.empty()) {
        say(counted("gather",
                    "%1 was here already: ", "%1 were here already: ", std::ssize(report->known)) +
            someTitles(report->known) + QLatin1Char('.'));
    }
    const auto isRepaired = [](const auto& texture) { return !texture.repairs.empty(); };
    const auto repaired = std::count_if(report->added.begin(), report->added.end(), isRepaired) +
                          std::count_if(report->known.begin(), report->known.end(), isRepaired);
    if (repaired > 0) {
        say(counted("gather", "Slips in %1 code were put right.",
                    "Slips in %1 codes were put right.", repaired));
    }
    if (report->passedOver > 0) {
        say(counted("gather", "%1 file in the folders holds nothing to add.",
                    "%1 files in the folders hold nothing to add.", report->passedOver));
    }
    if (!report->refused.empty()) {
        notice.kind = MarkKind::Caution;
        say(counted("gather", "%1 was refused:", "%1 were refused:", std::ssize(report->refused)));
    }
    if (report->stopped) {
        notice.kind = MarkKind::Caution;
        say(shownError(*report->stopped));
    }
    if (sentences.isEmpty()) say(translated("There was nothing in it to add."));
    notice.lines = linesOf(*report);
    notice.text = sentences.join(QLatin1Char(' '));
    return notice;
}

}  // namespace pantile::desktop
