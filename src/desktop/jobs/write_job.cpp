#include "desktop/jobs/write_job.h"

#include <algorithm>

#include <QCoreApplication>

#include "desktop/texts.h"
#include "tasks/library_place.h"
#include "tasks/load_history.h"
#include "tasks/print_slots.h"

namespace pantile::desktop {

using core::Result;

namespace {

QString translatedWriting(const char* text) {
    return QCoreApplication::translate("WriteJob", text);
}

QString shownPath(const std::filesystem::path& path) {
    return shownText(path.string());
}

QString slotWords(const tasks::LoadedTexture& texture, std::size_t number) {
    const QString words = translatedWriting("%1 %2").arg(number).arg(shownTitle(texture.title));
    return texture.changedSince ? translatedWriting("%1 (changed since)").arg(words) : words;
}

QString writtenWords(const tasks::WrittenOnce& written) {
    QStringList textures;
    for (const tasks::LoadedTexture& each : written.slots)
        textures.append(slotWords(each, static_cast<std::size_t>(textures.size()) + 1));
    return translatedWriting("%1: %2 for %3, in %4. Slots: %5.")
        .arg(shownTime(written.writing.at), shownText(written.load),
             shownText(written.writing.board), shownText(written.writing.place),
             textures.join(QStringLiteral(", ")));
}

}  // namespace

Result<WriteAnswer> writeLoad(const WriteRequest& request, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Library library,
                             tasks::openLibrary(request.libraryPath, tasks::Purpose::Change));
    PANTILE_ASSIGN_OR_RETURN(
        const tasks::WrittenLoad written,
        tasks::writeStoredLoad(library, request.load, request.folder, request.options, progress));
    WriteAnswer answer;
    answer.words = translatedWriting(
                       "Wrote the load %1 for %2; read back and replayed, every slot draws its "
                       "texture cell by cell.")
                       .arg(shownText(written.name), shownText(written.choice.board.name));
    for (const auto& file : written.files) answer.lines.append(shownPath(file));
    return answer;
}

Result<WriteAnswer> verifyLoad(const std::filesystem::path& path, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const board::VerifiedLoad load, tasks::verifyLoadFile(path, progress));
    WriteAnswer answer;
    answer.isRight = load.verified();
    answer.words = (answer.isRight ? translatedWriting("The load %1 is right in every slot.")
                                   : translatedWriting("The load %1 is damaged. Write it again."))
                       .arg(shownText(load.name));
    for (const board::VerifiedSlot& slot : load.slots) {
        const QString state =
            slot.verified() ? translatedWriting("right, %1").arg(shownDuration(slot.milliseconds))
                            : shownText(slot.fault);
        answer.lines.append(translatedWriting("Slot %1, %2: %3")
                                .arg(answer.lines.size() + 1)
                                .arg(shownTitle(slot.title), state));
    }
    return answer;
}

Result<WriteAnswer> printSheet(const WriteRequest& request, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             tasks::openLibrary(request.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto file,
                             tasks::printSlots(library, request.load, request.folder,
                                               request.options.ifExists, progress));
    return WriteAnswer{true,
                       translatedWriting("Wrote the slot sheet of the load %1 to print.")
                           .arg(shownText(request.load)),
                       {shownPath(file)}};
}

Result<QStringList> readWritten(const std::filesystem::path& libraryPath) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto history, tasks::loadHistory(library, {}));
    QStringList lines;
    for (std::size_t i = 0; i < std::min(history.size(), kMostWritten); ++i)
        lines.append(writtenWords(history[i]));
    return lines;
}

}  // namespace pantile::desktop
