#include "cli/choice_answer.h"

#include <map>
#include <ostream>
#include <string>
#include <vector>

#include "board/cautions.h"
#include "cli/json.h"
#include "cli/texture_answer.h"

namespace pantile::cli {

QJsonArray slotsJson(const tasks::Choice& choice) {
    int number = 0;
    return jsonArray(choice.slots, [&](const tasks::ChosenSlot& slot) {
        return QJsonObject{{"id", jsonNumber(slot.id.value)},
                           {"title", jsonText(slot.slot.title)},
                           {"slot", ++number},
                           {"bytes", jsonNumber(slot.bytes)},
                           {"seconds", jsonSeconds(slot.milliseconds)}};
    });
}

QJsonObject choiceJson(const tasks::Choice& choice) {
    const QJsonObject load{{"textures", slotsJson(choice)},
                           {"slots", jsonNumber(std::ssize(choice.slots))},
                           {"bytes", jsonNumber(choice.bytes)},
                           {"seconds", jsonSeconds(choice.milliseconds)},
                           {"worth", jsonNumber(choice.worth)}};
    const auto leftOut = jsonArray(choice.leftOut, [](const tasks::NotChosen& left) {
        return QJsonObject{{"id", jsonNumber(left.id.value)}, {"reason", jsonText(left.reason)}};
    });
    return {{"loads", choice.slots.empty() ? QJsonArray{} : QJsonArray{load}},
            {"left_out", leftOut},
            {"proven_best", choice.provenBest}};
}

Table slotTable(const tasks::Choice& choice) {
    Table table({{"slot", Align::Right},
                 {"id", Align::Right},
                 {"title"},
                 {"cells", Align::Right},
                 {"drawing", Align::Right},
                 {"bytes", Align::Right}});
    int number = 0;
    for (const tasks::ChosenSlot& slot : choice.slots) {
        const core::Grid& grid = slot.slot.grid;
        table.addRow({std::to_string(++number), std::to_string(slot.id.value), slot.slot.title,
                      std::to_string(grid.width()) + "x" + std::to_string(grid.height()),
                      spokenTime(slot.milliseconds), std::to_string(slot.bytes)});
    }
    return table;
}

void printLeftOut(std::ostream& out, const tasks::Choice& choice) {
    // Ids with the same reason share a line, which stands where the first of them would.
    std::vector<std::string> reasons;
    std::map<std::string, std::string> idsOf;
    for (const tasks::NotChosen& left : choice.leftOut) {
        std::string& ids = idsOf[left.reason];
        if (ids.empty()) reasons.push_back(left.reason);
        ids += (ids.empty() ? "" : ", ") + std::to_string(left.id.value);
    }
    for (const std::string& reason : reasons)
        out << "Left out " << idsOf[reason] << ": " << reason << '\n';
}

void printCautions(std::ostream& out) {
    out << board::kCautionsHeading << ":\n";
    for (const std::string_view caution : board::cautions()) out << "- " << caution << '\n';
}

}  // namespace pantile::cli
