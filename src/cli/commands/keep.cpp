// check, backup, restore: keeping the library safe.

#include <ostream>

#include "catalogue/backup.h"
#include "catalogue/integrity.h"
#include "catalogue/salvage.h"
#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/texture_answer.h"
#include "core/text.h"
#include "tasks/library_place.h"

namespace pantile::cli {

using core::Result;

namespace {

QJsonArray problemsJson(const std::vector<catalogue::Problem>& problems) {
    return jsonArray(problems, [](const catalogue::Problem& problem) {
        return QJsonObject{{"where", jsonText(problem.where)}, {"what", jsonText(problem.what)}};
    });
}

void printProblems(std::ostream& out, const std::vector<catalogue::Problem>& problems) {
    for (const catalogue::Problem& problem : problems) {
        out << core::visibleText(problem.where) << ": " << core::visibleText(problem.what) << '\n';
    }
}

Result<Outcome> runRepair(Session& session, const std::string& file) {
    PANTILE_ASSIGN_OR_RETURN(const auto report,
                             catalogue::salvageLibrary(session.libraryPath, file,
                                                       tasks::openOptions(tasks::Purpose::Change)));
    if (session.json) {
        printJson(session.out, {{"ok", report.lost.empty()},
                                {"textures", jsonNumber(report.textures)},
                                {"problems", problemsJson(report.lost)},
                                {"file", jsonText(file)}});
    } else {
        printProblems(session.out, report.lost);
        session.out << counted(report.textures, "texture", "textures") << " saved in "
                    << core::visibleText(file) << ", "
                    << (report.lost.empty() ? "nothing is lost"
                                            : counted(std::ssize(report.lost), "loss", "losses"))
                    << ". The library itself is as it was.\n";
    }
    return report.lost.empty() ? Outcome::Done : Outcome::SomeRefused;
}

Result<Outcome> runCheck(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 0, 0, "check by itself"));
    if (const auto file = arguments.value("--repair")) return runRepair(session, *file);
    catalogue::OpenOptions asItIs = tasks::openOptions(tasks::Purpose::Look);
    asItIs.create = catalogue::OpenOptions::Create::Never;
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             catalogue::Library::open(session.libraryPath, asItIs));
    PANTILE_ASSIGN_OR_RETURN(const auto report,
                             catalogue::checkLibrary(library, session.progress()));
    if (session.json) {
        printJson(session.out, {{"ok", report.ok},
                                {"textures", jsonNumber(report.textures)},
                                {"problems", problemsJson(report.problems)}});
    } else {
        printProblems(session.out, report.problems);
        session.out << counted(report.textures, "texture", "textures") << " checked, "
                    << (report.ok ? "all is well"
                                  : counted(std::ssize(report.problems), "problem", "problems"))
                    << ".\n";
    }
    return report.ok ? Outcome::Done : Outcome::SomeRefused;
}

Result<Outcome> runBackup(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 1, 1, "backup FILE"));
    const std::string& file = arguments.positional().front();
    const auto overwrite =
        arguments.has("--replace") ? catalogue::Overwrite::Replace : catalogue::Overwrite::Never;
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_RETURN_IF_ERROR(catalogue::backupTo(library, file, overwrite));
    if (session.json) {
        printJson(session.out, {{"ok", true}, {"file", jsonText(file)}});
    } else {
        session.out << "The library is copied to " << core::visibleText(file) << ".\n";
    }
    return Outcome::Done;
}

Result<Outcome> runRestore(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 1, 1, "restore FILE"));
    const std::string& file = arguments.positional().front();
    PANTILE_ASSIGN_OR_RETURN(const auto report,
                             catalogue::restoreLibrary(session.libraryPath, file,
                                                       tasks::openOptions(tasks::Purpose::Change)));
    if (session.json) {
        printJson(session.out, {{"ok", true},
                                {"textures", jsonNumber(report.textures)},
                                {"kept", jsonText(report.kept.string())}});
        return Outcome::Done;
    }
    session.out << "Restored " << counted(report.textures, "texture", "textures") << " from "
                << core::visibleText(file) << ".\n";
    if (!report.kept.empty()) {
        session.out << "The library as it was is kept as "
                    << core::visibleText(report.kept.string()) << ".\n";
    }
    return Outcome::Done;
}

}  // namespace

Command checkCommand() {
    return {"check",
            "Checks the library and every texture in it.",
            {"", "--repair FILE"},
            {{"--repair", OptionKind::Value, "FILE",
              "save all that can be read in a new library, and say what could not"}},
            "After a repair, look at the new library, then take it in with: pantile restore FILE",
            runCheck};
}

Command backupCommand() {
    return {"backup",
            "Copies the library, also while it is in use.",
            {"FILE"},
            {{"--replace", OptionKind::Flag, "", "an older copy of that name may be replaced"}},
            "",
            runBackup};
}

Command restoreCommand() {
    return {"restore",
            "Takes the library back to what a backup holds.",
            {"FILE"},
            {},
            "The backup is checked first, and the present library is kept beside the restored one.",
            runRestore};
}

}  // namespace pantile::cli
