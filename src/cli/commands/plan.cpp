#include <cmath>
#include <filesystem>
#include <ostream>
#include <string_view>
#include <vector>

#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/selection.h"
#include "cli/texture_answer.h"
#include "core/text.h"
#include "tasks/drawing_frames.h"
#include "tasks/library_place.h"
#include "tasks/plan_drawing.h"

namespace pantile::cli {

using core::Result;

namespace {

QJsonObject strokeJson(const drawing::Stroke& stroke) {
    QJsonObject object{{"colour", stroke.colour},
                       {"path", jsonArray(stroke.path, [](core::Point cell) {
                            return QJsonArray{cell.x, cell.y};
                        })}};
    QJsonArray jumps;
    for (std::size_t i = 0; i < stroke.path.size(); ++i) {
        if (stroke.jumpsTo(i)) jumps.append(jsonNumber(static_cast<std::int64_t>(i)));
    }
    if (!jumps.isEmpty()) object["jumps"] = jumps;
    return object;
}

std::string_view boundWord(tasks::BoundKind bound) {
    return bound == tasks::BoundKind::Strong ? "strong" : "cheap";
}

QJsonObject fasterJson(const tasks::FasterSetting& faster) {
    return {{"setting", jsonText(faster.setting)},
            {"how", jsonText(faster.how)},
            {"seconds", jsonSeconds(faster.milliseconds)},
            {"saves", jsonSeconds(faster.savesMs)}};
}

QJsonObject variantJson(const board::TextureVariant& variant) {
    return {{"variant", jsonText(board::variantName(variant.kind))},
            {"seconds", jsonSeconds(variant.plan.milliseconds)},
            {"bytes", jsonNumber(variant.bytes)}};
}

/// What --svg and --frames wrote.
using Written = std::vector<std::filesystem::path>;

QJsonObject planJson(const tasks::ComparedDrawing& compared, bool withStrokes,
                     const Written& written) {
    const tasks::PlannedDrawing& planned = compared.planned;
    const drawing::Plan& plan = planned.plan;
    QJsonObject object{{"canvas", jsonText(planned.canvas.name)},
                       {"board", jsonText(planned.board.name)},
                       {"strokes", jsonNumber(std::ssize(plan.strokes))},
                       {"picks", plan.picks},
                       {"lifts", plan.lifts},
                       {"fill", plan.fill ? QJsonValue(*plan.fill) : QJsonValue()},
                       {"seconds", jsonSeconds(plan.milliseconds)},
                       {"by_row_seconds", jsonSeconds(compared.byRowMs)},
                       {"bound_seconds", jsonSeconds(compared.boundMs)},
                       {"bound", jsonText(boundWord(compared.bound))},
                       {"picked_once_bound_seconds",
                        compared.pickedOnceMs ? jsonSeconds(*compared.pickedOnceMs) : QJsonValue()},
                       {"faster", jsonArray(compared.faster, fasterJson)},
                       {"bytes", jsonNumber(planned.bytes)},
                       {"frontier", jsonArray(compared.variants, variantJson)},
                       {"files", jsonPaths(written)},
                       {"verified", true}};
    if (withStrokes) object["strokes_list"] = jsonArray(plan.strokes, strokeJson);
    return object;
}

void printFaster(std::ostream& out, const std::vector<tasks::FasterSetting>& faster) {
    // Less than the tenth of a second that is shown is nothing to speak of; JSON has it all.
    constexpr std::int64_t kLeastShownMs = 50;
    if (faster.empty() || faster.front().savesMs < kLeastShownMs) {
        out << "No other timing and no other pen would be much faster.\n";
        return;
    }
    out << "What other settings would save:\n";
    for (const tasks::FasterSetting& each : faster) {
        if (each.savesMs < kLeastShownMs) break;
        out << "  With " << each.setting << " it would take " << spokenTime(each.milliseconds)
            << ", " << spokenTime(each.savesMs) << " less (" << core::visibleText(each.how)
            << ").\n";
    }
    out << "Whether the toolkit keeps up, only a calibration tells: draw a texture with the "
           "setting\n"
           "and compare every cell, before trusting it.\n";
}

void printStrokes(std::ostream& out, const drawing::Plan& plan) {
    if (plan.fill) out << "fill with colour " << int{*plan.fill} << '\n';
    for (const drawing::Stroke& stroke : plan.strokes) {
        out << "colour " << int{stroke.colour} << ':';
        for (std::size_t i = 0; i < stroke.path.size(); ++i) {
            out << (stroke.jumpsTo(i) ? " >" : " ") << stroke.path[i].x << ',' << stroke.path[i].y;
        }
        out << '\n';
    }
}

void printPlan(std::ostream& out, const tasks::ComparedDrawing& compared) {
    const tasks::PlannedDrawing& planned = compared.planned;
    const drawing::Plan& plan = planned.plan;
    out << "On the canvas " << core::visibleText(planned.canvas.name) << " by the board "
        << core::visibleText(planned.board.name) << ":\n"
        << "  drawing        " << spokenTime(plan.milliseconds) << '\n'
        << "  row by row     " << spokenTime(compared.byRowMs) << '\n'
        << "  never under    " << spokenTime(compared.boundMs) << " (the "
        << boundWord(compared.bound) << " bound)\n";
    if (compared.pickedOnceMs) {
        out << "  picked once    never under " << spokenTime(*compared.pickedOnceMs)
            << ", if each colour is picked once\n";
    }
    out << "  strokes        " << plan.strokes.size() << '\n'
        << "  colour picks   " << plan.picks << '\n';
    if (plan.fill) out << "  filled first   with colour " << int{*plan.fill} << '\n';
    out << "  bytes          " << planned.bytes << '\n';
    for (const board::TextureVariant& variant : compared.variants) {
        if (variant.kind == board::VariantKind::Fast) continue;
        out << "  or in          " << variant.bytes << " bytes and "
            << spokenTime(variant.plan.milliseconds) << " (" << board::variantName(variant.kind)
            << ")\n";
    }
    out << "Replayed on a virtual canvas: every cell is right.\n";
}

Result<tasks::PlanOptions> planOptions(const Arguments& arguments) {
    constexpr long long kMostBudgetMs = 3'600'000;
    tasks::PlanOptions options;
    options.canvas = arguments.value("--canvas").value_or("");
    options.board = arguments.value("--board").value_or("");
    PANTILE_ASSIGN_OR_RETURN(const auto budget, arguments.number("--budget-ms", 0, kMostBudgetMs));
    if (budget) options.budgetMs = *budget;
    options.prove = arguments.has("--prove");
    return options;
}

/// How many ms of the drawing lie between two frames; 0 unless it was said.
Result<std::int64_t> frameMs(const Arguments& arguments) {
    constexpr double kLeastSeconds = 0.01;
    constexpr double kMostSeconds = 3600;
    constexpr double kMsInASecond = 1000;
    PANTILE_ASSIGN_OR_RETURN(const auto seconds,
                             arguments.fraction("--frame-seconds", kLeastSeconds, kMostSeconds));
    if (seconds && !arguments.has("--frames")) {
        return core::Error{core::ErrorKind::Usage, "--frame-seconds says nothing without --frames",
                           "write --frames DIR as well"};
    }
    return seconds ? std::llround(*seconds * kMsInASecond) : 0;
}

Result<Written> writePictures(Session& session, const Arguments& arguments,
                              const tasks::ComparedDrawing& compared, std::int64_t everyMs) {
    const auto ifExists =
        arguments.has("--replace") ? tasks::IfExists::Replace : tasks::IfExists::Refuse;
    Written written;
    if (const auto svg = arguments.value("--svg")) {
        PANTILE_RETURN_IF_ERROR(tasks::writePlanPicture(compared, *svg, ifExists));
        written.emplace_back(*svg);
    }
    if (const auto folder = arguments.value("--frames")) {
        PANTILE_ASSIGN_OR_RETURN(
            const Written frames,
            tasks::writeFrames(compared.planned, *folder, {everyMs, ifExists}, session.progress()));
        written.insert(written.end(), frames.begin(), frames.end());
    }
    return written;
}

void printWritten(std::ostream& out, const Arguments& arguments, const Written& written) {
    if (const auto svg = arguments.value("--svg")) {
        out << "Wrote the picture of the plan to " << core::visibleText(*svg) << ".\n";
    }
    if (const auto folder = arguments.value("--frames")) {
        const auto frames = std::ssize(written) - (arguments.has("--svg") ? 1 : 0);
        out << "Wrote " << counted(frames, "frame", "frames") << " to "
            << core::visibleText(*folder) << ".\n";
    }
}

Result<Outcome> runPlan(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 1, 1, "plan ID"));
    PANTILE_ASSIGN_OR_RETURN(const auto id, parseTextureId(arguments.positional().front()));
    PANTILE_ASSIGN_OR_RETURN(const tasks::PlanOptions options, planOptions(arguments));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t everyMs, frameMs(arguments));
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto compared,
                             tasks::planStored(library, id, options, session.progress()));
    PANTILE_ASSIGN_OR_RETURN(const Written written,
                             writePictures(session, arguments, compared, everyMs));
    if (options.prove && compared.bound == tasks::BoundKind::Cheap) {
        session.say(
            "The strong bound is not proved for this canvas and board, or no higher than the cheap "
            "one.");
    }
    const bool withStrokes = arguments.has("--strokes");
    if (session.json) {
        printJson(session.out, planJson(compared, withStrokes, written));
        return Outcome::Done;
    }
    printPlan(session.out, compared);
    printFaster(session.out, compared.faster);
    printWritten(session.out, arguments, written);
    if (withStrokes) printStrokes(session.out, compared.planned.plan);
    return Outcome::Done;
}

}  // namespace

Command planCommand() {
    return {
        "plan",
        "Plans the strokes that draw a texture, and proves them by replay.",
        {"ID [--board NAME] [--canvas NAME] [options]"},
        {
            {"--board", OptionKind::Value, "NAME",
             "the board, else flash-32k, or the first by name if that is gone"},
            {"--canvas", OptionKind::Value, "NAME", "the canvas, else the smallest that it fits"},
            {"--budget-ms", OptionKind::Value, "N",
             "about how long to look for a quicker plan; counted, so the same on every machine"},
            {"--prove", OptionKind::Flag, "",
             "work out the strong bound; may take a minute, Ctrl-C stops it"},
            {"--strokes", OptionKind::Flag, "", "list the strokes as well"},
            {"--svg", OptionKind::Value, "FILE", "draw the pen's way, picks and travels as SVG"},
            {"--frames", OptionKind::Value, "DIR",
             "write the canvas as it fills as numbered PNGs, at most 1000"},
            {"--frame-seconds", OptionKind::Value, "N",
             "seconds of the drawing between two frames, else a hundredth of it"},
            {"--replace", OptionKind::Flag, "", "files of the same name may be replaced"},
        },
        "In a list of strokes, > stands before a cell that the pen jumps to, painting nothing on\n"
        "the way.",
        runPlan};
}

}  // namespace pantile::cli
