#include <ostream>

#include "catalogue/searches.h"
#include "cli/changed_answer.h"
#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/texture_answer.h"
#include "tasks/library_place.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

Result<Outcome> listSearches(Session& session) {
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto searches, catalogue::listSearches(library));
    if (session.json) {
        printJsonList(session.out, jsonArray(searches, [](const catalogue::SavedSearch& search) {
                          return QJsonObject{{"name", jsonText(search.name)},
                                             {"query", jsonText(search.query)},
                                             {"sort", jsonText(search.sort)}};
                      }));
        return Outcome::Done;
    }
    Table table({{"saved search"}, {"query"}, {"sort"}});
    for (const catalogue::SavedSearch& search : searches) {
        table.addRow({search.name, search.query, search.sort});
    }
    table.print(session.out);
    session.out << counted(static_cast<std::int64_t>(searches.size()), "saved search",
                           "saved searches")
                << ".\n";
    return Outcome::Done;
}

Result<Outcome> saveSearch(Session& session, catalogue::Library& library,
                           const catalogue::SavedSearch& search) {
    const auto saved = catalogue::saveSearch(library, search);
    if (!saved && saved.error().kind == ErrorKind::InvalidInput) {
        return Error{ErrorKind::Usage, saved.error().message, saved.error().hint};
    }
    PANTILE_RETURN_IF_ERROR(saved);
    return answerChanged(session, 1, "Search " + search.name + " saved");
}

Result<Outcome> runSearch(Session& session, const Arguments& arguments) {
    const auto& words = arguments.positional();
    const std::string action = words.empty() ? "" : words[0];
    if (action == "list" && words.size() == 1) return listSearches(session);
    const bool takesTwo = action == "save" || action == "rename";
    const bool isRight = takesTwo ? words.size() == 3 : action == "remove" && words.size() == 2;
    if (!isRight) return wrongUse("search", words);
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    const std::string& name = words[1];
    if (action == "save") {
        return saveSearch(session, library,
                          {name, words[2], arguments.value("--sort").value_or("relevance")});
    }
    if (action == "rename") {
        PANTILE_RETURN_IF_ERROR(catalogue::renameSearch(library, name, words[2]));
        return answerChanged(session, 1, "Search " + name + " is now " + words[2]);
    }
    PANTILE_RETURN_IF_ERROR(catalogue::removeSearch(library, name));
    return answerChanged(session, 1, "Search " + name + " removed");
}

}  // namespace

Command searchCommand() {
    return {"search",
            "Keeps searches under a name.",
            {"list", "save NAME QUERY [--sort KEY]", "rename NAME NEW", "remove NAME"},
            {{"--sort", OptionKind::Value, "KEY", "the order in which it is shown"}},
            "'pantile find --saved NAME' asks it.",
            runSearch,
            true};
}

}  // namespace pantile::cli
