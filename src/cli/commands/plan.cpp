#include <ostream>

#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/selection.h"
#include "cli/texture_answer.h"
#include "core/text.h"
#include "tasks/library_place.h"
#include "tasks/plan_drawing.h"

namespace pantile::cli {

using core::Result;

namespace {

QJsonObject strokeJson(const drawing::Stroke& stroke) {
    return {{"colour", stroke.colour}, {"path", jsonArray(stroke.path, [](core::Point cell) {
                                            return QJsonArray{cell.x, cell.y};
                                        })}};
}

QJsonObject planJson(const tasks::ComparedDrawing& compared, bool withStrokes) {
    const tasks::PlannedDrawing& planned = compared.planned;
    const drawing::Plan& plan = planned.plan;
    QJsonObject object{{"canvas", jsonText(planned.canvas.name)},
                       {"board", jsonText(planned.board.name)},
                       {"strokes", jsonNumber(std::ssize(plan.strokes))},
                       {"picks", plan.picks},
                       {"lifts", plan.lifts},
                       {"seconds", jsonSeconds(plan.milliseconds)},
                       {"by_row_seconds", jsonSeconds(compared.byRowMs)},
                       {"bound_seconds", jsonSeconds(compared.boundMs)},
                       {"bytes", jsonNumber(planned.bytes)},
                       {"verified", true}};
    if (withStrokes) object["strokes_list"] = jsonArray(plan.strokes, strokeJson);
    return object;
}

void printPlan(std::ostream& out, const tasks::ComparedDrawing& compared, bool withStrokes) {
    const tasks::PlannedDrawing& planned = compared.planned;
    const drawing::Plan& plan = planned.plan;
    out << "On the canvas " << core::visibleText(planned.canvas.name) << " by the board "
        << core::visibleText(planned.board.name) << ":\n"
        << "  drawing        " << spokenTime(plan.milliseconds) << '\n'
        << "  row by row     " << spokenTime(compared.byRowMs) << '\n'
        << "  never under    " << spokenTime(compared.boundMs) << '\n'
        << "  strokes        " << plan.strokes.size() << '\n'
        << "  colour picks   " << plan.picks << '\n'
        << "  bytes          " << planned.bytes << '\n'
        << "Replayed on a virtual canvas: every cell is right.\n";
    if (!withStrokes) return;
    for (const drawing::Stroke& stroke : plan.strokes) {
        out << "colour " << int{stroke.colour} << ':';
        for (const core::Point cell : stroke.path) out << ' ' << cell.x << ',' << cell.y;
        out << '\n';
    }
}

Result<Outcome> run(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 1, 1, "plan ID"));
    PANTILE_ASSIGN_OR_RETURN(const auto id, parseTextureId(arguments.positional().front()));
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(
        const auto compared,
        tasks::planStored(library, id, arguments.value("--canvas").value_or(""),
                          arguments.value("--board").value_or(""), session.progress()));
    const bool withStrokes = arguments.has("--strokes");
    if (session.json) {
        printJson(session.out, planJson(compared, withStrokes));
    } else {
        printPlan(session.out, compared, withStrokes);
    }
    return Outcome::Done;
}

}  // namespace

Command planCommand() {
    return {
        "plan",
        "Plans the strokes that draw a texture, and proves them by replay.",
        {"ID [--board NAME] [--canvas NAME] [--strokes]"},
        {
            {"--board", OptionKind::Value, "NAME", "the board, else flash-32k"},
            {"--canvas", OptionKind::Value, "NAME", "the canvas, else the smallest that it fits"},
            {"--strokes", OptionKind::Flag, "", "list the strokes as well"},
        },
        "",
        run};
}

}  // namespace pantile::cli
