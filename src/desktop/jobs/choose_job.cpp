#include "desktop/jobs/choose_job.h"

#include <algorithm>

#include <QCoreApplication>

#include "catalogue/reader.h"
#include "catalogue/shelves.h"
#include "desktop/texts.h"
#include "tasks/choose_for_board.h"
#include "tasks/library_place.h"
#include "tasks/split_over_loads.h"

namespace pantile::desktop {

using core::Error;
using core::ErrorKind;
using core::Result;
using core::TextureId;

namespace {

QString translatedChoice(const char* text) {
    return QCoreApplication::translate("ChooseJob", text);
}

std::vector<TextureId> idsOf(const tasks::Choice& choice) {
    std::vector<TextureId> ids;
    for (const tasks::ChosenSlot& slot : choice.slots) ids.push_back(slot.id);
    return ids;
}

QString choiceWords(const tasks::Choice& choice) {
    const QString taken = counted("ChooseJob", "%1 texture chosen, worth %2",
                                  "%1 textures chosen, worth %2", std::ssize(choice.slots))
                              .arg(choice.worth);
    if (choice.provenBest) return translatedChoice("%1; no choice is better.").arg(taken);
    return translatedChoice("%1, the best found; none is worth more than %2.")
        .arg(taken)
        .arg(choice.worthBound);
}

QString splitWords(const tasks::Split& split) {
    const QString loads = counted("ChooseJob", "%1 load", "%1 loads", std::ssize(split.loads));
    if (split.provenFewest()) return translatedChoice("%1; fewer cannot be.").arg(loads);
    return translatedChoice("%1, the fewest found; fewer than %2 cannot be.")
        .arg(loads)
        .arg(split.fewest);
}

Result<std::vector<LeftOutWords>> leftOutWords(const catalogue::Library& library,
                                               const std::vector<tasks::NotChosen>& leftOut) {
    std::vector<TextureId> ids;
    for (const tasks::NotChosen& each : leftOut) ids.push_back(each.id);
    PANTILE_ASSIGN_OR_RETURN(const auto rows, catalogue::readRows(library, ids));
    std::vector<LeftOutWords> all;
    for (std::size_t i = 0; i < leftOut.size(); ++i)
        all.push_back({leftOut[i].id, shownTitle(rows[i].title), shownText(leftOut[i].reason),
                       shownText(leftOut[i].change)});
    return all;
}

/// Those that must be in first, each once.
Result<std::vector<TextureId>> idsToChooseFrom(const catalogue::Library& library,
                                               const ChooseRequest& request) {
    std::vector<TextureId> from = request.ids;
    if (!request.shelf.empty()) {
        PANTILE_ASSIGN_OR_RETURN(from, catalogue::texturesOnShelf(library, request.shelf));
    }
    std::vector<TextureId> ids = request.keep;
    std::vector<TextureId> kept = ids;
    std::sort(kept.begin(), kept.end());
    for (const TextureId id : from) {
        if (!std::binary_search(kept.begin(), kept.end(), id)) ids.push_back(id);
    }
    if (ids.empty()) {
        return Error{ErrorKind::InvalidInput, "there is nothing to choose from",
                     "choose textures in the library, or a shelf that holds some"};
    }
    if (ids.size() > kMostToChooseFrom) {
        return Error{ErrorKind::TooLarge,
                     std::to_string(ids.size()) + " textures are too many to plan at once",
                     "choose at most " + std::to_string(kMostToChooseFrom)};
    }
    return ids;
}

}  // namespace

Result<ChooseAnswer> chooseFor(const ChooseRequest& request, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             tasks::openLibrary(request.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto ids, idsToChooseFrom(library, request));
    tasks::ChooseOptions options;
    options.board = request.board;
    options.canvas = request.canvas;
    options.must = {request.keep.begin(), request.keep.end()};
    options.milliseconds = request.milliseconds;
    ChooseAnswer answer;
    if (request.overSeveral) {
        PANTILE_ASSIGN_OR_RETURN(const tasks::Split split,
                                 tasks::splitOverLoads(library, ids, options, progress));
        for (const tasks::Choice& load : split.loads) answer.loads.push_back(idsOf(load));
        answer.words = splitWords(split);
        PANTILE_ASSIGN_OR_RETURN(answer.leftOut, leftOutWords(library, split.leftOut));
        return answer;
    }
    PANTILE_ASSIGN_OR_RETURN(const tasks::Choice choice,
                             tasks::chooseForBoard(library, ids, options, progress));
    answer.loads.push_back(idsOf(choice));
    answer.words = choiceWords(choice);
    PANTILE_ASSIGN_OR_RETURN(answer.leftOut, leftOutWords(library, choice.leftOut));
    return answer;
}

}  // namespace pantile::desktop
