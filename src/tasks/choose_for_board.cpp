#include "tasks/choose_for_board.h"

#include <algorithm>

#include "board/left_out.h"
#include "board/load_writer.h"
#include "catalogue/boards.h"
#include "core/text.h"
#include "tasks/load_candidates.h"

namespace pantile::tasks {

using core::Result;

namespace {

NotChosen notChosen(const std::vector<LoadCandidate>& candidates,
                    const std::vector<board::FitItem>& items, const board::LeftOut& left) {
    NotChosen result{candidates[left.item].row.id,
                     left.reason,
                     board::changeText(items, left),
                     {},
                     left.shortage};
    if (left.exchange) {
        for (const std::size_t out : left.exchange->takeOut)
            result.takeOut.push_back(candidates[out].row.id);
    }
    return result;
}

}  // namespace

std::string ChosenSlot::credit() const {
    std::string text = author.empty() ? "" : "by " + core::visibleText(author);
    if (!licence.empty()) text += (text.empty() ? "licence " : ", ") + core::visibleText(licence);
    return text;
}

Result<Choice> chooseForBoard(const catalogue::Library& library,
                              const std::vector<core::TextureId>& ids, const ChooseOptions& options,
                              const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const core::Board board, catalogue::readBoard(library, options.board));
    PANTILE_ASSIGN_OR_RETURN(LoadCandidates found,
                             loadCandidates(library, ids, options, board, progress));
    const std::vector<board::FitItem> items = fitItems(found.possible);
    PANTILE_ASSIGN_OR_RETURN(
        const board::FitChoice fit,
        board::chooseBest(items, loadLimits(board, options), {progress.stop, {}}));

    Choice choice{board,          {},
                  fit.bytes,      fit.milliseconds,
                  fit.worth,      std::move(found.impossible),
                  fit.provenBest, fit.worthBound};
    if (!fit.chosen.empty()) choice.bytes += board::loadBaseBytes();
    for (const board::LeftOut& left : fit.leftOut)
        choice.leftOut.push_back(notChosen(found.possible, items, left));
    std::sort(choice.leftOut.begin(), choice.leftOut.end(),
              [](const NotChosen& a, const NotChosen& b) { return a.id < b.id; });
    for (const board::FitPick& pick : fit.chosen)
        choice.slots.push_back(chosenSlot(found.possible, pick));
    return choice;
}

Result<Choice> takeAll(const catalogue::Library& library, const std::vector<core::TextureId>& ids,
                       const ChooseOptions& options, const core::Progress& progress) {
    ChooseOptions all = options;
    all.must = {ids.begin(), ids.end()};
    for (const core::TextureId id : options.never) all.must.erase(id);
    return chooseForBoard(library, ids, all, progress);
}

}  // namespace pantile::tasks
