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

void printFigures(std::ostream& out, const tasks::Choice& load) {
    out << load.slots.size() << " of " << counted(load.board.slots, "slot", "slots") << ", "
        << load.bytes << " of " << counted(load.board.bytes, "byte", "bytes") << ", "
        << spokenTime(load.milliseconds) << " of drawing, worth " << load.worth;
}

void printChoice(std::ostream& out, const tasks::Choice& choice) {
    slotTable(choice).print(out);
    printFigures(out, choice);
    if (choice.provenBest) {
        out << ", proven best.\n";
    } else if (choice.worthBound > choice.worth) {
        out << ", the best found; none is worth more than " << choice.worthBound << ".\n";
    } else {
        out << "; none is worth more, but one of that worth may draw faster.\n";
    }
    printLeftOut(out, choice.leftOut);
}

void printSplit(std::ostream& out, const tasks::Split& split) {
    int number = 0;
    for (const tasks::Choice& load : split.loads) {
        out << "Load " << ++number << ":\n";
        slotTable(load).print(out);
        printFigures(out, load);
        out << ".\n";
    }
    out << counted(std::ssize(split.loads), "load", "loads");
    if (split.provenFewest()) {
        out << ", proven fewest.\n";
    } else {
        out << ", the fewest found; fewer than " << split.fewest << " are impossible.\n";
    }
    printLeftOut(out, split.leftOut);
}

/// `answer` is a tasks::Choice or a tasks::Split.
template <typename Answer, typename Json, typename Print>
Outcome tell(Session& session, const Answer& answer, const Json& json, const Print& print) {
    if (session.json) {
        printJson(session.out, json(answer));
    } else {
        print(session.out, answer);
    }
    return Outcome::Done;
}

Result<Outcome> runFit(Session& session, const Arguments& arguments) {
    PANTILE_ASSIGN_OR_RETURN(const tasks::ChooseOptions options, chooseOptions(arguments));
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const Selection selection,
                             selectTextures(library, arguments.positional()));
    if (arguments.has("--loads")) {
        PANTILE_ASSIGN_OR_RETURN(
            const auto split,
            tasks::splitOverLoads(library, selection.ids, options, session.progress()));
        return tell(session, split, splitJson, printSplit);
    }
    PANTILE_ASSIGN_OR_RETURN(const auto choice, tasks::chooseForBoard(library, selection.ids,
                                                                      options, session.progress()));
    return tell(session, choice, choiceJson, printChoice);
}

std::vector<OptionSpec> fitOptionSpecs() {
    std::vector<OptionSpec> specs = chooseOptionSpecs();
    specs.push_back(
        {"--loads", OptionKind::Flag, "", "all of them, over as few loads as possible"});
    return specs;
}

}  // namespace

Command fitCommand() {
    return {"fit",
            "Picks the set of textures that is worth most and fits a board.",
            {"SELECTION --board NAME [options]", "SELECTION --board NAME --loads [options]"},
            fitOptionSpecs(),
            "Each texture is worth its stars, 3 without any, unless --worth says otherwise. Of "
            "sets that are worth the "
            "same, the\n"
            "one that draws faster is picked, then the one of fewer bytes. With --loads nothing "
            "is left\n"
            "out that a load can hold; --seconds then holds for each load, and --worth for their "
            "order.",
            runFit};
}

}  // namespace pantile::cli
