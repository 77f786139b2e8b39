// set, tag, remove, recover, history, revert, purge: changes to textures, each one revision.

#include "catalogue/edit.h"

#include <algorithm>
#include <ostream>

#include "catalogue/actions.h"
#include "catalogue/history.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "catalogue/tags.h"
#include "catalogue/texture_row.h"
#include "cli/changed_answer.h"
#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/selection.h"
#include "cli/texture_answer.h"
#include "core/text.h"
#include "core/texture.h"
#include "tasks/keep_estimates.h"
#include "tasks/library_place.h"
#include "tasks/query_remarks.h"
#include "tasks/texture_json.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

Outcome answerTextures(Session& session, std::int64_t changed, std::string_view verb) {
    return answerChanged(session, changed,
                         counted(changed, "texture", "textures") + " " + std::string(verb));
}

// Opens the library, finds the textures and changes them all in one transaction.
template <typename Change>
Result<Outcome> changeSelected(Session& session, const std::vector<std::string>& words,
                               std::string_view verb, Change change) {
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    PANTILE_ASSIGN_OR_RETURN(const Selection selection, selectTextures(library, words));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t changed, change(library, selection.ids));
    return answerTextures(session, changed, verb);
}

Result<Outcome> runSet(Session& session, const Arguments& arguments) {
    catalogue::TextPatch patch;
    patch.title = arguments.value("--title");
    patch.author = arguments.value("--author");
    patch.licence = arguments.value("--licence");
    patch.note = arguments.value("--note");
    patch.source = arguments.value("--source");
    PANTILE_ASSIGN_OR_RETURN(const auto stars,
                             arguments.number("--stars", 0, catalogue::kMostStars));
    if (stars) patch.stars = static_cast<int>(*stars);
    const bool empty = !patch.title && !patch.author && !patch.licence && !patch.note &&
                       !patch.source && !patch.stars;
    if (empty) {
        return Error{ErrorKind::Usage, "nothing to set was given",
                     "write for example --title \"Wet sand\""};
    }
    return changeSelected(session, arguments.positional(), "changed",
                          [&](catalogue::Library& library, const auto& ids) {
                              return catalogue::setText(library, ids, patch);
                          });
}

struct TagWords {
    std::vector<std::string> selection;
    std::vector<std::string> add;
    std::vector<std::string> drop;
};

Result<TagWords> tagWords(const std::vector<std::string>& words) {
    TagWords split;
    for (const std::string& word : words) {
        const bool adds = word.starts_with('+');
        if (!adds && !word.starts_with('-')) {
            split.selection.push_back(word);
            continue;
        }
        const std::string tag = word.substr(1);
        const auto checked = adds ? catalogue::checkNewTag(tag) : core::checkTag(tag);
        if (!checked) return Error{ErrorKind::Usage, checked.error().message, checked.error().hint};
        (adds ? split.add : split.drop).push_back(tag);
    }
    for (const std::string& tag : split.add) {
        if (std::find(split.drop.begin(), split.drop.end(), tag) == split.drop.end()) continue;
        return Error{ErrorKind::Usage, "'" + tag + "' stands with + and with -",
                     "give one of the two"};
    }
    if (split.add.empty() && split.drop.empty()) {
        return Error{ErrorKind::Usage, "no tag was given",
                     "write +word to add one, -word to drop one"};
    }
    return split;
}

Result<Outcome> runTag(Session& session, const Arguments& arguments) {
    PANTILE_ASSIGN_OR_RETURN(const TagWords words, tagWords(arguments.positional()));
    std::vector<catalogue::UnknownTag> unknown;
    const auto change = [&](catalogue::Library& library,
                            const std::vector<core::TextureId>& ids) -> Result<std::int64_t> {
        PANTILE_ASSIGN_OR_RETURN(unknown, catalogue::unknownTags(library, words.drop));
        return catalogue::changeTags(library, ids, words.add, words.drop);
    };
    PANTILE_ASSIGN_OR_RETURN(const Outcome outcome,
                             changeSelected(session, words.selection, "changed", change));
    for (const catalogue::UnknownTag& tag : unknown)
        session.say(core::visibleText(tasks::unknownTagText(tag)));
    return outcome;
}

Result<Outcome> runRemove(Session& session, const Arguments& arguments) {
    return changeSelected(session, arguments.positional(), "removed, and recoverable until purge",
                          [](catalogue::Library& library, const auto& ids) {
                              return catalogue::removeTextures(library, ids);
                          });
}

Result<Outcome> runRecover(Session& session, const Arguments& arguments) {
    std::vector<std::string> words = arguments.positional();
    if (words == std::vector<std::string>{"all"}) words = {"is:removed"};  // All that it can be.
    return changeSelected(session, words, "recovered",
                          [](catalogue::Library& library, const auto& ids) {
                              return catalogue::recoverTextures(library, ids);
                          });
}

std::string fieldsChanged(const catalogue::RevisionBefore& before) {
    std::string fields;
    const auto name = [&](bool changed, std::string_view field) {
        if (changed) fields += (fields.empty() ? "" : ", ") + std::string(field);
    };
    name(before.title.has_value(), "title");
    name(before.author.has_value(), "author");
    name(before.licence.has_value(), "licence");
    name(before.source.has_value(), "source");
    name(before.note.has_value(), "note");
    name(before.tags.has_value(), "tags");
    name(before.stars.has_value(), "stars");
    name(before.contentId.has_value(), "picture");
    return fields;
}

QJsonObject revisionJson(const catalogue::Revision& revision) {
    QJsonObject before;
    const auto put = [&](const char* name, const std::optional<std::string>& text) {
        if (text) before[QLatin1String(name)] = jsonText(*text);
    };
    put("title", revision.before.title);
    put("author", revision.before.author);
    put("licence", revision.before.licence);
    put("source", revision.before.source);
    put("note", revision.before.note);
    if (revision.before.tags) before["tags"] = jsonTexts(*revision.before.tags);
    if (revision.before.stars) before["stars"] = *revision.before.stars;
    return {{"revision", revision.number},
            {"at", jsonText(tasks::utcTime(revision.at))},
            {"what", jsonText(catalogue::revisionKindName(revision.kind))},
            {"before", before}};
}

std::string_view stateName(catalogue::ActionState state) {
    switch (state) {
        case catalogue::ActionState::Done:
            return "done";
        case catalogue::ActionState::Undone:
            return "undone";
        case catalogue::ActionState::DoneForGood:
            return "for good";
    }
    return "";
}

Result<Outcome> listAllActions(Session& session, const Arguments& arguments) {
    constexpr std::int64_t kUsualLimit = 30;
    PANTILE_ASSIGN_OR_RETURN(const auto limit,
                             arguments.number("--limit", 1, catalogue::kMostActionsKept));
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto actions,
                             catalogue::listActions(library, limit.value_or(kUsualLimit)));
    if (session.json) {
        const auto one = [](const catalogue::Action& action) {
            return QJsonObject{{"id", jsonNumber(action.id)},
                               {"at", jsonText(tasks::utcTime(action.at))},
                               {"what", jsonText(action.what)},
                               {"state", jsonText(stateName(action.state))}};
        };
        printJson(session.out, {{"actions", jsonArray(actions, one)}});
        return Outcome::Done;
    }
    Table table({{"at"}, {"what"}, {"state"}});
    for (const catalogue::Action& action : actions) {
        table.addRow({tasks::utcTime(action.at), core::visibleText(action.what),
                      std::string(stateName(action.state))});
    }
    table.print(session.out);
    return Outcome::Done;
}

Result<Outcome> runHistory(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 0, 1, "history, or history ID"));
    if (arguments.positional().empty()) return listAllActions(session, arguments);
    PANTILE_ASSIGN_OR_RETURN(const auto id, parseTextureId(arguments.positional().front()));
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto revisions, catalogue::history(library, id));
    if (session.json) {
        printJson(session.out, {{"id", jsonNumber(id.value)},
                                {"revisions", jsonArray(revisions, revisionJson)}});
        return Outcome::Done;
    }
    Table table({{"revision", Align::Right}, {"at"}, {"what"}, {"fields"}});
    for (const catalogue::Revision& revision : revisions) {
        table.addRow({std::to_string(revision.number), tasks::utcTime(revision.at),
                      std::string(catalogue::revisionKindName(revision.kind)),
                      fieldsChanged(revision.before)});
    }
    table.print(session.out);
    return Outcome::Done;
}

Result<Outcome> runRevert(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 2, 2, "revert ID REVISION"));
    const auto& words = arguments.positional();
    PANTILE_ASSIGN_OR_RETURN(const auto id, parseTextureId(words[0]));
    PANTILE_ASSIGN_OR_RETURN(const auto revision,
                             parseNumber("a revision", words[1], 1, 2147483647));
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t changed,
                             catalogue::revertTexture(library, id, static_cast<int>(revision)));
    // The picture may be an older one, whose cost was forgotten.
    if (const auto record = catalogue::readTexture(library, id)) {
        tasks::knownEstimate(library, *record);
    }
    return answerTextures(session, changed, "reverted");
}

Result<Outcome> runPurge(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 0, 0, "purge --for-good"));
    if (!arguments.has("--for-good")) {
        return Error{
            ErrorKind::Usage, "purge destroys every removed texture, and that cannot be undone",
            "look at them with: pantile find is:removed; then write: pantile purge --for-good"};
    }
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    PANTILE_ASSIGN_OR_RETURN(const auto removed, catalogue::parseQuery("is:removed"));
    PANTILE_ASSIGN_OR_RETURN(const auto ids, catalogue::findIds(library, removed));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t changed, catalogue::purgeRemoved(library, ids));
    return answerTextures(session, changed, "destroyed");
}

}  // namespace

Command setCommand() {
    return {"set",
            "Sets title, author, licence, note, source or stars.",
            {"SELECTION --title TEXT ..."},
            {
                {"--title", OptionKind::Text, "TEXT", "the title"},
                {"--author", OptionKind::Text, "TEXT", "who made it"},
                {"--licence", OptionKind::Text, "TEXT", "its licence"},
                {"--note", OptionKind::Text, "TEXT", "a note of your own"},
                {"--source", OptionKind::Text, "TEXT", "where it comes from"},
                {"--stars", OptionKind::Value, "N", "how much you like it, 1 to 5; 0 for none"},
            },
            "",
            runSet};
}

Command tagCommand() {
    return {"tag",
            "Adds and drops tags.",
            {"SELECTION +word... -word..."},
            {},
            "For example: pantile tag \"title:shingle\" +stone -draft\n"
            "'pantile tags' lists, renames and merges them. A word in other letters, as Stone for "
            "stone,\n"
            "is the tag that the library has.",
            runTag};
}

Command removeCommand() {
    return {"remove", "Removes textures; they stay recoverable until purge.", {"SELECTION"}, {}, "",
            runRemove};
}

Command recoverCommand() {
    return {
        "recover",
        "Brings removed textures back.",
        {"SELECTION"},
        {},
        "Removed textures are found with is:removed, as in: pantile recover \"is:removed kelp\"",
        runRecover};
}

Command historyCommand() {
    return {"history",
            "Lists what was done to the library, or the revisions of one texture.",
            {"[--limit N]", "ID"},
            {{"--limit", OptionKind::Value, "N",
              "so many actions at most, the newest; 30 unless told"}},
            "'pantile undo' takes back the newest action that is done; those done for good stay.",
            runHistory};
}

Command revertCommand() {
    return {"revert",
            "Takes one texture back to what it was after a revision.",
            {"ID REVISION"},
            {},
            "",
            runRevert};
}

Command purgeCommand() {
    return {"purge",
            "Destroys every removed texture for good.",
            {"--for-good"},
            {{"--for-good", OptionKind::Flag, "", "yes, destroy them"}},
            "",
            runPurge};
}

}  // namespace pantile::cli
