#include <algorithm>
#include <ostream>

#include "catalogue/shelves.h"
#include "cli/changed_answer.h"
#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/selection.h"
#include "cli/texture_answer.h"
#include "tasks/library_place.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

constexpr long long kMostPlaces = 1000000000;

Result<Outcome> listShelves(Session& session) {
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto shelves, catalogue::listShelves(library));
    if (session.json) {
        printJsonList(session.out, jsonArray(shelves, [](const catalogue::Shelf& shelf) {
                          return QJsonObject{{"name", jsonText(shelf.name)},
                                             {"textures", jsonNumber(shelf.count)}};
                      }));
        return Outcome::Done;
    }
    Table table({{"shelf"}, {"textures", Align::Right}});
    for (const catalogue::Shelf& shelf : shelves) {
        table.addRow({shelf.name, std::to_string(shelf.count)});
    }
    table.print(session.out);
    session.out << counted(static_cast<std::int64_t>(shelves.size()), "shelf", "shelves") << ".\n";
    return Outcome::Done;
}

Result<Outcome> putOrTake(Session& session, bool put, const std::vector<std::string>& words) {
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    const std::vector<std::string> selected(words.begin() + 2, words.end());
    PANTILE_ASSIGN_OR_RETURN(const Selection selection, selectTextures(library, selected));
    const std::string& name = words[1];
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t changed,
                             put ? catalogue::putOnShelf(library, selection.ids, name)
                                 : catalogue::takeFromShelf(library, selection.ids, name));
    return answerChanged(
        session, changed,
        counted(changed, "texture", "textures") + (put ? " put on " : " taken from ") + name);
}

/// Of what `at` points to, counted from 1.
template <typename List>
std::string placeText(const List& list, typename List::const_iterator at) {
    return std::to_string(at - list.begin() + 1);
}

// Put at a place, textures that were there already are moved.
Result<Outcome> putAt(Session& session, std::int64_t place, const std::vector<std::string>& words) {
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    const std::vector<std::string> selected(words.begin() + 2, words.end());
    PANTILE_ASSIGN_OR_RETURN(const Selection selection, selectTextures(library, selected));
    PANTILE_RETURN_IF_ERROR(catalogue::placeOnShelf(library, selection.ids, words[1], place));
    // A place beyond the end is the end.
    PANTILE_ASSIGN_OR_RETURN(const auto onShelf, catalogue::texturesOnShelf(library, words[1]));
    const auto first = std::find(onShelf.begin(), onShelf.end(), selection.ids.front());
    const std::string at =
        first == onShelf.end() ? "" : "at place " + placeText(onShelf, first) + " of ";
    const auto count = static_cast<std::int64_t>(selection.ids.size());
    return answerChanged(
        session, count,
        counted(count, "texture", "textures") + " put " + (at.empty() ? "on " : at) + words[1]);
}

Result<Outcome> placeShelf(Session& session, const std::string& name, const std::string& word) {
    PANTILE_ASSIGN_OR_RETURN(const auto place, parseNumber("a place", word, 1, kMostPlaces));
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    PANTILE_RETURN_IF_ERROR(catalogue::placeShelf(library, name, place));
    PANTILE_ASSIGN_OR_RETURN(const auto shelves, catalogue::listShelves(library));
    const auto at = std::find_if(shelves.begin(), shelves.end(),
                                 [&](const catalogue::Shelf& each) { return each.name == name; });
    if (at == shelves.end()) return answerChanged(session, 1, "Shelf " + name + " moved");
    return answerChanged(session, 1,
                         "Shelf " + name + " is number " + placeText(shelves, at) + " of " +
                             std::to_string(shelves.size()) + " now");
}

Result<Outcome> runShelf(Session& session, const Arguments& arguments) {
    const auto& words = arguments.positional();
    const std::string action = words.empty() ? "" : words[0];
    PANTILE_ASSIGN_OR_RETURN(const auto place, arguments.number("--at", 1, kMostPlaces));
    if (action == "list" && words.size() == 1) return listShelves(session);
    if (action == "put" && words.size() >= 3 && place) return putAt(session, *place, words);
    if (action == "place" && words.size() == 3) return placeShelf(session, words[1], words[2]);
    if ((action == "put" || action == "take") && words.size() >= 3) {
        return putOrTake(session, action == "put", words);
    }
    const bool renames = action == "rename" && words.size() == 3;
    const bool removes = action == "remove" && words.size() == 2;
    if (!renames && !removes) return wrongUse("shelf", words);
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    if (renames) {
        PANTILE_RETURN_IF_ERROR(catalogue::renameShelf(library, words[1], words[2]));
        return answerChanged(session, 1, "Shelf " + words[1] + " is now " + words[2]);
    }
    PANTILE_RETURN_IF_ERROR(catalogue::deleteShelf(library, words[1]));
    return answerChanged(session, 1,
                         "Shelf " + words[1] + " removed; its textures stay in the library");
}

}  // namespace

Command shelfCommand() {
    return {"shelf",
            "Keeps named, ordered groups of textures.",
            {"list", "put NAME SELECTION [--at PLACE]", "take NAME SELECTION", "rename NAME NEW",
             "place NAME PLACE", "remove NAME"},
            {{"--at", OptionKind::Value, "PLACE", "the place on the shelf, from 1; else the end"}},
            "A shelf is made when the first texture is put on it. With place it becomes the\n"
            "first, second or further of the shelves.",
            runShelf};
}

}  // namespace pantile::cli
