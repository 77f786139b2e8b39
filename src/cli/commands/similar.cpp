#include <ostream>

#include "catalogue/query.h"
#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/selection.h"
#include "cli/table.h"
#include "cli/texture_answer.h"
#include "core/text.h"
#include "tasks/library_place.h"
#include "tasks/look_alikes.h"

namespace pantile::cli {

using core::Result;

namespace {

QJsonArray groupJson(const std::vector<tasks::LookAlike>& group) {
    return jsonArray(group, [](const tasks::LookAlike& alike) {
        return QJsonObject{{"id", jsonNumber(alike.id.value)},
                           {"title", jsonText(alike.title)},
                           {"distance", alike.distance},
                           {"how", jsonText(alike.how)}};
    });
}

Table groupTable(const std::vector<tasks::LookAlike>& group) {
    Table table({{"id", Align::Right}, {"title"}, {"distance", Align::Right}, {"how"}});
    for (const tasks::LookAlike& alike : group) {
        table.addRow({std::to_string(alike.id.value),
                      alike.title.empty() ? "(no title)" : alike.title,
                      std::to_string(alike.distance), alike.how});
    }
    return table;
}

Result<int> withinOf(const Arguments& arguments, int usual) {
    PANTILE_ASSIGN_OR_RETURN(const auto within, arguments.number("--within", 0, 100));
    return within ? static_cast<int>(*within) : usual;
}

OptionSpec withinSpec(std::string_view usual) {
    return {"--within", OptionKind::Value, "D", usual};
}

Result<Outcome> runSimilar(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 1, 1, "similar ID [--within D]"));
    PANTILE_ASSIGN_OR_RETURN(const auto id, parseTextureId(arguments.positional().front()));
    PANTILE_ASSIGN_OR_RETURN(const int within, withinOf(arguments, catalogue::kUsualLikeness));
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto found,
                             tasks::similarTo(library, id, within, session.progress()));
    if (session.json) {
        QJsonArray groups;
        if (!found.empty()) groups.append(groupJson(found));
        printJson(session.out, {{"groups", groups}});
        return Outcome::Done;
    }
    groupTable(found).print(session.out);
    session.out << counted(std::ssize(found), "texture looks", "textures look") << " like texture "
                << id.value << ", up to a distance of " << within << ".\n";
    return Outcome::Done;
}

Result<Outcome> runDuplicates(Session& session, const Arguments& arguments) {
    const auto& words = arguments.positional();
    const std::string one = words.empty() ? "ID" : core::excerpt(words.front());
    PANTILE_RETURN_IF_ERROR(checkPositional(
        arguments, 0, 0,
        "duplicates [--within D], or 'similar " + one + "' for those like texture " + one));
    PANTILE_ASSIGN_OR_RETURN(const int within, withinOf(arguments, 0));
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto groups,
                             tasks::findDuplicates(library, within, session.progress()));
    if (session.json) {
        printJson(session.out, {{"groups", jsonArray(groups, groupJson)}});
        return Outcome::Done;
    }
    for (const auto& group : groups) {
        groupTable(group).print(session.out);
        session.out << '\n';
    }
    session.out << counted(std::ssize(groups), "group", "groups") << " of look-alikes.\n";
    return Outcome::Done;
}

constexpr std::string_view kNotes =
    "Distance 0 is the same picture, also recoloured, mirrored, turned, shifted with\n"
    "wrap-around or enlarged by a whole factor. Beyond that the cells differ: the\n"
    "distance is the mean of their differences, black to white being 100. At 2 some\n"
    "cells or shades are others, at 10 the same motif is drawn anew. 'find like:17'\n"
    "asks the same within a search.";

}  // namespace

Command similarCommand() {
    return {"similar",
            "Finds textures that look like one.",
            {"ID [--within D]"},
            {withinSpec("0 to 100: how far from the same they may be, else 2")},
            kNotes,
            runSimilar};
}

Command duplicatesCommand() {
    return {"duplicates",     "Finds textures of the whole library that look alike.",
            {"[--within D]"}, {withinSpec("0 to 100: how far from the same they may be, else 0")},
            kNotes,           runDuplicates};
}

}  // namespace pantile::cli
