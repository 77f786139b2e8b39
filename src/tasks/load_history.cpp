#include "tasks/load_history.h"

#include <algorithm>
#include <utility>

#include "catalogue/actions.h"
#include "catalogue/boards.h"
#include "catalogue/reader.h"
#include "catalogue/transaction.h"

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

std::vector<LoadedTexture> loadedTextures(const std::vector<catalogue::TextureRow>& rows,
                                          std::int64_t at) {
    std::vector<LoadedTexture> textures;
    textures.reserve(rows.size());
    for (const catalogue::TextureRow& row : rows)
        textures.push_back({row.id, row.title, row.changedAt > at, row.removed});
    return textures;
}

}  // namespace

Result<std::vector<WrittenOnce>> loadHistory(const catalogue::Library& library,
                                             const std::string& board) {
    PANTILE_ASSIGN_OR_RETURN(const auto loads, catalogue::listLoads(library));
    std::vector<WrittenOnce> history;
    for (const catalogue::StoredLoad& load : loads) {
        PANTILE_ASSIGN_OR_RETURN(const auto rows, catalogue::readRows(library, load.slots));
        for (const catalogue::LoadWriting& writing : load.writings) {
            if (!board.empty() && writing.board != board) continue;
            history.push_back({load.name, writing, loadedTextures(rows, writing.at)});
        }
    }
    if (history.empty() && !board.empty())
        PANTILE_RETURN_IF_ERROR(catalogue::readBoard(library, board));
    std::stable_sort(
        history.begin(), history.end(),
        [](const WrittenOnce& a, const WrittenOnce& b) { return a.writing.at > b.writing.at; });
    return history;
}

Result<std::vector<LoadedTexture>> texturesOf(const catalogue::Library& library,
                                              const catalogue::StoredLoad& load) {
    PANTILE_ASSIGN_OR_RETURN(const auto rows, catalogue::readRows(library, load.slots));
    return loadedTextures(rows, load.writings.empty() ? load.madeAt : load.writings.back().at);
}

Result<std::vector<std::string>> keepSplit(catalogue::Library& library, const std::string& name,
                                           const Split& split, const std::string& canvas) {
    if (split.loads.empty()) {
        return Error{ErrorKind::InvalidInput, "there is nothing to make a load of",
                     "select textures that a load can hold"};
    }
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, library.begin());
    if (split.loads.size() > 1) {
        catalogue::nameAction(library, "Make " + std::to_string(split.loads.size()) + " loads " +
                                           catalogue::nameInWords(name));
    }
    std::vector<std::string> names;
    for (const Choice& choice : split.loads) {
        const std::string number = " " + std::to_string(names.size() + 1);
        catalogue::StoredLoad load;
        load.name = name + (split.loads.size() == 1 ? "" : number);
        load.board = choice.board.name;
        load.canvas = canvas;
        for (const ChosenSlot& slot : choice.slots) load.slots.push_back(slot.id);
        PANTILE_RETURN_IF_ERROR(catalogue::addLoad(library, load));
        names.push_back(load.name);
    }
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return names;
}

}  // namespace pantile::tasks
