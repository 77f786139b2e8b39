#include <ostream>

#include "catalogue/loads.h"
#include "cli/changed_answer.h"
#include "cli/choice_answer.h"
#include "cli/choice_options.h"
#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/selection.h"
#include "cli/texture_answer.h"
#include "core/text.h"
#include "tasks/library_place.h"
#include "tasks/print_slots.h"
#include "tasks/texture_json.h"
#include "tasks/write_load.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;
using tasks::LoadForm;

namespace {

constexpr std::array<Choice<LoadForm>, 3> kForms = {{
    {"card", LoadForm::Card},
    {"header", LoadForm::Header},
    {"both", LoadForm::Both},
}};

Result<Outcome> make(Session& session, const Arguments& arguments) {
    const auto& words = arguments.positional();
    if (words.size() < 3) {
        return Error{ErrorKind::Usage, "the load needs a name and textures",
                     "write load make NAME SELECTION --board NAME"};
    }
    PANTILE_ASSIGN_OR_RETURN(const tasks::ChooseOptions options, chooseOptions(arguments));
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    const std::vector<std::string> selected(words.begin() + 2, words.end());
    PANTILE_ASSIGN_OR_RETURN(const Selection selection, selectTextures(library, selected));
    PANTILE_ASSIGN_OR_RETURN(
        const tasks::Choice choice,
        arguments.has("--best")
            ? tasks::chooseForBoard(library, selection.ids, options, session.progress())
            : tasks::takeAll(library, selection.ids, options, session.progress()));
    catalogue::StoredLoad load;
    load.name = words[1];
    load.board = choice.board.name;
    for (const tasks::ChosenSlot& slot : choice.slots) load.slots.push_back(slot.id);
    PANTILE_RETURN_IF_ERROR(catalogue::addLoad(library, load));
    if (session.json) {
        QJsonObject object = choiceJson(choice);
        object["load"] = jsonText(load.name);
        object["slots"] = slotsJson(choice);
        printJson(session.out, object);
        return Outcome::Done;
    }
    slotTable(choice).print(session.out);
    printLeftOut(session.out, choice.leftOut);
    session.out << "Load " << core::visibleText(load.name) << " for "
                << core::visibleText(load.board) << ": "
                << counted(std::ssize(load.slots), "slot", "slots") << ", " << choice.bytes
                << " bytes, " << spokenTime(choice.milliseconds) << " of drawing.\n";
    return Outcome::Done;
}

QJsonObject storedJson(const catalogue::StoredLoad& load) {
    return {
        {"load", jsonText(load.name)},
        {"board", jsonText(load.board)},
        {"made", jsonText(tasks::utcTime(load.madeAt))},
        {"slots", jsonArray(load.slots, [](core::TextureId id) { return jsonNumber(id.value); })},
        {"written", jsonArray(load.writings, [](const catalogue::LoadWriting& writing) {
             return QJsonObject{{"at", jsonText(tasks::utcTime(writing.at))},
                                {"into", jsonText(writing.place)},
                                {"board", jsonText(writing.board)}};
         })}};
}

void printStored(std::ostream& out, const catalogue::StoredLoad& load) {
    out << core::visibleText(load.name) << ", for " << core::visibleText(load.board)
        << ", textures";
    for (const core::TextureId id : load.slots) out << ' ' << id.value;
    out << '\n';
    for (const catalogue::LoadWriting& writing : load.writings) {
        out << "  written " << tasks::utcTime(writing.at) << " into "
            << core::visibleText(writing.place) << '\n';
    }
}

Result<Outcome> list(Session& session) {
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto loads, catalogue::listLoads(library));
    if (session.json) {
        printJsonList(session.out, jsonArray(loads, storedJson));
        return Outcome::Done;
    }
    for (const catalogue::StoredLoad& load : loads) printStored(session.out, load);
    session.out << counted(std::ssize(loads), "load", "loads") << ".\n";
    return Outcome::Done;
}

Result<Outcome> show(Session& session, const std::string& name) {
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto load, catalogue::readLoad(library, name));
    if (session.json) {
        printJson(session.out, storedJson(load));
    } else {
        printStored(session.out, load);
    }
    return Outcome::Done;
}

Result<Outcome> removeOne(Session& session, const std::string& name) {
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    PANTILE_RETURN_IF_ERROR(catalogue::removeLoad(library, name));
    return answerChanged(session, 1,
                         "Load " + core::visibleText(name) + " removed; its textures stay");
}

Result<Outcome> write(Session& session, const Arguments& arguments, const std::string& name) {
    const auto folder = arguments.value("--into");
    if (!folder)
        return Error{ErrorKind::Usage, "the folder is missing", "write load write NAME --into DIR"};
    tasks::WriteOptions options;
    if (const auto form = arguments.value("--as")) {
        PANTILE_ASSIGN_OR_RETURN(options.form, parseChoice("--as", *form, kForms));
    }
    if (arguments.has("--replace")) options.ifExists = tasks::IfExists::Replace;
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    PANTILE_ASSIGN_OR_RETURN(
        const auto written,
        tasks::writeStoredLoad(library, name, *folder, options, session.progress()));
    if (session.json) {
        printJson(session.out, {{"load", jsonText(written.name)},
                                {"slots", slotsJson(written.choice)},
                                {"files", jsonPaths(written.files)},
                                {"verified", true}});
        return Outcome::Done;
    }
    slotTable(written.choice).print(session.out);
    for (const auto& file : written.files) session.out << "Wrote " << file.string() << '\n';
    session.out << "Read back and replayed: every slot draws its texture cell by cell.\n";
    printCautions(session.out);
    return Outcome::Done;
}

Result<Outcome> print(Session& session, const Arguments& arguments, const std::string& name) {
    const auto folder = arguments.value("--into");
    if (!folder)
        return Error{ErrorKind::Usage, "the folder is missing", "write load print NAME --into DIR"};
    const auto ifExists =
        arguments.has("--replace") ? tasks::IfExists::Replace : tasks::IfExists::Refuse;
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(
        const auto file, tasks::printSlots(library, name, *folder, ifExists, session.progress()));
    if (session.json) {
        printJson(session.out, {{"load", jsonText(name)}, {"files", jsonPaths({file})}});
    } else {
        session.out << "Wrote " << file.string() << '\n';
    }
    return Outcome::Done;
}

QJsonObject verifiedJson(const board::VerifiedSlot& slot, int number) {
    return {{"slot", number},
            {"title", jsonText(slot.title)},
            {"bytes", jsonNumber(slot.bytes)},
            {"seconds", jsonSeconds(slot.milliseconds)},
            {"verified", slot.verified()},
            {"fault", jsonText(slot.fault)}};
}

Result<Outcome> verify(Session& session, const std::string& path) {
    PANTILE_ASSIGN_OR_RETURN(const auto load, tasks::verifyLoadFile(path, session.progress()));
    int number = 0;
    if (session.json) {
        printJson(session.out, {{"load", jsonText(load.name)},
                                {"slots", jsonArray(load.slots,
                                                    [&](const board::VerifiedSlot& slot) {
                                                        return verifiedJson(slot, ++number);
                                                    })},
                                {"files", QJsonArray{jsonText(path)}},
                                {"verified", load.verified()}});
    } else {
        for (const board::VerifiedSlot& slot : load.slots) {
            session.out << "Slot " << ++number << ", " << core::visibleText(slot.title) << ": "
                        << (slot.verified() ? "right, " + spokenTime(slot.milliseconds)
                                            : core::visibleText(slot.fault))
                        << '\n';
        }
        session.out << "Load " << core::visibleText(load.name)
                    << (load.verified() ? " is right in every slot.\n" : " is damaged.\n");
    }
    return load.verified() ? Outcome::Done : Outcome::SomeRefused;
}

Result<Outcome> run(Session& session, const Arguments& arguments) {
    const auto& words = arguments.positional();
    const std::string action = words.empty() ? "" : words[0];
    if (action == "make") return make(session, arguments);
    if (action == "list" && words.size() == 1) return list(session);
    if (words.size() == 2) {
        if (action == "show") return show(session, words[1]);
        if (action == "remove") return removeOne(session, words[1]);
        if (action == "write") return write(session, arguments, words[1]);
        if (action == "print") return print(session, arguments, words[1]);
        if (action == "verify") return verify(session, words[1]);
    }
    return Error{
        ErrorKind::Usage, "this is no way to use load",
        "write load make NAME SELECTION --board NAME, list, show NAME, remove NAME, write NAME "
        "--into DIR, print NAME --into DIR or verify PATH"};
}

std::vector<OptionSpec> loadOptionSpecs() {
    std::vector<OptionSpec> specs = chooseOptionSpecs();
    specs.push_back({"--best", OptionKind::Flag, "", "make: take the best set that fits, not all"});
    specs.push_back(
        {"--into", OptionKind::Value, "DIR", "write, print: the folder, made if it is missing"});
    specs.push_back({"--as", OptionKind::Value, "card|header|both",
                     "write: the form, else as the board's memory asks"});
    specs.push_back({"--replace", OptionKind::Flag, "",
                     "write, print: files of the same name may be replaced"});
    return specs;
}

}  // namespace

Command loadCommand() {
    return {
        "load",
        "Makes, writes and verifies what a board draws from.",
        {"make NAME SELECTION --board NAME [--best] [options]", "list", "show NAME", "remove NAME",
         "write NAME --into DIR [--as card|header|both]", "print NAME --into DIR", "verify PATH"},
        loadOptionSpecs(),
        "verify takes a card's folder, its load.bin, or a header. print writes a PDF that shows\n"
        "what lies in which slot.",
        run};
}

}  // namespace pantile::cli
