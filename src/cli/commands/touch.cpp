#include <ostream>

#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/selection.h"
#include "cli/texture_answer.h"
#include "cli/touch_options.h"
#include "tasks/library_place.h"
#include "tasks/touch_up.h"

namespace pantile::cli {

using core::Result;

namespace {

void printAnswer(Session& session, core::TextureId id, const tasks::TouchedUp& touched) {
    session.out << counted(touched.changed, "cell", "cells") << " of texture " << id.value
                << " changed; it has " << touched.size.width << "x" << touched.size.height
                << " cells, revision " << touched.revision << ".\n";
}

Result<Outcome> runTouch(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 1, 1, "touch ID --colour N --line X,Y,X,Y"));
    PANTILE_ASSIGN_OR_RETURN(const auto id, parseTextureId(arguments.positional().front()));
    PANTILE_ASSIGN_OR_RETURN(const auto steps, touchSteps(arguments.inOrder()));
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    PANTILE_ASSIGN_OR_RETURN(const tasks::TouchedUp touched,
                             tasks::touchUp(library, id, steps, session.progress()));
    if (session.json) {
        printJson(session.out, {{"id", jsonNumber(id.value)},
                                {"revision", touched.revision},
                                {"changed", jsonNumber(touched.changed)},
                                {"width", touched.size.width},
                                {"height", touched.size.height}});
    } else {
        printAnswer(session, id, touched);
    }
    return Outcome::Done;
}

}  // namespace

Command touchCommand() {
    return {
        "touch",
        "Touches up the picture of one texture.",
        {"ID --colour N --line X,Y,X,Y ..."},
        touchOptionSpecs(),
        "Options work in the order given. Columns X count from 0 at the left, rows Y from 0 at\n"
        "the top; colours N from 0, as 'pantile show' lists the palette. All of it is one\n"
        "revision: 'pantile history' lists them, 'pantile revert' takes it back.\n"
        "For example: pantile touch 17 --colour 3 --symmetry left-right --line 2,3,10,8",
        runTouch};
}

}  // namespace pantile::cli
