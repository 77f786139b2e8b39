#include "cli/commands/calibrate.h"

#include <ostream>

#include "cli/choice_answer.h"
#include "cli/commands/profiles.h"
#include "cli/json.h"
#include "cli/written_file.h"
#include "core/duration.h"
#include "core/grid.h"
#include "tasks/calibrate_canvas.h"
#include "tasks/library_place.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

std::string rangeText(int least, int most) {
    if (least == most) return std::to_string(least);
    return std::to_string(least) + " to " + std::to_string(most);
}

Result<board::CalibrationReading> reading(const Arguments& arguments) {
    if (!arguments.has("--near") || !arguments.has("--far")) {
        return Error{
            ErrorKind::Usage, "the marks' cells are missing",
            "write canvas calibrate NAME --board B --into DIR for a load to draw, and then "
            "canvas calibrate NAME --near X,Y --far X,Y"};
    }
    board::CalibrationReading read;
    PANTILE_RETURN_IF_ERROR(readPlace(arguments, "--near", read.near));
    PANTILE_RETURN_IF_ERROR(readPlace(arguments, "--far", read.far));
    PANTILE_ASSIGN_OR_RETURN(const auto column,
                             arguments.number("--pair-column", 0, core::kMaxGridSide - 1));
    PANTILE_ASSIGN_OR_RETURN(const auto row,
                             arguments.number("--pair-row", 0, core::kMaxGridSide - 1));
    if (column) read.pairColumn = static_cast<int>(*column);
    if (row) read.pairRow = static_cast<int>(*row);
    return read;
}

std::string advice(const board::Calibrated& found, const board::CalibrationReading& read) {
    if (!board::isSettled(found, read)) {
        return "Draw the calibration once more: it is exact when its ticks touch in row and "
               "column.";
    }
    return "The marks of a texture will lie in their cells.";
}

}  // namespace

Result<void> readPlace(const Arguments& arguments, std::string_view option, core::Point& field) {
    const auto text = arguments.value(option);
    if (!text) return {};
    const std::size_t comma = text->find(',');
    if (comma == std::string::npos) {
        return Error{ErrorKind::Usage, std::string(option) + " needs two numbers",
                     "write for example 100,60"};
    }
    const std::string what = std::string(option) + "'s number";
    PANTILE_ASSIGN_OR_RETURN(const auto x,
                             parseNumber(what, text->substr(0, comma), 0, core::kMaxCounts));
    PANTILE_ASSIGN_OR_RETURN(const auto y,
                             parseNumber(what, text->substr(comma + 1), 0, core::kMaxCounts));
    field = {static_cast<int>(x), static_cast<int>(y)};
    return {};
}

Result<Outcome> writeCalibration(Session& session, const Arguments& arguments,
                                 const std::string& canvas) {
    const auto board = arguments.value("--board");
    if (!board) {
        return Error{ErrorKind::Usage, "the board is missing",
                     "write canvas calibrate NAME --board B --into DIR"};
    }
    tasks::WriteOptions options;
    if (arguments.has("--replace")) options.ifExists = tasks::IfExists::Replace;
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(
        const auto written,
        tasks::writeCalibration(library, canvas, *board, *arguments.value("--into"), options,
                                session.progress()));
    if (session.json) {
        printJson(session.out, {{"load", jsonText(written.name)},
                                {"seconds", jsonSeconds(written.choice.milliseconds)},
                                {"files", jsonPaths(written.files)},
                                {"verified", true}});
        return Outcome::Done;
    }
    for (const auto& file : written.files) printWrote(session.out, file);
    session.out
        << "Draw it on an empty canvas (" << core::spokenTime(written.choice.milliseconds)
        << "), and read off, counting cells from 0: the mark at the top left (--near), the "
           "one at the bottom right (--far), and the first two ticks that touch in the row "
           "(--pair-column, the right one) and in the column (--pair-row, the lower one), if "
           "any do.\n";
    printCautions(session.out);
    return Outcome::Done;
}

Result<core::Canvas> takeCalibration(Session& session, const Arguments& arguments,
                                     const std::string& canvas) {
    PANTILE_ASSIGN_OR_RETURN(const board::CalibrationReading read, reading(arguments));
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    PANTILE_ASSIGN_OR_RETURN(const auto taken, tasks::takeCalibration(library, canvas, read));
    const board::Calibrated& found = taken.found;
    session.say("A pitch of " + rangeText(found.leastPitch, found.mostPitch) +
                (found.mostPitch == 1 ? " count" : " counts") +
                " explains the cells; the grid's place is " +
                (found.unsure == core::Point{0, 0}
                     ? "exact"
                     : "sure within " + counted(found.unsure.x, "count", "counts") +
                           " across and " + std::to_string(found.unsure.y) + " down") +
                ". " + advice(found, read));
    PANTILE_RETURN_IF_ERROR(renewCosts(session, library));
    return taken.canvas;
}

}  // namespace pantile::cli
