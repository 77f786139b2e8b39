#include <limits>
#include <ostream>

#include "cli/choice_answer.h"
#include "cli/choice_options.h"
#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/selection.h"
#include "cli/texture_answer.h"
#include "tasks/library_place.h"

namespace pantile::cli {

using core::Result;

namespace {

void printChoice(Session& session, const tasks::Choice& choice) {
    slotTable(choice).print(session.out);
    session.out << choice.slots.size() << " of " << counted(choice.board.slots, "slot", "slots")
                << ", " << choice.bytes << " of " << counted(choice.board.bytes, "byte", "bytes")
                << ", " << spokenTime(choice.milliseconds) << " of drawing, worth " << choice.worth
                << (choice.provenBest ? ", proven best.\n" : ", the best found so far.\n");
    printLeftOut(session.out, choice);
}

Result<Outcome> run(Session& session, const Arguments& arguments) {
    PANTILE_ASSIGN_OR_RETURN(const tasks::ChooseOptions options, chooseOptions(arguments));
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const Selection selection,
                             selectTextures(library, arguments.positional()));
    PANTILE_ASSIGN_OR_RETURN(const auto choice, tasks::chooseForBoard(library, selection.ids,
                                                                      options, session.progress()));
    if (session.json) {
        printJson(session.out, choiceJson(choice));
    } else {
        printChoice(session, choice);
    }
    return Outcome::Done;
}

}  // namespace

Command fitCommand() {
    return {"fit",
            "Picks the set of textures that is worth most and fits a board.",
            {"SELECTION --board NAME [options]"},
            chooseOptionSpecs(),
            "Each texture is worth 3 unless --worth says otherwise. Of sets that are worth the "
            "same, the\n"
            "one that draws faster is picked, then the one of fewer bytes.",
            run};
}

}  // namespace pantile::cli
