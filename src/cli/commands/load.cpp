#include <ostream>

#include "catalogue/loads.h"
#include "cli/changed_answer.h"
#include "cli/choice_answer.h"
#include "cli/choice_options.h"
#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/load_answer.h"
#include "cli/selection.h"
#include "cli/texture_answer.h"
#include "cli/written_file.h"
#include "core/text.h"
#include "tasks/library_place.h"
#include "tasks/load_history.h"
#include "tasks/print_slots.h"
#include "tasks/write_load.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;
using tasks::LoadForm;

namespace {

constexpr std::array<Choice<LoadForm>, 3> kLoadForms = {{
    {"card", LoadForm::Card},
    {"header", LoadForm::Header},
    {"both", LoadForm::Both},
}};

void printMade(std::ostream& out, const std::string& name, const tasks::Choice& load) {
    out << "Load " << core::visibleText(name) << " for " << core::visibleText(load.board.name)
        << ": " << counted(std::ssize(load.slots), "slot", "slots") << ", " << load.bytes
        << " bytes, " << spokenTime(load.milliseconds) << " of drawing.\n";
}

Result<Outcome> keepOne(Session& session, catalogue::Library& library, const std::string& name,
                        const tasks::Choice& choice, const std::string& canvas) {
    catalogue::StoredLoad load;
    load.name = name;
    load.board = choice.board.name;
    load.canvas = canvas;
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
    printMade(session.out, name, choice);
    return Outcome::Done;
}

Result<Outcome> keepSeveral(Session& session, catalogue::Library& library, const std::string& name,
                            const tasks::Split& split, const std::string& canvas) {
    PANTILE_ASSIGN_OR_RETURN(const std::vector<std::string> names,
                             tasks::keepSplit(library, name, split, canvas));
    if (session.json) {
        QJsonObject object = splitJson(split);
        object["made"] = jsonArray(names, [](const std::string& each) { return jsonText(each); });
        printJson(session.out, object);
        return Outcome::Done;
    }
    for (std::size_t i = 0; i < names.size(); ++i) {
        slotTable(split.loads[i]).print(session.out);
        printMade(session.out, names[i], split.loads[i]);
    }
    printLeftOut(session.out, split.leftOut);
    return Outcome::Done;
}

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
    if (arguments.has("--loads")) {
        PANTILE_ASSIGN_OR_RETURN(
            const auto split,
            tasks::splitOverLoads(library, selection.ids, options, session.progress()));
        return keepSeveral(session, library, words[1], split, options.canvas);
    }
    const auto choice =
        arguments.has("--best")
            ? tasks::chooseForBoard(library, selection.ids, options, session.progress())
            : tasks::takeAll(library, selection.ids, options, session.progress());
    if (!choice) {
        Error error = choice.error();
        if (error.kind == ErrorKind::DoesNotFit && !arguments.has("--best"))
            error.hint +=
                "; --best takes the best that fits, --loads spreads all over several loads";
        return error;
    }
    return keepOne(session, library, words[1], *choice, options.canvas);
}

Result<Outcome> list(Session& session) {
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto loads, catalogue::listLoads(library));
    QJsonArray all;
    for (const catalogue::StoredLoad& load : loads) {
        if (session.json) {
            PANTILE_ASSIGN_OR_RETURN(const QJsonObject object, storedJson(library, load));
            all.append(object);
        } else {
            PANTILE_RETURN_IF_ERROR(printStored(session.out, library, load));
        }
    }
    if (session.json) {
        printJsonList(session.out, all);
        return Outcome::Done;
    }
    session.out << counted(std::ssize(loads), "load", "loads") << ".\n";
    return Outcome::Done;
}

Result<Outcome> show(Session& session, const std::string& name) {
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto load, catalogue::readLoad(library, name));
    if (session.json) {
        PANTILE_ASSIGN_OR_RETURN(const QJsonObject object, storedJson(library, load));
        printJson(session.out, object);
    } else {
        PANTILE_RETURN_IF_ERROR(printStored(session.out, library, load));
    }
    return Outcome::Done;
}

Result<Outcome> history(Session& session, const Arguments& arguments) {
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto all,
                             tasks::loadHistory(library, arguments.value("--board").value_or("")));
    if (session.json) {
        printJsonList(session.out, jsonArray(all, writtenJson));
        return Outcome::Done;
    }
    for (const tasks::WrittenOnce& written : all) printWritten(session.out, written);
    session.out << counted(std::ssize(all), "load", "loads") << " written.\n";
    return Outcome::Done;
}

Result<Outcome> removeOne(Session& session, const std::string& name) {
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    PANTILE_RETURN_IF_ERROR(catalogue::removeLoad(library, name));
    return answerChanged(session, 1,
                         "Load " + core::visibleText(name) + " removed; its textures stay");
}

/// A removed texture stays in its loads; whoever writes one ought to know.
Result<void> tellRemoved(const Session& session, const catalogue::Library& library,
                         const std::string& name) {
    PANTILE_ASSIGN_OR_RETURN(const auto load, catalogue::readLoad(library, name));
    PANTILE_ASSIGN_OR_RETURN(const auto textures, tasks::texturesOf(library, load));
    for (const tasks::LoadedTexture& texture : textures) {
        if (!texture.removed) continue;
        const std::string id = std::to_string(texture.id.value);
        session.say("Texture " + id +
                    " was removed, and the load draws it still; 'pantile recover " + id +
                    "' brings it back.");
    }
    return {};
}

Result<Outcome> write(Session& session, const Arguments& arguments, const std::string& name) {
    const auto folder = arguments.value("--into");
    if (!folder)
        return Error{ErrorKind::Usage, "the folder is missing", "write load write NAME --into DIR"};
    tasks::WriteOptions options;
    if (const auto form = arguments.value("--as")) {
        PANTILE_ASSIGN_OR_RETURN(options.form, parseChoice("--as", *form, kLoadForms));
    }
    if (arguments.has("--replace")) options.ifExists = tasks::IfExists::Replace;
    options.canvas = arguments.value("--canvas").value_or("");
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    PANTILE_ASSIGN_OR_RETURN(
        const auto written,
        tasks::writeStoredLoad(library, name, *folder, options, session.progress()));
    PANTILE_RETURN_IF_ERROR(tellRemoved(session, library, written.name));
    if (session.json) {
        printJson(session.out, {{"load", jsonText(written.name)},
                                {"slots", slotsJson(written.choice)},
                                {"files", jsonPaths(written.files)},
                                {"verified", true}});
        return Outcome::Done;
    }
    slotTable(written.choice).print(session.out);
    for (const auto& file : written.files) printWrote(session.out, file);
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
    PANTILE_ASSIGN_OR_RETURN(const auto file,
                             tasks::printSlots(library, name, *folder, ifExists, session.progress(),
                                               arguments.value("--canvas").value_or("")));
    if (session.json) {
        printJson(session.out, {{"load", jsonText(name)}, {"files", jsonPaths({file})}});
    } else {
        printWrote(session.out, file);
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

Result<Outcome> runLoad(Session& session, const Arguments& arguments) {
    const auto& words = arguments.positional();
    const std::string action = words.empty() ? "" : words[0];
    if (action == "make") return make(session, arguments);
    if (action == "list" && words.size() == 1) return list(session);
    if (action == "history" && words.size() == 1) return history(session, arguments);
    if (words.size() == 2) {
        if (action == "show") return show(session, words[1]);
        if (action == "remove") return removeOne(session, words[1]);
        if (action == "write") return write(session, arguments, words[1]);
        if (action == "print") return print(session, arguments, words[1]);
        if (action == "verify") return verify(session, words[1]);
    }
    return wrongUse("load", words);
}

std::vector<OptionSpec> loadOptionSpecs() {
    std::vector<OptionSpec> specs = chooseOptionSpecs();
    specs.push_back({"--best", OptionKind::Flag, "", "make: take the best set that fits, not all"});
    specs.push_back({"--loads", OptionKind::Flag, "",
                     "make: take all over as few loads as possible, named NAME 1, NAME 2, …"});
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
        {"make NAME SELECTION --board NAME [--best|--loads] [options]", "list", "show NAME",
         "history [--board NAME]", "remove NAME",
         "write NAME --into DIR [--as card|header|both] [--canvas NAME]",
         "print NAME --into DIR [--canvas NAME]", "verify PATH"},
        loadOptionSpecs(),
        "Slots are in the order of the SELECTION; a search for one shelf keeps the shelf's order.\n"
        "verify takes a card's folder, its load.bin, a header, or the folder in which one lies.\n"
        "print writes a PDF that shows what lies in which slot. history lists what was written\n"
        "when, the newest first. A load keeps the canvas that it was made for; write and\nprint "
        "take another with --canvas.",
        runLoad};
}

}  // namespace pantile::cli
