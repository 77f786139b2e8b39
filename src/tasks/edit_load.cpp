#include "tasks/edit_load.h"

#include <algorithm>

#include "catalogue/actions.h"
#include "catalogue/loads.h"

namespace pantile::tasks {

using catalogue::nameInWords;
using core::Result;
using core::TextureId;

namespace {

bool isAmong(const std::vector<TextureId>& ids, TextureId id) {
    return std::find(ids.begin(), ids.end(), id) != ids.end();
}

/// `slots` with `ids` from `place` on, wherever they lay before.
std::vector<TextureId> withPut(const std::vector<TextureId>& slots,
                               const std::vector<TextureId>& ids, std::size_t place) {
    std::vector<TextureId> before;
    std::vector<TextureId> after;
    for (std::size_t i = 0; i < slots.size(); ++i) {
        if (!isAmong(ids, slots[i])) (i < place ? before : after).push_back(slots[i]);
    }
    before.insert(before.end(), ids.begin(), ids.end());
    before.insert(before.end(), after.begin(), after.end());
    return before;
}

std::vector<TextureId> withTaken(std::vector<TextureId> slots, const std::vector<TextureId>& ids) {
    std::erase_if(slots, [&](TextureId id) { return isAmong(ids, id); });
    return slots;
}

}  // namespace

Result<std::vector<std::string>> newLoads(catalogue::Library& library, const std::string& board,
                                          const std::vector<std::vector<TextureId>>& loads,
                                          const std::string& canvas) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, library.begin());
    if (loads.size() > 1)
        catalogue::nameAction(library, "Make " + std::to_string(loads.size()) + " loads");
    PANTILE_ASSIGN_OR_RETURN(const auto known, catalogue::listLoads(library));
    const auto isTaken = [&](const std::string& name) {
        return std::any_of(known.begin(), known.end(),
                           [&](const auto& each) { return each.name == name; });
    };
    std::vector<std::string> names;
    std::size_t number = 1;
    for (const std::vector<TextureId>& slots : loads) {
        catalogue::StoredLoad load;
        do load.name = "Load " + std::to_string(number++);
        while (isTaken(load.name));
        load.board = board;
        load.canvas = canvas;
        load.slots = slots;
        PANTILE_RETURN_IF_ERROR(catalogue::addLoad(library, load));
        names.push_back(load.name);
    }
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return names;
}

Result<std::int64_t> putInLoad(catalogue::Library& library, std::string_view load,
                               const std::vector<TextureId>& ids, std::size_t place) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, library.begin());
    PANTILE_ASSIGN_OR_RETURN(const auto stored, catalogue::readLoad(library, load));
    const auto known = std::count_if(ids.begin(), ids.end(),
                                     [&](TextureId id) { return isAmong(stored.slots, id); });
    catalogue::nameAction(library, (known == std::ssize(ids) ? "Move " : "Put ") +
                                       catalogue::texturesInWords(ids) + " in load " +
                                       nameInWords(stored.name));
    PANTILE_RETURN_IF_ERROR(
        catalogue::setLoadSlots(library, load, withPut(stored.slots, ids, place)));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return std::ssize(ids) - known;
}

Result<std::int64_t> takeFromLoad(catalogue::Library& library, std::string_view load,
                                  const std::vector<TextureId>& ids) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, library.begin());
    PANTILE_ASSIGN_OR_RETURN(const auto stored, catalogue::readLoad(library, load));
    catalogue::nameAction(library, "Take " + catalogue::texturesInWords(ids) + " out of load " +
                                       nameInWords(stored.name));
    const std::vector<TextureId> left = withTaken(stored.slots, ids);
    PANTILE_RETURN_IF_ERROR(catalogue::setLoadSlots(library, load, left));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return std::ssize(stored.slots) - std::ssize(left);
}

Result<std::int64_t> carryToLoad(catalogue::Library& library, std::string_view from,
                                 const std::vector<TextureId>& ids, std::string_view to,
                                 std::size_t place) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, library.begin());
    catalogue::nameAction(library, "Carry " + catalogue::texturesInWords(ids) + " from load " +
                                       nameInWords(from) + " to " + nameInWords(to));
    PANTILE_RETURN_IF_ERROR(takeFromLoad(library, from, ids));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t put, putInLoad(library, to, ids, place));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return put;
}

Result<void> fillLoad(catalogue::Library& library, std::string_view load,
                      const std::vector<TextureId>& ids) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, library.begin());
    catalogue::nameAction(
        library, "Choose " + catalogue::texturesInWords(ids) + " for load " + nameInWords(load));
    PANTILE_RETURN_IF_ERROR(catalogue::setLoadSlots(library, load, ids));
    return transaction.commit();
}

}  // namespace pantile::tasks
