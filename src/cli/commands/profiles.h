#pragma once

// What the commands for canvases and boards have in common: list, show, add, set and remove by
// name.

#include <string>
#include <string_view>
#include <vector>

#include "catalogue/library.h"
#include "cli/command.h"
#include "cli/texture_answer.h"
#include "core/text.h"
#include "tasks/drawing_estimate.h"
#include "tasks/keep_estimates.h"
#include "tasks/library_place.h"

namespace pantile::cli {

template <typename Profile>
struct ProfileVerbs {
    std::string_view what;  ///< "canvas"
    core::Result<std::vector<Profile>> (*list)(const catalogue::Library&);
    core::Result<Profile> (*read)(const catalogue::Library&, std::string_view name);
    core::Result<void> (*add)(catalogue::Library&, const Profile&);
    core::Result<void> (*set)(catalogue::Library&, const Profile&);
    core::Result<void> (*remove)(catalogue::Library&, std::string_view name);

    /// A new profile of that name. Errors: Usage if an option that it needs is missing.
    core::Result<Profile> (*start)(const Arguments&, const std::string& name);
    /// Puts what the options say over the profile.
    core::Result<void> (*readOptions)(const Arguments&, const catalogue::Library&, Profile&);
    Outcome (*answer)(Session&, const std::vector<Profile>&);
};

/// Works out what textures cost under the changed profiles. Stopping that leaves the change done.
inline core::Result<void> renewCosts(Session& session, catalogue::Library& library) {
    const auto renewed = tasks::refreshEstimates(library, session.progress());
    if (!renewed && renewed.error().kind == core::ErrorKind::Cancelled) {
        return renewed.error().at(
            "the change is made, but working out the drawing times was ended");
    }
    if (!renewed) return renewed.error();
    if (*renewed > 0) {
        session.say("Worked out the drawing time of " + counted(*renewed, "texture", "textures") +
                    " anew.");
    }
    return {};
}

/// The board that costs are for and that plan takes unless told; empty if there is none.
inline std::string usualBoard(const catalogue::Library& library) {
    const auto defaults = tasks::drawingDefaults(library);
    return defaults ? defaults->board.name : "";
}

/// Removing or adding one board may make another the usual one.
inline void tellUsualBoard(Session& session, const catalogue::Library& library,
                           const std::string& before) {
    const std::string now = usualBoard(library);
    if (now == before) return;
    session.say(now.empty() ? "There is no board now, so no drawing time is known."
                            : "The usual board is now '" + core::visibleText(now) +
                                  "': drawing times are for it.");
}

template <typename Profile>
core::Result<Outcome> changeProfile(Session& session, const Arguments& arguments,
                                    const ProfileVerbs<Profile>& verbs, std::string_view action,
                                    const std::string& name) {
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    const std::string before = usualBoard(library);
    if (action == "remove") {
        PANTILE_RETURN_IF_ERROR(verbs.remove(library, name));
        session.say("Removed the " + std::string(verbs.what) + " " + name + ".");
        tellUsualBoard(session, library, before);
        PANTILE_RETURN_IF_ERROR(renewCosts(session, library));
        return verbs.answer(session, {});
    }
    const bool isNew = action == "add";
    PANTILE_ASSIGN_OR_RETURN(Profile profile,
                             isNew ? verbs.start(arguments, name) : verbs.read(library, name));
    PANTILE_RETURN_IF_ERROR(verbs.readOptions(arguments, library, profile));
    PANTILE_RETURN_IF_ERROR(isNew ? verbs.add(library, profile) : verbs.set(library, profile));
    tellUsualBoard(session, library, before);
    PANTILE_RETURN_IF_ERROR(renewCosts(session, library));
    return verbs.answer(session, {profile});
}

template <typename Profile>
core::Result<Outcome> runProfiles(Session& session, const Arguments& arguments,
                                  const ProfileVerbs<Profile>& verbs) {
    const auto& words = arguments.positional();
    const std::string action = words.empty() ? "" : words[0];
    const bool named = words.size() == 2;
    if (named && (action == "add" || action == "set" || action == "remove")) {
        return changeProfile(session, arguments, verbs, action, words[1]);
    }
    const bool lists = action == "list" && words.size() == 1;
    if (!lists && !(action == "show" && named)) return wrongUse(verbs.what, words);
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    if (lists) {
        PANTILE_ASSIGN_OR_RETURN(const std::vector<Profile> profiles, verbs.list(library));
        return verbs.answer(session, profiles);
    }
    PANTILE_ASSIGN_OR_RETURN(const Profile profile, verbs.read(library, words[1]));
    return verbs.answer(session, {profile});
}

}  // namespace pantile::cli
