#include <ostream>

#include "catalogue/canvases.h"
#include "catalogue/palettes.h"
#include "cli/commands/all.h"
#include "cli/commands/calibrate.h"
#include "cli/commands/profiles.h"
#include "cli/json.h"
#include "cli/texture_answer.h"
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

std::string_view penWord(PenModel pen) {
    for (const Choice<PenModel>& choice : kPens) {
        if (choice.value == pen) return choice.word;
    }
    return "";
}

QJsonObject canvasJson(const Canvas& canvas) {
    const core::CanvasGeometry& g = canvas.geometry;
    QJsonObject object{{"name", jsonText(canvas.name)},
                       {"width", canvas.size.width},
                       {"height", canvas.size.height},
                       {"colours", canvas.colourLimit()},
                       {"pen", jsonText(penWord(canvas.penModel))},
                       {"grid_at", QJsonArray{g.gridCentre.x, g.gridCentre.y}},
                       {"cell_pitch", g.cellPitch},
                       {"bar_at", QJsonArray{g.swatchCentre.x, g.swatchCentre.y}},
                       {"swatch_pitch", g.swatchPitch},
                       {"swatches_per_column", g.swatchesPerColumn},
                       {"palette", QJsonValue()}};
    if (canvas.palette) tasks::addPaletteJson(object, *canvas.palette);
    return object;
}

std::string placeText(core::Point point) {
    return std::to_string(point.x) + "," + std::to_string(point.y);
}

Outcome answer(Session& session, const std::vector<Canvas>& canvases) {
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
                 {"swatches", Align::Right}});
    for (const Canvas& canvas : canvases) {
        const core::CanvasGeometry& g = canvas.geometry;
        table.addRow({canvas.name,
                      std::to_string(canvas.size.width) + "x" + std::to_string(canvas.size.height),
                      std::to_string(canvas.colourLimit()) + (canvas.palette ? " fixed" : " free"),
                      std::string(penWord(canvas.penModel)), placeText(g.gridCentre),
                      std::to_string(g.cellPitch), placeText(g.swatchCentre),
                      std::to_string(g.swatchesPerColumn) + " a column"});
    }
    table.print(session.out);
    return Outcome::Done;
}

Result<void> readGeometry(const Arguments& arguments, core::CanvasGeometry& g) {
    PANTILE_RETURN_IF_ERROR(readPlace(arguments, "--grid-at", g.gridCentre));
    PANTILE_RETURN_IF_ERROR(arguments.readNumber("--pitch", 1, 127, g.cellPitch));
    PANTILE_RETURN_IF_ERROR(readPlace(arguments, "--bar-at", g.swatchCentre));
    PANTILE_RETURN_IF_ERROR(arguments.readNumber("--swatch-pitch", 1, 127, g.swatchPitch));
    return arguments.readNumber("--swatches-per-column", 1, 256, g.swatchesPerColumn);
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

// What the options say, put over `canvas`; a new size moves the palette bar unless it is placed
// too.
Result<void> readOptions(const Arguments& arguments, const catalogue::Library& library,
                         Canvas& canvas) {
    const core::Size before = canvas.size;
    PANTILE_RETURN_IF_ERROR(
        arguments.readNumber("--width", 1, core::kMaxGridSide, canvas.size.width));
    PANTILE_RETURN_IF_ERROR(
        arguments.readNumber("--height", 1, core::kMaxGridSide, canvas.size.height));
    if (canvas.size != before) canvas.geometry = core::CanvasGeometry::beside(canvas.size);
    PANTILE_RETURN_IF_ERROR(readColours(arguments, library, canvas));
    if (const auto pen = arguments.value("--pen")) {
        PANTILE_ASSIGN_OR_RETURN(canvas.penModel, parseChoice("--pen", *pen, kPens));
    }
    return readGeometry(arguments, canvas.geometry);
}

Result<Canvas> start(const Arguments& arguments, const std::string& name) {
    if (!arguments.has("--width") || !arguments.has("--height")) {
        return Error{ErrorKind::Usage, "the canvas needs a size",
                     "write canvas add NAME --width W --height H"};
    }
    Canvas canvas;
    canvas.name = name;
    return canvas;
}

Result<Outcome> run(Session& session, const Arguments& arguments) {
    const auto& words = arguments.positional();
    if (words.size() == 2 && words[0] == "calibrate") {
        if (arguments.has("--into")) return writeCalibration(session, arguments, words[1]);
        PANTILE_ASSIGN_OR_RETURN(const Canvas canvas,
                                 takeCalibration(session, arguments, words[1]));
        return answer(session, {canvas});
    }
    constexpr ProfileVerbs<Canvas> kVerbs = {
        "canvas",
        catalogue::listCanvases,
        catalogue::readCanvas,
        catalogue::addCanvas,
        catalogue::setCanvas,
        catalogue::removeCanvas,
        start,
        readOptions,
        answer,
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
            {"--grid-at", OptionKind::Value, "X,Y", "centre of the first cell, in pointer counts"},
            {"--pitch", OptionKind::Value, "N", "counts from cell to cell"},
            {"--bar-at", OptionKind::Value, "X,Y", "centre of the palette bar's first swatch"},
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
        },
        "Counts are what the pointer moves, from the top left corner of the toolkit's screen. "
        "Cells "
        "are counted from 0. To calibrate, guess pitch and origin (the pitch rather too small), "
        "write "
        "a load, draw it on an empty canvas, and say which cells its marks came to lie in.",
        run};
}

}  // namespace pantile::cli
