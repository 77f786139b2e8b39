// undo, redo: whole actions, across restarts and programs.

#include "tasks/undo.h"

#include <ostream>

#include "cli/commands/all.h"
#include "cli/commands/profiles.h"
#include "cli/json.h"
#include "core/text.h"
#include "tasks/texture_json.h"

namespace pantile::cli {

using core::Result;

namespace {

using Turn = Result<catalogue::UndoneAction> (*)(catalogue::Library&);

struct TurnWords {
    const char* member;     ///< Of the answer: "undone".
    std::string_view done;  ///< "Undid"
    std::string_view usage;
};

constexpr TurnWords kUndo{"undone", "Undid", "undo [COUNT]"};
constexpr TurnWords kRedo{"redone", "Redid", "redo [COUNT]"};

QJsonObject turnedJson(const catalogue::Action& action) {
    return {{"id", jsonNumber(action.id)},
            {"at", jsonText(tasks::utcTime(action.at))},
            {"what", jsonText(action.what)}};
}

void answerTurned(Session& session, const std::vector<catalogue::Action>& actions,
                  const Result<void>& stopped, const TurnWords& words) {
    if (session.json) {
        QJsonObject answer{{QLatin1String(words.member), jsonArray(actions, turnedJson)}};
        if (!stopped) answer.insert("error", jsonError(stopped.error()).value("error"));
        printJson(session.out, answer);
        return;
    }
    for (const catalogue::Action& action : actions) {
        session.out << words.done << ": " << core::visibleText(action.what) << " (of "
                    << tasks::utcTime(action.at) << ").\n";
    }
}

/// What was undone before one could not be stays undone, and is told.
Result<Outcome> turn(Session& session, const Arguments& arguments, Turn one,
                     const TurnWords& words) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 0, 1, words.usage));
    std::int64_t count = 1;
    if (!arguments.positional().empty()) {
        PANTILE_ASSIGN_OR_RETURN(count, parseNumber("a count", arguments.positional().front(), 1,
                                                    catalogue::kMostActionsKept));
    }
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    std::vector<catalogue::Action> turned;
    Result<void> refused;
    while (refused && std::ssize(turned) < count) {
        auto step = one(library);
        if (step) {
            turned.push_back(std::move(step->action));
        } else {
            refused = step.error();
        }
    }
    if (turned.empty()) return refused.error();
    PANTILE_RETURN_IF_ERROR(renewCosts(session, library));
    answerTurned(session, turned, refused, words);
    if (refused) return Outcome::Done;
    printProblem(session.err, refused.error());
    return Outcome::SomeRefused;
}

Result<Outcome> runUndo(Session& session, const Arguments& arguments) {
    return turn(session, arguments, tasks::undoLast, kUndo);
}

Result<Outcome> runRedo(Session& session, const Arguments& arguments) {
    return turn(session, arguments, tasks::redoLast, kRedo);
}

}  // namespace

Command undoCommand() {
    return {"undo",
            "Takes back what was done last, by any program, also before a restart.",
            {"[COUNT]"},
            {},
            "'pantile history' lists what was done. Textures that were added are only removed, and "
            "can be\n"
            "recovered. What purge destroyed is gone, and what was done before it stays done.",
            runUndo};
}

Command redoCommand() {
    return {"redo",      "Does again what was undone last, unless something else was done since.",
            {"[COUNT]"}, {},
            "",          runRedo};
}

}  // namespace pantile::cli
