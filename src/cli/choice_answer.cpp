#include "cli/choice_answer.h"

#include <ostream>

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
    for (const tasks::NotChosen& left : choice.leftOut) {
        out << "Left out " << left.id.value << ": " << left.reason << '\n';
    }
}

}  // namespace pantile::cli
