#include "tasks/choose_for_board.h"

#include <algorithm>

#include "board/fit.h"
#include "board/load_writer.h"
#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/reader.h"
#include "core/text.h"
#include "tasks/plan_drawing.h"

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

// What may be chosen, planned, and what no canvas takes.
struct Candidates {
    std::vector<ChosenSlot> slots;
    std::vector<NotChosen> unfit;
};

Result<ChosenSlot> candidate(const catalogue::TextureRecord& record,
                             const std::vector<core::Canvas>& canvases, const core::Board& board,
                             const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const core::Canvas canvas, chooseCanvas(record.texture, canvases));
    PANTILE_ASSIGN_OR_RETURN(PlannedDrawing planned,
                             planTexture(record.texture, canvas, board, progress));
    board::LoadSlot slot{
        record.row.title, std::move(planned.fitted.grid), std::move(planned.fitted.palette),
        canvas,           std::move(planned.plan),        std::move(planned.picture)};
    const std::int64_t milliseconds = slot.plan.milliseconds;
    return ChosenSlot{record.row.id, planned.bytes, milliseconds, std::move(slot)};
}

Result<Candidates> candidates(const catalogue::Library& library,
                              const std::vector<core::TextureId>& ids, const ChooseOptions& options,
                              const core::Board& board, const core::Progress& progress) {
    std::vector<core::Canvas> canvases;
    if (options.canvas.empty()) {
        PANTILE_ASSIGN_OR_RETURN(canvases, catalogue::listCanvases(library));
    } else {
        PANTILE_ASSIGN_OR_RETURN(core::Canvas canvas,
                                 catalogue::readCanvas(library, options.canvas));
        canvases.push_back(std::move(canvas));
    }
    Candidates found;
    for (std::size_t i = 0; i < ids.size(); ++i) {
        if (progress.stopRequested()) return core::stoppedError();
        progress.tell(static_cast<std::int64_t>(i), std::ssize(ids), "planning");
        PANTILE_ASSIGN_OR_RETURN(const catalogue::TextureRecord record,
                                 catalogue::readTexture(library, ids[i]));
        auto slot = candidate(record, canvases, board, {progress.stop, {}});
        if (slot) {
            found.slots.push_back(*std::move(slot));
        } else if (slot.error().kind == ErrorKind::DoesNotFit) {
            found.unfit.push_back({ids[i], slot.error().message});
        } else {
            return slot.error();
        }
    }
    progress.tell(std::ssize(ids), std::ssize(ids), "");
    return found;
}

Result<void> checkNamed(const std::vector<core::TextureId>& ids, const ChooseOptions& options) {
    const auto check = [&](core::TextureId id, std::string_view option) -> Result<void> {
        if (std::find(ids.begin(), ids.end(), id) != ids.end()) return {};
        return Error{ErrorKind::InvalidInput,
                     std::string(option) + " names texture " + std::to_string(id.value) +
                         ", which is not in the selection",
                     "name it in the selection as well"};
    };
    for (const core::TextureId id : options.must) PANTILE_RETURN_IF_ERROR(check(id, "--must"));
    for (const auto& [id, worth] : options.worth) PANTILE_RETURN_IF_ERROR(check(id, "--worth"));
    return {};
}

Result<void> checkMusts(const Candidates& found, const ChooseOptions& options) {
    for (const NotChosen& unfit : found.unfit) {
        if (!options.must.contains(unfit.id)) continue;
        return Error{ErrorKind::DoesNotFit,
                     "texture " + std::to_string(unfit.id.value) + " must be in the load, but " +
                         unfit.reason,
                     "leave it out, or make a canvas that it fits"};
    }
    return {};
}

// Says in the user's terms what chooseBest would say of numbered items.
Result<void> checkMustsFit(const Candidates& found, const ChooseOptions& options,
                           const core::Board& board, std::int64_t room) {
    std::int64_t count = 0;
    std::int64_t bytes = 0;
    std::int64_t milliseconds = 0;
    for (const ChosenSlot& slot : found.slots) {
        if (!options.must.contains(slot.id)) continue;
        ++count;
        bytes += slot.bytes;
        milliseconds += slot.milliseconds;
    }
    const auto tooMuch = [&](const std::string& need, const std::string& limit) {
        return Error{ErrorKind::DoesNotFit, "what must be in needs " + need + ", and " + limit,
                     "let go of some of them, choose a larger board, or take the best that fits"};
    };
    if (count > board.slots) {
        return tooMuch(std::to_string(count) + " slots",
                       "the board " + board.name + " has " + std::to_string(board.slots));
    }
    if (bytes > room) {
        return tooMuch(
            std::to_string(bytes) + " bytes",
            "a load for the board " + board.name + " has room for " + std::to_string(room));
    }
    if (options.milliseconds && milliseconds > *options.milliseconds) {
        return tooMuch(std::to_string((milliseconds + 999) / 1000) + " s of drawing",
                       std::to_string(*options.milliseconds / 1000) + " s are allowed");
    }
    return {};
}

std::vector<board::FitItem> fitItems(const Candidates& found, const ChooseOptions& options) {
    std::vector<board::FitItem> items;
    for (const ChosenSlot& slot : found.slots) {
        const auto worth = options.worth.find(slot.id);
        items.push_back({worth == options.worth.end() ? kUsualWorth : worth->second, slot.bytes,
                         slot.milliseconds, options.must.contains(slot.id)});
    }
    return items;
}

}  // namespace

Result<Choice> chooseForBoard(const catalogue::Library& library,
                              const std::vector<core::TextureId>& ids, const ChooseOptions& options,
                              const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(checkNamed(ids, options));
    PANTILE_ASSIGN_OR_RETURN(const core::Board board, catalogue::readBoard(library, options.board));
    PANTILE_ASSIGN_OR_RETURN(Candidates found, candidates(library, ids, options, board, progress));
    PANTILE_RETURN_IF_ERROR(checkMusts(found, options));
    const std::int64_t room = std::max<std::int64_t>(board.bytes - board::loadBaseBytes(), 0);
    PANTILE_RETURN_IF_ERROR(checkMustsFit(found, options, board, room));
    PANTILE_ASSIGN_OR_RETURN(
        const board::FitChoice fit,
        board::chooseBest(fitItems(found, options), {board.slots, room, options.milliseconds},
                          {progress.stop, {}}));
    Choice choice{board,         {}, fit.bytes, fit.milliseconds, fit.worth, std::move(found.unfit),
                  fit.provenBest};
    if (!fit.chosen.empty()) choice.bytes += board::loadBaseBytes();
    for (const board::LeftOut& left : fit.leftOut) {
        choice.leftOut.push_back({found.slots[left.item].id, left.reason});
    }
    std::sort(choice.leftOut.begin(), choice.leftOut.end(),
              [](const NotChosen& a, const NotChosen& b) { return a.id < b.id; });
    for (const std::size_t item : fit.chosen) choice.slots.push_back(std::move(found.slots[item]));
    return choice;
}

Result<Choice> takeAll(const catalogue::Library& library, const std::vector<core::TextureId>& ids,
                       const ChooseOptions& options, const core::Progress& progress) {
    ChooseOptions all = options;
    all.must = {ids.begin(), ids.end()};
    return chooseForBoard(library, ids, all, progress);
}

}  // namespace pantile::tasks
