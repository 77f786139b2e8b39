#include <array>
#include <optional>
#include <ostream>
#include <string>
#include <string_view>

#include "catalogue/canvases.h"
#include "catalogue/palettes.h"
#include "cli/commands/all.h"
#include "cli/commands/calibrate.h"
#include "cli/commands/profiles.h"
#include "cli/json.h"
#include "cli/texture_answer.h"
#include "core/palette_bar.h"
#include "tasks/texture_json.h"

namespace pantile::cli {

using core::Canvas;
using core::Error;
using core::ErrorKind;
using core::PenModel;
using core::Result;

namespace {

constexpr std::array<Choice<PenModel>, 4> kPens = {{
    {"whole-cells", PenModel::WholeCells},
    {"diagonals", PenModel::Diagonals},
    {"lines", PenModel::Lines},
    {"sampled", PenModel::Sampled},
}};
constexpr std::array<Choice<bool>, 2> kYesOrNo = {{{"yes", true}, {"no", false}}};
constexpr std::array<Choice<core::PenLeaving>, 2> kLeavings = {{
    {"refused", core::PenLeaving::Refused},
    {"undone", core::PenLeaving::Undone},
}};
constexpr std::string_view kNoButton = "none";

std::string_view penWord(PenModel pen) {
    for (const Choice<PenModel>& choice : kPens) {
        if (choice.value == pen) return choice.word;
    }
    return "";
}

std::string_view leavingWord(core::PenLeaving leaving) {
    return leaving == core::PenLeaving::Undone ? "undone" : "refused";
}

QJsonValue placeJson(const std::optional<core::Point>& place) {
    if (!place) return {};
    return QJsonArray{place->x, place->y};
}

QJsonObject canvasJson(const Canvas& canvas) {
    const core::CanvasGeometry& g = canvas.geometry;
    QJsonObject object{{"name", jsonText(canvas.name)},
                       {"width", canvas.size.width},
                       {"height", canvas.size.height},
                       {"colours", canvas.colourLimit()},
                       {"pen", jsonText(penWord(canvas.penModel))},
                       {"pen_turns", canvas.rules.turns},
                       {"pen_covers", canvas.rules.covers},
                       {"pen_leaving", jsonText(leavingWord(canvas.rules.leaving))},
                       {"grid_at", QJsonArray{g.gridCentre.x, g.gridCentre.y}},
                       {"cell_pitch", g.cellPitch},
                       {"bar_at", QJsonArray{g.swatchCentre.x, g.swatchCentre.y}},
                       {"swatch_pitch", g.swatchPitch},
                       {"swatches_per_column", g.swatchesPerColumn},
                       {"fill_at", placeJson(g.fillButton)},
                       {"palette", QJsonValue()}};
    if (canvas.palette) tasks::addPaletteJson(object, *canvas.palette);
    return object;
}

std::string placeText(core::Point point) {
    return std::to_string(point.x) + "," + std::to_string(point.y);
}

/// The pen model and what the rules add to it.
std::string penText(const Canvas& canvas) {
    std::string text(penWord(canvas.penModel));
    if (!canvas.rules.turns) text += ", no turns";
    if (!canvas.rules.covers) text += ", no covering";
    if (canvas.rules.leaving == core::PenLeaving::Undone) text += ", undone outside";
    return text;
}

Outcome answerCanvases(Session& session, const std::vector<Canvas>& canvases) {
    if (session.json) {
        printJsonList(session.out, jsonArray(canvases, canvasJson));
        return Outcome::Done;
    }
    Table table({{"canvas"},
                 {"cells", Align::Right},
                 {"colours"},
                 {"pen"},
                 {"grid at"},
                 {"pitch", Align::Right},
                 {"bar at"},
                 {"swatches", Align::Right},
                 {"fill at"}});
    for (const Canvas& canvas : canvases) {
        const core::CanvasGeometry& g = canvas.geometry;
        table.addRow({canvas.name,
                      std::to_string(canvas.size.width) + "x" + std::to_string(canvas.size.height),
                      std::to_string(canvas.colourLimit()) + (canvas.palette ? " fixed" : " free"),
                      penText(canvas), placeText(g.gridCentre), std::to_string(g.cellPitch),
                      placeText(g.swatchCentre), std::to_string(g.swatchesPerColumn) + " a column",
                      g.fillButton ? placeText(*g.fillButton) : "-"});
    }
    table.print(session.out);
    return Outcome::Done;
}

Result<void> readFillButton(const Arguments& arguments, core::CanvasGeometry& g) {
    if (!arguments.has("--fill-at")) return {};
    if (arguments.value("--fill-at") == kNoButton) {
        g.fillButton.reset();
        return {};
    }
    core::Point place;
    PANTILE_RETURN_IF_ERROR(readPlace(arguments, "--fill-at", place));
    g.fillButton = place;
    return {};
}

Result<void> readGeometry(const Arguments& arguments, core::CanvasGeometry& g) {
    PANTILE_RETURN_IF_ERROR(readPlace(arguments, "--grid-at", g.gridCentre));
    PANTILE_RETURN_IF_ERROR(arguments.readNumber("--pitch", 1, core::kMaxPitch, g.cellPitch));
    PANTILE_RETURN_IF_ERROR(readPlace(arguments, "--bar-at", g.swatchCentre));
    PANTILE_RETURN_IF_ERROR(
        arguments.readNumber("--swatch-pitch", 1, core::kMaxPitch, g.swatchPitch));
    PANTILE_RETURN_IF_ERROR(
        arguments.readNumber("--swatches-per-column", 1, 256, g.swatchesPerColumn));
    return readFillButton(arguments, g);
}

Result<void> readPen(const Arguments& arguments, Canvas& canvas) {
    const auto choose = [&](std::string_view option, const auto& choices,
                            auto& field) -> Result<void> {
        const auto word = arguments.value(option);
        if (!word) return {};
        PANTILE_ASSIGN_OR_RETURN(field, parseChoice(option, *word, choices));
        return {};
    };
    PANTILE_RETURN_IF_ERROR(choose("--pen", kPens, canvas.penModel));
    PANTILE_RETURN_IF_ERROR(choose("--pen-turns", kYesOrNo, canvas.rules.turns));
    PANTILE_RETURN_IF_ERROR(choose("--pen-covers", kYesOrNo, canvas.rules.covers));
    return choose("--pen-leaving", kLeavings, canvas.rules.leaving);
}

Result<void> readColours(const Arguments& arguments, const catalogue::Library& library,
                         Canvas& canvas) {
    const auto palette = arguments.value("--palette");
    if (palette && arguments.has("--colours")) {
        return Error{ErrorKind::Usage, "--palette and --colours exclude each other",
                     "give the fixed palette or the number of free colours"};
    }
    if (palette) {
        PANTILE_ASSIGN_OR_RETURN(const auto named, catalogue::readPalette(library, *palette));
        canvas.palette = named.palette;
        canvas.freeColours = named.palette.size();
    }
    if (arguments.has("--colours")) canvas.palette.reset();
    return arguments.readNumber("--colours", core::kMinPaletteColours, core::kMaxPaletteColours,
                                canvas.freeColours);
}

// What the options say, put over `canvas`; a new size moves grid and palette bar unless they are
// placed too. The fill button stays where it was told to be.
Result<void> readOptions(const Arguments& arguments, const catalogue::Library& library,
                         Canvas& canvas) {
    const core::Size sizeBefore = canvas.size;
    PANTILE_RETURN_IF_ERROR(
        arguments.readNumber("--width", 1, core::kMaxGridSide, canvas.size.width));
    PANTILE_RETURN_IF_ERROR(
        arguments.readNumber("--height", 1, core::kMaxGridSide, canvas.size.height));
    if (canvas.size != sizeBefore) {
        const auto fillButton = canvas.geometry.fillButton;
        canvas.geometry = core::CanvasGeometry::beside(canvas.size);
        canvas.geometry.fillButton = fillButton;
    }
    PANTILE_RETURN_IF_ERROR(readColours(arguments, library, canvas));
    PANTILE_RETURN_IF_ERROR(readPen(arguments, canvas));
    const core::CanvasGeometry before = canvas.geometry;
    PANTILE_RETURN_IF_ERROR(readGeometry(arguments, canvas.geometry));
    if (!arguments.has("--bar-at")) core::keepUsualBarClear(canvas, before, canvas.size);
    return core::checkBar(canvas);
}

Result<Canvas> startCanvas(const Arguments& arguments, const std::string& name) {
    if (!arguments.has("--width") || !arguments.has("--height")) {
        return Error{ErrorKind::Usage, "the canvas needs a size",
                     "write canvas add NAME --width W --height H"};
    }
    Canvas canvas;
    canvas.name = name;
    return canvas;
}

Result<Outcome> runCanvas(Session& session, const Arguments& arguments) {
    const auto& words = arguments.positional();
    if (words.size() == 2 && words[0] == "calibrate") {
        if (arguments.has("--into")) return writeCalibration(session, arguments, words[1]);
        PANTILE_ASSIGN_OR_RETURN(const Canvas canvas,
                                 takeCalibration(session, arguments, words[1]));
        return answerCanvases(session, {canvas});
    }
    constexpr ProfileVerbs<Canvas> kVerbs = {
        "canvas",         catalogue::listCanvases, catalogue::readCanvas, tasks::addCanvas,
        tasks::setCanvas, tasks::removeCanvas,     startCanvas,           readOptions,
        answerCanvases,
    };
    return runProfiles(session, arguments, kVerbs);
}

}  // namespace

Command canvasCommand() {
    return {
        "canvas",
        "Describes what a toolkit accepts, and where its grid and palette bar lie.",
        {"list", "show NAME", "add NAME --width W --height H [--palette P|--colours N] [options]",
         "set NAME [options]", "remove NAME", "calibrate NAME --board B --into DIR",
         "calibrate NAME --near X,Y --far X,Y [--pair-column X] [--pair-row Y]"},
        {
            {"--width", OptionKind::Value, "W", "cells across, 1 to 256"},
            {"--height", OptionKind::Value, "H", "cells down, 1 to 256"},
            {"--palette", OptionKind::Value, "NAME", "the toolkit's fixed palette"},
            {"--colours", OptionKind::Value, "N", "how many colours the maker may set, 2 to 256"},
            {"--pen", OptionKind::Value, "whole-cells|diagonals|lines|sampled",
             "what a moving pen paints"},
            {"--pen-turns", OptionKind::Value, "yes|no", "whether a stroke may turn corners"},
            {"--pen-covers", OptionKind::Value, "yes|no",
             "whether one colour may be painted over another"},
            {"--pen-leaving", OptionKind::Value, "refused|undone",
             "what becomes of a stroke that leaves the canvas: not known, or taken back"},
            {"--grid-at", OptionKind::Value, "X,Y", "centre of the first cell, in pointer counts"},
            {"--pitch", OptionKind::Value, "N", "counts from cell to cell"},
            {"--bar-at", OptionKind::Value, "X,Y",
             "centre of the palette bar's first swatch, else beside the grid"},
            {"--swatch-pitch", OptionKind::Value, "N", "counts from swatch to swatch"},
            {"--swatches-per-column", OptionKind::Value, "N", "swatches below one another"},
            {"--board", OptionKind::Value, "NAME", "calibrate: the board that draws"},
            {"--into", OptionKind::Value, "DIR", "calibrate: the folder for the load"},
            {"--replace", OptionKind::Flag, "",
             "calibrate: files of the same name may be replaced"},
            {"--near", OptionKind::Value, "X,Y", "calibrate: cell of the mark at the top left"},
            {"--far", OptionKind::Value, "X,Y", "calibrate: cell of the mark at the bottom right"},
            {"--pair-column", OptionKind::Value, "X",
             "calibrate: right cell of the row's first two ticks that touch"},
            {"--pair-row", OptionKind::Value, "Y",
             "calibrate: lower cell of the column's first two ticks that touch"},
            {"--fill-at", OptionKind::Value, "X,Y|none",
             "a button that fills the whole canvas with the picked colour"},
        },
        "Counts are what the pointer moves, from the top left corner of the toolkit's screen.\n"
        "Cells are counted from 0. To calibrate, guess pitch and origin (the pitch rather too\n"
        "small), write a load, draw it on an empty canvas, and say which cells its marks came to\n"
        "lie in.",
        runCanvas};
}

}  // namespace pantile::cli
