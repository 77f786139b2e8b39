#include "cli/choice_answer.h"

#include <algorithm>
#include <map>
#include <ostream>
#include <string>
#include <vector>

#include "board/cautions.h"
#include "cli/json.h"
#include "cli/texture_answer.h"
#include "core/text.h"

namespace pantile::cli {

QJsonArray slotsJson(const tasks::Choice& choice) {
    int number = 0;
    return jsonArray(choice.slots, [&](const tasks::ChosenSlot& slot) {
        return QJsonObject{{"id", jsonNumber(slot.id.value)},
                           {"title", jsonText(slot.slot.title)},
                           {"slot", ++number},
                           {"canvas", jsonText(slot.slot.canvas.name)},
                           {"bytes", jsonNumber(slot.bytes)},
                           {"seconds", jsonSeconds(slot.milliseconds)}};
    });
}

namespace {

QJsonObject loadJson(const tasks::Choice& load) {
    return {{"textures", slotsJson(load)},
            {"slots", jsonNumber(std::ssize(load.slots))},
            {"bytes", jsonNumber(load.bytes)},
            {"seconds", jsonSeconds(load.milliseconds)},
            {"worth", jsonNumber(load.worth)}};
}

QJsonObject leftOutJson(const tasks::NotChosen& left) {
    return {{"id", jsonNumber(left.id.value)},
            {"reason", jsonText(left.reason)},
            {"change", jsonText(left.change)},
            {"take_out",
             jsonArray(left.takeOut, [](core::TextureId id) { return jsonNumber(id.value); })},
            {"more", QJsonObject{{"slots", left.shortage.slots},
                                 {"bytes", jsonNumber(left.shortage.bytes)},
                                 {"seconds", jsonSeconds(left.shortage.milliseconds)}}}};
}

}  // namespace

QJsonObject choiceJson(const tasks::Choice& choice) {
    return {{"loads", choice.slots.empty() ? QJsonArray{} : QJsonArray{loadJson(choice)}},
            {"left_out", jsonArray(choice.leftOut, leftOutJson)},
            {"worth_bound", jsonNumber(choice.worthBound)},
            {"proven_best", choice.provenBest}};
}

QJsonObject splitJson(const tasks::Split& split) {
    return {{"loads", jsonArray(split.loads, loadJson)},
            {"left_out", jsonArray(split.leftOut, leftOutJson)},
            {"fewest", jsonNumber(static_cast<std::int64_t>(split.fewest))},
            {"proven_best", split.provenFewest()}};
}

Table slotTable(const tasks::Choice& choice) {
    Table table({{"slot", Align::Right},
                 {"id", Align::Right},
                 {"title"},
                 {"cells", Align::Right},
                 {"canvas"},
                 {"drawing", Align::Right},
                 {"bytes", Align::Right}});
    int number = 0;
    for (const tasks::ChosenSlot& slot : choice.slots) {
        const core::Grid& grid = slot.slot.grid;
        table.addRow({std::to_string(++number), std::to_string(slot.id.value), slot.slot.title,
                      std::to_string(grid.width()) + "x" + std::to_string(grid.height()),
                      slot.slot.canvas.name, spokenTime(slot.milliseconds),
                      std::to_string(slot.bytes)});
    }
    return table;
}

namespace {

/// "1, 2, 3", or the first of many and how many there are more.
std::string someIds(const std::vector<core::TextureId>& ids) {
    constexpr std::size_t kMostNamed = 20;
    std::string text;
    for (std::size_t i = 0; i < std::min(ids.size(), kMostNamed); ++i)
        text += (i == 0 ? "" : ", ") + std::to_string(ids[i].value);
    if (ids.size() > kMostNamed)
        text += " and " + std::to_string(ids.size() - kMostNamed) + " more";
    return text;
}

}  // namespace

void printLeftOut(std::ostream& out, const std::vector<tasks::NotChosen>& leftOut) {
    // Ids with the same reason share a line, which stands where the first of them would.
    std::vector<std::string> reasons;
    std::map<std::string, std::vector<core::TextureId>> idsOf;
    for (const tasks::NotChosen& left : leftOut) {
        const std::string reason = left.reason + (left.change.empty() ? "" : ". " + left.change);
        std::vector<core::TextureId>& ids = idsOf[reason];
        if (ids.empty()) reasons.push_back(reason);
        ids.push_back(left.id);
    }
    for (const std::string& reason : reasons)
        out << "Left out " << someIds(idsOf[reason]) << ": " << core::visibleText(reason) << '\n';
}

void printCautions(std::ostream& out) {
    out << board::kCautionsHeading << ":\n";
    for (const std::string_view caution : board::cautions()) out << "- " << caution << '\n';
}

}  // namespace pantile::cli
